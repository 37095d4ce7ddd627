package org.foreload.examples.command;

import org.foreload.optimum.BestRelease;
import org.foreload.optimum.Remainder;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How thoroughly the best release is searched for. */
final class SearchOptions {

    private static final int MOST_RESTARTS = 100;
    private static final int MOST_EVALUATIONS = 100_000;
    private static final int LEAST_EVALUATIONS = 20;

    /** Part of the entries of a search far and wide that one near a known release of a much like study needs. */
    private static final int NEARBY_PART = 8;

    @Option(
            names = "--seed",
            paramLabel = "<n>",
            defaultValue = "1",
            description =
                    "Seed of the places where little is known: the same seed gives the same answer. Default: ${DEFAULT-VALUE}.")
    private long seed;

    @Option(
            names = "--restarts",
            paramLabel = "<n>",
            defaultValue = "4",
            description =
                    "Searches over free release shapes, 0 to 100, of which the best two go on; 0 stays with the simple shapes and "
                            + "is several times quicker. Default: ${DEFAULT-VALUE}.")
    private int restarts;

    @Option(
            names = "--evaluations",
            paramLabel = "<n>",
            defaultValue = "300",
            description = "Entries tried by each of these searches, 20 to 100000. Default: ${DEFAULT-VALUE}.")
    private int evaluations;

    @Mixin
    private SweepOptions sweepOptions;

    /** Refuses what cannot be, before anything is computed. */
    void check() {
        Options.within("--restarts", restarts, 0, MOST_RESTARTS, "");
        Options.within("--evaluations", evaluations, LEAST_EVALUATIONS, MOST_EVALUATIONS, "");
        sweepOptions.check();
    }

    BestRelease search(double buildUpTime) {
        return new BestRelease(seed, restarts, evaluations, buildUpTime);
    }

    /** The search for each case where several cases are compared: never longer than the one that was asked for. */
    BestRelease each() {
        return new BestRelease(
                seed,
                Math.min(restarts, Remainder.EACH.restarts()),
                Math.min(evaluations, Remainder.EACH.evaluations()),
                Remainder.EACH.buildUpTime());
    }

    /** Entries tried in a search near a release that is known: 37 where nothing else is asked for. */
    int nearby() {
        return Math.max(LEAST_EVALUATIONS, evaluations / NEARBY_PART);
    }

    long seed() {
        return seed;
    }

    int threads() {
        return sweepOptions.threads();
    }
}
