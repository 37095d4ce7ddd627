package org.foreload.load;

import java.util.Objects;
import org.foreload.conventions.Bounds;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Suspension;

/**
 * How load moves between the axles and wheels of one car, in steady state: static load, downforce, transfer along the
 * car and transfer across each axle, each as its own method, and one method that assembles wheel loads from them.
 *
 * <p>Every part is linear in speed squared, deceleration and lateral specific force. A model that lets the transfers
 * lag holds them as its own states and calls {@link #assemble}, or its parts {@link #frontAxle(double, double, double)}
 * and {@link #wheel}, alone.
 *
 * <p>Units N, m/s², m²/s². Deceleration is positive when slowing; lateral specific force is positive to the left and
 * loads the right wheels.
 */
public final class LoadTransfer {

    private final double mass;
    private final double frontPortion;
    private final double rearPortion;
    private final double heightOverWheelbase;
    private final double dragHeightOverWheelbase;
    private final double halfFrontTrack;
    private final double halfRearTrack;
    private final double momentRate;
    private final double frontLateralRate;
    private final double rearLateralRate;
    private final Aerodynamics aerodynamics;

    private LoadTransfer(Car car) {
        Objects.requireNonNull(car, "car");
        Chassis chassis = car.chassis();
        Suspension suspension = car.suspension();
        double wheelbase = chassis.wheelbase();
        mass = chassis.mass();
        frontPortion = chassis.cgToRearAxle() / wheelbase;
        rearPortion = chassis.cgToFrontAxle() / wheelbase;
        aerodynamics = car.aerodynamics();
        heightOverWheelbase = chassis.cgHeight() / wheelbase;
        dragHeightOverWheelbase = aerodynamics.dragHeight() / wheelbase;
        halfFrontTrack = chassis.frontTrack() / 2;
        halfRearTrack = chassis.rearTrack() / 2;
        momentRate = mass * chassis.cgHeight();
        double frontRollCenter = suspension.frontRollCenterHeight();
        double rearRollCenter = suspension.rearRollCenterHeight();
        double rollArm = chassis.cgHeight() - (frontRollCenter * frontPortion + rearRollCenter * rearPortion);
        double share = suspension.frontRollStiffnessShare();
        frontLateralRate = mass * (share * rollArm + frontPortion * frontRollCenter) / chassis.frontTrack();
        rearLateralRate = mass * ((1 - share) * rollArm + rearPortion * rearRollCenter) / chassis.rearTrack();
    }

    /** Load transfer of a car. */
    public static LoadTransfer of(Car car) {
        return new LoadTransfer(car);
    }

    /**
     * Static load on the front axle, N: m·n·b/L. Source: R. N. Jazar, Vehicle Dynamics, ch. 2.
     *
     * @param normal specific force that presses the car on the road, m/s²; g on the flat
     */
    public double staticFront(double normal) {
        return mass * normal * frontPortion;
    }

    /**
     * Static load on the rear axle, N: m·n·a/L.
     *
     * @param normal specific force that presses the car on the road, m/s²; g on the flat
     */
    public double staticRear(double normal) {
        return mass * normal * rearPortion;
    }

    /**
     * Load on the front axle before any transfer, N: static load plus downforce.
     *
     * @param normal specific force that presses the car on the road, m/s²; g on the flat
     * @param speedSquared m²/s²
     */
    public double frontAxle(double normal, double speedSquared) {
        return staticFront(normal) + aerodynamics.frontDownforce(speedSquared);
    }

    /**
     * Load on the rear axle before any transfer, N: static load plus downforce.
     *
     * @param normal specific force that presses the car on the road, m/s²; g on the flat
     * @param speedSquared m²/s²
     */
    public double rearAxle(double normal, double speedSquared) {
        return staticRear(normal) + aerodynamics.rearDownforce(speedSquared);
    }

    /**
     * Load that moves from the rear to the front axle, N: m·(d − g·sin γ)·h/L − drag·h_drag/L. Source: R. N. Jazar,
     * Vehicle Dynamics, eq. 2.87-2.88; the drag term by the same balance of moments.
     *
     * @param deceleration d, m/s², positive when slowing
     * @param speedSquared m²/s²
     * @param grade γ, rad, positive uphill
     */
    public double longitudinal(double deceleration, double speedSquared, double grade) {
        return mass * (deceleration - RoadPlane.slowing(grade)) * heightOverWheelbase
                - aerodynamics.drag(speedSquared) * dragHeightOverWheelbase;
    }

    /**
     * Load that moves from the left to the right wheel of the front axle, N: (share·m·f·h_s + m·f·(b/L)·h_rf)/t_f, with
     * h_s the height of the centre of gravity over the roll axis. Source: Milliken and Milliken, Race Car Vehicle
     * Dynamics, ch. 18 (from memory), without the term of gravity on the rolled body; the transfers of both axles times
     * their tracks sum to m·f·h whatever the share.
     *
     * @param lateral specific lateral force f, m/s², positive to the left
     */
    public double frontLateral(double lateral) {
        return frontLateralRate * lateral;
    }

    /**
     * Load that moves from the left to the right wheel of the rear axle, N: ((1 − share)·m·f·h_s + m·f·(a/L)·h_rr)/t_r.
     *
     * @param lateral specific lateral force f, m/s², positive to the left
     */
    public double rearLateral(double lateral) {
        return rearLateralRate * lateral;
    }

    /**
     * Specific lateral force, m/s², without sign, at which the load of both inner wheels has moved to the outer ones,
     * so that the car tips over: (F_f·t_f + F_r·t_r)/(2·m·h), infinite for a car without height. Balance of moments
     * about the line through the outer wheels, as the transfers of both axles times their tracks sum to m·f·h.
     *
     * @param frontAxle load on the front axle, N
     * @param rearAxle load on the rear axle, N
     */
    public double tipping(double frontAxle, double rearAxle) {
        return momentRate > 0
                ? (frontAxle * halfFrontTrack + rearAxle * halfRearTrack) / momentRate
                : Double.POSITIVE_INFINITY;
    }

    /**
     * Wheel loads from axle loads and transfers. No load falls below zero: an axle or a wheel that would be pulled off
     * the road carries nothing, and the other axle, or the other wheel of the axle, carries the rest, so that the sum
     * stays.
     *
     * @param frontAxle front axle load before transfer, N
     * @param rearAxle rear axle load before transfer, N
     * @param longitudinal load that moves from the rear to the front axle, N
     * @param frontLateral load that moves from the left to the right front wheel, N
     * @param rearLateral load that moves from the left to the right rear wheel, N
     */
    public static WheelLoads assemble(
            double frontAxle, double rearAxle, double longitudinal, double frontLateral, double rearLateral) {
        double front = frontAxle(frontAxle, rearAxle, longitudinal);
        double rear = Bounds.larger(frontAxle + rearAxle, 0) - front;
        return new WheelLoads(
                wheel(front, -frontLateral),
                wheel(front, frontLateral),
                wheel(rear, -rearLateral),
                wheel(rear, rearLateral));
    }

    /**
     * Load on the front axle, N, between zero and the load on both; what is left of that is on the rear axle.
     *
     * @param frontAxle front axle load before transfer, N
     * @param rearAxle rear axle load before transfer, N
     * @param longitudinal load that moves from the rear to the front axle, N
     */
    public static double frontAxle(double frontAxle, double rearAxle, double longitudinal) {
        return Bounds.clamp(0, frontAxle + longitudinal, Bounds.larger(frontAxle + rearAxle, 0));
    }

    /**
     * Load on one wheel of an axle, N, between zero and the load on both.
     *
     * @param axle load on the axle, N
     * @param lateral load that moves to this wheel from the other one, N
     */
    public static double wheel(double axle, double lateral) {
        return Bounds.clamp(0, axle / 2 + lateral, axle);
    }

    /**
     * Wheel loads in steady state.
     *
     * @param speed m/s
     * @param deceleration m/s², positive when slowing
     * @param lateralAcceleration horizontal, m/s², positive to the left: v²κ
     * @param grade rad, positive uphill
     * @param banking rad, positive where it helps a left turn
     */
    public WheelLoads wheelLoads(
            double speed, double deceleration, double lateralAcceleration, double grade, double banking) {
        double speedSquared = speed * speed;
        double normal = RoadPlane.normal(lateralAcceleration, grade, banking);
        double lateral = RoadPlane.lateral(lateralAcceleration, grade, banking);
        return assemble(
                frontAxle(normal, speedSquared),
                rearAxle(normal, speedSquared),
                longitudinal(deceleration, speedSquared, grade),
                frontLateral(lateral),
                rearLateral(lateral));
    }

    /** Wheel loads of a car in steady state; see {@link #wheelLoads(double, double, double, double, double)}. */
    public static WheelLoads wheelLoads(
            Car car, double speed, double deceleration, double lateralAcceleration, double grade, double banking) {
        Objects.requireNonNull(car, "car");
        return of(car).wheelLoads(speed, deceleration, lateralAcceleration, grade, banking);
    }
}
