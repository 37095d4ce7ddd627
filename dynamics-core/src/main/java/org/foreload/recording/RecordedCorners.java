package org.foreload.recording;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.foreload.braking.ReleaseShape;
import org.foreload.conventions.InvalidValueException;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * Finds and measures the corners of a run.
 *
 * <p>Intervals: the run is measured again and again with noise of the size of its own added to every channel; the
 * spread of the results is what the noise does to a measure. To it come what noise does not show: the scale of the
 * distances, and that an edge lies somewhere between two samples. The parts are independent, so their squares add up;
 * the interval is the normal one of the stated coverage. What lies in a hole of the recording is lost, or its interval
 * reaches over the hole; so is what the run begins or ends in.
 */
public final class RecordedCorners {

    private final Run run;
    private final List<Bend> bends;
    private final double[] borders;
    private final double brakeNoise;
    private final double hardest;

    /** Corners in one lap at most: no road has as many, noise without a road has more. */
    private static final int MOST_CORNERS = 500;

    private RecordedCorners(Run run) {
        this.run = run;
        this.bends = Bend.find(run);
        if (!(bends.size() <= MOST_CORNERS)) {
            throw new InvalidValueException("corners", bends.size(), "at most " + MOST_CORNERS + " in one lap: cut it");
        }
        this.borders = new double[bends.size() + 1];
        borders[0] = run.first();
        borders[bends.size()] = run.last();
        for (int i = 1; i < bends.size(); i++) {
            borders[i] = Math.max(borders[i - 1], CornerMeter.border(run, bends.get(i - 1), bends.get(i)));
        }
        this.brakeNoise = Series.noise(run.brakeRaw());
        this.hardest = CornerMeter.hardest(run);
    }

    /**
     * The corners of a run in driving order, measured; none if the course is nowhere bent.
     *
     * @throws InvalidValueException if there are more than {@value #MOST_CORNERS}
     */
    public static List<RecordedCorner> of(Run run) {
        return new RecordedCorners(run).measured();
    }

    /**
     * Corners that a run begins in, or ends in before their tightest stretch is behind: they are not measured, and not
     * counted. One or two, numbered among all; none if the course is nowhere bent.
     */
    public static List<Bend> cut(Run run) {
        return Bend.all(run).stream().filter(bend -> bend.cutBy(run)).toList();
    }

    private List<RecordedCorner> measured() {
        List<CornerMeter.Reading> readings = new ArrayList<>();
        for (int i = 0; i < bends.size(); i++) {
            readings.add(meter(run, i).read(Optional.empty()));
        }
        List<List<CornerMeter.Reading>> shaken = shaken(readings);
        List<RecordedCorner> corners = new ArrayList<>();
        List<Recording.Hole> holes = run.holes();
        for (int i = 0; i < bends.size(); i++) {
            CornerMeter.Reading reading = readings.get(i);
            Map<Measure, Estimate> measures = new EnumMap<>(Measure.class);
            for (Measure measure : Measure.values()) {
                measures.put(measure, estimate(measure, bends.get(i), reading, shaken.get(i)));
            }
            boolean whole = new Beside(run, bends.get(i), measures, holes, hardest).released();
            Optional<ReleaseShape> shape =
                    reading.release().map(ReleaseFit::shape).filter(fitted -> whole);
            corners.add(new RecordedCorner(bends.get(i), shape, measures));
        }
        return corners;
    }

    private CornerMeter meter(Run of, int i) {
        double from = i == 0 ? run.first() : bends.get(i - 1).end();
        double to = i + 1 == bends.size() ? run.last() : bends.get(i + 1).start();
        double[] pedals = {borders[i], borders[i + 1]};
        return new CornerMeter(of, bends.get(i), from, to, pedals, brakeNoise, hardest);
    }

    private List<List<CornerMeter.Reading>> shaken(List<CornerMeter.Reading> readings) {
        List<List<CornerMeter.Reading>> all = new ArrayList<>();
        readings.forEach(reading -> all.add(new ArrayList<>()));
        SplittableRandom random = new SplittableRandom(run.cleaning().seed());
        int resamples = bends.isEmpty() ? 0 : run.cleaning().resamples();
        Map<Channel, Double> noises = resamples > 0 ? run.noises() : Map.of();
        for (int k = 0; k < resamples; k++) {
            Run again = run.shaken(noises, random.split());
            for (int i = 0; i < bends.size(); i++) {
                Optional<ReleaseShape> shape = readings.get(i).release().map(ReleaseFit::shape);
                all.get(i).add(meter(again, i).read(shape));
            }
        }
        return all;
    }

    /** Half the width of an interval of the stated coverage, in standard deviations. */
    private double times() {
        return new NormalDistribution()
                .inverseCumulativeProbability((1 + run.cleaning().coverage()) / 2);
    }

    private Estimate estimate(
            Measure measure, Bend bend, CornerMeter.Reading reading, List<CornerMeter.Reading> shaken) {
        double value = reading.get(measure);
        if (Double.isNaN(value)) {
            return Estimate.NONE;
        }
        double sum = 0;
        int count = 0;
        for (CornerMeter.Reading again : shaken) {
            double difference = again.get(measure) - value;
            if (!Double.isNaN(difference)) {
                sum += difference * difference;
                count++;
            }
        }
        double noise = count == 0 ? 0 : sum / count;
        double unseen = unseen(measure, bend, reading);
        Estimate estimate = Estimate.around(value, times() * Math.sqrt(noise + unseen * unseen));
        return switch (measure.kind()) {
            case SHARE -> estimate.within(0, 1);
            case LENGTH, COUNT, NOT_NEGATIVE -> estimate.within(0, Double.POSITIVE_INFINITY);
            case STATION, SPEED, OTHER -> estimate;
        };
    }

    /**
     * A wheel takes time to be turned, so a course leaves a straight gradually: standard deviation, s, of when it does.
     * Measured on simulated runs, whose turn-in is known: found on average 0.02 s later, and up to 0.06 s where the
     * brake is carried into a tight corner.
     */
    private static final double STEERING_TIME = 0.045;

    /** The same where the course is known by positions alone, s. */
    private static final double BY_POSITION = 0.08;

    /** The same by yaw rate alone, s: a braked car turns its nose before its course bends; up to 0.24 s early. */
    private static final double BY_YAW_RATE = 0.15;

    /** The same for the middle of the tightest stretch, as a share of the length of the bend; measured likewise. */
    private static final double APEX_SHARE = 0.018;

    /** And by yaw rate alone. */
    private static final double APEX_BY_YAW_RATE = 0.045;

    private double steeringTime() {
        if (run.recording().has(Channel.LATERAL)) {
            return STEERING_TIME;
        }
        return run.recording().has(Channel.YAW_RATE) ? BY_YAW_RATE : BY_POSITION;
    }

    private double apexShare() {
        boolean yaw = !run.recording().has(Channel.LATERAL) && run.recording().has(Channel.YAW_RATE);
        return yaw ? APEX_BY_YAW_RATE : APEX_SHARE;
    }

    /** The same for the foot coming down, whose rise need not be half a cosine, s. */
    private static final double ONSET_TIME = 0.005;

    /** The same for the foot on the throttle, s, whose rise need not be a power of time; measured on made rises. */
    private static final double PICK_UP_TIME = 0.01;

    /** The same for a foot that is only seen in the deceleration, s; measured on simulated runs. */
    private static final double DERIVED_TIME = 0.08;

    private boolean pedalKnown() {
        return run.recording().has(Channel.BRAKE);
    }

    /** Standard deviation of what noise does not show. */
    private double unseen(Measure measure, Bend bend, CornerMeter.Reading reading) {
        double value = reading.get(measure);
        double scale = run.scaleError();
        double turnIn = reading.get(Measure.TURN_IN);
        double speed = run.speedAt(turnIn);
        return switch (measure.kind()) {
            case STATION ->
                Math.hypot(
                        Math.hypot(scale * (value - run.first()), origin()),
                        Math.hypot(between(value), manner(measure, bend, reading)));
            case LENGTH -> Math.hypot(Math.hypot(scale * value, between(turnIn)), steeringTime() * speed);
            case SPEED ->
                Math.hypot(
                        run.cleaning().speedScaleError() * value,
                        measure == Measure.TURN_IN_SPEED ? speedAcross(turnIn) : 0);
            case SHARE ->
                speedAcross(turnIn) / (run.speedAt(reading.get(Measure.BRAKE_ON)) - reading.get(Measure.MINIMUM_SPEED));
            case NOT_NEGATIVE, COUNT, OTHER ->
                measure == Measure.TRAIL_TIME ? Math.hypot(steeringTime(), run.period() / Math.sqrt(12)) : 0;
        };
    }

    /** Standard deviation, m, of where a part cut out of a longer run begins: counted by speed, and not corrected. */
    private double origin() {
        return run.cleaning().speedScaleError() * Math.abs(run.recording().origin());
    }

    /** Standard deviation, m, that comes from how a corner is driven, not from the logger. */
    private double manner(Measure measure, Bend bend, CornerMeter.Reading reading) {
        double value = reading.get(measure);
        return switch (measure) {
            case TURN_IN -> steeringTime() * run.speedAt(value);
            case BRAKE_ON -> (pedalKnown() ? ONSET_TIME : DERIVED_TIME) * run.speedAt(value);
            case FIRST_EASE, RELEASE_END -> pedalKnown() ? 0 : DERIVED_TIME * run.speedAt(value);
            case PICK_UP -> PICK_UP_TIME * run.speedAt(value);
            case APEX -> apexShare() * (bend.end() - bend.start());
            case SLOWEST -> plateau(bend, value);
            default -> 0;
        };
    }

    /** What a turn-in a little earlier or later does to the speed there, m/s. */
    private double speedAcross(double turnIn) {
        double step = Math.hypot(between(turnIn), steeringTime() * run.speedAt(turnIn));
        return Math.abs(run.speedAt(turnIn + step) - run.speedAt(turnIn - step)) / 2;
    }

    /**
     * Where speed is held, the slowest point lies anywhere on the stretch that is as slow within the noise: a deviation
     * with which the interval reaches to its farther end.
     */
    private double plateau(Bend bend, double slowest) {
        double[] s = run.station();
        double[] v = run.speed();
        double same = run.speedAt(slowest) + Math.max(SAME_SPEED, 2 * run.speedNoise());
        int low = Series.index(s, slowest);
        int high = low;
        while (low > 0 && v[low - 1] <= same && s[low - 1] > bend.start()) {
            low--;
        }
        while (high + 1 < s.length && v[high + 1] <= same && s[high + 1] < bend.end()) {
            high++;
        }
        return Math.max(slowest - s[low], s[high] - slowest) / times();
    }

    /** Speeds this close, m/s, are one and the same to a driver who holds the car at it. */
    private static final double SAME_SPEED = 0.02;

    /** Standard deviation of a place that lies anywhere between two samples: their distance over √12. */
    private double between(double station) {
        return run.speedAt(station) * run.period() / Math.sqrt(12);
    }
}
