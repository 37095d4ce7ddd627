package org.foreload.examples.command;

import java.util.Optional;
import java.util.stream.DoubleStream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.ReleaseShape;
import org.foreload.examples.answer.StepsAnswer;
import org.foreload.examples.gallery.RiskPictures;
import org.foreload.examples.output.Report;
import org.foreload.examples.sweep.ShownProgress;
import org.foreload.path.Corner;
import org.foreload.risk.PracticeSteps;
import org.foreload.risk.RiskStudy;
import org.foreload.risk.Scatter;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.LatestBrakePoint.Finding;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Car;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The way from the driver's present release to a better one. */
@Command(
        name = "steps",
        sortOptions = false,
        description = {
            "A practice plan: from the release that a driver has now to the best one in steps, each of which that driver can "
                    + "repeat.",
            "",
            "The present release is told by --brake-point, --peak-deceleration and --release-…; without a brake point it is "
                    + "the latest one, and without a peak the hardest one, with which this driver stays within the accepted "
                    + "risk. Steps end where the rest would be too risky for this "
                    + "driver: then a steadier foot is the next thing to practise."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: for each step where the foot comes down, where the brake is off, what it gains on the step before, "
                    + "how often this driver fails with it, what goes first when braking too late, and how that feels.",
            "",
            "Example:  foreload steps --driver novice --release-shape abrupt --release-end 0 --restarts 0",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class StepsVerb implements Verb {

    private static final int MOST_STEPS = 50;

    /** How far back, m at a time and at most, a present brake point within the accepted risk is looked for. */
    private static final double BACK_STEP = 2;

    private static final double FARTHEST_BACK = 60;

    /** Shares of the usual peak that are tried, hardest first, where none is given. */
    private static final double[] PEAKS = {1, 0.9, 0.8, 0.7};

    @Option(
            names = "--steps",
            paramLabel = "<n>",
            defaultValue = "4",
            description = "Number of steps, 1 to 50. Default: 4.")
    private int number;

    @Option(
            names = "--accept",
            paramLabel = "<share>",
            defaultValue = "0.05",
            description = "Failure probability that each step may have, 0 to 1. Default: 0.05.")
    private double accepted;

    @Mixin
    private ReleaseOptions releaseOptions;

    @Mixin
    private ScatterOptions scatterOptions;

    @Mixin
    private SearchOptions searchOptions;

    @Mixin
    private StudyOptions studyOptions;

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
        Options.within("--steps", number, 1, MOST_STEPS, "");
        Options.within("--accept", accepted, 0, 1, "");
        Scatter scatter = scatterOptions.scatter();
        searchOptions.check();
        studyOptions.check();
        ReleaseShape shape = releaseOptions.shape();
        Car car = carOptions.car(console);
        Corner corner = cornerOptions.corner(console);
        return new Blame(carOptions, cornerOptions).compute(() -> {
            CornerStudy study = studyOptions.study(car, corner);
            RiskStudy risks = scatterOptions.risks(study, scatter, searchOptions.seed());
            BrakePlan now = present(study, risks, shape);
            BrakePlan target = Searches.best(
                            Searches.optimum(console, study, searchOptions, studyOptions.buildUpTime()))
                    .plan();
            PracticeSteps steps = plan(console, risks, now, target);
            common.picture().draw(() -> RiskPictures.steps(study, steps, accepted));
            return StepsAnswer.of(study, scatter, steps, accepted);
        });
    }

    private PracticeSteps plan(Console console, RiskStudy risks, BrakePlan now, BrakePlan target) {
        try (ShownProgress progress = console.progress(searchOptions.quiet())) {
            return PracticeSteps.plan(
                            risks, now, target, number, accepted, new Sweep(searchOptions.threads(), progress))
                    .orElseThrow(() -> new ComputationException(
                            "the present release already fails more often than accepted, for this driver"));
        }
    }

    private BrakePlan present(CornerStudy study, RiskStudy risks, ReleaseShape shape) {
        BrakePlan plan = releaseOptions.plan(study, shape, studyOptions.buildUpTime());
        if (releaseOptions.brakePointGiven()) {
            return plan;
        }
        for (double share : releaseOptions.peakGiven() ? new double[] {1} : PEAKS) {
            Optional<BrakePlan> safe = safe(study, risks, plan.withPeakDeceleration(share * plan.peakDeceleration()));
            if (safe.isPresent()) {
                return safe.get();
            }
        }
        throw new ComputationException(
                "no brake point of the present release keeps this driver within the accepted risk");
    }

    /** The release from the latest brake point with which this driver stays within the accepted risk. */
    private Optional<BrakePlan> safe(CornerStudy study, RiskStudy risks, BrakePlan plan) {
        Finding finding = study.latest(plan);
        if (!finding.found()) {
            return Optional.empty();
        }
        double latest = finding.entry().plan().brakePoint();
        return DoubleStream.iterate(0, back -> back <= FARTHEST_BACK, back -> back + BACK_STEP)
                .mapToObj(back -> plan.withBrakePoint(latest - back))
                .filter(earlier ->
                        earlier.brakePoint() > study.simulator().corner().path().start())
                .filter(earlier -> risks.of(earlier).failed().value() <= accepted)
                .findFirst();
    }
}
