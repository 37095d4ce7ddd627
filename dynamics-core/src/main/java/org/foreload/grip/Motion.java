package org.foreload.grip;

import org.foreload.conventions.Checks;

/**
 * How a car moves at one instant, as the quasi-steady models see it.
 *
 * @param speed m/s, zero or above
 * @param deceleration m/s², positive when slowing
 * @param lateralAcceleration horizontal, m/s², positive to the left: v²κ
 * @param yawAcceleration rad/s², positive to the left: v²κ′ − d·κ on a line, zero in a steady corner
 * @param grade rad, positive uphill
 * @param banking rad, positive where it helps a left turn
 */
public record Motion(
        double speed,
        double deceleration,
        double lateralAcceleration,
        double yawAcceleration,
        double grade,
        double banking) {

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public Motion {
        Checks.notNegative("speed_mps", speed);
        Checks.finite("deceleration_mps2", deceleration);
        Checks.finite("lateral_mps2", lateralAcceleration);
        Checks.finite("yaw_acceleration_rad_per_s2", yawAcceleration);
        Checks.between("grade", grade, -Math.PI / 2, Math.PI / 2);
        Checks.between("banking", banking, -Math.PI / 2, Math.PI / 2);
    }

    /** Motion in a steady corner (or a straight line) on a flat road: no yaw acceleration. */
    public static Motion steady(double speed, double deceleration, double lateralAcceleration) {
        return new Motion(speed, deceleration, lateralAcceleration, 0, 0, 0);
    }

    /**
     * Motion of a car that follows a line: it must turn as fast as the line does, and start and stop turning with it.
     *
     * @param speed m/s
     * @param deceleration m/s², positive when slowing
     * @param curvature κ, 1/m, positive to the left
     * @param curvatureGradient κ′, 1/m²
     * @param grade rad, positive uphill
     * @param banking rad, positive where it helps a left turn
     */
    public static Motion onLine(
            double speed,
            double deceleration,
            double curvature,
            double curvatureGradient,
            double grade,
            double banking) {
        double speedSquared = speed * speed;
        return new Motion(
                speed,
                deceleration,
                speedSquared * curvature,
                speedSquared * curvatureGradient - deceleration * curvature,
                grade,
                banking);
    }
}
