package org.foreload.examples.command;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.examples.file.InputException;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.LatestBrakePoint.Finding;
import picocli.CommandLine.Option;

/** The brake plan that a verb starts from: given, or a sound one for the car and the corner. */
final class PlanOptions {

    /** Peak as a share of what locks a wheel in a straight line, where none is given. */
    private static final double PEAK = 0.8;

    /** Start and end of the release as shares of the way from turn-in to the apex, where none are given. */
    private static final double START = -0.1;

    private static final double END = 0.4;

    /** Time in which the foot reaches the peak, s. */
    private static final double BUILD_UP = 0.25;

    @Option(
            names = "--brake-point",
            paramLabel = "<m>",
            description =
                    "Where the foot comes down, m along the line, negative before turn-in. Default: the latest that "
                            + "makes the corner, less the margin.")
    private Double brakePoint;

    @Option(
            names = "--margin",
            paramLabel = "<m>",
            defaultValue = "5",
            description = "How much earlier than the latest brake point, m. Default: 5.")
    private double margin;

    @Option(
            names = "--peak-deceleration",
            paramLabel = "<m/s²>",
            description = "Brake force over mass at the peak, m/s². Default: 80 %% of what locks a wheel.")
    private Double peak;

    @Option(
            names = "--release-shape",
            paramLabel = "<name>",
            defaultValue = "linear",
            description = "How the brake comes off. Default: linear.")
    private String shape;

    @Option(
            names = "--release-start",
            paramLabel = "<m>",
            description = "Where the brake starts to come off, m along the line. Default: a little before turn-in.")
    private Double start;

    @Option(
            names = "--release-end",
            paramLabel = "<m>",
            description = "Where the brake is off, m along the line. Default: 40 %% of the way to the apex.")
    private Double end;

    /** The plan; searches for the latest brake point where none is given. */
    BrakePlan plan(CornerStudy study) {
        Options.notNegative("--margin", margin, "m");
        double apex = study.simulator().apex();
        double from = start == null ? START * apex : start;
        double to = end == null ? Math.max(from, END * apex) : end;
        if (to < from) {
            throw new InputException(
                    null, "--release-end", Numbers.shortest(to), "must be at or after --release-start");
        }
        double hardest = peak == null ? PEAK * study.lockLimit() : peak;
        Options.positive("--peak-deceleration", hardest, "m/s²");
        Release release = new Release(ReleaseShapes.named(shape), from, to);
        BrakePlan plan = new BrakePlan(brakePoint == null ? 0 : brakePoint, hardest, BUILD_UP, release);
        if (brakePoint != null) {
            return plan;
        }
        Finding finding = study.latest(plan);
        if (!finding.found()) {
            throw new ComputationException("no brake point makes the corner with this release: "
                    + finding.entry().cause());
        }
        return plan.withBrakePoint(finding.entry().plan().brakePoint() - margin);
    }

    /** The plan as a part of a report. */
    static Report report(BrakePlan plan) {
        return new Report()
                .with("brake_point_m", plan.brakePoint())
                .with("peak_deceleration_mps2", plan.peakDeceleration())
                .with("release_shape", plan.release().shape().name())
                .with("release_start_m", plan.release().start())
                .with("release_end_m", plan.release().end());
    }
}
