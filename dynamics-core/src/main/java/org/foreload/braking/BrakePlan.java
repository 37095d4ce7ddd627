package org.foreload.braking;

import java.util.Objects;
import java.util.OptionalDouble;
import org.foreload.conventions.Checks;

/**
 * A brake plan: when × how hard × how it comes off, where the throttle is picked up, and what disturbs the pedal.
 * Decelerations here are those that the brakes alone ask for (brake force over mass); drag comes on top.
 *
 * @param brakePoint station where the foot comes down, m
 * @param peakDeceleration brake force over mass at the peak, m/s²
 * @param buildUpTime time in which the foot reaches the peak, s
 * @param release how the brake comes off
 * @param pickUp station from which the driver asks for drive again, m; empty: from brake off on, as soon as the grip
 *     leaves anything for it
 * @param disturbance what the foot or the pedal makes of it
 */
public record BrakePlan(
        double brakePoint,
        double peakDeceleration,
        double buildUpTime,
        Release release,
        OptionalDouble pickUp,
        PedalDisturbance disturbance) {

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public BrakePlan {
        Checks.finite("brake_point", brakePoint);
        Checks.positive("peak_deceleration", peakDeceleration);
        Checks.notNegative("build_up_time", buildUpTime);
        Objects.requireNonNull(release);
        pickUp.ifPresent(station -> Checks.finite("pick_up", station));
        Objects.requireNonNull(disturbance);
    }

    /** A plan that is carried out as intended. */
    public BrakePlan(double brakePoint, double peakDeceleration, double buildUpTime, Release release) {
        this(brakePoint, peakDeceleration, buildUpTime, release, OptionalDouble.empty(), PedalDisturbance.NONE);
    }

    /** The same plan from another brake point. */
    public BrakePlan withBrakePoint(double station) {
        return new BrakePlan(station, peakDeceleration, buildUpTime, release, pickUp, disturbance);
    }

    /** The same plan with another peak, m/s². */
    public BrakePlan withPeakDeceleration(double peak) {
        return new BrakePlan(brakePoint, peak, buildUpTime, release, pickUp, disturbance);
    }

    /** The same plan with drive asked for from this station on, m. */
    public BrakePlan withPickUp(double station) {
        return new BrakePlan(
                brakePoint, peakDeceleration, buildUpTime, release, OptionalDouble.of(station), disturbance);
    }

    /**
     * Station from which the driver asks for drive, m: the pick-up point, or brake off where that comes later or no
     * pick-up point is given.
     */
    public double drivenFrom() {
        return Math.max(release.end(), pickUp.orElse(Double.NEGATIVE_INFINITY));
    }

    /**
     * The same plan in the digits in which plans are given: the brake point in whole decimetres and no later than it
     * was, the peak in hundredths of m/s² and no higher, start and end of the release in decimetres.
     */
    public BrakePlan rounded() {
        double start = Math.rint(release.start() * 10) / 10;
        double end = Math.max(start, Math.rint(release.end() * 10) / 10);
        return new BrakePlan(
                earlier(brakePoint),
                Math.floor(peakDeceleration * 100 + ROUNDING) / 100,
                buildUpTime,
                new Release(release.shape(), start, end),
                pickUp,
                disturbance);
    }

    /** A station in whole decimetres, m, no later than the given one. */
    public static double earlier(double station) {
        return Math.floor(station * 10 + ROUNDING) / 10;
    }

    /** So much of the last digit that a number which is one already stays it. */
    private static final double ROUNDING = 1e-6;

    /** The same plan with another release. */
    public BrakePlan with(Release other) {
        return new BrakePlan(brakePoint, peakDeceleration, buildUpTime, other, pickUp, disturbance);
    }

    /** The same plan with another foot or pedal. */
    public BrakePlan with(PedalDisturbance other) {
        return new BrakePlan(brakePoint, peakDeceleration, buildUpTime, release, pickUp, other);
    }

    /**
     * Deceleration that is asked of the brake, m/s²: a half-cosine rise in time, times what the release leaves at this
     * station, and what the pedal makes of that.
     *
     * @param station m
     * @param timeSinceBrakePoint s; negative before the brake point
     */
    public double demand(double station, double timeSinceBrakePoint) {
        if (timeSinceBrakePoint < 0) {
            return 0;
        }
        double rise = timeSinceBrakePoint >= buildUpTime
                ? 1
                : 0.5 * (1 - Math.cos(Math.PI * timeSinceBrakePoint / buildUpTime));
        return disturbance.delivered(peakDeceleration * rise * release.remaining(station), timeSinceBrakePoint);
    }
}
