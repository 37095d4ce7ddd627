package org.foreload.recording;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.foreload.conventions.InvalidValueException;
import org.foreload.path.Path;
import org.foreload.trace.Trace;

/**
 * A recording, cleaned, on one distance axis: gaps bridged, sensor offsets taken off, noise smoothed without delay.
 *
 * <p>Distance is that of the recording, if it has one; otherwise it is speed integrated over time from zero at the
 * first row, with the speed's scale corrected by position where there is one. Curvature is yaw rate over speed, else
 * lateral acceleration over speed squared, else the turning of the course between positions.
 */
public final class Run {

    /** Speed, m/s, below which a curvature is not told: the division would blow up the noise. */
    private static final double SLOWEST = 3;

    /** Positions are smoothed over at least this long to either side, s: a car's course turns little meanwhile. */
    private static final double POSITION_HALF_WIDTH = 0.4;

    /** Yaw rate, rad/s, and lateral acceleration, m/s², within which the car may be on a straight. */
    private static final double STRAIGHT_YAW_RATE = 0.05;

    private static final double STRAIGHT_LATERAL = 1;

    /** Share of all rows that must look straight before an offset is read from them. */
    private static final double STRAIGHT_SHARE = 0.1;

    /**
     * Deceleration, m/s², that drag and engine may give without a brake; what exceeds it is read as braking where no
     * brake was recorded. Common practice, no source.
     */
    private static final double COASTING = 1.5;

    /** Longest run, m: what is longer has to be cut, and what is much longer is no distance. */
    private static final double LONGEST = 1e6;

    private final Recording recording;
    private final Cleaning cleaning;
    private final double[] time;
    private final double[] station;
    private final double[] speed;
    private final double[] brake;
    private final double[] brakeRaw;
    private final double[] throttle;
    private final double[] along;
    private final double[] across;
    private final double[] curvature;
    private final double[] curvatureRaw;
    private final double period;
    private final PathScale scale;
    private final double[] east;
    private final double[] north;

    private Run(Recording recording, Cleaning cleaning) {
        this.recording = recording;
        this.cleaning = cleaning;
        this.time = times(recording);
        this.period = Series.median(differences(time));
        double half = cleaning.halfWidth();
        double[] measured = speeds(recording, time, half);
        this.speed = Series.smooth(time, measured, half);
        this.curvatureRaw = curvatures(measured);
        this.curvature = Series.smooth(time, curvatureRaw, half);
        if (recording.has(Channel.DISTANCE)) {
            this.station = rising(filled(Channel.DISTANCE));
            this.scale = new PathScale(1, 0);
        } else {
            double[] distance = integrated(time, measured);
            this.scale = PathScale.of(recording, cleaning, distance, curvature);
            this.station = scaled(distance, scale.factor(), recording.origin());
        }
        this.along = recording.has(Channel.LONGITUDINAL)
                ? Series.smooth(time, filled(Channel.LONGITUDINAL), half)
                : Series.slope(time, measured, Math.max(half, DERIVED_HALF_WIDTH));
        this.across = recording.has(Channel.LATERAL)
                ? Series.smooth(time, levelled(Channel.LATERAL, STRAIGHT_LATERAL), half)
                : product(curvature, speed);
        this.brakeRaw = recording.has(Channel.BRAKE)
                ? Series.rested(filled(Channel.BRAKE), RESTING)
                : braking(Series.slope(time, measured, Math.max(half, DERIVED_HALF_WIDTH)));
        this.brake = Series.smooth(time, brakeRaw, half / 2);
        this.throttle = recording.has(Channel.THROTTLE) ? filled(Channel.THROTTLE) : null;
        this.east = recording.hasPosition() ? placed(Channel.X) : null;
        this.north = recording.hasPosition() ? placed(Channel.Y) : null;
    }

    private double[] placed(Channel channel) {
        return Series.smooth(time, filled(channel), Math.max(cleaning.halfWidth(), POSITION_HALF_WIDTH));
    }

    /** Half the width, s, over which a speed is differentiated at least. */
    private static final double DERIVED_HALF_WIDTH = 0.15;

    /** Share of the largest brake below which the pedal may be at rest. */
    private static final double RESTING = 0.05;

    /**
     * Cleans a recording.
     *
     * @throws InvalidValueException if it has no channel from which curvature could be made, or if the car stands still
     */
    public static Run of(Recording recording, Cleaning cleaning) {
        if (!recording.has(Channel.YAW_RATE) && !recording.has(Channel.LATERAL) && !recording.hasPosition()) {
            throw new InvalidValueException(
                    Channel.YAW_RATE.field(),
                    "missing",
                    "given, unless there is lateral acceleration or position: without them no corner is found");
        }
        Run run = new Run(recording, cleaning);
        double length = run.last() - run.first();
        if (!(length > 1 && length < LONGEST)) {
            throw new InvalidValueException(
                    Channel.DISTANCE.field(), length, "a run of more than a metre and less than 1000 km");
        }
        return run;
    }

    /**
     * Standard deviation of the noise of every channel that was recorded, but of the axes, which are taken as they are.
     */
    Map<Channel, Double> noises() {
        Map<Channel, Double> noises = new EnumMap<>(Channel.class);
        recording.columns().forEach((channel, values) -> {
            boolean axis = channel == Channel.TIME || channel == Channel.DISTANCE;
            noises.put(channel, axis ? 0 : Series.noise(Series.known(values)));
        });
        return noises;
    }

    /** The same run with noise of these sizes added to every channel. */
    Run shaken(Map<Channel, Double> noises, SplittableRandom random) {
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        recording.columns().forEach((channel, values) -> {
            double deviation = noises.get(channel);
            double[] shaken = deviation > 0 ? values.clone() : values;
            for (int i = 0; deviation > 0 && i < shaken.length; i++) {
                shaken[i] += deviation * random.nextGaussian();
            }
            columns.put(channel, shaken);
        });
        return new Run(recording.with(columns), cleaning);
    }

    private static double[] times(Recording recording) {
        if (recording.has(Channel.TIME)) {
            return recording.columns().get(Channel.TIME);
        }
        double[] distance = recording.columns().get(Channel.DISTANCE);
        double[] speed = Series.filled(distance, recording.columns().get(Channel.SPEED));
        double[] time = new double[distance.length];
        for (int i = 1; i < time.length; i++) {
            double mean = Math.max(SLOWEST / 10, (speed[i] + speed[i - 1]) / 2);
            time[i] = time[i - 1] + (distance[i] - distance[i - 1]) / mean;
        }
        return time;
    }

    private static double[] speeds(Recording recording, double[] time, double half) {
        double[] speed;
        if (recording.has(Channel.SPEED)) {
            speed = Series.filled(time, recording.columns().get(Channel.SPEED));
        } else if (recording.has(Channel.DISTANCE)) {
            speed = Series.slope(time, recording.columns().get(Channel.DISTANCE), half);
        } else {
            double wide = Math.max(half, POSITION_HALF_WIDTH);
            double[] x =
                    Series.slope(time, Series.filled(time, recording.columns().get(Channel.X)), wide);
            double[] y =
                    Series.slope(time, Series.filled(time, recording.columns().get(Channel.Y)), wide);
            speed = new double[x.length];
            for (int i = 0; i < x.length; i++) {
                speed[i] = Math.hypot(x[i], y[i]);
            }
        }
        for (int i = 0; i < speed.length; i++) {
            speed[i] = Math.max(0, speed[i]);
        }
        return speed;
    }

    private double[] curvatures(double[] measured) {
        double[] curvature = new double[time.length];
        if (recording.has(Channel.LATERAL)) {
            double[] lateral = levelled(Channel.LATERAL, STRAIGHT_LATERAL);
            for (int i = 0; i < curvature.length; i++) {
                curvature[i] = speed[i] > SLOWEST ? lateral[i] / (speed[i] * speed[i]) : 0;
            }
        } else if (recording.has(Channel.YAW_RATE)) {
            double[] yaw = levelled(Channel.YAW_RATE, STRAIGHT_YAW_RATE);
            for (int i = 0; i < curvature.length; i++) {
                curvature[i] = speed[i] > SLOWEST ? yaw[i] / speed[i] : 0;
            }
        } else {
            double[] course = course();
            double[] turning = Series.slope(time, course, POSITION_HALF_WIDTH);
            for (int i = 0; i < curvature.length; i++) {
                curvature[i] = speed[i] > SLOWEST ? turning[i] / speed[i] : 0;
            }
        }
        return curvature;
    }

    /** Direction of the course between positions, rad, without jumps of a turn. */
    private double[] course() {
        double[] x = Series.slope(time, filled(Channel.X), POSITION_HALF_WIDTH);
        double[] y = Series.slope(time, filled(Channel.Y), POSITION_HALF_WIDTH);
        double[] course = new double[x.length];
        for (int i = 0; i < course.length; i++) {
            boolean moves = Math.hypot(x[i], y[i]) > SLOWEST;
            double direction = moves || i == 0 ? Math.atan2(y[i], x[i]) : course[i - 1];
            double before = i == 0 ? direction : course[i - 1];
            course[i] = direction - 2 * Math.PI * Math.rint((direction - before) / (2 * Math.PI));
        }
        return course;
    }

    private double[] filled(Channel channel) {
        return Series.filled(time, recording.columns().get(channel));
    }

    /** A channel less its offset: the median of the rows that look straight, if they are enough. */
    private double[] levelled(Channel channel, double straight) {
        double[] values = filled(channel);
        double[] quiet = java.util.Arrays.stream(values)
                .filter(value -> Math.abs(value) < straight)
                .toArray();
        if (quiet.length > STRAIGHT_SHARE * values.length) {
            double offset = Series.median(quiet);
            for (int i = 0; i < values.length; i++) {
                values[i] -= offset;
            }
        }
        return values;
    }

    private static double[] braking(double[] acceleration) {
        double[] braking = new double[acceleration.length];
        for (int i = 0; i < braking.length; i++) {
            braking[i] = Math.max(0, -acceleration[i] - COASTING);
        }
        return braking;
    }

    private static double[] integrated(double[] time, double[] speed) {
        double[] distance = new double[time.length];
        for (int i = 1; i < time.length; i++) {
            // A car that stands still moves a micrometre a row, so that the axis rises.
            double step = Math.max(STANDING_STEP, (time[i] - time[i - 1]) * (speed[i] + speed[i - 1]) / 2);
            distance[i] = distance[i - 1] + step;
        }
        return distance;
    }

    private static final double STANDING_STEP = 1e-6;

    private static double[] scaled(double[] distance, double factor, double origin) {
        double[] station = distance.clone();
        for (int i = 0; i < station.length; i++) {
            station[i] = origin + factor * station[i];
        }
        return station;
    }

    /** Rows at one and the same place are a micrometre apart, so that the axis rises. */
    private static double[] rising(double[] station) {
        for (int i = 1; i < station.length; i++) {
            station[i] = Math.max(station[i], station[i - 1] + STANDING_STEP);
        }
        return station;
    }

    private static double[] product(double[] curvature, double[] speed) {
        double[] lateral = new double[speed.length];
        for (int i = 0; i < lateral.length; i++) {
            lateral[i] = curvature[i] * speed[i] * speed[i];
        }
        return lateral;
    }

    private static double[] differences(double[] values) {
        double[] steps = new double[values.length - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = values[i + 1] - values[i];
        }
        return steps;
    }

    /** The recording. */
    public Recording recording() {
        return recording;
    }

    /** How it was cleaned. */
    public Cleaning cleaning() {
        return cleaning;
    }

    /** Rows in a second, Hz: one over the median step of time. */
    public double rate() {
        return 1 / period;
    }

    /** Factor by which distance made from speed was multiplied to agree with position; one where there is none. */
    public double distanceFactor() {
        return scale.factor();
    }

    /** First station, m. */
    public double first() {
        return station[0];
    }

    /** Last station, m. */
    public double last() {
        return station[station.length - 1];
    }

    /** Time at a station, s, by the logger's clock. */
    public double timeAt(double s) {
        return Series.at(station, time, s);
    }

    /** Station at a time of the logger's clock, m. */
    public double stationAt(double clock) {
        return Series.at(time, station, clock);
    }

    /** Speed at a station, m/s. */
    public double speedAt(double s) {
        return Series.at(station, speed, s);
    }

    /** Curvature of the course at a station, 1/m, positive to the left. */
    public double curvatureAt(double s) {
        return Series.at(station, curvature, s);
    }

    /**
     * Position at a station, m, smoothed.
     *
     * @throws IllegalArgumentException if positions were not recorded
     */
    public Path.Point positionAt(double s) {
        if (east == null) {
            throw new IllegalArgumentException("no positions were recorded");
        }
        return new Path.Point(Series.at(station, east, s), Series.at(station, north, s));
    }

    /**
     * The run on its distance axis: {@code s_m, time_s, speed_mps, brake, throttle} (if recorded),
     * {@code longitudinal_acceleration_mps2, lateral_acceleration_mps2, curvature_per_m}.
     *
     * @param step between rows, m
     */
    public Trace resampled(double step) {
        List<Trace.Column> columns = new ArrayList<>();
        int rows = (int) Math.floor((last() - first()) / step + STANDING_STEP) + 1;
        double[] axis = new double[rows];
        for (int i = 0; i < rows; i++) {
            axis[i] = first() + i * step;
        }
        columns.add(new Trace.Column(Channel.DISTANCE.field(), "m", axis));
        columns.add(column(Channel.TIME.field(), "s", axis, time));
        columns.add(column(Channel.SPEED.field(), "m/s", axis, speed));
        columns.add(column(Channel.BRAKE.field(), "", axis, brake));
        if (throttle != null) {
            columns.add(column(Channel.THROTTLE.field(), "", axis, throttle));
        }
        columns.add(column(Channel.LONGITUDINAL.field(), "m/s²", axis, along));
        columns.add(column(Channel.LATERAL.field(), "m/s²", axis, across));
        columns.add(column("curvature_per_m", "1/m", axis, curvature));
        return new Trace(columns);
    }

    private Trace.Column column(String name, String unit, double[] axis, double[] values) {
        double[] read = new double[axis.length];
        for (int i = 0; i < read.length; i++) {
            read[i] = Series.at(station, values, axis[i]);
        }
        return new Trace.Column(name, unit, read);
    }

    /** Standard deviation of the scale of distances, a plain number. */
    double scaleError() {
        return scale.error();
    }

    /** Standard deviation of the smoothed speed, m/s: the noise of a sample over the root of those in a filter. */
    double speedNoise() {
        double[] raw =
                recording.has(Channel.SPEED) ? Series.known(recording.columns().get(Channel.SPEED)) : speed;
        return Series.noise(raw) / Math.sqrt(Math.max(1, 2 * cleaning.halfWidth() / period));
    }

    double period() {
        return period;
    }

    double[] time() {
        return time;
    }

    double[] station() {
        return station;
    }

    double[] speed() {
        return speed;
    }

    /** Brake, smoothed over half the width of the other channels, with its resting level taken off. */
    double[] brake() {
        return brake;
    }

    double[] brakeRaw() {
        return brakeRaw;
    }

    /** Throttle; null if it was not recorded. */
    double[] throttle() {
        return throttle;
    }

    double[] along() {
        return along;
    }

    double[] across() {
        return across;
    }

    double[] curvature() {
        return curvature;
    }

    double[] curvatureRaw() {
        return curvatureRaw;
    }
}
