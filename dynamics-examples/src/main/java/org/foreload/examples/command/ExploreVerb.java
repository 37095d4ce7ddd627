package org.foreload.examples.command;

import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.foreload.braking.ReleaseShape;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.ExploreAnswer;
import org.foreload.examples.file.InputException;
import org.foreload.examples.gallery.SweepPictures;
import org.foreload.examples.output.Report;
import org.foreload.examples.sweep.Checkpoint;
import org.foreload.examples.sweep.Request;
import org.foreload.examples.sweep.ShownProgress;
import org.foreload.optimum.Remainder;
import org.foreload.path.Corner;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.SweepMemory;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Car;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The main job: a sweep of release shapes, each from its own latest brake point. */
@Command(
        name = "explore",
        sortOptions = false,
        description = {
            "The main job: which release of the brake makes this car quickest through this corner, what it gains on braking in "
                    + "a straight line only, and why.",
            "",
            "Many releases are tried, of different shapes, peaks, starts and ends. Each gets its own latest brake point, the "
                    + "last from which the simulated car still makes the corner with the margin asked for; only then are their "
                    + "times compared. Ctrl-C stops the sweep and shows what was found so far."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: the brake point is where the foot comes down; stations are metres along the line, 0 at turn-in, "
                    + "negative before it. Ease off and off: where the brake begins to come off, and is off. The trail share "
                    + "is the part of all slowing that is done after turn-in. In hand is how many metres later the foot could "
                    + "come down before the car does not make the corner at all.",
            "",
            "Example:  foreload explore --demo-car road --demo-corner hairpin --shapes linear,smooth",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class ExploreVerb implements Verb {

    private static final int FINEST = 10;

    /** Largest sweep: days of work on one processor, and what fits in memory. */
    private static final int MOST_RELEASES = 200_000;

    private static final int MOST_THREADS = 1024;

    @Option(
            names = "--resolution",
            paramLabel = "<n>",
            defaultValue = "1",
            description =
                    "How finely peaks, starts and ends are divided, 1 to 10: the work grows with its third power. "
                            + "Default: 1.")
    private int resolution;

    @Option(
            names = "--shapes",
            paramLabel = "<shapes>",
            split = ",",
            description =
                    "Release shapes to try, separated by commas: linear, progressive, late, circle, smooth, two-stage, "
                            + "or table:FILE, a CSV file with the columns released (0 to 1) and remaining (1 to 0). "
                            + "Straight-line braking (abrupt) is always tried. "
                            + "Default: linear,progressive,late,smooth,two-stage.")
    private List<String> shapes;

    @Option(
            names = "--peaks",
            paramLabel = "<shares>",
            split = ",",
            description =
                    "Peak decelerations to try, as shares of what locks a wheel in a straight line, separated by commas. "
                            + "Default: 0.35,0.6,0.75,0.87.")
    private List<Double> peaks;

    @Option(
            names = "--starts",
            paramLabel = "<shares>",
            split = ",",
            description =
                    "Where the brake may begin to come off, as shares of the way from turn-in to the apex; negative "
                            + "before turn-in. Default: -0.5,-0.1,0.3.")
    private List<Double> starts;

    @Option(
            names = "--ends",
            paramLabel = "<shares>",
            split = ",",
            description = "Where the brake may be off, in the same shares. Default: 0,0.35,0.7,1,1.4.")
    private List<Double> ends;

    @Option(
            names = "--threads",
            paramLabel = "<n>",
            description =
                    "How many releases are tried at once; the answer is the same. Default: one for each processor.")
    private Integer threads;

    @Option(
            names = "--checkpoint",
            paramLabel = "<file>",
            description =
                    "Keep what is found in this file as it is found; the same request with the same file goes on from "
                            + "there, with the same answer.")
    private Path checkpoint;

    @Mixin
    private StudyOptions studyOptions;

    @Option(names = "--all", description = "Show every release; json and csv always have them all.")
    private boolean all;

    @Option(
            names = "--why",
            description =
                    "Also say what the time of the best above the ideal bound is made of: brake build-up, lags of "
                            + "tyres, pitch and roll, release shape, exit and driver are switched off one after another, each "
                            + "time with a new search. Takes a minute or two.")
    private boolean why;

    @Option(names = "--quiet", description = "Show no progress.")
    private boolean quiet;

    @Mixin
    private CarOptions carOptions;

    @Mixin
    private CornerOptions cornerOptions;

    @Mixin
    private CommonOptions common;

    @Override
    public CommonOptions common() {
        return common;
    }

    @Override
    public Report report(Console console) {
        Options.within("--resolution", resolution, 1, FINEST, "");
        int workers = threads == null ? Runtime.getRuntime().availableProcessors() : threads;
        Options.within("--threads", workers, 1, MOST_THREADS, "");
        studyOptions.check();
        SweepPlan plan = plan();
        Car car = carOptions.car(console);
        Corner corner = cornerOptions.corner(console);
        return new Blame(carOptions, cornerOptions).compute(() -> {
            CornerStudy study = studyOptions.study(car, corner);
            Exploration sweep = explore(console, study, plan, workers);
            Optional<Remainder> remainder = why && sweep.complete()
                    ? sweep.best().map(best -> remainder(console, study, best.entry(), workers))
                    : Optional.empty();
            common.picture().draw(() -> SweepPictures.explored(study, sweep));
            return ExploreAnswer.of(study, sweep, all, remainder);
        });
    }

    private Remainder remainder(Console console, CornerStudy study, EntryResult best, int workers) {
        try (ShownProgress progress = console.progress(quiet)) {
            return Remainder.of(study, best, workers, progress);
        }
    }

    private SweepPlan plan() {
        within("--peaks", peaks, 0.01, 2);
        within("--starts", starts, -20, 20);
        within("--ends", ends, -20, 20);
        SweepPlan standard = SweepPlan.withResolution(resolution);
        SweepPlan plan = new SweepPlan(
                shapes == null ? standard.shapes() : chosenShapes(),
                peaks == null ? standard.peaks() : peaks,
                starts == null ? standard.starts() : starts,
                ends == null ? standard.ends() : ends,
                studyOptions.buildUpTime());
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

    private Exploration explore(Console console, CornerStudy study, SweepPlan plan, int workers) {
        try (ShownProgress progress = console.progress(quiet)) {
            if (checkpoint == null) {
                return study.explore(plan, new Sweep(workers, progress), SweepMemory.NONE);
            }
            Request request = Request.of(
                    Foreload.version(),
                    study.simulator().car(),
                    study.simulator().corner(),
                    plan.shapes(),
                    "peaks=" + plan.peaks() + " starts=" + plan.starts() + " ends=" + plan.ends() + " "
                            + studyOptions.words());
            try (Checkpoint memory = Checkpoint.open(checkpoint, request)) {
                return study.explore(plan, new Sweep(workers, progress), memory);
            }
        } catch (UncheckedIOException e) {
            throw new ComputationException(e.getMessage());
        }
    }
}
