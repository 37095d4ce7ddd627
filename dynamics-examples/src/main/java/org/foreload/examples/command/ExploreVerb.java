package org.foreload.examples.command;

import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.foreload.braking.Braking;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.AgainstLimit;
import org.foreload.examples.answer.ExploreAnswer;
import org.foreload.examples.answer.Handover;
import org.foreload.examples.gallery.SweepPictures;
import org.foreload.examples.output.Format;
import org.foreload.examples.output.Report;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.sweep.Checkpoint;
import org.foreload.examples.sweep.Parts;
import org.foreload.examples.sweep.Request;
import org.foreload.examples.sweep.ShownProgress;
import org.foreload.optimum.Remainder;
import org.foreload.optimum.ShapeRanking;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.Exploration.Candidate;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.SweepMemory;
import org.foreload.strategy.SweepMemory.Found;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Sweep;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The main job: a sweep of release shapes, each from its own brake point. */
@Command(
        name = "explore",
        sortOptions = false,
        description = {
            "The main job: which release of the brake makes this car quickest through this corner, how much quicker it is than "
                    + "straight-line braking, and why.",
            "",
            "Many releases are tried, with different shapes, peaks, release points and brake-off points. Each gets its own brake point, the "
                    + "latest from which the simulated car still makes the corner with the margin asked for, or an earlier one "
                    + "where that is quicker; only then are their times compared. Ctrl-C stops the sweep and shows the best so far."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: the brake point is where the foot comes down; stations are metres along the line, 0 at turn-in, "
                    + "negative before it. Release point and brake off: where the brake starts to ease, and where it is off. "
                    + "The trail share is the part of all slowing that is done after turn-in. In hand is the largest error "
                    + "that the car forgives, in metres: braking that much later, easing that much later from release point to "
                    + "brake off, or pressing 2.5 %% harder for each metre.",
            "",
            "Example:  foreload explore --demo-car road --demo-corner hairpin --shapes linear,smooth",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class ExploreVerb extends ReportVerb implements Driving {

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

    @Option(
            names = "--shard",
            paramLabel = "<i/n>",
            description =
                    "Compute only the i-th of n parts and print it, as lines of JSON; 'foreload join' puts the parts "
                            + "together, with the answer of one run. For sweeps that are shared out among machines.")
    private String shard;

    @Spec
    private CommandSpec spec;

    @Mixin
    private StudyOptions studyOptions;

    @Option(names = "--all", description = "Show every release; json and csv always have them all.")
    private boolean all;

    @Option(
            names = "--why",
            description =
                    "Also say what makes up the time of the best release above the ideal bound: brake build-up, lags of "
                            + "tyres, pitch and roll, release shape, exit and driver are switched off one after another, each "
                            + "time with a new search. Takes about half a minute on two cores.")
    private boolean why;

    @Option(
            names = "--limit",
            description =
                    "Also solve for perfect hands and feet near the line, as 'limit' does, and say where the best release "
                            + "loses to them. Takes a few seconds; 'best' always has it.")
    private boolean limit;

    @Mixin
    private PlaceOptions placeOptions;

    @Override
    public boolean brief() {
        return !why && gridOptions.isBrief();
    }

    @Override
    Report report(Console console) {
        return report(console, common(), sweepOptions, Optional.empty());
    }

    /** One part, or the whole. */
    @Override
    String answer(Console console) {
        return shard == null ? super.answer(console) : part(console, Shard.of("--shard", shard));
    }

    private String part(Console console, Shard part) {
        common().onlyJson("with --shard: a part is lines of JSON");
        sweepOptions.check();
        studyOptions.check();
        SweepPlan plan = gridOptions.plan(studyOptions.buildUpTime());
        return placeOptions.ask(console, studyOptions::study, study -> {
            ReleaseSweep releases = new ReleaseSweep(study, plan);
            Request request = request(study, plan);
            try (ShownProgress progress = console.progress("releases");
                    Checkpoint memory = checkpoint == null ? null : Checkpoint.open(checkpoint, request)) {
                Map<Braking, Found> found = releases.part(
                        part.number(),
                        part.of(),
                        new Sweep(sweepOptions.threads(), progress),
                        memory == null ? SweepMemory.NONE : memory);
                if (progress.stopped()) {
                    console.line("stopped early: part " + part.words() + " lacks releases, and 'join' will refuse it");
                }
                return Parts.text(request, arguments(), part.words(), found);
            } catch (UncheckedIOException e) {
                throw new ComputationException(e.getMessage());
            }
        });
    }

    /**
     * The options that ask for the same sweep: all that were given, but those that are about this part and this run.
     */
    private List<String> arguments() {
        return GivenOptions.of(spec, OF_THIS_RUN).stream()
                .flatMap(given -> given.words().stream())
                .toList();
    }

    private static final Set<String> OF_THIS_RUN =
            Set.of("--shard", "--checkpoint", "--threads", "--quiet", "--format", "--debug", "--units", "--picture");

    /**
     * The answer of a whole sweep.
     *
     * @param output how it is shown
     * @param run how it is computed
     * @param parts what is computed already, instead of a checkpoint
     */
    Report report(Console console, CommonOptions output, SweepOptions run, Optional<Parts> parts) {
        run.check();
        int workers = run.threads();
        studyOptions.check();
        SweepPlan plan = gridOptions.plan(studyOptions.buildUpTime());
        return placeOptions.ask(console, studyOptions::study, study -> {
            Exploration sweep = explore(console, new ReleaseSweep(study, plan), run, parts);
            Optional<Remainder> remainder = why && sweep.complete()
                    ? sweep.best().map(best -> remainder(console, study, best.entry(), run))
                    : Optional.empty();
            Optional<AgainstLimit> beside = limit && sweep.complete()
                    ? sweep.best()
                            .map(best -> LimitBeside.whenAsked(console, study.simulator(), studyOptions.buildUpTime())
                                    .against(best.entry()))
                    : Optional.empty();
            Optional<Handover> handover = sweep.best().map(best -> handover(study, best, output, workers));
            output.picture().draw(() -> {
                Picture picture = SweepPictures.explored(study, sweep);
                return handover.map(one -> picture.plus(one.caption(output.units())))
                        .orElse(picture);
            });
            return ExploreAnswer.of(
                    study, sweep, output.format() == Format.TABLE, all, remainder, beside, handover, output.units());
        });
    }

    private static Handover handover(CornerStudy study, Candidate best, CommonOptions output, int workers) {
        return output.forPeople()
                ? Handover.practised(study, best.entry(), best.inHand(), new Sweep(workers, Sweep.Progress.SILENT))
                : Handover.of(best.entry(), best.inHand());
    }

    private static Remainder remainder(Console console, CornerStudy study, EntryResult best, SweepOptions run) {
        try (ShownProgress progress = console.progress("releases")) {
            return Remainder.of(study, best, Remainder.EACH, run.threads(), progress);
        }
    }

    private Exploration explore(Console console, ReleaseSweep releases, SweepOptions run, Optional<Parts> parts) {
        parts.ifPresent(all -> all.check(request(releases.study(), releases.plan()), releases.releases()));
        try (ShownProgress progress = console.progress("releases")) {
            Sweep sweep = new Sweep(run.threads(), progress);
            if (checkpoint == null || parts.isPresent()) {
                SweepMemory memory = parts.isPresent() ? parts.get() : SweepMemory.NONE;
                return explored(releases, sweep, memory);
            }
            Request request = request(releases.study(), releases.plan());
            try (Checkpoint memory = Checkpoint.open(checkpoint, request)) {
                return explored(releases, sweep, memory);
            }
        } catch (UncheckedIOException e) {
            throw new ComputationException(e.getMessage());
        }
    }

    private List<String> settings(SweepPlan plan) {
        List<String> settings =
                new ArrayList<>(List.of("peaks=" + plan.peaks(), "starts=" + plan.starts(), "ends=" + plan.ends()));
        settings.addAll(studyOptions.words());
        return settings;
    }

    private Request request(CornerStudy study, SweepPlan plan) {
        return Request.of(
                Foreload.version(), study.simulator().car(), study.simulator().corner(), plan.shapes(), settings(plan));
    }

    /**
     * The best of each shape refined, so that the order of shapes does not depend on the grid; not where peaks, starts
     * or ends were asked for: then nothing else is tried.
     */
    private Exploration explored(ReleaseSweep releases, Sweep sweep, SweepMemory memory) {
        if (!gridOptions.wholeRange()) {
            return releases.run(sweep, memory);
        }
        return ShapeRanking.explore(releases, sweep, memory);
    }
}
