package org.foreload.driver;

import org.foreload.conventions.Checks;

/**
 * How quick and how careful the driver is. The numbers of {@link #practised()} are plausible, not measured; a study of
 * drivers replaces them.
 *
 * @param steeringLag time constant between the wish to steer and the front wheels, s
 * @param steeringRate fastest turn of the front wheels, rad/s
 * @param brakeLag time constant between the foot and the brake force, s
 * @param throttleLag time constant between the foot and the drive force, s
 * @param trackingBandwidth how quickly a distance off the line is corrected, rad/s
 * @param trackingDamping damping ratio of that correction, plain number
 * @param yawDamping how quickly a wrong yaw rate is corrected, 1/s
 * @param curvatureWindow time over which the driver rounds off the curvature ahead, to each side, s
 * @param slipUse share of the lateral peak up to which the driver steers an axle, below 1: never past the slip peak
 * @param exitFriction share of the friction that the driver uses for the exit after the release
 * @param slowestBraking share of the speed at which the throttle opens below which the driver no longer brakes,
 *     whatever the plan says; the foot begins to come off at twice that speed; zero for a driver who follows the plan
 *     to a stop
 */
public record DriverSettings(
        double steeringLag,
        double steeringRate,
        double brakeLag,
        double throttleLag,
        double trackingBandwidth,
        double trackingDamping,
        double yawDamping,
        double curvatureWindow,
        double slipUse,
        double exitFriction,
        double slowestBraking) {

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public DriverSettings {
        Checks.positive("steering_lag_s", steeringLag);
        Checks.positive("steering_rate_radps", steeringRate);
        Checks.positive("brake_lag_s", brakeLag);
        Checks.positive("throttle_lag_s", throttleLag);
        Checks.positive("tracking_bandwidth_radps", trackingBandwidth);
        Checks.positive("tracking_damping", trackingDamping);
        Checks.notNegative("yaw_damping_per_s", yawDamping);
        Checks.positive("curvature_window_s", curvatureWindow);
        Checks.between("slip_use", slipUse, 0, 1);
        Checks.between("exit_friction", exitFriction, 0, 1);
        Checks.within("slowest_braking", slowestBraking, 0, 1);
    }

    /** A practised driver. Invented for want of a source; the lags are of the size of human and mechanical lags. */
    public static DriverSettings practised() {
        return new DriverSettings(0.06, 1.2, 0.04, 0.10, 4.6, 0.85, 14, 0.10, 0.985, 0.97, 0);
    }

    /** The same driver with another lag between the foot and the brake force, s. */
    public DriverSettings withBrakeLag(double seconds) {
        return new DriverSettings(
                steeringLag,
                steeringRate,
                seconds,
                throttleLag,
                trackingBandwidth,
                trackingDamping,
                yawDamping,
                curvatureWindow,
                slipUse,
                exitFriction,
                slowestBraking);
    }

    /** The same driver with another share of the friction used on the exit. */
    public DriverSettings withExitFriction(double share) {
        return new DriverSettings(
                steeringLag,
                steeringRate,
                brakeLag,
                throttleLag,
                trackingBandwidth,
                trackingDamping,
                yawDamping,
                curvatureWindow,
                slipUse,
                share,
                slowestBraking);
    }

    /** The same driver, who no longer brakes below this share of the speed at which the throttle opens. */
    public DriverSettings withSlowestBraking(double share) {
        return new DriverSettings(
                steeringLag,
                steeringRate,
                brakeLag,
                throttleLag,
                trackingBandwidth,
                trackingDamping,
                yawDamping,
                curvatureWindow,
                slipUse,
                exitFriction,
                share);
    }
}
