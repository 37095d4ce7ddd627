package org.foreload.ideal;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import org.foreload.conventions.Gravity;
import org.foreload.conventions.Rising;
import org.foreload.grip.Axle;
import org.foreload.grip.LocalGrip;
import org.foreload.vehicle.Car;

/**
 * The fastest entry along a line, by station, and what stands out of it. Immutable.
 *
 * <p>Stations, times and speeds hold at the start of each step; deceleration, brake force and utilisations hold over
 * the step that starts there, in its middle (the last station repeats the last step). Speed squared is linear between
 * stations, so {@link #speedAt} is exact. Units m, s, m/s, m/s², N; deceleration is positive when slowing.
 */
public final class IdealProfile {

    /** Brake force over weight below which the foot counts as off the brake: less than a foot can hold. */
    private static final double BRAKE_OFF = 1e-3;

    /** Share of all slowing below which an unbroken braking is a step of the grid, and none of the driver. */
    private static final double BRAKING_SHARE = 0.01;

    /** Relative difference of speeds that counts as the same minimum: far below what anyone measures. */
    private static final double SAME_SPEED = 1e-6;

    private final double[] stations;
    private final double[] times;
    private final double[] speeds;
    private final double[] decelerations;
    private final double[] brakeForces;
    private final double[] frontUtilisations;
    private final double[] rearUtilisations;
    private final double[] rollOverUtilisations;
    private final int minimum;
    private final double topSpeed;
    private final double turnInSpeed;
    private final OptionalDouble brakePoint;
    private final OptionalDouble releaseEnd;

    private IdealProfile(Car car, Grid grid, double[] speedsSquared, double[] accelerations) {
        int steps = grid.steps();
        stations = new double[steps + 1];
        times = new double[steps + 1];
        speeds = new double[steps + 1];
        decelerations = new double[steps + 1];
        brakeForces = new double[steps + 1];
        frontUtilisations = new double[steps + 1];
        rearUtilisations = new double[steps + 1];
        rollOverUtilisations = new double[steps + 1];
        for (int i = 0; i <= steps; i++) {
            stations[i] = grid.station(i);
            speeds[i] = Math.sqrt(speedsSquared[i]);
            int step = Math.min(i, steps - 1);
            LocalGrip grip = grid.limits(step);
            double middle = (speedsSquared[step] + speedsSquared[step + 1]) / 2;
            decelerations[i] = -accelerations[step];
            brakeForces[i] = Math.max(0, grip.force(middle, decelerations[i]));
            frontUtilisations[i] = grip.frontUtilisation(middle, decelerations[i]);
            rearUtilisations[i] = grip.rearUtilisation(middle, decelerations[i]);
            rollOverUtilisations[i] = grip.tippingUtilisation(middle, decelerations[i]);
            if (i > 0) {
                times[i] = times[i - 1] + 2 * (stations[i] - stations[i - 1]) / (speeds[i - 1] + speeds[i]);
            }
        }
        minimum = findMinimum();
        topSpeed = Arrays.stream(speeds, 0, minimum + 1).max().orElseThrow();
        turnInSpeed = speedAt(0);
        double off = BRAKE_OFF * car.chassis().mass() * Gravity.G;
        int first = -1;
        int last = -1;
        int i = 0;
        while (speeds[i] < topSpeed) {
            i++;
        }
        double least = BRAKING_SHARE * (topSpeed - speeds[minimum]);
        for (; i < minimum; i++) {
            int end = i;
            while (end < minimum && brakeForces[end] > off) {
                end++;
            }
            if (end > i && speeds[i] - speeds[end] > least) {
                first = first < 0 ? i : first;
                last = end - 1;
            }
            i = end;
        }
        brakePoint = last < 0 ? OptionalDouble.empty() : OptionalDouble.of(brakePoint(first));
        releaseEnd = last < 0 ? OptionalDouble.empty() : OptionalDouble.of(stations[last + 1]);
    }

    static IdealProfile of(Car car, Grid grid, double[] speedsSquared, double[] accelerations) {
        return new IdealProfile(car, grid, speedsSquared, accelerations);
    }

    private int findMinimum() {
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < speeds.length; i++) {
            if (stations[i] >= 0) {
                lowest = Math.min(lowest, speeds[i]);
            }
        }
        int i = 0;
        while (!(stations[i] >= 0 && speeds[i] <= lowest * (1 + SAME_SPEED))) {
            i++;
        }
        return i;
    }

    /**
     * Where the braking curve, drawn on backward, meets the curve of the steps before: the step between holds a mean of
     * both, so its own start may be early by its length.
     */
    private double brakePoint(int first) {
        if (first < 2 || first + 2 >= stations.length) {
            return stations[first];
        }
        double before = -decelerations[first - 2];
        double braking = -decelerations[first + 1];
        double gap = speeds[first + 1] * speeds[first + 1]
                - speeds[first - 1] * speeds[first - 1]
                - 2 * before * (stations[first + 1] - stations[first - 1]);
        // With x the distance braked before the next but one station: gap = 2 (braking − before) x.
        double braked = gap / (2 * (braking - before));
        return Math.max(stations[first - 1], Math.min(stations[first + 1], stations[first + 1] - braked));
    }

    /** Number of stations. */
    public int size() {
        return stations.length;
    }

    /** Station {@code i}, m. */
    public double station(int i) {
        return stations[i];
    }

    /** Time at station {@code i} since the start of the approach, s. */
    public double time(int i) {
        return times[i];
    }

    /** Speed at station {@code i}, m/s. */
    public double speed(int i) {
        return speeds[i];
    }

    /** Deceleration over the step from station {@code i}, m/s², positive when slowing. */
    public double deceleration(int i) {
        return decelerations[i];
    }

    /** Brake force over the step from station {@code i}, N; zero when driving or coasting. */
    public double brakeForce(int i) {
        return brakeForces[i];
    }

    /**
     * Utilisation of the front axle over the step from station {@code i}: at full friction, so at most the friction
     * scale.
     */
    public double frontUtilisation(int i) {
        return frontUtilisations[i];
    }

    /** Utilisation of the rear axle over the step from station {@code i}. */
    public double rearUtilisation(int i) {
        return rearUtilisations[i];
    }

    /** Lateral force over that at which the car rolls over, over the step from station {@code i}. */
    public double rollOverUtilisation(int i) {
        return rollOverUtilisations[i];
    }

    /**
     * The axle that is nearer to its limit over the step from station {@code i}; the front one if both are equally
     * near, empty where the car is nearer to rolling over than both.
     */
    public Optional<Axle> limitingAxle(int i) {
        if (rollOverUtilisations[i] > Math.max(frontUtilisations[i], rearUtilisations[i])) {
            return Optional.empty();
        }
        return Optional.of(frontUtilisations[i] >= rearUtilisations[i] ? Axle.FRONT : Axle.REAR);
    }

    /** Speed at any station in m, m/s; beyond the ends, that of the end. */
    public double speedAt(double s) {
        int i = Rising.cell(stations, s);
        double share = (Math.max(stations[0], Math.min(s, stations[stations.length - 1])) - stations[i])
                / (stations[i + 1] - stations[i]);
        return Math.sqrt((1 - share) * speeds[i] * speeds[i] + share * speeds[i + 1] * speeds[i + 1]);
    }

    /** Time at any station in m since the start of the approach, s; beyond the ends, that of the end. */
    public double timeAt(double s) {
        int i = Rising.cell(stations, s);
        double inside = Math.max(stations[0], Math.min(s, stations[stations.length - 1]));
        return times[i] + 2 * (inside - stations[i]) / (speeds[i] + speedAt(inside));
    }

    /** Deceleration of the step that holds a station in m, m/s²; beyond the ends, that of the end. */
    public double decelerationAt(double s) {
        return Double.isNaN(s) ? Double.NaN : decelerations[Rising.cell(stations, s)];
    }

    /**
     * Station where the entry's braking starts, m: that of the first braking after the top speed; empty if the entry
     * needs no brake.
     */
    public OptionalDouble brakePoint() {
        return brakePoint;
    }

    /** Station where the last braking before the minimum ends, m; empty if the entry needs no brake. */
    public OptionalDouble releaseEnd() {
        return releaseEnd;
    }

    /** Speed where the curvature starts (s = 0), m/s. */
    public double turnInSpeed() {
        return turnInSpeed;
    }

    /** Lowest speed from turn-in on, m/s. */
    public double minimumSpeed() {
        return speeds[minimum];
    }

    /** First station from turn-in on with the lowest speed, m. */
    public double minimumSpeedAt() {
        return stations[minimum];
    }

    /** Highest speed before the minimum, m/s. */
    public double topSpeed() {
        return topSpeed;
    }

    /** Time from the start of the approach to the end of the exit, s. */
    public double time() {
        return times[times.length - 1];
    }

    /** Speed shed after turn-in over all speed shed between brake point and minimum, 0 to 1; zero without braking. */
    public double trailShare() {
        if (brakePoint.isEmpty()) {
            return 0;
        }
        double all = speedAt(brakePoint.getAsDouble()) - minimumSpeed();
        double trailed = speedAt(Math.max(0, brakePoint.getAsDouble())) - minimumSpeed();
        return all > 0 ? Math.max(0, Math.min(1, trailed / all)) : 0;
    }
}
