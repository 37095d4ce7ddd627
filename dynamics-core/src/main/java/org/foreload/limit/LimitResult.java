package org.foreload.limit;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.foreload.path.Path;

/**
 * The limit of a car in a corner. Immutable. Stations are those of the line, not of the way that the car takes.
 *
 * @param points the car along the line
 * @param time from the start to the end of the line, s
 * @param converged whether the conditions of a (local) optimum hold
 * @param optimality greatest residual of these conditions, scaled
 * @param steps Newton steps taken
 * @param way the way of the centre of gravity, as a line of its own
 */
public record LimitResult(
        List<LimitPoint> points, double time, boolean converged, double optimality, int steps, Path way) {

    /** Brake force over mass, m/s², below which the brake counts as off: about what an engine or a headwind does. */
    private static final double BRAKE_OFF = 0.1;

    /**
     * Drive force over mass, m/s², from which on the throttle counts as asked for: more than a smooth optimum leaves.
     */
    private static final double DRIVE_ON = 0.2;

    /** Copies the list; refuses null by the component's name. */
    public LimitResult {
        points = List.copyOf(Objects.requireNonNull(points, "points"));
        Objects.requireNonNull(way, "way");
    }

    /**
     * Where the car is slowest once the brake has come on, as an index of {@link #points}; anywhere without a brake.
     */
    private int slowest() {
        int slowest = Math.max(0, brakeOn());
        for (int i = slowest; i < points.size(); i++) {
            if (points.get(i).speed() < points.get(slowest).speed()) {
                slowest = i;
            }
        }
        return slowest;
    }

    private int brakeOn() {
        for (int i = 0; i < points.size(); i++) {
            if (points.get(i).brake() >= BRAKE_OFF) {
                return i;
            }
        }
        return -1;
    }

    /** Station, m, at which the foot begins to brake; empty if it never does. */
    public OptionalDouble brakePoint() {
        int on = brakeOn();
        return on < 0 ? OptionalDouble.empty() : OptionalDouble.of(crossing(on - 1, on));
    }

    /** Station, m, at which the brake is off again for the first time; empty if there is no brake. */
    public OptionalDouble releaseEnd() {
        int on = brakeOn();
        for (int i = on; i >= 0 && i + 1 < points.size(); i++) {
            if (points.get(i + 1).brake() < BRAKE_OFF) {
                return OptionalDouble.of(crossing(i, i + 1));
            }
        }
        return OptionalDouble.empty();
    }

    private double crossing(int a, int b) {
        if (a < 0) {
            return points.get(b).station();
        }
        LimitPoint from = points.get(a);
        LimitPoint to = points.get(b);
        double share = (BRAKE_OFF - from.brake()) / (to.brake() - from.brake());
        return from.station() + share * (to.station() - from.station());
    }

    /** Station, m, at which the throttle is first asked for once the brake is off; empty without a brake. */
    public OptionalDouble pickUp() {
        OptionalDouble off = releaseEnd();
        if (off.isPresent()) {
            for (LimitPoint point : points) {
                if (point.station() >= off.getAsDouble() && point.driveAsked() >= DRIVE_ON) {
                    return OptionalDouble.of(point.station());
                }
            }
        }
        return OptionalDouble.empty();
    }

    /** Lowest speed once the brake has come on, m/s; of all without a brake. */
    public double minimumSpeed() {
        return points.get(slowest()).speed();
    }

    /** Station of that lowest speed, m. */
    public double minimumSpeedAt() {
        return points.get(slowest()).station();
    }

    /** Highest speed before the lowest, m/s. */
    public double topSpeed() {
        double top = 0;
        for (int i = 0; i <= slowest(); i++) {
            top = Math.max(top, points.get(i).speed());
        }
        return top;
    }

    /** Speed at turn-in (s = 0), m/s. */
    public double turnInSpeed() {
        for (int i = 1; i < points.size(); i++) {
            LimitPoint from = points.get(i - 1);
            LimitPoint to = points.get(i);
            if (to.station() >= 0) {
                double share = (0 - from.station()) / (to.station() - from.station());
                return from.speed() + Math.max(0, Math.min(1, share)) * (to.speed() - from.speed());
            }
        }
        return points.get(points.size() - 1).speed();
    }

    /** Speed shed after turn-in over all speed shed between the highest and the lowest; NaN if none is shed. */
    public double trailShare() {
        double shed = topSpeed() - minimumSpeed();
        double after = minimumSpeedAt() <= 0 ? 0 : Math.min(shed, turnInSpeed() - minimumSpeed());
        return shed > 0 ? after / shed : Double.NaN;
    }
}
