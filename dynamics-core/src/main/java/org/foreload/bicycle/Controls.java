package org.foreload.bicycle;

import java.util.Objects;

/**
 * What acts on the car besides its own state.
 *
 * @param steer steering angle of the front wheels, rad, positive to the left
 * @param brakeForce brake force that the pedal asks of all wheels together, N, zero or above
 * @param driveForce drive force of all driven wheels together, N; below zero the engine slows them
 * @param locks the wheels that are stopped
 * @param grade slope along the road, rad, positive uphill
 * @param banking slope across the road, rad, positive where it helps a left turn
 */
public record Controls(
        double steer, double brakeForce, double driveForce, WheelLocks locks, double grade, double banking) {

    /** Refuses null. */
    public Controls {
        Objects.requireNonNull(locks, "locks");
    }
}
