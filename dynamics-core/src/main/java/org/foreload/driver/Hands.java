package org.foreload.driver;

import org.foreload.conventions.Checks;

/**
 * How quick and how careful a driver steers.
 *
 * @param lag time constant between the wish to steer and the front wheels, s
 * @param rate fastest turn of the front wheels, rad/s
 * @param bandwidth how quickly a distance off the line is corrected, rad/s
 * @param damping damping ratio of that correction, plain number
 * @param yawDamping least damping ratio to which the driver brings the yaw of the car about its line, plain number
 * @param curvatureWindow time over which the driver rounds off the curvature ahead, to each side, s
 * @param slipUse share of the lateral peak up to which the driver steers an axle, below 1: never past the slip peak
 */
public record Hands(
        double lag,
        double rate,
        double bandwidth,
        double damping,
        double yawDamping,
        double curvatureWindow,
        double slipUse) {

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public Hands {
        Checks.positive("steering_lag_s", lag);
        Checks.positive("steering_rate_radps", rate);
        Checks.positive("tracking_bandwidth_radps", bandwidth);
        Checks.positive("tracking_damping", damping);
        Checks.notNegative("yaw_damping", yawDamping);
        Checks.positive("curvature_window_s", curvatureWindow);
        Checks.between("slip_use", slipUse, 0, 1);
    }

    /** A practised driver. Invented for want of a source; the lags are of the size of human and mechanical lags. */
    public static Hands practised() {
        return new Hands(0.06, 1.2, 4, 0.85, 0.7, 0.10, 0.985);
    }
}
