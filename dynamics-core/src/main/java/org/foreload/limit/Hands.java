package org.foreload.limit;

import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;

/**
 * What perfect hands and feet can still not do, and what they are not allowed to.
 *
 * @param steeringRate fastest turn of the front wheels, rad/s
 * @param brakeLag time constant between the foot and the brake force, s; zero for none
 * @param throttleLag time constant between the foot and the drive force, s; zero for none
 * @param brakeBuildUp time in which the foot comes down to the peak, s
 * @param peakDeceleration most brake force over mass that the foot asks for, m/s²
 * @param axleShare share of the lateral peak, beside its longitudinal force, that an axle may use, below 1
 * @param brakeUntil station, m, from which on the foot stays off the brake; infinite for a foot that is free
 * @param mostSideslip largest sideslip at the CG that the driver allows, rad, below a right angle; infinite for one who
 *     does not mind how far the car slides
 */
public record Hands(
        double steeringRate,
        double brakeLag,
        double throttleLag,
        double brakeBuildUp,
        double peakDeceleration,
        double axleShare,
        double brakeUntil,
        double mostSideslip) {

    /** How much faster the foot comes off the brake than it goes on. */
    private static final double OFF_OVER_ON = 10;

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public Hands {
        Checks.positive("steering_rate_radps", steeringRate);
        Checks.notNegative("brake_lag_s", brakeLag);
        Checks.notNegative("throttle_lag_s", throttleLag);
        Checks.positive("brake_build_up_s", brakeBuildUp);
        Checks.positive("peak_deceleration_mps2", peakDeceleration);
        Checks.between("axle_share", axleShare, 0.1, 1);
        if (Double.isNaN(brakeUntil)) {
            throw new InvalidValueException("brake_until_m", brakeUntil, "a station or infinite");
        }
        if (!(mostSideslip > 0 && (mostSideslip < Math.PI / 2 || mostSideslip == Double.POSITIVE_INFINITY))) {
            throw new InvalidValueException("most_sideslip_rad", mostSideslip, "above 0 and below a right angle");
        }
    }

    /**
     * The lags of a practised driver, invented for want of a source: 1.2 rad/s at the front wheels, 0.04 s to the
     * brakes, 0.10 s to the engine, a brake that is built up in 0.25 s; and axles at 98.5 % of their lateral peak.
     *
     * @param peakDeceleration m/s²
     */
    public static Hands practised(double peakDeceleration) {
        return new Hands(
                1.2, 0.04, 0.10, 0.25, peakDeceleration, 0.985, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    /** The same, but off the brake from a station on, m: 0 for straight-line braking. */
    public Hands withBrakeUntil(double station) {
        return new Hands(
                steeringRate, brakeLag, throttleLag, brakeBuildUp, peakDeceleration, axleShare, station, mostSideslip);
    }

    /** The same, which lets the car slide no further than this, rad. */
    public Hands withMostSideslip(double angle) {
        return new Hands(
                steeringRate, brakeLag, throttleLag, brakeBuildUp, peakDeceleration, axleShare, brakeUntil, angle);
    }

    /** Whether there is a bound on the sideslip. */
    boolean holdsSideslip() {
        return mostSideslip < Double.POSITIVE_INFINITY;
    }

    /** Fastest rise of what the foot asks of the brake, m/s³. */
    double brakeOnRate() {
        return peakDeceleration / brakeBuildUp;
    }

    /** Fastest fall of the same, m/s³. */
    double brakeOffRate() {
        return OFF_OVER_ON * brakeOnRate();
    }
}
