package org.foreload.examples.command;

import java.util.List;
import java.util.stream.Stream;
import org.foreload.braking.ReleaseShape;
import org.foreload.file.InputException;
import org.foreload.strategy.SweepPlan;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Which releases a sweep tries. */
final class GridOptions {

    private static final int FINEST = 10;

    /** Largest sweep: an hour and a half on two processors, and up to 14 GB of memory. */
    private static final int MOST_RELEASES = 1_100_000;

    @Option(
            names = "--resolution",
            paramLabel = "<n>",
            defaultValue = "1",
            description =
                    "How finely peaks, release points and brake-off points are divided, 1 to 10: the work grows with its third power. "
                            + "Default: ${DEFAULT-VALUE}.")
    private int resolution;

    @Option(
            names = "--shapes",
            paramLabel = "<shapes>",
            split = ",",
            description =
                    "Release shapes to try, separated by commas: linear, progressive, held, circle, smooth, two-stage, "
                            + "or table:FILE, a CSV file with the columns released (0 to 1) and remaining (1 to 0), or a logged one "
                            + "with s_m, or time_s and speed_mps, and brake in any unit. "
                            + "Straight-line braking (abrupt) is always tried. "
                            + "Default: ${bundle:default.shapes}.")
    private List<String> shapes;

    @Option(
            names = "--peaks",
            paramLabel = "<shares>",
            split = ",",
            description =
                    "Peak decelerations to try, as shares of what locks a wheel in a straight line, separated by commas. "
                            + "Default: ${bundle:default.peaks}.")
    private List<Double> peaks;

    @Option(
            names = "--starts",
            paramLabel = "<shares>",
            split = ",",
            description = "Release points to try, as shares of the way from turn-in to the apex; negative "
                    + "before turn-in. Default: ${bundle:default.starts}.")
    private List<Double> starts;

    @Option(
            names = "--ends",
            paramLabel = "<shares>",
            split = ",",
            description = "Brake-off points to try, in the same shares. Default: ${bundle:default.ends}.")
    private List<Double> ends;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec verb;

    /** Whether the releases are driven in seconds. */
    boolean isBrief() {
        return resolution == 1
                && Stream.of(shapes, peaks, starts, ends).allMatch(values -> values == null || values.size() <= FEW);
    }

    /** About as many values of each kind as the sweep has of its own. */
    private static final int FEW = 6;

    /** The sweep; refuses what cannot be, before anything is computed. */
    SweepPlan plan(double buildUpTime) {
        Options.within("--resolution", resolution, 1, FINEST, "");
        if (peaks != null && starts != null && ends != null) {
            GivenOptions.refuse(verb, "with --peaks, --starts and --ends", "--resolution");
        }
        within("--peaks", peaks, 0.01, 2);
        within("--starts", starts, -20, 20);
        within("--ends", ends, -20, 20);
        SweepPlan standard = SweepPlan.withResolution(resolution);
        SweepPlan plan = new SweepPlan(
                shapes == null ? standard.shapes() : chosenShapes(),
                peaks == null ? standard.peaks() : peaks,
                starts == null ? standard.starts() : starts,
                ends == null ? standard.ends() : ends,
                buildUpTime);
        double releases = (double) plan.shapes().size()
                * plan.peaks().size()
                * plan.starts().size()
                * plan.ends().size();
        if (releases > MOST_RELEASES) {
            throw new InputException(
                    null, "--resolution", null, "must not ask for more than " + MOST_RELEASES + " releases");
        }
        return plan;
    }

    /** Whether peaks, starts and ends are the sweep's own, so that the best may be looked for between them, too. */
    boolean wholeRange() {
        return peaks == null && starts == null && ends == null;
    }

    private static void within(String option, List<Double> values, double low, double high) {
        if (values != null) {
            values.forEach(value -> Options.within(option, value, low, high, ""));
        }
    }

    private List<ReleaseShape> chosenShapes() {
        List<ReleaseShape> chosen = Shapes.shapes("--shapes", shapes);
        for (ReleaseShape shape : chosen) {
            if (shape.name().equals("abrupt")) {
                throw new InputException(
                        null, "--shapes", "abrupt", "is the straight-line braking that is always tried; name others");
            }
        }
        return chosen;
    }
}
