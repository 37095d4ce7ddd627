package org.foreload.examples.command;

import java.util.stream.Stream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.examples.output.Numbers;
import org.foreload.file.InputException;
import org.foreload.path.Path;
import org.foreload.strategy.CornerStudy;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** How the brake goes on and comes off. */
final class ReleaseOptions {

    /** Default peak, as a share of what locks a wheel in a straight line: hard, with something in reserve. */
    private static final double PEAK_SHARE = 0.75;

    /** Default end of the release, as a share of the distance from turn-in to apex. */
    private static final double END_SHARE = 0.7;

    /** Default shape. */
    static final String DEFAULT_SHAPE = "linear";

    @Option(
            names = "--brake-point",
            paramLabel = "<m>",
            description =
                    "Brake point, where the foot comes down: metres along the line, negative before turn-in. Default: the "
                            + "latest that keeps the margins.")
    private Double brakePoint;

    @Option(
            names = "--peak-deceleration",
            paramLabel = "<m/s²>",
            description = "Brake force over mass at the peak, m/s²; drag comes on top. Default: " + PEAK_SHARE
                    + " of what locks a wheel.")
    private Double peak;

    @Option(
            names = "--release-shape",
            paramLabel = "<shape>",
            completionCandidates = Candidates.ShapeNames.class,
            defaultValue = DEFAULT_SHAPE,
            description =
                    "How the brake comes off: linear, progressive (quick, then slow), held (slow, then quick), circle, "
                            + "smooth, two-stage, abrupt (all at once at the end), or table:FILE, a CSV file with the columns "
                            + "released (0 to 1) and remaining (1 to 0), or a logged one with s_m, or time_s and speed_mps, and "
                            + "brake in any unit. Default: ${DEFAULT-VALUE}.")
    private String shape;

    @Option(
            names = "--release-start",
            paramLabel = "<m>",
            description =
                    "Release point, where easing starts, m along the line. Default: 0, at turn-in, or brake off if that is "
                            + "earlier.")
    private Double start;

    @Option(
            names = "--release-end",
            paramLabel = "<m>",
            description =
                    "Brake off, m along the line. Default: " + END_SHARE + " of the way from turn-in to the apex; "
                            + "of several bends that the car slows for, that of the one for which it is quickest.")
    private Double end;

    @Option(
            names = "--pick-up",
            paramLabel = "<m>",
            description =
                    "Pick-up of the throttle, m along the line; not before brake off. Default: from there on, as soon as "
                            + "there is grip to spare. An answer gives where that is as pick_up_m, which drives the same "
                            + "entry; a driver who comes off the brake elsewhere keeps to a pick-up that is given.")
    private Double pickUp;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec verb;

    /** Options that the command line fills in. */
    ReleaseOptions() {}

    /** Refuses all of these options, where no release is asked for; see {@link GivenOptions#refuse}. */
    void refuse(String why) {
        GivenOptions.refuse(
                verb,
                why,
                "--brake-point",
                "--peak-deceleration",
                "--release-shape",
                "--release-start",
                "--release-end",
                "--pick-up");
    }

    /** Options that come from elsewhere; null for what is left out. */
    ReleaseOptions(Double brakePoint, Double peak, String shape, Double start, Double end, Double pickUp) {
        this.brakePoint = brakePoint;
        this.peak = peak;
        this.shape = shape;
        this.start = start;
        this.end = end;
        this.pickUp = pickUp;
    }

    /** Whether the brake point was given. */
    boolean brakePointGiven() {
        return brakePoint != null;
    }

    /** Whether the peak deceleration was given. */
    boolean peakGiven() {
        return peak != null;
    }

    /** These options, with straight-line braking as the default release: where none is described, off at turn-in. */
    ReleaseOptions straightByDefault() {
        return Stream.of("--release-shape", "--release-start", "--release-end")
                        .anyMatch(option -> GivenOptions.has(verb, option))
                ? this
                : new ReleaseOptions(brakePoint, peak, ReleaseShapes.ABRUPT.name(), 0.0, 0.0, pickUp);
    }

    /** The shape; read before anything is computed. */
    ReleaseShape shape() {
        if (peak != null) {
            Options.positive("--peak-deceleration", peak, "m/s²");
        }
        return Shapes.shape("--release-shape", shape);
    }

    /** The plan with the brake point that was given. */
    BrakePlan given(Braking braking) {
        return braking.from(brakePoint);
    }

    /** How the driver brakes, the brake point aside. */
    Braking braking(CornerStudy study, ReleaseShape form, double buildUpTime) {
        Path line = study.simulator().corner().path();
        onLine("--release-start", start, line);
        onLine("--release-end", end, line);
        onLine("--pick-up", pickUp, line);
        double hardest = peak == null ? PEAK_SHARE * study.lockLimit() : peak;
        double off = end == null ? END_SHARE * apex(study, form, hardest, buildUpTime) : end;
        double from = start == null ? Math.min(0, off) : start;
        if (!(off >= from)) {
            String option = end == null ? "--release-start" : "--release-end";
            String allowed = end == null
                    ? "must be at or before brake off, " + Numbers.rounded(off, 2) + " m"
                    : "must be at or after the release point, " + Numbers.shortest(from) + " m";
            throw new InputException(null, option, Numbers.shortest(end == null ? from : off), allowed);
        }
        double least = line.start();
        if (brakePoint != null && !(brakePoint >= least && brakePoint < off)) {
            throw new InputException(
                    null,
                    "--brake-point",
                    Numbers.shortest(brakePoint),
                    "must be from " + Numbers.shortest(least) + " (where the approach begins) to below "
                            + Numbers.rounded(off, 2) + " (brake off) in m");
        }
        Braking braking = Braking.of(hardest, buildUpTime, new Release(form, from, off));
        if (pickUp == null) {
            return braking;
        }
        if (!(pickUp >= off)) {
            throw new InputException(
                    null,
                    "--pick-up",
                    Numbers.shortest(pickUp),
                    "must be at or after brake off, " + Numbers.rounded(off, 2) + " m");
        }
        return braking.withPickUp(pickUp);
    }

    /** The apex, m, of the bend that the brake is best released for. */
    private double apex(CornerStudy study, ReleaseShape form, double hardest, double buildUpTime) {
        return study.apex(apex -> {
            double off = END_SHARE * apex;
            double from = start == null ? Math.min(0, off) : Math.min(start, off);
            return Braking.of(hardest, buildUpTime, new Release(form, from, off));
        });
    }

    private static void onLine(String option, Double station, Path line) {
        if (station != null && !(station >= line.start() && station <= line.end())) {
            throw new InputException(
                    null,
                    option,
                    Numbers.shortest(station),
                    "must be on the line, from " + Numbers.rounded(line.start(), 2) + " to "
                            + Numbers.rounded(line.end(), 2) + " in m");
        }
    }
}
