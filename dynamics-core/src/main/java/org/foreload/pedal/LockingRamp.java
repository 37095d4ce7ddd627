package org.foreload.pedal;

import java.util.Objects;
import java.util.Optional;
import org.foreload.bicycle.WheelForces;
import org.foreload.conventions.Checks;
import org.foreload.grip.Axle;
import org.foreload.vehicle.Car;

/**
 * Which axle locks first when the brake is pressed ever harder in a straight line: the transient model with a slow ramp
 * of brake force, at a speed that is held.
 *
 * @param axle the axle of which a wheel locks first
 * @param deceleration of the car at that moment, m/s², drag included
 * @param brakeDeceleration brake force over mass at that moment, m/s²
 */
public record LockingRamp(Axle axle, double deceleration, double brakeDeceleration) {

    /** Refuses null. */
    public LockingRamp {
        Objects.requireNonNull(axle, "axle");
    }

    /** Rise of the brake force over mass, m/s³: slow against the pitching of any car. */
    private static final double RISE = 1;

    /** Brake force over mass, m/s², at which the ramp ends: no tyre on a road gives that much. */
    private static final double HARDEST = 60;

    /**
     * Presses until a wheel locks.
     *
     * @param speed m/s; matters for drag and downforce
     * @return empty if no wheel ever locks
     * @throws org.foreload.conventions.InvalidValueException if the speed is not above zero or the car has no yaw
     *     inertia
     */
    public static Optional<LockingRamp> of(Car car, double speed) {
        Objects.requireNonNull(car, "car");
        Checks.positive("speed", speed);
        StraightLine line = new StraightLine(car, speed, time -> RISE * time);
        while (RISE * line.time() < HARDEST) {
            line.advance();
            WheelForces wheels = line.wheels();
            double front = Math.min(wheels.lockMargin(0), wheels.lockMargin(1));
            double rear = Math.min(wheels.lockMargin(2), wheels.lockMargin(3));
            if (Math.min(front, rear) < 0) {
                Axle axle = front <= rear ? Axle.FRONT : Axle.REAR;
                return Optional.of(new LockingRamp(axle, -wheels.accelerationX(), RISE * line.time()));
            }
        }
        return Optional.empty();
    }
}
