package org.foreload.braking;

import java.util.Objects;
import java.util.OptionalDouble;
import org.foreload.conventions.Checks;

/**
 * A brake plan: where the foot comes down, and how the driver brakes from there.
 *
 * @param brakePoint station where the foot comes down, m; negative on the approach
 * @param braking how hard, how the brake comes off, and what comes after it
 */
public record BrakePlan(double brakePoint, Braking braking) {

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public BrakePlan {
        Checks.finite("brake_point", brakePoint);
        Objects.requireNonNull(braking, "braking");
    }

    /** Brake force over mass at the peak, m/s². */
    public double peakDeceleration() {
        return braking.peakDeceleration();
    }

    /** Time in which the foot reaches the peak, s. */
    public double buildUpTime() {
        return braking.buildUpTime();
    }

    /** How the brake comes off. */
    public Release release() {
        return braking.release();
    }

    /** Station from which the driver asks for drive again, m; empty: from brake off on. */
    public OptionalDouble pickUp() {
        return braking.pickUp();
    }

    /** What the foot or the pedal makes of it. */
    public PedalDisturbance disturbance() {
        return braking.disturbance();
    }

    /** The same plan from another brake point. */
    public BrakePlan withBrakePoint(double station) {
        return braking.from(station);
    }

    /** The same plan with another peak, m/s². */
    public BrakePlan withPeakDeceleration(double peak) {
        return braking.withPeakDeceleration(peak).from(brakePoint);
    }

    /** The same plan with drive asked for from this station on, m. */
    public BrakePlan withPickUp(double station) {
        return braking.withPickUp(station).from(brakePoint);
    }

    /** The same plan with another release. */
    public BrakePlan with(Release release) {
        return braking.with(release).from(brakePoint);
    }

    /** The same plan with another foot or pedal. */
    public BrakePlan with(PedalDisturbance disturbance) {
        return braking.with(disturbance).from(brakePoint);
    }

    /**
     * Station from which the driver asks for drive, m: the pick-up point, or brake off where that comes later or no
     * pick-up point is given.
     */
    public double drivenFrom() {
        return Math.max(release().end(), pickUp().orElse(Double.NEGATIVE_INFINITY));
    }

    /** The same plan in the digits that plans are given in: {@link Braking#rounded}, from no later than it was. */
    public BrakePlan rounded() {
        return braking.rounded().from(earlier(brakePoint));
    }

    /** A station in whole decimetres, m, no later than the given one. */
    public static double earlier(double station) {
        return Math.floor(station * 10 + ROUNDING) / 10;
    }

    /** So much of the last digit that a number which is one already stays it. */
    static final double ROUNDING = 1e-6;

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
        double buildUpTime = braking.buildUpTime();
        double rise = timeSinceBrakePoint >= buildUpTime
                ? 1
                : 0.5 * (1 - Math.cos(Math.PI * timeSinceBrakePoint / buildUpTime));
        return braking.disturbance()
                .delivered(
                        braking.peakDeceleration() * rise * braking.release().remaining(station), timeSinceBrakePoint);
    }
}
