package org.foreload.examples.command;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.ReleaseShape;
import org.foreload.examples.answer.NoBrakePoint;
import org.foreload.examples.output.Report;
import org.foreload.path.Corner;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.foreload.vehicle.Car;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The brake plan that a verb starts from, and the study that it belongs to. */
final class PlanOptions {

    @Mixin
    private ReleaseOptions releaseOptions;

    @Option(
            names = "--earlier",
            paramLabel = "<m>",
            defaultValue = "5",
            description = "Without --brake-point: brake this much earlier than the latest brake point, m. "
                    + "Default: ${DEFAULT-VALUE}.")
    private double earlier;

    @Mixin
    private StudyOptions studyOptions;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec verb;

    /** Refuses what cannot be, before anything is computed. */
    void check() {
        Options.notNegative("--earlier", earlier, "m");
        if (releaseOptions.brakePointGiven()) {
            GivenOptions.refuse(verb, "with --brake-point", "--earlier");
        }
        studyOptions.check();
        releaseOptions.shape();
    }

    CornerStudy study(Car car, Corner corner) {
        return studyOptions.study(car, corner);
    }

    /** The plan; searches for the latest brake point where none is given. */
    BrakePlan plan(CornerStudy study) {
        ReleaseShape shape = releaseOptions.shape();
        Braking braking = releaseOptions.braking(study, shape, studyOptions.buildUpTime());
        if (releaseOptions.brakePointGiven()) {
            return releaseOptions.given(braking);
        }
        Finding finding = study.latest(braking);
        if (!finding.found()) {
            throw ComputationException.missed(NoBrakePoint.why(study, finding));
        }
        return braking.from(finding.entry().plan().brakePoint() - earlier);
    }

    /**
     * The plan as a part of a report, and how much earlier than its latest brake point it brakes, if that was found.
     */
    Report part(BrakePlan plan) {
        Report report = report(plan);
        return releaseOptions.brakePointGiven() ? report : report.with("before_the_latest_m", earlier);
    }

    /** A plan as a part of a report. */
    static Report report(BrakePlan plan) {
        return new Report()
                .with("brake_point_m", plan.brakePoint())
                .with("peak_deceleration_mps2", plan.peakDeceleration())
                .with("release_shape", plan.release().shape().name())
                .with("release_start_m", plan.release().start())
                .with("release_end_m", plan.release().end());
    }
}
