package org.foreload.examples.command;

import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.ReleaseShape;
import org.foreload.examples.answer.Handover;
import org.foreload.examples.answer.PracticeTarget;
import org.foreload.examples.answer.StepsAnswer;
import org.foreload.examples.gallery.RiskPictures;
import org.foreload.examples.output.Report;
import org.foreload.examples.sweep.ShownProgress;
import org.foreload.optimum.Optimum;
import org.foreload.risk.PracticeSteps;
import org.foreload.risk.RiskStudy;
import org.foreload.risk.Scatter;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Sweep;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The way from the driver's present release to a better one. */
@Command(
        name = "steps",
        sortOptions = false,
        description = {
            "A practice plan: from the release that a driver has now to the best one in steps, each of which that driver can "
                    + "repeat. A step changes one thing, brake point, peak or release; more where fewer would lose time, gain nothing "
                    + "or leave too little margin, and it says so. No step is smaller than what this driver strays by.",
            "",
            "Describe the present release with --brake-point, --peak-deceleration and --release-…. Without --release-shape, "
                    + "--release-start and --release-end it is straight-line braking, off the brake at turn-in, as on the "
                    + "sheet. Without a brake point it is the latest, and without a peak the hardest, with which this driver "
                    + "stays within the accepted risk.",
            "",
            "Where this driver fails too often with the best release, the steps lead to the quickest of the simple shapes "
                    + "that stays within the accepted risk. Where none does, they end where the rest would be too risky for "
                    + "this driver: then a steadier foot is the next thing to practise."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: for each step the brake point, release point, brake off and peak, how much quicker it is than the "
                    + "step before, how often this driver fails with it, what goes first when braking too late as planned, how that feels, and how far more brake on the straight saves it.",
            "",
            "Example:  foreload steps --driver novice --release-shape abrupt --release-end 0 --restarts 0",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class StepsVerb extends ReportVerb implements Driving {

    private static final int MOST_STEPS = 50;

    private static final String STOPPED = "stopped before the plan was made";

    @Option(
            names = "--steps",
            paramLabel = "<n>",
            defaultValue = "4",
            description = "Number of steps at most, 1 to 50. Default: ${DEFAULT-VALUE}.")
    private int number;

    @Mixin
    private ReleaseOptions releaseOptions;

    @Mixin
    private ScatterOptions scatterOptions;

    @Mixin
    private FootOptions footOptions;

    @Mixin
    private SearchOptions searchOptions;

    @Mixin
    private StudyOptions studyOptions;

    @Mixin
    private PlaceOptions placeOptions;

    @Override
    public boolean brief() {
        return scatterOptions.isBrief();
    }

    @Override
    Report report(Console console) {
        Options.within("--steps", number, 1, MOST_STEPS, "");
        Scatter scatter = scatterOptions.scatter();
        searchOptions.check();
        studyOptions.check();
        ReleaseOptions described = releaseOptions.straightByDefault();
        ReleaseShape shape = described.shape();
        return placeOptions.ask(console, studyOptions::study, study -> {
            RiskStudy risks = scatterOptions.risks(study, scatter, footOptions.reaction(), searchOptions.seed());
            BrakePlan now = present(console, study, risks, described, shape);
            PracticeTarget target =
                    target(console, risks, Searches.optimum(console, study, searchOptions, studyOptions.buildUpTime()));
            PracticeSteps steps = plan(console, risks, now, target.entry().plan());
            common().picture()
                    .draw(() -> RiskPictures.steps(study, steps, scatterOptions.accepted())
                            .plus(Handover.CAUTION));
            return StepsAnswer.of(study, scatter, steps, target, scatterOptions.accepted(), common().units());
        });
    }

    private PracticeTarget target(Console console, RiskStudy risks, Optimum optimum) {
        Searches.best(optimum);
        try (ShownProgress progress = console.progress("entries")) {
            return PracticeTarget.of(
                            risks, optimum, scatterOptions.accepted(), new Sweep(searchOptions.threads(), progress))
                    .orElseThrow(() -> new ComputationException(STOPPED));
        }
    }

    private PracticeSteps plan(Console console, RiskStudy risks, BrakePlan now, BrakePlan target) {
        try (ShownProgress progress = console.progress("entries")) {
            return PracticeSteps.plan(
                            risks,
                            now,
                            target,
                            number,
                            scatterOptions.accepted(),
                            new Sweep(searchOptions.threads(), progress))
                    .orElseThrow(() -> new ComputationException(
                            progress.stopped()
                                    ? STOPPED
                                    : "the present release already fails more often than accepted, for this driver"));
        }
    }

    private BrakePlan present(
            Console console, CornerStudy study, RiskStudy risks, ReleaseOptions described, ReleaseShape shape) {
        Braking braking = described.braking(study, shape, studyOptions.buildUpTime());
        if (described.brakePointGiven()) {
            return described.given(braking);
        }
        try (ShownProgress progress = console.progress("entries")) {
            Sweep sweep = new Sweep(searchOptions.threads(), progress);
            double accepted = scatterOptions.accepted();
            Optional<BrakePlan> safe = described.peakGiven()
                    ? PracticeSteps.present(risks, braking, accepted, sweep)
                    : PracticeSteps.presentAtMost(risks, braking, accepted, sweep);
            return safe.orElseThrow(() -> progress.stopped()
                    ? new ComputationException(STOPPED)
                    : ComputationException.missed(
                            "no brake point of the present release keeps this driver within the accepted risk"));
        }
    }
}
