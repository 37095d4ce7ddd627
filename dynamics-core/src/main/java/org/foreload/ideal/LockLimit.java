package org.foreload.ideal;

import java.util.OptionalDouble;
import org.foreload.conventions.Gravity;
import org.foreload.grip.GripLimits;
import org.foreload.path.Path;
import org.foreload.vehicle.Car;

/** How hard the brakes can be used on the way to a corner before a wheel locks. */
public final class LockLimit {

    /** Places at which the slopes of the approach are read. */
    private static final int LOOKS = 10;

    private LockLimit() {}

    /**
     * Deceleration, m/s², that the brakes alone can ask for in a straight line before a wheel locks, with the load
     * settled, where the approach, with its grade and banking, allows least; empty where the car cannot keep to the
     * line at all.
     *
     * @param car the car
     * @param path the line; its approach ends at station zero
     * @param speed m/s
     */
    public static OptionalDouble of(Car car, Path path, double speed) {
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
                least = Math.min(least, -range.get().lowest() - drag - Gravity.G * Math.sin(grade));
            }
        }
        return OptionalDouble.of(least);
    }
}
