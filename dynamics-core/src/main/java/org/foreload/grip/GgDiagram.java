package org.foreload.grip;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.foreload.conventions.Checks;
import org.foreload.vehicle.Car;

/**
 * The g-g diagram of a whole car in steady cornering on a flat road at one speed: how much it can corner at each
 * deceleration, within tyres and power, and on its wheels. The left half mirrors the right one.
 *
 * @param speed m/s
 * @param boundary from the hardest driving (most negative deceleration) to the hardest braking; at the driving end the
 *     engine may give out before the tyres do, so that the boundary starts above zero lateral acceleration
 */
public record GgDiagram(double speed, List<Point> boundary) {

    /** Copies the list. */
    public GgDiagram {
        boundary = List.copyOf(Objects.requireNonNull(boundary, "boundary"));
    }

    /**
     * One point of the boundary.
     *
     * @param deceleration m/s², positive when slowing
     * @param lateral largest lateral acceleration, m/s²
     * @param limitingAxle the axle that gives way first; empty where the car rolls over before
     */
    public record Point(double deceleration, double lateral, Optional<Axle> limitingAxle) {

        /** Refuses null. */
        public Point {
            Objects.requireNonNull(limitingAxle, "limitingAxle");
        }
    }

    /**
     * The diagram of a car at a speed.
     *
     * @param speed m/s, above zero
     * @param points number of points, 2 or more; they lie closer together towards both ends
     * @throws org.foreload.conventions.InvalidValueException if either is not allowed
     */
    public static GgDiagram of(Car car, double speed, int points) {
        Objects.requireNonNull(car, "car");
        Checks.positive("speed_mps", speed);
        Checks.within("points", points, 2, Integer.MAX_VALUE);
        SteadyGrip grip = new SteadyGrip(car, speed);
        double hardestDriving = -grip.drivingLimit();
        double hardestBraking = grip.brakingLimit();
        List<Point> boundary = new ArrayList<>(points);
        for (int i = 0; i < points; i++) {
            double share = 0.5 * (1 - Math.cos(Math.PI * i / (points - 1)));
            double deceleration = hardestDriving + share * (hardestBraking - hardestDriving);
            boundary.add(new Point(deceleration, grip.lateralLimit(deceleration), grip.limitingAxle(deceleration)));
        }
        return new GgDiagram(speed, boundary);
    }

    /** The diagrams of a car over speeds in m/s (the g-g-V surface); see {@link #of}. */
    public static List<GgDiagram> over(Car car, double[] speeds, int points) {
        Objects.requireNonNull(car, "car");
        Objects.requireNonNull(speeds, "speeds");
        List<GgDiagram> diagrams = new ArrayList<>(speeds.length);
        for (double speed : speeds) {
            diagrams.add(of(car, speed, points));
        }
        return diagrams;
    }
}
