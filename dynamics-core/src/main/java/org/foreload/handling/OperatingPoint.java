package org.foreload.handling;

import java.util.Objects;
import org.foreload.bicycle.WheelLocks;
import org.foreload.load.WheelLoads;
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

    /** Slip angle of the front wheels as their motion has it, rad. */
    double frontSlipAngle() {
        return Math.atan2(vy + car.chassis().cgToFrontAxle() * yawRate, vx) - steer;
    }

    /** Tangent of the slip angle of the rear wheels as their motion has it. */
    double rearSlipTangent() {
        return (vy - car.chassis().cgToRearAxle() * yawRate) / vx;
    }
}
