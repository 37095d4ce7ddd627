package org.foreload.braking;

import java.util.Objects;
import org.foreload.conventions.Checks;

/**
 * A brake plan: when × how hard × how it comes off, and what disturbs the pedal. Decelerations here are those that the
 * brakes alone ask for (brake force over mass); drag comes on top.
 *
 * @param brakePoint station where the foot comes down, m
 * @param peakDeceleration brake force over mass at the peak, m/s²
 * @param buildUpTime time in which the foot reaches the peak, s
 * @param release how the brake comes off
 * @param disturbance what the foot or the pedal makes of it
 */
public record BrakePlan(
        double brakePoint, double peakDeceleration, double buildUpTime, Release release, PedalDisturbance disturbance) {

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public BrakePlan {
        Checks.finite("brake_point", brakePoint);
        Checks.positive("peak_deceleration", peakDeceleration);
        Checks.notNegative("build_up_time", buildUpTime);
        Objects.requireNonNull(release);
        Objects.requireNonNull(disturbance);
    }

    /** A plan that is carried out as intended. */
    public BrakePlan(double brakePoint, double peakDeceleration, double buildUpTime, Release release) {
        this(brakePoint, peakDeceleration, buildUpTime, release, PedalDisturbance.NONE);
    }

    /** The same plan from another brake point. */
    public BrakePlan withBrakePoint(double station) {
        return new BrakePlan(station, peakDeceleration, buildUpTime, release, disturbance);
    }

    /** The same plan with another peak, m/s². */
    public BrakePlan withPeakDeceleration(double peak) {
        return new BrakePlan(brakePoint, peak, buildUpTime, release, disturbance);
    }

    /** The same plan with another release. */
    public BrakePlan with(Release other) {
        return new BrakePlan(brakePoint, peakDeceleration, buildUpTime, other, disturbance);
    }

    /** The same plan with another foot or pedal. */
    public BrakePlan with(PedalDisturbance other) {
        return new BrakePlan(brakePoint, peakDeceleration, buildUpTime, release, other);
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
