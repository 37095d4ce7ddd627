package org.foreload.handling;

import java.util.Objects;
import org.foreload.bicycle.WheelLocks;
import org.foreload.load.Wheel;
import org.foreload.load.WheelLoads;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;

/**
 * One moment of a motion, steady or not: all that the slopes of the tyre curves depend on.
 *
 * @param car the car
 * @param vx speed along the car, m/s, above zero
 * @param vy speed across the car, m/s, positive to the left
 * @param yawRate rad/s, positive to the left
 * @param steer angle of the front wheels, rad, positive to the left
 * @param brakeForce brake force that the pedal asks of all wheels together, N
 * @param driveForce drive force of all driven wheels together, N; below zero the engine slows them
 * @param loads wheel loads
 * @param locks the wheels that are stopped
 * @param frontSlip lateral slip that the front tyres feel, tangent of the slip angle; behind the true one while the
 *     tyre relaxes
 * @param rearSlip the same for the rear tyres
 */
public record OperatingPoint(
        Car car,
        double vx,
        double vy,
        double yawRate,
        double steer,
        double brakeForce,
        double driveForce,
        WheelLoads loads,
        WheelLocks locks,
        double frontSlip,
        double rearSlip) {

    /** Checks that nothing is missing. */
    public OperatingPoint {
        Objects.requireNonNull(car, "car");
        Objects.requireNonNull(loads, "loads");
        Objects.requireNonNull(locks, "locks");
    }

    /** Force along a wheel that the pedals ask for, N, positive forward. */
    double asked(Wheel wheel) {
        double brakeShare = wheel.front() ? car.frontBrakeShare() : 1 - car.frontBrakeShare();
        double driveFront = car.driveline().drivenAxle().frontShare();
        double driveShare = wheel.front() ? driveFront : 1 - driveFront;
        return (driveForce * driveShare - brakeForce * brakeShare) / 2;
    }

    /** Lateral slip that the tyre of a wheel feels. */
    double slip(Wheel wheel) {
        return wheel.front() ? frontSlip : rearSlip;
    }

    /** Share of the force that a wheel can carry rolling up to which it gives what is asked of it. */
    double mostShare(Wheel wheel) {
        return asked(wheel) < 0 && car.antiLock() ? Car.ANTI_LOCK_SHARE : 1;
    }

    /** Whether anti-lock brakes keep a wheel from braking as hard as the pedal asks of it. */
    boolean heldBack(Wheel wheel) {
        Tyre tyre = wheel.front() ? car.frontTyre() : car.rearTyre();
        return car.antiLock()
                && asked(wheel) < 0
                && !(-asked(wheel) < Car.ANTI_LOCK_SHARE * tyre.rollingForceLimit(slip(wheel), loads.of(wheel)));
    }

    /** Slip angle of the front wheels as their motion has it, rad. */
    double frontSlipAngle() {
        return Math.atan2(vy + car.chassis().cgToFrontAxle() * yawRate, vx) - steer;
    }

    /** Tangent of the slip angle of the rear wheels as their motion has it. */
    double rearSlipTangent() {
        return (vy - car.chassis().cgToRearAxle() * yawRate) / vx;
    }
}
