package org.foreload.ideal;

import java.util.Objects;
import java.util.OptionalDouble;
import org.foreload.conventions.Checks;
import org.foreload.conventions.Gravity;
import org.foreload.grip.GripLimits;
import org.foreload.grip.GripUse;
import org.foreload.grip.Motion;
import org.foreload.path.Path;
import org.foreload.vehicle.Car;

/**
 * How hard the brakes can be used on the way to a corner before a wheel locks; with anti-lock brakes, which let none
 * lock, how hard before a harder foot slows the car no more.
 */
public final class LockLimit {

    /** Places at which the slopes of the approach are read. */
    private static final int LOOKS = 10;

    private LockLimit() {}

    /**
     * Deceleration, m/s², that the brakes alone can ask for in a straight line before a wheel locks, with the load
     * settled, where the approach, with its grade and banking, allows least; empty where the car cannot keep to the
     * line at all. With anti-lock brakes: before the wheels of both axles are held back, so that more changes nothing.
     *
     * @param car the car
     * @param path the line; its approach ends at station zero
     * @param speed m/s
     */
    public static OptionalDouble of(Car car, Path path, double speed) {
        Objects.requireNonNull(car, "car");
        Objects.requireNonNull(path, "path");
        Checks.finite("speed_mps", speed);
        GripLimits limits = GripLimits.of(car);
        double square = speed * speed;
        double drag = car.aerodynamics().drag(square) / car.chassis().mass();
        double least = Double.POSITIVE_INFINITY;
        double grade = Double.NaN;
        double banking = Double.NaN;
        for (int i = 0; i <= LOOKS; i++) {
            double s = path.start() + (Math.max(path.start(), 0) - path.start()) * i / LOOKS;
            if (path.grade(s) != grade || path.banking(s) != banking) {
                grade = path.grade(s);
                banking = path.banking(s);
                var range = limits.accelerationRange(square, 0, 0, grade, banking);
                if (range.isEmpty()) {
                    return OptionalDouble.empty();
                }
                double hardest = -range.get().lowest();
                double brakes = hardest - drag - Gravity.G * Math.sin(grade);
                least = Math.min(
                        least,
                        car.antiLock()
                                ? brakes / leastHeld(car, new Motion(speed, hardest, 0, 0, grade, banking))
                                : brakes);
            }
        }
        return OptionalDouble.of(least);
    }

    /** Use of the axle that is farther from being held back by anti-lock brakes, of those that have brakes. */
    private static double leastHeld(Car car, Motion motion) {
        GripUse use = GripLimits.of(car.withAntiLock(false)).use(motion);
        double front = car.frontBrakeShare() > 0 ? use.front().utilisation() : Double.POSITIVE_INFINITY;
        double rear = car.frontBrakeShare() < 1 ? use.rear().utilisation() : Double.POSITIVE_INFINITY;
        return Math.min(front, rear);
    }
}
