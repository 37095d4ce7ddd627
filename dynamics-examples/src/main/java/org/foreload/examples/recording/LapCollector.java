package org.foreload.examples.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.foreload.conventions.InvalidValueException;
import org.foreload.file.InputException;
import org.foreload.recording.Channel;
import org.foreload.recording.Recording;

/**
 * Takes rows in the order of the file, sorts out those that cannot be used, and keeps the laps that are wanted. Memory
 * is bounded: beyond {@link #MOST_ROWS} rows nothing more is kept, and the report says so.
 */
final class LapCollector {

    /** Rows that are kept at most, over all laps: fifty minutes at 100 Hz. */
    static final int MOST_ROWS = 300_000;

    /** Backward step of time, s, or of distance, m, that begins a new lap; a smaller one is a row out of order. */
    private static final double TIME_RESET = 2;

    private static final double DISTANCE_RESET = 20;

    /** Distance, m, that no car travels in the time of two rows. */
    private static final double FARTHEST = 1000;

    /** Pause of the logger, s, after which a new pass begins. */
    private static final double PAUSE = 10;

    private final String file;
    private final Cut cut;
    private final Set<Quantity> known;
    private final LeftOut leftOut;
    private final BadBrake badBrake;
    private final List<RecordedFile.Lap> laps = new ArrayList<>();
    private LocalPlane plane;
    private Rows rows = new Rows(0, 0);
    private final FullClock clock = new FullClock();
    private double lastTime = Double.NaN;
    private double lastDistance = Double.NaN;
    private double lastSpeed = Double.NaN;
    private double lastX = Double.NaN;
    private double lastY = Double.NaN;
    private double travelled;
    private double lapColumn = Double.NaN;
    private long lap = 1;
    private long firstLap = Long.MAX_VALUE;
    private long lastLap = Long.MIN_VALUE;
    private int kept;
    private long read;
    private final double[] held = new double[Quantity.values().length];
    private long heldLine;

    /** Hears of the brake cells that no foot can have given. */
    interface BadBrake {

        /**
         * One of them.
         *
         * @param line where it stands
         * @param value what it says
         */
        void cell(long line, double value);
    }

    /**
     * @param file for errors
     * @param cut which part is wanted
     * @param known the columns that there are
     * @param leftOut takes the lines that cannot be used
     * @param badBrake takes the brake cells that cannot be
     */
    LapCollector(String file, Cut cut, Set<Quantity> known, LeftOut leftOut, BadBrake badBrake) {
        this.badBrake = badBrake;
        this.file = file;
        this.cut = cut;
        this.known = known.isEmpty() ? EnumSet.noneOf(Quantity.class) : EnumSet.copyOf(known);
        this.leftOut = leftOut;
    }

    /**
     * One row.
     *
     * @param line where it stands
     * @param values by {@link Quantity}; NaN where there is none
     */
    void add(long line, double[] values) {
        read++;
        place(values);
        double time = clock.goesOn(values[Quantity.TIME.ordinal()]);
        values[Quantity.TIME.ordinal()] = time;
        double distance = values[Quantity.DISTANCE.ordinal()];
        boolean timed = known.contains(Quantity.TIME);
        if (timed ? Double.isNaN(time) : Double.isNaN(distance)) {
            leftOut.add(line, timed ? "no time: the row is not used" : "no distance: the row is not used");
            return;
        }
        take(values);
        System.arraycopy(values, 0, held, 0, held.length);
        heldLine = line;
    }

    /** Uses the row that is held back, if there is one, unless the next shows that it is out of order. */
    private void take(double[] next) {
        if (heldLine == 0) {
            return;
        }
        long line = heldLine;
        heldLine = 0;
        String unusable = outOfOrder(next);
        boolean timed = known.contains(Quantity.TIME);
        double time = held[Quantity.TIME.ordinal()];
        double distance = held[Quantity.DISTANCE.ordinal()];
        unusable = unusable == null ? turn(held, time, distance, timed) : unusable;
        if (unusable != null) {
            leftOut.add(line, unusable);
        } else {
            use(line, held, time, distance);
        }
    }

    /**
     * Why the row that is held back is out of order: the next goes on where the one before has ended, and this one lies
     * elsewhere. By itself it would look like the begin of a lap, or put all that follows it out of order.
     */
    private String outOfOrder(double[] next) {
        int lapAt = Quantity.LAP.ordinal();
        boolean sameLap = !(held[lapAt] != next[lapAt] || held[lapAt] != lapColumn)
                || Double.isNaN(held[lapAt]) && Double.isNaN(next[lapAt]);
        int timeAt = Quantity.TIME.ordinal();
        int distanceAt = Quantity.DISTANCE.ordinal();
        if (sameLap
                && goesOn(lastTime, next[timeAt], PAUSE)
                && leaves(lastTime, held[timeAt], next[timeAt], TIME_RESET, 0)) {
            return "time out of order";
        }
        return sameLap
                        && goesOn(lastDistance, next[distanceAt], FARTHEST)
                        && leaves(lastDistance, held[distanceAt], next[distanceAt], DISTANCE_RESET, DISTANCE_RESET)
                ? "distance out of order"
                : null;
    }

    private static boolean goesOn(double before, double next, double most) {
        return next > before && next <= before + most;
    }

    private static boolean leaves(double before, double held, double next, double back, double forth) {
        return held < before - back || held > next + forth;
    }

    private void use(long line, double[] values, double time, double distance) {
        advance(values, time, distance);
        firstLap = Math.min(firstLap, lap);
        lastLap = Math.max(lastLap, lap);
        double station = known.contains(Quantity.DISTANCE) ? lastDistance : travelled;
        if (!cut.holdsLap(lap) || !(cut.holds(station) || Double.isNaN(station))) {
            return;
        }
        if (kept >= MOST_ROWS) {
            leftOut.add(
                    line, "more than the " + MOST_ROWS + " rows that are kept: choose some by --lap, --from and --to");
            return;
        }
        if (rows.size == 0) {
            rows = new Rows(lap, station);
        }
        rows.add(line, values);
        kept++;
    }

    /** Begins a new lap where the file does; says why a row cannot be used. */
    private String turn(double[] values, double time, double distance, boolean timed) {
        double number = values[Quantity.LAP.ordinal()];
        boolean changed = !Double.isNaN(number) && !Double.isNaN(lapColumn) && number != lapColumn;
        boolean reset = timed && (time < lastTime - TIME_RESET || time > lastTime + PAUSE)
                || distance < lastDistance - DISTANCE_RESET;
        if (!changed && !reset) {
            if (timed && time <= lastTime) {
                return time == lastTime ? "same time as the row before" : "time goes back";
            }
            if (!timed && distance <= lastDistance) {
                return distance == lastDistance ? "same distance as the row before" : "distance goes back";
            }
        }
        if (changed || reset) {
            finish();
            lap = Double.isNaN(number) ? lap + 1 : Math.round(number);
            lastTime = Double.NaN;
            lastDistance = Double.NaN;
            travelled = 0;
        } else if (Double.isNaN(lapColumn) && !Double.isNaN(number)) {
            lap = Math.round(number);
        }
        lapColumn = Double.isNaN(number) ? lapColumn : number;
        return null;
    }

    private void advance(double[] values, double time, double distance) {
        double speed = values[Quantity.SPEED.ordinal()];
        speed = Double.isNaN(speed) ? lastSpeed : speed;
        double x = values[Quantity.X.ordinal()];
        double y = values[Quantity.Y.ordinal()];
        if (known.contains(Quantity.SPEED)) {
            double step = (time - lastTime) * (speed + lastSpeed) / 2;
            travelled += Double.isFinite(step) ? Math.max(0, step) : 0;
        } else {
            double step = Math.hypot(x - lastX, y - lastY);
            travelled += Double.isFinite(step) && !Double.isNaN(lastTime) ? step : 0;
        }
        lastTime = time;
        lastSpeed = speed;
        lastX = Double.isNaN(x) ? lastX : x;
        lastY = Double.isNaN(y) ? lastY : y;
        boolean onward = !(distance <= lastDistance);
        if (onward && !Double.isNaN(distance)) {
            lastDistance = distance;
        } else {
            // A coarse distance stands still for some rows: it is known again where it moves.
            values[Quantity.DISTANCE.ordinal()] = Double.NaN;
        }
    }

    /** Positions on the globe become metres in a plane. */
    private void place(double[] values) {
        double latitude = values[Quantity.LATITUDE.ordinal()];
        double longitude = values[Quantity.LONGITUDE.ordinal()];
        if (Double.isNaN(latitude) || Double.isNaN(longitude)) {
            return;
        }
        if (plane == null) {
            plane = new LocalPlane(latitude, longitude);
        }
        values[Quantity.X.ordinal()] = plane.east(longitude);
        values[Quantity.Y.ordinal()] = plane.north(latitude);
    }

    /** Ends the last lap: no row comes after. */
    void end() {
        take(NOTHING);
        finish();
    }

    private static final double[] NOTHING = new double[Quantity.values().length];

    static {
        Arrays.fill(NOTHING, Double.NaN);
    }

    private void finish() {
        if (rows.size > 0) {
            try {
                laps.add(new RecordedFile.Lap(rows.lap, withoutBadBrakes(rows.recording(known))));
            } catch (InvalidValueException e) {
                leftOut.add(
                        rows.first(), rows.last(), "lap " + rows.lap + ": " + e.field() + " must be " + e.allowed());
                kept -= rows.size;
            }
        }
        rows = new Rows(0, 0);
    }

    private Recording withoutBadBrakes(Recording recording) {
        int[] bad = recording.impossibleBrakes();
        for (int row : bad) {
            badBrake.cell(rows.lines[row], rows.columns[Quantity.BRAKE.ordinal()][row]);
        }
        return recording.without(Channel.BRAKE, bad);
    }

    /** Refuses a lap that the file has not. */
    private void refuseLap() {
        if (cut.lap().isPresent() && firstLap <= lastLap) {
            long wanted = cut.lap().getAsLong();
            if (!(wanted >= firstLap && wanted <= lastLap)) {
                String there = firstLap == lastLap ? "there is " : "there are " + firstLap + " to ";
                throw new InputException(file, "--lap", Long.toString(wanted), "no such lap; " + there + lastLap);
            }
        }
    }

    /** Rows that were given. */
    long read() {
        return read;
    }

    /**
     * What was read.
     *
     * @param verdict on the columns
     * @throws InputException if no lap can be used
     */
    RecordedFile result(ColumnCheck.Verdict verdict) {
        end();
        laps.replaceAll(lap -> lap.without(verdict.dropped()));
        if (laps.isEmpty()) {
            refuseLap();
            String why = leftOut.commonest()
                    .map(range -> range.reason() + ", line " + range.first())
                    .orElse("no rows in the part that is asked for");
            throw new InputException(file, null, null, "has no run that can be used: " + why);
        }
        List<RecordedFile.Unused> left = leftOut.ranges().stream()
                .map(range -> new RecordedFile.Unused(
                        range.first(), range.last(), range.column(), range.text(), range.reason()))
                .toList();
        RecordedFile.GlobePoint origin =
                plane == null ? null : new RecordedFile.GlobePoint(plane.latitude(), plane.longitude());
        return new RecordedFile(file, laps, verdict.channels(), verdict.ignored(), read, left, origin);
    }

    /** Growing columns of one lap. */
    private static final class Rows {

        private static final int FIRST = 256;

        private final long lap;
        private final double origin;
        private double[][] columns = new double[Quantity.values().length][];
        private long[] lines = new long[FIRST];
        private int size;

        Rows(long lap, double origin) {
            this.lap = lap;
            this.origin = origin;
        }

        void add(long line, double[] values) {
            for (int q = 0; q < columns.length; q++) {
                if (columns[q] == null && !Double.isNaN(values[q])) {
                    columns[q] = new double[Math.max(FIRST, size + 1)];
                    Arrays.fill(columns[q], 0, size, Double.NaN);
                }
                if (columns[q] != null) {
                    if (columns[q].length <= size) {
                        columns[q] = Arrays.copyOf(columns[q], 2 * size);
                    }
                    columns[q][size] = values[q];
                }
            }
            if (lines.length <= size) {
                lines = Arrays.copyOf(lines, 2 * size);
            }
            lines[size++] = line;
        }

        long first() {
            return lines[0];
        }

        long last() {
            return lines[size - 1];
        }

        Recording recording(Set<Quantity> known) {
            Map<Channel, double[]> found = new EnumMap<>(Channel.class);
            for (Quantity quantity : Quantity.values()) {
                double[] column = columns[quantity.ordinal()];
                quantity.channel().ifPresent(channel -> {
                    if (column != null) {
                        found.put(channel, Arrays.copyOf(column, size));
                    }
                });
            }
            Recording recording = Recording.of(found);
            return known.contains(Quantity.DISTANCE) ? recording : recording.startingAt(origin);
        }
    }
}
