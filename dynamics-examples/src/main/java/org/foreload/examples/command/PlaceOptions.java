package org.foreload.examples.command;

import java.util.function.BiFunction;
import java.util.function.Function;
import org.foreload.examples.sweep.ShownProgress;
import org.foreload.limit.Hands;
import org.foreload.limit.Limit;
import org.foreload.limit.LimitOptions;
import org.foreload.line.LineRun;
import org.foreload.line.LineStudy;
import org.foreload.path.Corner;
import org.foreload.strategy.CornerStudy;
import org.foreload.vehicle.Car;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Which car, in which corner, on which line. */
final class PlaceOptions {

    /** Lines through a corner. */
    enum Line {
        /** That of the corner. */
        GIVEN,
        /** The one that perfect hands and feet find for this car. */
        QUICKEST
    }

    @Mixin
    private CarOptions carOptions;

    @Mixin
    private CornerOptions cornerOptions;

    @Option(
            names = "--line",
            completionCandidates = Candidates.Lines.class,
            paramLabel = "<name>",
            defaultValue = "given",
            description =
                    "The line to drive: given, that of the corner; or quickest, the one that perfect hands and feet find for "
                            + "this car anywhere on the road, which takes some seconds more. 'limit --line-out' keeps it in a "
                            + "file. Default: ${DEFAULT-VALUE}.")
    private Line line;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec verb;

    /**
     * Reads car and corner, prints their warnings, and asks; what the core refuses is blamed on what the user wrote.
     *
     * @param question about a car and a corner
     */
    <T> T ask(Console console, BiFunction<Car, Corner, T> question) {
        Car car = carOptions.car(console);
        Corner corner = cornerOptions.corner(console);
        return new Blame(carOptions, cornerOptions)
                .compute(() -> question.apply(car, line == Line.QUICKEST ? quickest(console, car, corner) : corner));
    }

    /**
     * The same for a question about a study.
     *
     * @param made the study of a car and a corner
     * @param question about that study
     */
    <T> T ask(Console console, BiFunction<Car, Corner, CornerStudy> made, Function<CornerStudy, T> question) {
        return ask(console, (car, corner) -> question.apply(made.apply(car, corner)));
    }

    /** The quickest line of the road as a corner of its own, with its own stations. */
    private Corner quickest(Console console, Car car, Corner corner) {
        boolean quiet = verb.commandLine().getParseResult().hasMatchedOption("--quiet");
        LimitOptions options = LimitOptions.STANDARD;
        try (ShownProgress progress = console.progress(quiet, "steps")) {
            LineRun run = new LineStudy(
                            car,
                            corner,
                            Hands.practised(Limit.peakDeceleration(car, corner)),
                            options,
                            LimitBeside.watcher(progress, options))
                    .optimal();
            if (!run.converged()) {
                throw new ComputationException(
                        "no quickest line was found for this car on this road: the search for it "
                                + "did not converge");
            }
            return new Corner(
                    corner.name() + ", quickest line",
                    corner.approachSpeed(),
                    run.corner().path());
        }
    }
}
