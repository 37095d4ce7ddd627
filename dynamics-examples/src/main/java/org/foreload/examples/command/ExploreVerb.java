package org.foreload.examples.command;

import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Optional;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.ExploreAnswer;
import org.foreload.examples.answer.Handover;
import org.foreload.examples.gallery.SweepPictures;
import org.foreload.examples.output.Report;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.sweep.Checkpoint;
import org.foreload.examples.sweep.Request;
import org.foreload.examples.sweep.ShownProgress;
import org.foreload.optimum.Remainder;
import org.foreload.optimum.ShapeRanking;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.Exploration.Candidate;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Sweep;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The main job: a sweep of release shapes, each from its own latest brake point. */
@Command(
        name = "explore",
        sortOptions = false,
        description = {
            "The main job: which release of the brake makes this car quickest through this corner, how much quicker it is than "
                    + "straight-line braking, and why.",
            "",
            "Many releases are tried, of different shapes, peaks, starts and ends. Each gets its own latest brake point, the "
                    + "last from which the simulated car still makes the corner with the margin asked for; only then are their "
                    + "times compared. Ctrl-C stops the sweep and shows the best so far."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: the brake point is where the foot comes down; stations are metres along the line, 0 at turn-in, "
                    + "negative before it. Release point and brake off: where the brake starts to ease, and where it is off. "
                    + "The trail share is the part of all slowing that is done after turn-in. In hand is the largest error "
                    + "that the car forgives: a brake point so many metres later, or a whole release so many metres later, or "
                    + "a peak 2.5 %% harder for each metre.",
            "",
            "Example:  foreload explore --demo-car road --demo-corner hairpin --shapes linear,smooth",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class ExploreVerb extends Verb {

    @Mixin
    private GridOptions gridOptions;

    @Mixin
    private SweepOptions sweepOptions;

    @Option(
            names = "--checkpoint",
            paramLabel = "<file>",
            description =
                    "Save results to this file as they come; the same request with the same file carries on from there, "
                            + "with the same answer.")
    private Path checkpoint;

    @Mixin
    private StudyOptions studyOptions;

    @Option(names = "--all", description = "Show every release; json and csv always have them all.")
    private boolean all;

    @Option(
            names = "--why",
            description =
                    "Also say what makes up the time of the best release above the ideal bound: brake build-up, lags of "
                            + "tyres, pitch and roll, release shape, exit and driver are switched off one after another, each "
                            + "time with a new search. Takes a minute or two.")
    private boolean why;

    @Mixin
    private PlaceOptions placeOptions;

    @Override
    Report report(Console console) {
        sweepOptions.check();
        int workers = sweepOptions.threads();
        studyOptions.check();
        SweepPlan plan = gridOptions.plan(studyOptions.buildUpTime());
        return placeOptions.ask(console, studyOptions::study, study -> {
            Exploration sweep = explore(console, new ReleaseSweep(study, plan), workers);
            Optional<Remainder> remainder = why && sweep.complete()
                    ? sweep.best().map(best -> remainder(console, study, best.entry(), workers))
                    : Optional.empty();
            Optional<Handover> handover = sweep.best().map(best -> handover(study, best, workers));
            common().picture().draw(() -> {
                Picture picture = SweepPictures.explored(study, sweep);
                return handover.map(one -> picture.plus(one.caption(common().units())))
                        .orElse(picture);
            });
            return ExploreAnswer.of(study, sweep, all, remainder, handover, common().units());
        });
    }

    private Handover handover(CornerStudy study, Candidate best, int workers) {
        return common().forPeople()
                ? Handover.practised(study, best.entry(), best.inHand(), new Sweep(workers, Sweep.Progress.SILENT))
                : Handover.of(best.entry(), best.inHand());
    }

    private Remainder remainder(Console console, CornerStudy study, EntryResult best, int workers) {
        try (ShownProgress progress = console.progress(sweepOptions.quiet(), "releases")) {
            return Remainder.of(study, best, Remainder.EACH, workers, progress);
        }
    }

    private Exploration explore(Console console, ReleaseSweep releases, int workers) {
        CornerStudy study = releases.study();
        SweepPlan plan = releases.plan();
        try (ShownProgress progress = console.progress(sweepOptions.quiet(), "releases")) {
            if (checkpoint == null) {
                return refined(releases, releases.run(new Sweep(workers, progress)), workers);
            }
            Request request = Request.of(
                    Foreload.version(),
                    study.simulator().car(),
                    study.simulator().corner(),
                    plan.shapes(),
                    "peaks=" + plan.peaks() + " starts=" + plan.starts() + " ends=" + plan.ends() + " "
                            + studyOptions.words());
            try (Checkpoint memory = Checkpoint.open(checkpoint, request)) {
                return refined(releases, releases.run(new Sweep(workers, progress), memory), workers);
            }
        } catch (UncheckedIOException e) {
            throw new ComputationException(e.getMessage());
        }
    }

    /**
     * The best of each shape refined, so that the order of shapes does not hang on the grid; not where peaks, starts or
     * ends were asked for: then nothing else is tried.
     */
    private Exploration refined(ReleaseSweep releases, Exploration grid, int workers) {
        if (!gridOptions.wholeRange()) {
            return grid;
        }
        return ShapeRanking.refine(releases, grid, new Sweep(workers, Sweep.Progress.SILENT));
    }
}
