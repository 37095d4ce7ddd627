package org.foreload.recording;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.foreload.braking.BrakePlan;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;

/**
 * A point mass on a line that brakes to a plan and rolls on at the speed it is left with: every place of its run is
 * known without the code under test.
 */
public final class KnownRun {

    /** Length of the approach, m: stations of the plan are counted from turn-in, those of the run from the start. */
    public static final double APPROACH = 300;

    static final double SPEED = 50;

    /** Radius of the corner, m. */
    static final double RADIUS = 60;

    static final double SPIRAL = 40;

    static final double ARC = 60;

    private final BrakePlan plan;
    private final Path path;
    private final double[] speeds;
    private final double[] times;

    /** Drives a plan. */
    public KnownRun(BrakePlan plan) {
        this(
                plan,
                List.of(
                        Segment.spiralIn(SPIRAL, RADIUS, Turn.LEFT),
                        Segment.arc(ARC, RADIUS, Turn.LEFT),
                        Segment.spiralOut(SPIRAL, RADIUS, Turn.LEFT)));
    }

    /** Drives a plan into another corner. */
    KnownRun(BrakePlan plan, List<Segment> corner) {
        this.plan = plan;
        this.path = SegmentPath.of(APPROACH, corner, 200, 5);
        int steps = 60_000;
        speeds = new double[steps];
        times = new double[steps];
        double v = SPEED;
        double t = 0;
        double pressed = Double.NaN;
        for (int i = 0; i < steps; i++) {
            double s = station(i) - APPROACH;
            speeds[i] = v;
            times[i] = t;
            if (Double.isNaN(pressed) && s >= plan.brakePoint()) {
                pressed = t;
            }
            double brake = Double.isNaN(pressed) ? 0 : plan.demand(s, t - pressed);
            double next = Math.sqrt(Math.max(1, v * v - 2 * brake * STEP));
            t += 2 * STEP / (v + next);
            v = next;
        }
    }

    private static final double STEP = 0.01;

    private static double station(int i) {
        return i * STEP;
    }

    double brakeOn() {
        return APPROACH + plan.brakePoint();
    }

    double releaseEnd() {
        return APPROACH + plan.release().end();
    }

    double speedAt(double s) {
        return speeds[(int) Math.round(s / STEP)];
    }

    /** Time at a station, s. */
    public double timeAt(double s) {
        return times[(int) Math.round(s / STEP)];
    }

    double minimumSpeed() {
        return speeds[speeds.length - 1];
    }

    double trailShare() {
        double least = minimumSpeed();
        return (speedAt(APPROACH) - least) / (speedAt(brakeOn()) - least);
    }

    /** Rows at a rate in Hz, the first at a fraction of a period; noise of a usual logger times {@code noise}. */
    public Recording recording(double rate, double phase, double noise, long seed, boolean position) {
        SplittableRandom random = new SplittableRandom(seed);
        int rows = (int) ((times[times.length - 1] - phase / rate) * rate);
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        for (Channel channel : List.of(Channel.TIME, Channel.SPEED, Channel.BRAKE, Channel.LATERAL, Channel.YAW_RATE)) {
            columns.put(channel, new double[rows]);
        }
        if (position) {
            columns.put(Channel.X, new double[rows]);
            columns.put(Channel.Y, new double[rows]);
        }
        double pressed = timeAt(brakeOn());
        int i = 0;
        for (int k = 0; k < rows; k++) {
            double t = (k + phase) / rate;
            while (i + 1 < times.length - 1 && times[i + 1] <= t) {
                i++;
            }
            double share = (t - times[i]) / (times[i + 1] - times[i]);
            double s = station(i) + share * STEP - APPROACH;
            double v = speeds[i] + share * (speeds[i + 1] - speeds[i]);
            columns.get(Channel.TIME)[k] = t;
            columns.get(Channel.SPEED)[k] = v + noise * 0.08 * random.nextGaussian();
            double brake = t >= pressed ? plan.demand(s, t - pressed) : 0;
            columns.get(Channel.BRAKE)[k] = brake + noise * 0.1 * random.nextGaussian();
            columns.get(Channel.LATERAL)[k] = v * v * path.curvature(s) + noise * 0.4 * random.nextGaussian();
            columns.get(Channel.YAW_RATE)[k] = v * path.curvature(s) + noise * 0.01 * random.nextGaussian();
            if (position) {
                Path.Point point = path.position(s);
                columns.get(Channel.X)[k] = point.x() + noise * 0.1 * random.nextGaussian();
                columns.get(Channel.Y)[k] = point.y() + noise * 0.1 * random.nextGaussian();
            }
        }
        return Recording.of(columns);
    }

    /** Station of the first row of such a recording, m. */
    public double first(double rate, double phase) {
        return SPEED * phase / rate;
    }
}
