package org.foreload.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;
import org.foreload.trace.Trace;

/**
 * One pass over a road as a logger wrote it: channels over common rows, in driving order. A number that was not
 * measured in a row is NaN. Nothing is cleaned yet: {@link Run} does that.
 *
 * <p>Recorded and simulated runs share the type {@link Trace}: {@link #of} reads either, {@link #trace} gives it back.
 */
public final class Recording {

    /** Fewest rows that a run can be read from. */
    public static final int FEWEST_ROWS = 10;

    private final Map<Channel, double[]> columns;
    private final int rows;
    private final double origin;

    private Recording(Map<Channel, double[]> columns, int rows, double origin) {
        this.columns = columns;
        this.rows = rows;
        this.origin = origin;
    }

    /**
     * A recording from its columns.
     *
     * @param columns copied; all of the same length; null is refused by that name
     * @throws InvalidValueException if there are too few rows; if there is neither time nor distance; if there is
     *     neither speed nor what speed can be made from (time with distance or with position); or if time or distance
     *     does not rise from row to row
     */
    public static Recording of(Map<Channel, double[]> columns) {
        Map<Channel, double[]> own = new EnumMap<>(Channel.class);
        Objects.requireNonNull(columns, "columns").forEach((key, values) -> own.put(key, values.clone()));
        int rows = own.isEmpty() ? 0 : own.values().iterator().next().length;
        own.forEach((channel, values) -> {
            if (values.length != rows) {
                throw new InvalidValueException(
                        channel.field(), values.length + " rows", rows + " rows, as the others");
            }
        });
        if (!(rows >= FEWEST_ROWS)) {
            throw new InvalidValueException("rows", rows, FEWEST_ROWS + " or more");
        }
        boolean time = own.containsKey(Channel.TIME);
        boolean distance = own.containsKey(Channel.DISTANCE);
        boolean position = own.containsKey(Channel.X) && own.containsKey(Channel.Y);
        if (!time && !distance) {
            throw new InvalidValueException("time_s", "missing", "given, unless there is distance");
        }
        if (!own.containsKey(Channel.SPEED) && !(time && (distance || position))) {
            throw new InvalidValueException(
                    "speed_mps", "missing", "given, unless there is time with distance or position");
        }
        if (time) {
            rising(Channel.TIME, own.get(Channel.TIME), false);
        }
        if (distance) {
            rising(Channel.DISTANCE, own.get(Channel.DISTANCE), time);
        }
        return new Recording(own, rows, 0);
    }

    /**
     * A recording from a table whose columns are named as the channels are; others are left alone. The table of a
     * simulated entry may be given as it is: its brake and drive are read as the two pedals.
     *
     * @throws InvalidValueException as {@link #of(Map)}
     */
    public static Recording of(Trace trace) {
        Objects.requireNonNull(trace, "trace");
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        for (Channel channel : Channel.values()) {
            trace.find(channel.field()).ifPresent(column -> columns.put(channel, column.values()));
        }
        simulated(trace, columns, "brake_mps2", Channel.BRAKE, 1);
        simulated(trace, columns, "drive_mps2", Channel.THROTTLE, 1);
        simulated(trace, columns, "steer_deg", Channel.STEERING, Math.PI / 180);
        simulated(trace, columns, "deceleration_mps2", Channel.LONGITUDINAL, -1);
        return of(columns);
    }

    private static void simulated(Trace trace, Map<Channel, double[]> to, String name, Channel channel, double factor) {
        trace.find(name)
                .ifPresent(column -> to.computeIfAbsent(channel, own -> Signals.scaled(column.values(), factor, 0)));
    }

    private static void rising(Channel channel, double[] values, boolean holes) {
        double before = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < values.length; i++) {
            boolean rises = values[i] > before && values[i] < Double.POSITIVE_INFINITY;
            if (!rises && !(holes && !Double.isFinite(values[i]))) {
                String field = channel.field() + ", row " + (i + 1);
                throw new InvalidValueException(field, values[i], "above that of the row before");
            }
            before = rises ? values[i] : before;
        }
    }

    /**
     * The same recording with its first row at a station in m: for a part cut out of a longer run whose distance is
     * made from speed. A recorded distance is left as it is.
     *
     * @throws InvalidValueException if the station is not finite
     */
    public Recording startingAt(double station) {
        Checks.finite("station_m", station);
        return has(Channel.DISTANCE) ? this : new Recording(columns, rows, station);
    }

    /**
     * The same with other positions.
     *
     * @param x m, one for each row
     * @param y m, one for each row
     * @throws InvalidValueException if they are not as many as there are rows
     */
    public Recording withPosition(double[] x, double[] y) {
        Objects.requireNonNull(x, "x");
        if (Objects.requireNonNull(y, "y").length != rows || x.length != rows) {
            throw new InvalidValueException(
                    Channel.X.field(), x.length + " and " + y.length + " rows", rows + " rows, as the others");
        }
        Map<Channel, double[]> other = new EnumMap<>(columns);
        other.put(Channel.X, x.clone());
        other.put(Channel.Y, y.clone());
        return new Recording(other, rows, origin);
    }

    /** The same axes with other numbers, not copied and not checked again. */
    Recording with(Map<Channel, double[]> other) {
        return new Recording(other, rows, origin);
    }

    /** Station of the first row where distance is made from speed, m; zero where distance was recorded. */
    public double origin() {
        return origin;
    }

    /** Whether the course was recorded: by lateral acceleration, yaw rate or position. */
    boolean knowsCourse() {
        return has(Channel.YAW_RATE) || has(Channel.LATERAL) || hasPosition();
    }

    /** The channel that curvature is made of, unless that is the positions. */
    Channel turning() {
        return has(Channel.LATERAL) ? Channel.LATERAL : Channel.YAW_RATE;
    }

    /** Whether corners are measured by a channel; the axes are taken as they are. */
    boolean countsFor(Channel channel) {
        boolean speed = has(Channel.SPEED) || has(Channel.DISTANCE);
        return switch (channel) {
            case TIME, DISTANCE -> false;
            case YAW_RATE -> !has(Channel.LATERAL);
            case X, Y -> !(has(turning()) && speed);
            default -> true;
        };
    }

    /** Number of rows. */
    public int rows() {
        return rows;
    }

    /** Whether the channel was recorded. */
    public boolean has(Channel channel) {
        return columns.containsKey(Objects.requireNonNull(channel, "channel"));
    }

    /** Whether there are positions. */
    public boolean hasPosition() {
        return has(Channel.X) && has(Channel.Y);
    }

    /**
     * A copy of a channel's numbers, NaN where one was not measured.
     *
     * @throws IllegalArgumentException if it was not recorded
     */
    public double[] column(Channel channel) {
        double[] values = columns.get(Objects.requireNonNull(channel, "channel"));
        if (values == null) {
            throw new IllegalArgumentException("no channel " + channel.field());
        }
        return values.clone();
    }

    /** The columns, not copied: for those who only read. */
    Map<Channel, double[]> columns() {
        return columns;
    }

    /**
     * Rows whose brake no foot can have given, though each is a number; in driving order, none if the brake was not
     * recorded. They are
     *
     * <ul>
     *   <li>those that leave the level of the rows on both sides by half the brake's range, or by clearly more than its
     *       noise where it is never pressed, and are back within a twentieth of a second;
     *   <li>those above twice the brake's range, or below its rest by a quarter of it;
     *   <li>those of an error code that lasts: one number, in half of the rows at most, more than five ranges beyond
     *       all else that is kept up, to which and from which the brake jumps within a twentieth of a second.
     * </ul>
     *
     * The range is that between the least and the greatest that the brake keeps up for a tenth of a second, and for
     * three rows: single rows have no say in it, nor has an error code; an offset at rest has.
     */
    public int[] impossibleBrakes() {
        double[] brake = columns.get(Channel.BRAKE);
        return brake == null ? new int[0] : Cleaning.impossible(Signals.of(this).time(), brake);
    }

    /** The same with the cells of a channel in some rows left empty. */
    public Recording without(Channel channel, int[] emptied) {
        Objects.requireNonNull(channel, "channel");
        if (Objects.requireNonNull(emptied, "emptied").length == 0) {
            return this;
        }
        double[] values = column(channel);
        for (int row : emptied) {
            values[row] = Double.NaN;
        }
        Map<Channel, double[]> other = new EnumMap<>(columns);
        other.put(channel, values);
        return new Recording(other, rows, origin);
    }

    /** The same without the cells that only {@linkplain Cleaning#repeats repeat} those of the row before. */
    Recording withoutRepeats() {
        Recording some = this;
        for (Channel channel : columns.keySet()) {
            some = channel == axis() ? some : some.without(channel, Cleaning.repeats(columns.get(channel)));
        }
        return some;
    }

    /**
     * Lengths apart by more than this are no error of a sensor, but of a unit: km/h and knots, the nearest two that
     * cars are logged in, are 1.85 apart, mph and km/h 1.6.
     */
    private static final double ANOTHER_LENGTH = 1.25;

    /** The same for accelerations, which a banked road, a pitching body and the logger's own filters change besides. */
    private static final double ANOTHER_ACCELERATION = 1.5;

    /**
     * Refuses a speed that is in another unit than was said, by whatever else shows it; or another channel, where the
     * length of the road shows that the speed is right.
     *
     * @param run made of this recording
     * @param positions length by positions over length by speed; NaN where that is not known
     */
    void requireOneSetOfUnits(Run run, double positions) {
        if (!has(Channel.SPEED)) {
            return;
        }
        double[] time = run.time();
        double[] speed = run.speed();
        double half = Signals.POSITION_HALF_WIDTH;
        lengths(1 / positions, "what the positions say", "speed and time");
        boolean measured = has(Channel.TIME) && has(Channel.DISTANCE);
        if (measured) {
            double[] driven = Signals.integrated(time, speed);
            lengths(
                    driven[driven.length - 1] / (run.last() - run.first()),
                    "what the distance says",
                    "speed, distance and time");
        }
        Optional<Channel> wrong = measured || !Double.isNaN(positions) ? Optional.empty() : Optional.of(Channel.SPEED);
        if (has(Channel.TIME) && has(Channel.LONGITUDINAL)) {
            double factor = factor(Series.smooth(time, run.along(), half), Series.slope(time, speed, half));
            accelerations(wrong.orElse(Channel.LONGITUDINAL), factor, "the slope of the speed", "speed and time");
        }
        if (has(Channel.LATERAL) && has(Channel.YAW_RATE)) {
            double[] made = Series.smooth(time, Signals.of(this).filled(Channel.YAW_RATE), half);
            Arrays.setAll(made, i -> made[i] * speed[i]);
            double factor = factor(Series.smooth(time, run.across(), half), made);
            accelerations(wrong.orElse(Channel.LATERAL), factor, "speed times yaw rate", "speed and yaw rate");
        }
    }

    private static void lengths(double factor, String says, String units) {
        if (factor > ANOTHER_LENGTH || factor < 1 / ANOTHER_LENGTH) {
            throw new InvalidValueException(
                    Channel.SPEED.field(),
                    times(factor) + says,
                    "within a quarter of that: look at the units of " + units);
        }
    }

    private static void accelerations(Channel wrong, double factor, String other, String units) {
        if (factor > ANOTHER_ACCELERATION || factor < 1 / ANOTHER_ACCELERATION) {
            throw new InvalidValueException(
                    wrong.field(),
                    wrong == Channel.SPEED ? times(1 / factor) + "what the acceleration says" : times(factor) + other,
                    "within a half of that: look at the units of " + units + " and of the acceleration");
        }
    }

    private static String times(double factor) {
        return String.format(Locale.ROOT, "%.2g times ", factor);
    }

    /** Acceleration, m/s², from which a car is worked so hard that no offset and no hill hides the units. */
    private static final double WORKED = 2;

    /** Rows in which it must be. */
    private static final int FEWEST_WORKED = 50;

    /** Upper over lower quartile of a factor that is one of units; what scatters more has another cause, as a spin. */
    private static final double ONE_FACTOR = 1.5;

    /** By how much one acceleration is greater than another that shows the same; NaN if that is no one number. */
    private static double factor(double[] one, double[] other) {
        double[] factors = IntStream.range(0, one.length)
                .filter(i -> Math.max(Math.abs(one[i]), Math.abs(other[i])) > WORKED)
                .mapToDouble(i -> Math.abs(one[i] / other[i]))
                .toArray();
        boolean alike = factors.length >= FEWEST_WORKED
                && Series.quantile(factors, 0.75) < ONE_FACTOR * Series.quantile(factors, 0.25);
        return alike ? Series.median(factors) : Double.NaN;
    }

    /**
     * A stretch in which channels were not measured for longer than their own rate warrants: more than two and a half
     * of their usual steps, and longer than half of the filters' width.
     *
     * @param channels that were not; time, or distance where there is no time, stands for whole rows
     * @param from station of the last row before it, m
     * @param to station of the first row behind it, m
     * @param lasts s
     */
    public record Hole(Set<Channel> channels, double from, double to, double lasts) {

        /** Copies the channels, in the order in which they are declared. */
        public Hole {
            channels = Collections.unmodifiableSet(EnumSet.copyOf(Objects.requireNonNull(channels, "channels")));
        }

        /** Whether there are no rows at all. */
        public boolean whole() {
            return channels.contains(Channel.TIME) || channels.contains(Channel.DISTANCE);
        }
    }

    /** The channel whose rows the others share. */
    Channel axis() {
        return has(Channel.TIME) ? Channel.TIME : Channel.DISTANCE;
    }

    /** Holes in the channels that corners are measured by, in driving order. */
    List<Hole> holes(Run run) {
        Map<List<Integer>, Set<Channel>> found = new HashMap<>();
        columns.forEach((channel, values) -> {
            if (channel == axis() || countsFor(channel) && channel != Channel.STEERING) {
                for (int[] rows :
                        Series.holes(run.time(), values, run.cleaning().halfWidth())) {
                    found.computeIfAbsent(List.of(rows[0], rows[1]), key -> EnumSet.noneOf(Channel.class))
                            .add(channel);
                }
            }
        });
        List<Hole> holes = new ArrayList<>();
        found.forEach((rows, channels) -> {
            int before = rows.get(0);
            int behind = rows.get(1);
            double lasts = run.time()[behind] - run.time()[before];
            holes.add(new Hole(channels, run.station()[before], run.station()[behind], lasts));
        });
        holes.sort(Comparator.comparingDouble(Hole::from).thenComparingDouble(Hole::to));
        return List.copyOf(holes);
    }

    /** The recording as a table, its columns named as the channels are; time or distance comes first. */
    public Trace trace() {
        return new Trace(columns.entrySet().stream()
                .map(entry ->
                        new Trace.Column(entry.getKey().field(), entry.getKey().unit(), entry.getValue()))
                .toList());
    }
}
