package org.foreload.recording;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;
import org.foreload.path.Path;
import org.foreload.trace.Trace;

/**
 * A recording, cleaned, on one distance axis: gaps bridged, sensor offsets taken off, noise smoothed without delay.
 *
 * <p>Distance is that of the recording, if it has one; otherwise it is speed integrated over time from zero at the
 * first row, with the speed's scale corrected by position where there is one. Curvature is lateral acceleration over
 * speed squared, else yaw rate over speed, else the turning of the course between positions.
 */
public final class Run {

    /** Longest run, m: what is longer has to be cut, and what is much longer is no distance. */
    private static final double LONGEST = 1e6;

    /** Least step of a table, m: no logger knows the course any finer. */
    private static final double FINEST = 0.01;

    private final Recording recording;
    private final Cleaning cleaning;
    private final double[] time;
    private final Series.Windows wide;
    private final Series.Windows narrow;
    private final double[] station;
    private final double[] speed;
    private final double[] brake;
    private final double[] brakeRaw;
    private final double[] throttle;
    private final double throttleAsked;
    private final double courseNoise;
    private final double courseEvery;
    private final double courseOffset;
    private final double brakeRest;
    private final double[] along;
    private final double[] across;
    private final double[] curvature;
    private final double[] curvatureRaw;
    private final double period;
    private final double delay;
    private final Signals.Scale scale;

    /**
     * A run; one like another, but with other noise, has that one's delay, scale of distances, offsets and thresholds:
     * noise does not move what is made of so many rows, or its error is counted apart.
     *
     * @param like null for a run of its own
     */
    private Run(Recording recording, Cleaning cleaning, Run like) {
        this.recording = recording;
        this.cleaning = cleaning;
        Signals signals = Signals.of(recording);
        this.time = signals.time();
        double half = cleaning.halfWidth();
        boolean sameClock = like != null && like.time == time;
        this.period = sameClock ? like.period : Series.median(Signals.differences(time));
        this.wide = sameClock ? like.wide : Series.Windows.of(time, half);
        this.narrow = sameClock ? like.narrow : Series.Windows.of(time, half / 2);
        this.delay = like == null ? Signals.Delays.ofSpeed(signals) : like.delay;
        double[] measured = signals.ahead(signals.speeds(half), delay);
        this.speed = wide.smooth(measured);
        this.courseOffset = like == null ? signals.courseOffset() : like.courseOffset;
        this.curvatureRaw = signals.curvatures(speed, courseOffset);
        this.curvature = wide.smooth(curvatureRaw);
        if (recording.has(Channel.DISTANCE)) {
            this.station = Signals.rising(signals.filled(Channel.DISTANCE));
            this.scale = Signals.Scale.without(1, 0);
        } else {
            double[] distance = Signals.integrated(time, measured);
            this.scale = like == null ? Signals.Scale.of(recording, cleaning, distance, curvature) : like.scale;
            this.station = Signals.scaled(distance, scale.factor(), recording.origin());
        }
        this.along = recording.has(Channel.LONGITUDINAL)
                ? wide.smooth(signals.filled(Channel.LONGITUDINAL))
                : Series.slope(time, measured, Math.max(half, DERIVED_HALF_WIDTH));
        this.across = recording.has(Channel.LATERAL)
                ? wide.smooth(signals.levelled(Channel.LATERAL, courseOffset))
                : Signals.product(curvature, speed);
        double[] pressed = recording.has(Channel.BRAKE)
                ? signals.filled(Channel.BRAKE)
                : Signals.braking(Series.slope(time, measured, Math.max(half, DERIVED_HALF_WIDTH)));
        this.brakeRest = like == null ? resting(pressed) : like.brakeRest;
        this.brakeRaw = Series.less(pressed, brakeRest);
        this.brake = narrow.smooth(brakeRaw);
        this.throttle = recording.has(Channel.THROTTLE) ? signals.filled(Channel.THROTTLE) : null;
        this.throttleAsked = like == null ? CornerMeter.asked(throttle) : like.throttleAsked;
        this.courseEvery = like == null ? period(recording.turning()) : like.courseEvery;
        this.courseNoise = like == null ? Bend.courseNoise(recording, period(Channel.X)) : like.courseNoise;
    }

    /** Half the width, s, over which a speed is differentiated at least. */
    static final double DERIVED_HALF_WIDTH = 0.15;

    /** Half the width, s, of the filter that the acceleration along the car has gone through. */
    double alongHalfWidth() {
        double half = cleaning.halfWidth();
        return recording.has(Channel.LONGITUDINAL) ? half : Math.max(half, DERIVED_HALF_WIDTH);
    }

    /** Share of the largest brake below which the pedal may be at rest. */
    private static final double RESTING = 0.05;

    private double resting(double[] pressed) {
        return recording.has(Channel.BRAKE) ? Series.resting(pressed, RESTING) : 0;
    }

    /**
     * Cleans a recording.
     *
     * @throws InvalidValueException if it has no channel from which curvature could be made, if the car stands still,
     *     or if two channels show that a unit is wrong
     */
    public static Run of(Recording recording, Cleaning cleaning) {
        Objects.requireNonNull(recording, "recording");
        if (!recording.knowsCourse()) {
            throw new InvalidValueException(
                    Channel.YAW_RATE.field(),
                    "missing",
                    "given, unless there is lateral acceleration or position: without them no corner is found");
        }
        return ofSpeed(recording, cleaning);
    }

    /**
     * The same for a recording that need not show a course: without one its curvature is zero, and it has no corner.
     * Brakes that {@linkplain Recording#impossibleBrakes cannot be} are bridged as missing ones are.
     *
     * @throws InvalidValueException if the car stands still, or another channel shows that a unit is wrong
     */
    public static Run ofSpeed(Recording recording, Cleaning cleaning) {
        Objects.requireNonNull(recording, "recording");
        Objects.requireNonNull(cleaning, "cleaning");
        Recording possible = recording.without(Channel.BRAKE, recording.impossibleBrakes());
        Run run = new Run(possible.withoutRepeats(), cleaning, null);
        double length = run.last() - run.first();
        if (!(length > 1 && length < LONGEST)) {
            throw new InvalidValueException(
                    Channel.DISTANCE.field(), length, "a run of more than a metre and less than 1000 km");
        }
        run.recording.requireOneSetOfUnits(run, run.scale.measured());
        return run;
    }

    /** Another recording of the same, but for its noise: cleaned with the delay, offsets and thresholds of this one. */
    Run like(Recording other) {
        return new Run(other, cleaning, this);
    }

    /** The recording. */
    public Recording recording() {
        return recording;
    }

    /** How it was cleaned. */
    public Cleaning cleaning() {
        return cleaning;
    }

    /** Whether the course was recorded: by lateral acceleration, yaw rate or position. */
    public boolean knowsCourse() {
        return recording.knowsCourse();
    }

    /** Rows in a second, Hz: one over the median step of time. */
    public double rate() {
        return 1 / period;
    }

    /** Factor by which distance made from speed was multiplied to agree with position; one where there is none. */
    public double distanceFactor() {
        return scale.factor();
    }

    /**
     * How far the recorded speed was behind the recorded accelerations, s; negative where it was ahead. The speed has
     * been moved by it. Zero where that cannot be seen.
     */
    public double speedDelay() {
        return delay;
    }

    /**
     * How far the deceleration follows the brake, s: the car's own lag and the logger's delays together, which nothing
     * here can take apart, so that no channel is moved by it. NaN where no brake was recorded, or the two are never
     * alike.
     */
    public double brakeLag() {
        return recording.has(Channel.BRAKE) ? Signals.Delays.ofDeceleration(time, brake, along) : Double.NaN;
    }

    /** Stretches that were bridged, though longer than the rate warrants; in driving order. */
    public List<Recording.Hole> holes() {
        return recording.holes(this);
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
     * The recorded positions, smoothed: made when asked for, since most runs are measured without.
     *
     * @throws IllegalArgumentException if positions were not recorded
     */
    public Course course() {
        Signals signals = new Signals(recording, time);
        double half = Math.max(cleaning.halfWidth(), Signals.POSITION_HALF_WIDTH);
        Series.Windows windows = Series.Windows.of(time, half);
        return new Course(this, windows.smooth(signals.filled(Channel.X)), windows.smooth(signals.filled(Channel.Y)));
    }

    /** Where the car was, along its run. */
    public static final class Course {

        private final Run run;
        private final double[] east;
        private final double[] north;

        private Course(Run run, double[] east, double[] north) {
            this.run = run;
            this.east = east;
            this.north = north;
        }

        /** First station, m. */
        public double first() {
            return run.first();
        }

        /** Last station, m. */
        public double last() {
            return run.last();
        }

        /** Position at a station, m. */
        public Path.Point at(double s) {
            return new Path.Point(Series.at(run.station, east, s), Series.at(run.station, north, s));
        }
    }

    /**
     * The run on its distance axis: {@code s_m, time_s, speed_mps, brake, throttle} (if recorded),
     * {@code longitudinal_acceleration_mps2, lateral_acceleration_mps2, curvature_per_m}.
     *
     * @param step between rows, m, a centimetre or more
     * @throws InvalidValueException if it is less
     */
    public Trace resampled(double step) {
        Checks.within("step_m", step, FINEST, LONGEST);
        List<Trace.Column> columns = new ArrayList<>();
        int rows = (int) Math.floor((last() - first()) / step + Signals.STANDING_STEP) + 1;
        double[] axis = new double[rows];
        for (int i = 0; i < rows; i++) {
            axis[i] = first() + i * step;
        }
        Series.Places places = Series.places(station, axis);
        columns.add(new Trace.Column(Channel.DISTANCE.field(), "m", axis));
        columns.add(new Trace.Column(Channel.TIME.field(), "s", places.read(time)));
        columns.add(new Trace.Column(Channel.SPEED.field(), "m/s", places.read(speed)));
        columns.add(new Trace.Column(Channel.BRAKE.field(), "", places.read(brake)));
        if (throttle != null) {
            columns.add(new Trace.Column(Channel.THROTTLE.field(), "", places.read(throttle)));
        }
        columns.add(new Trace.Column(Channel.LONGITUDINAL.field(), "m/s²", places.read(along)));
        columns.add(new Trace.Column(Channel.LATERAL.field(), "m/s²", places.read(across)));
        columns.add(new Trace.Column("curvature_per_m", "1/m", places.read(curvature)));
        return new Trace(columns);
    }

    /** Standard deviation of the scale of distances, a plain number. */
    double scaleError() {
        return scale.error();
    }

    /** Standard deviation of the smoothed speed, m/s: the noise of a sample over the root of those in a filter. */
    double speedNoise() {
        double[] raw =
                recording.has(Channel.SPEED) ? Series.known(recording.columns().get(Channel.SPEED)) : speed;
        return Series.noise(raw) / Math.sqrt(Math.max(1, 2 * cleaning.halfWidth() / period(Channel.SPEED)));
    }

    /**
     * Standard deviation of the smoothed curvature at a station, 1/m, by the noise of the channels that it is made of.
     */
    double curvatureNoise(double s) {
        double v = Math.max(1, speedAt(s));
        if (!recording.has(recording.turning())) {
            return courseNoise / (v * v);
        }
        double samples = Math.max(1, 2 * cleaning.halfWidth() / courseEvery);
        return courseNoise / (recording.has(Channel.LATERAL) ? v * v : v) / Math.sqrt(samples);
    }

    /** Median time between two numbers of a channel, s; between two rows where it was not recorded. */
    double period(Channel channel) {
        if (!recording.has(channel)) {
            return period;
        }
        double[] known = IntStream.of(Series.measured(recording.columns().get(channel)))
                .mapToDouble(i -> time[i])
                .toArray();
        return known.length < 2 ? period : Series.median(Signals.differences(known));
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

    /** Throttle from which it is asked for; NaN where it was not recorded, or never moves. */
    double throttleAsked() {
        return throttleAsked;
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
