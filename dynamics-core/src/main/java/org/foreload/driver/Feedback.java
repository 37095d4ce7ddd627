package org.foreload.driver;

import org.foreload.conventions.Bounds;
import org.foreload.vehicle.Car;

/**
 * How the driver corrects: the front axle holds the centre of percussion on the line and brings the yaw to rest.
 *
 * <p>The point x = Iz/(m·b) ahead of the CG moves across as if the front axle's force alone acted on a mass: its
 * acceleration is L·F/(m·b), whatever the rear axle does. Held there, the rest of the car yaws about that point like a
 * weather vane on the rear tyres, with the natural frequency √(C_r/(m·x)) and a damping that falls with speed. Source:
 * K. Kritayakirana, J. C. Gerdes, Vehicle System Dynamics 50 (sup1), 2012, 33–51 (from memory).
 *
 * <p>With p the distance of that point off the line and θ the error of heading against the feedforward's, the motion is
 * p″ = u and θ″ = q·u + c·(p′/v − δ·θ′ − θ), where c = C_r/(m·x), q = a/(L·x), δ = (x + b)/v. The correction u = −(k₁p
 * + k₂p′ + k₃θ + k₄θ′) is made such that the motion of the whole is that of a tracker of the driver's bandwidth and
 * damping, and of the yaw as it is but damped at least as well as the driver asks: comparing the coefficients of (s² +
 * A₁s + A₀)(s² + B₁s + c) gives k₁ to k₄. Where the car damps its own yaw as well as asked, k₃ = k₄ = 0.
 */
final class Feedback {

    /**
     * Hardest pull back to the line, m/s², however far off it the car is: a driver who is wide gathers the car first.
     */
    private static final double HARDEST = 6;

    private final Hands hands;
    private final double toRear;
    private final double percussion;
    private final double tracking1;
    private final double tracking0;
    private final double perMassArm;
    private final double frontLean;
    private final double perLean;
    private final double forcePerAcceleration;

    private double wayBack;

    Feedback(Car car, Hands hands) {
        double mass = car.chassis().mass();
        double wheelbase = car.chassis().wheelbase();
        this.hands = hands;
        this.toRear = car.chassis().cgToRearAxle();
        this.percussion = car.chassis().yawInertia() / (mass * toRear);
        this.tracking1 = 2 * hands.damping() * hands.bandwidth();
        this.tracking0 = hands.bandwidth() * hands.bandwidth();
        this.perMassArm = 1 / (mass * percussion);
        this.frontLean = car.chassis().cgToFrontAxle() / (wheelbase * percussion);
        this.perLean = 1 / frontLean;
        this.forcePerAcceleration = mass * toRear / wheelbase;
    }

    /** Distance of the centre of percussion ahead of the CG, m. */
    double percussion() {
        return percussion;
    }

    /**
     * Force that the front axle gives besides the feedforward, N, positive to the left.
     *
     * @param speed m/s
     * @param rearStiffness cornering stiffness of the rear axle, N/rad
     * @param offset p, m
     * @param drift p′, m/s
     * @param heading θ, rad
     * @param turning θ′, rad/s
     */
    double force(double speed, double rearStiffness, double offset, double drift, double heading, double turning) {
        double perSpeed = 1 / Bounds.larger(speed, 1);
        double c = rearStiffness * perMassArm;
        double delta = (percussion + toRear) * perSpeed;
        double added = Bounds.larger(2 * hands.yawDamping() * Math.sqrt(c) - c * delta, 0);
        double k3 = 0;
        double k2 = tracking1;
        double k4 = 0;
        if (added > 0) {
            double perSpeedAndLean = perSpeed * perLean;
            double lean = frontLean - c * delta * perSpeed + c * perSpeed * perSpeedAndLean;
            k3 = added * (tracking1 - tracking0 * delta - (c - tracking0) * perSpeedAndLean) / lean;
            double turned = tracking0 * added / c - k3 * perSpeed;
            k2 = tracking1 + turned;
            k4 = (added - turned) * perLean;
        }
        double pull = -HARDEST * Bounds.tanh(tracking0 * offset * (1 / HARDEST));
        wayBack = pull - tracking1 * drift;
        double correction = pull - k2 * drift - k3 * heading - k4 * turning;
        return forcePerAcceleration * correction;
    }

    /** There is nothing to correct. */
    void rest() {
        wayBack = 0;
    }

    /** The part of the last {@link #force} that brings the centre of percussion back to the line, N. */
    double wayBack() {
        return forcePerAcceleration * wayBack;
    }
}
