package org.foreload.load;

import org.foreload.conventions.Gravity;

/**
 * What a sloping road leaves of gravity and of the cornering acceleration, resolved in its own plane. All values are
 * specific forces (force over mass, m/s²).
 *
 * <p>Grade is positive uphill; banking is positive where the left edge is the lower one, so that it helps a left turn.
 * The lateral acceleration of the path is horizontal, positive to the left. Resolved by elementary statics; on the flat
 * they are the acceleration itself and g. Neglected: vertical curvature of the road (crests and dips).
 */
public final class RoadPlane {

    private RoadPlane() {}

    /**
     * Lateral specific force that the tyres must give, positive to the left: a·cos φ − g·sin φ·cos γ.
     *
     * @param lateralAcceleration v²κ, m/s²
     * @param grade γ, rad
     * @param banking φ, rad
     */
    public static double lateral(double lateralAcceleration, double grade, double banking) {
        return lateralAcceleration * Math.cos(banking) - Gravity.G * Math.sin(banking) * Math.cos(grade);
    }

    /**
     * Specific force that presses the car on the road, in place of g: g·cos φ·cos γ + a·sin φ.
     *
     * @param lateralAcceleration v²κ, m/s²
     * @param grade γ, rad
     * @param banking φ, rad
     */
    public static double normal(double lateralAcceleration, double grade, double banking) {
        return Gravity.G * Math.cos(banking) * Math.cos(grade) + lateralAcceleration * Math.sin(banking);
    }

    /**
     * Specific force with which gravity slows the car: g·sin γ, positive uphill.
     *
     * @param grade γ, rad
     */
    public static double slowing(double grade) {
        return Gravity.G * Math.sin(grade);
    }
}
