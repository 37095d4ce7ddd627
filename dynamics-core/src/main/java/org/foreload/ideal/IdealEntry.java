package org.foreload.ideal;

import java.util.Objects;
import org.foreload.conventions.InvalidValueException;
import org.foreload.grip.Chord;
import org.foreload.grip.GripLimits;
import org.foreload.grip.LocalGrip;
import org.foreload.path.Corner;
import org.foreload.vehicle.Car;

/**
 * The fastest quasi-steady speed profile of a car along a given line, from the approach speed on.
 *
 * <p>Method: controllable sets backward, greedy forward (H. Pham and Q.-C. Pham, A New Approach to Time-Optimal Path
 * Parameterization Based on Reachability Analysis, IEEE Transactions on Robotics 34(3), 2018, from memory; for the
 * friction circle T. Lipp and S. Boyd, Minimum-time speed optimisation over a fixed path, Int. J. Control 87(6), 2014,
 * from memory). Backward, the highest speed squared at each station from which the rest of the line can still be
 * driven; forward, the highest acceleration that stays at or below it. The plain "corner speed, then integrate back" is
 * wrong for a car: gentle braking can make a speed feasible that coasting does not.
 *
 * <p>Speed squared is linear over each step, and limits hold in its middle, so the error falls with the square of the
 * step. At kinks of the line, where the limits jump, they hold on both sides as well: the lowest speed is often there.
 * Steps are at most {@link IdealOptions#step()} and a fiftieth of the radius; kinks of the line are stations.
 */
public final class IdealEntry {

    /** Relative excess of the approach speed squared that rounding explains. */
    private static final double ROUNDING = 1e-9;

    /** Utilisation over the limit at which an acceleration known from the backward pass is still taken as feasible. */
    private static final double TOLERANCE = 1e-9;

    /** Factor on a speed squared that turned out not to be controllable. */
    private static final double GIVE_UP = 0.999;

    /**
     * Steps back over the whole line after which it counts as not drivable, for each step of it. Of eight thousand
     * entries of tall cars on tyres of much grip, 118 needed any, and none that was driven more than 6.2 for each step,
     * so this only ends searches for cars of impossible numbers.
     */
    private static final int STEPS_BACK = 10;

    /** Speed, m/s, that is no driving any more: who must be slower than this somewhere does not make the corner. */
    private static final double STANDSTILL = 1e-3;

    /**
     * Relative margin below the highest approach speed, and unit to which it is rounded down, m/s, when it is reported.
     */
    private static final double MARGIN = 1e-4;

    private static final double ROUND = 1.0 / 128;

    /** First step of searches for an acceleration, m/s². */
    private static final double NEIGHBOUR = 0.05;

    private IdealEntry() {}

    /**
     * The fastest entry with the {@linkplain IdealOptions#DEFAULT default options}; see {@link #solve(Car, Corner,
     * IdealOptions)}.
     */
    public static IdealProfile solve(Car car, Corner corner) {
        return solve(car, corner, IdealOptions.DEFAULT);
    }

    /**
     * The fastest entry.
     *
     * @throws InvalidValueException field {@code approach_speed_mps}, if no braking from the start of the line on makes
     *     the corner at that speed; it names the highest speed that does, or the place where none does
     * @throws IllegalStateException if curvature, grade or banking of the line is not finite somewhere; the message
     *     says which and where
     */
    public static IdealProfile solve(Car car, Corner corner, IdealOptions options) {
        Objects.requireNonNull(car, "car");
        Objects.requireNonNull(corner, "corner");
        Objects.requireNonNull(options, "options");
        Grid grid = Grid.of(corner.path(), GripLimits.of(car), options.step());
        double speed = corner.approachSpeed();
        Drive drive = drive(corner, grid, speed, options.frictionScale());
        for (int i = 0; i < MOST_ATTEMPTS && drive.startSpeed() < speed; i++) {
            speed = drive.startSpeed();
            drive = drive(corner, grid, speed, options.frictionScale());
        }
        if (speed < corner.approachSpeed()) {
            throw new InvalidValueException(
                    "approach_speed_mps",
                    corner.approachSpeed(),
                    "at most " + speed + ", the highest from which the car makes this corner");
        }
        return IdealProfile.of(car, grid, drive.speedsSquared(), drive.accelerations());
    }

    /** Speeds that are tried for the one that a refusal names: each is nearer to it, and two or three will do. */
    private static final int MOST_ATTEMPTS = 50;

    /**
     * What came of an attempt.
     *
     * @param startSpeed the speed that was tried; or, where it was too high, one below it that may do, m/s
     * @param speedsSquared at each station, m²/s²
     * @param accelerations over each step, m/s²
     */
    private record Drive(double startSpeed, double[] speedsSquared, double[] accelerations) {}

    private static Drive drive(Corner corner, Grid grid, double startSpeed, double frictionScale) {
        int steps = grid.steps();
        double approach = startSpeed * startSpeed;
        double[] reachable = reachable(grid, approach);
        double[] controllable = new double[steps + 1];
        double[] backwardAccelerations = new double[steps];
        controllable[steps] = reachable[steps];
        FastestStart backward = new FastestStart(frictionScale);
        FastestStart atKinks = new FastestStart(frictionScale);
        for (int k = steps - 1; k >= 0; k--) {
            controllable[k] = backward.solve(grid.limits(k), grid.length(k), controllable[k + 1], reachable[k]);
            for (LocalGrip side : grid.kink(k)) {
                controllable[k] = atKinks.atPlace(side, controllable[k]);
            }
            if (!(controllable[k] >= Math.min(STANDSTILL * STANDSTILL, reachable[k]))) {
                throw notDrivable(corner, grid.station(k));
            }
            backwardAccelerations[k] = backward.acceleration();
        }
        if (!(approach <= controllable[0] * (1 + ROUNDING))) {
            return new Drive(below(corner, controllable[0]), controllable, backwardAccelerations);
        }
        double[] speedsSquared = new double[steps + 1];
        speedsSquared[0] = Math.min(approach, controllable[0]);
        double[] accelerations = new double[steps];
        long stepsBack = 0;
        int i = 0;
        while (i < steps) {
            double w = speedsSquared[i];
            double acceleration = highestAcceleration(
                    grid.limits(i), w, grid.length(i), controllable[i + 1], backwardAccelerations[i], frictionScale);
            if (Double.isNaN(acceleration)) {
                // Only where a lifted wheel bends the feasible set: this speed is not controllable after all. One step
                // back.
                controllable[i] = w * GIVE_UP;
                if (i == 0) {
                    return new Drive(below(corner, controllable[0]), controllable, accelerations);
                }
                if (++stepsBack > (long) STEPS_BACK * steps) {
                    throw notDrivable(corner, grid.station(i));
                }
                i--;
            } else {
                accelerations[i] = acceleration;
                speedsSquared[i + 1] = Math.max(0, w + 2 * acceleration * grid.length(i));
                i++;
            }
        }
        return new Drive(startSpeed, speedsSquared, accelerations);
    }

    /** Speed squared that power alone can reach at each station: nothing faster need be looked at. */
    private static double[] reachable(Grid grid, double approach) {
        double[] reachable = new double[grid.steps() + 1];
        reachable[0] = approach;
        for (int i = 0; i < grid.steps(); i++) {
            double length = grid.length(i);
            double acceleration = grid.limits(i).powerAccelerationOverStep(reachable[i], length);
            reachable[i + 1] = Math.max(0, reachable[i] + 2 * length * acceleration);
        }
        return reachable;
    }

    /** A round speed a little below one that is just not too high, m/s. */
    private static double below(Corner corner, double speedSquared) {
        double speed = Math.floor(Math.sqrt(speedSquared) * (1 - MARGIN) / ROUND) * ROUND;
        if (!(speed > 0)) {
            throw notDrivable(corner, corner.path().start());
        }
        return speed;
    }

    private static InvalidValueException notDrivable(Corner corner, double station) {
        return new InvalidValueException(
                "approach_speed_mps",
                corner.approachSpeed(),
                "one from which the car makes this corner, but there is none: " + Math.round(station)
                        + " m after turn-in it would have to stand still");
    }

    /** Highest acceleration over a step that ends at or below a speed; NaN if none is feasible. */
    private static double highestAcceleration(
            LocalGrip grip, double speedSquared, double length, double highestEnd, double guess, double scale) {
        double highest = Math.min(
                (highestEnd - speedSquared) / (2 * length), grip.powerAccelerationOverStep(speedSquared, length));
        Chord chord = grip.overStep(speedSquared, length, scale);
        if (chord.excess(highest) <= TOLERANCE) {
            return highest;
        }
        double known = Math.min(guess, highest);
        double inside = chord.excess(known) <= TOLERANCE
                ? known
                : chord.feasibleNear(known, NEIGHBOUR, -speedSquared / (2 * length), highest);
        return Double.isNaN(inside) ? Double.NaN : chord.edgeFrom(inside, NEIGHBOUR, highest);
    }
}
