package org.foreload.grip;

import java.util.Objects;
import java.util.Optional;
import org.foreload.conventions.Checks;
import org.foreload.conventions.Gravity;
import org.foreload.vehicle.Car;

/**
 * What braking does to the lateral capacity of each axle in a steady corner at one speed.
 *
 * <p>Each axle is taken alone, at its <em>own</em> limit: the largest lateral acceleration whose demand (m·a·b/L in
 * front, m·a·a/L behind) the axle carries at the loads that this acceleration and this deceleration cause. Gentle
 * braking loads the front axle more than it uses it up, so its capacity first rises; the rear axle pays from the start.
 * A balanced car in a <em>steady</em> corner therefore gains nothing; a car limited by its front axle does, and so does
 * turn-in. An axle alone may go beyond where the car rolls over; the car may not. Anti-lock brakes take the force to
 * the axle that can hold it, and lock no wheel.
 *
 * <p>The deceleration is that of the car: at a speed with drag, d = 0 already asks for drive force. The engine's power
 * is not considered here ({@link GgDiagram} does).
 */
public final class BrakingGrip {

    private final SteadyGrip grip;
    private final double best;

    private BrakingGrip(Car car, double speed) {
        Objects.requireNonNull(car, "car");
        Checks.positive("speed_mps", speed);
        grip = new SteadyGrip(car, speed);
        best = grip.bestDeceleration(Axle.FRONT);
    }

    /**
     * Braking grip of a car at a speed in m/s.
     *
     * @throws org.foreload.conventions.InvalidValueException for a speed that is not above zero
     */
    public static BrakingGrip of(Car car, double speed) {
        return new BrakingGrip(car, speed);
    }

    /** Lateral capacity of the front axle, N, at a deceleration in m/s²; zero where a front wheel locks. */
    public double frontCapacity(double deceleration) {
        Checks.number("deceleration", deceleration);
        return grip.demandRate(Axle.FRONT) * grip.lateralLimit(Axle.FRONT, deceleration);
    }

    /** Lateral capacity of the rear axle, N, at a deceleration in m/s²; zero where a rear wheel locks. */
    public double rearCapacity(double deceleration) {
        Checks.number("deceleration", deceleration);
        return grip.demandRate(Axle.REAR) * grip.lateralLimit(Axle.REAR, deceleration);
    }

    /**
     * Largest lateral acceleration of the car, m/s², at a deceleration in m/s²: that of its weaker axle, or that at
     * which it rolls over.
     */
    public double lateralAcceleration(double deceleration) {
        Checks.number("deceleration", deceleration);
        return grip.lateralLimit(deceleration);
    }

    /**
     * The axle that gives way first at a deceleration in m/s²; the front one if both do together, empty where the car
     * rolls over before.
     */
    public Optional<Axle> limitingAxle(double deceleration) {
        Checks.number("deceleration", deceleration);
        return grip.limitingAxle(deceleration);
    }

    /** Deceleration, m/s², zero or above, at which the lateral capacity of the front axle is largest. */
    public double bestDeceleration() {
        return best;
    }

    /**
     * Gain of front lateral capacity at {@link #bestDeceleration()}, as a fraction of the value without deceleration.
     */
    public double bestFrontGain() {
        return frontCapacity(best) / frontCapacity(0) - 1;
    }

    /**
     * Best deceleration in closed form, m/s², for constant friction, no aerodynamics and one tyre per axle:
     * μ²·g·(b/L)(h/L) / (β² − μ²(h/L)²). It maximises μ²(g·b/L + d·h/L)² − β²d², the square of the front axle's lateral
     * capacity per kilogram of car. (Own derivation.)
     *
     * @param friction μ
     * @param wheelbase L, m
     * @param cgToFrontAxle a, m
     * @param cgHeight h, m
     * @param frontBrakeShare β
     * @return infinite if the front axle gains load faster than it is used up, β ≤ μ·h/L
     */
    public static double bestDecelerationClosedForm(
            double friction, double wheelbase, double cgToFrontAxle, double cgHeight, double frontBrakeShare) {
        double rise = friction * cgHeight / wheelbase;
        double margin = frontBrakeShare * frontBrakeShare - rise * rise;
        return margin <= 0
                ? Double.POSITIVE_INFINITY
                : friction * rise * Gravity.G * (wheelbase - cgToFrontAxle) / wheelbase / margin;
    }
}
