package org.foreload.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.foreload.braking.ReleaseShape;
import org.foreload.conventions.InvalidValueException;

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
    private final Map<Channel, Double> periods = new EnumMap<>(Channel.class);
    private final Noise brakeNoise;
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
            borders[i] = Math.max(borders[i - 1], bends.get(i - 1).border(run, bends.get(i)));
        }
        this.brakeNoise = pedalKnown()
                ? noise(Channel.BRAKE)
                : new Noise(Series.noise(run.brakeRaw()), 0, 2 * Run.DERIVED_HALF_WIDTH);
        this.hardest = CornerMeter.hardest(run);
    }

    /**
     * The corners of a run in driving order, measured; none if the course is nowhere bent.
     *
     * @throws InvalidValueException if there are more than {@value #MOST_CORNERS}
     */
    public static List<RecordedCorner> of(Run run) {
        return new RecordedCorners(Objects.requireNonNull(run, "run")).measured();
    }

    /**
     * Corners that a run begins in, or ends in before their tightest stretch is behind: they are not measured, and not
     * counted. One or two, numbered among all; none if the course is nowhere bent.
     */
    public static List<Bend> cut(Run run) {
        Objects.requireNonNull(run, "run");
        return Bend.all(run).stream().filter(bend -> bend.cutBy(run)).toList();
    }

    private List<RecordedCorner> measured() {
        List<CornerMeter.Reading> readings = new ArrayList<>();
        for (int i = 0; i < bends.size(); i++) {
            readings.add(meter(run, run.along(), i).read(ReleaseFit.shapes()));
        }
        Shaken shaken = shaken(readings);
        List<RecordedCorner> corners = new ArrayList<>();
        var axis = new RecordedCorner.AxisError(times() * run.scaleError(), run.first(), times() * origin());
        List<Recording.Hole> holes = run.holes();
        for (int i = 0; i < bends.size(); i++) {
            CornerMeter.Reading reading = readings.get(i);
            Map<Measure, Estimate> measures = new EnumMap<>(Measure.class);
            for (Measure measure : Measure.values()) {
                measures.put(measure, estimate(measure, i, reading, shaken));
            }
            boolean whole = new Beside(run, bends.get(i), measures, holes, hardest).released();
            var shape = reading.release().map(ReleaseFit::shape).filter(fitted -> whole);
            corners.add(new RecordedCorner(bends.get(i), shape, measures, axis));
        }
        return corners;
    }

    private CornerMeter meter(Run of, double[] along, int i) {
        double from = i == 0 ? run.first() : bends.get(i - 1).end();
        double to = i + 1 == bends.size() ? run.last() : bends.get(i + 1).start();
        double[] pedals = {borders[i], borders[i + 1]};
        return new CornerMeter(of, along, bends.get(i), from, to, pedals, brakeNoise.deviation(), hardest);
    }

    /**
     * The run measured again.
     *
     * @param readings of each corner, with other noise
     * @param calm greatest deceleration in each corner, of the course without most of its noise; what the noise adds to
     *     that is in the readings
     */
    private record Shaken(List<List<CornerMeter.Reading>> readings, double[] calm) {}

    /** Half the width, s, of the filter that leaves a course calm: a foot holds a peak, or lets it go, for longer. */
    private static final double CALM = 0.4;

    private Shaken shaken(List<CornerMeter.Reading> readings) {
        List<List<CornerMeter.Reading>> all = new ArrayList<>();
        readings.forEach(reading -> all.add(new ArrayList<>()));
        SplittableRandom random = new SplittableRandom(run.cleaning().seed());
        int resamples = bends.isEmpty() ? 0 : run.cleaning().resamples();
        Map<Channel, Noise> noises = resamples > 0 ? noises() : Map.of();
        List<List<ReleaseShape>> shapes = readings.stream()
                .map(reading -> ReleaseFit.likely(reading.fits(), samples(reading), brakeNoise.deviation()).stream()
                        .map(ReleaseFit::shape)
                        .toList())
                .toList();
        double[] calm = resamples > 0 ? Series.smooth(run.time(), run.along(), CALM) : run.along();
        for (int k = 0; k < resamples; k++) {
            Run again = shaken(noises, random.split());
            double[] noise = new double[calm.length];
            Arrays.setAll(noise, row -> again.along()[row] - run.along()[row]);
            Arrays.setAll(noise, row -> noise[row] + calm[row]);
            for (int i = 0; i < bends.size(); i++) {
                all.get(i).add(meter(again, noise, i).read(shapes.get(i)));
            }
        }
        double[] peaks = new double[bends.size()];
        Arrays.setAll(peaks, i -> meter(run, calm, i).read(shapes.get(i)).get(Measure.PEAK_DECELERATION));
        return new Shaken(all, peaks);
    }

    /** The noise of every channel that corners are measured by; the axes are taken as they are. */
    private Map<Channel, Noise> noises() {
        Recording recording = run.recording();
        Map<Channel, Noise> noises = new EnumMap<>(Channel.class);
        recording.columns().forEach((channel, values) -> {
            if (recording.countsFor(channel)) {
                noises.put(channel, noise(channel));
            }
        });
        return noises;
    }

    /** The noise of one channel; positions are smoothed for longer than theirs is looked for. */
    private Noise noise(Channel channel) {
        boolean position = channel == Channel.X || channel == Channel.Y;
        double samples = position ? 1 : Math.max(1, Math.rint(run.cleaning().halfWidth() / run.period(channel)));
        double[] values = Series.known(run.recording().columns().get(channel));
        return Noise.of(values, (int) samples, run.period(channel));
    }

    /** The same run with its own noise added to every channel. */
    private Run shaken(Map<Channel, Noise> noises, SplittableRandom random) {
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        run.recording().columns().forEach((channel, values) -> {
            columns.put(
                    channel, noises.containsKey(channel) ? noises.get(channel).added(values, random) : values);
        });
        return run.like(run.recording().with(columns));
    }

    /**
     * Noise whose samples are alike the nearer they are: each is so much like the one before (a first-order
     * autoregressive process; G. E. P. Box, G. M. Jenkins, G. C. Reinsel, Time Series Analysis, ch. 3, from memory).
     *
     * @param deviation standard deviation of a sample
     * @param likeness correlation of two samples that follow each other, zero for white noise
     * @param apart time, s, from one independent sample to the next: that of a mean's variance
     */
    private record Noise(double deviation, double likeness, double apart) {

        /**
         * From second differences over one sample and over many, D₁² and D² of which are σ²(6 − 8ρ + 2ρ²) and, where
         * the likeness is used up, 6σ².
         */
        static Noise of(double[] values, int many, double period) {
            double white = Series.noise(values);
            double slow = Series.over(values, many);
            if (!(slow > white)) {
                return new Noise(white, 0, period);
            }
            double likeness = 2 - Math.sqrt(1 + 3 * white * white / (slow * slow));
            double left = Math.pow(likeness, many);
            double apart = period * (1 + likeness) / (1 - likeness);
            return new Noise(slow / Math.sqrt(1 - left * (4 - left) / 3), likeness, apart);
        }

        /** Numbers with such noise added. */
        double[] added(double[] values, SplittableRandom random) {
            if (!(deviation > 0)) {
                return values;
            }
            double[] shaken = values.clone();
            double fresh = Math.sqrt(1 - likeness * likeness);
            double noise = random.nextGaussian();
            for (int i = 0; i < shaken.length; i++) {
                if (Double.isFinite(shaken[i])) {
                    shaken[i] += deviation * noise;
                    noise = likeness * noise + fresh * random.nextGaussian();
                }
            }
            return shaken;
        }
    }

    /** Half the width of an interval of the stated coverage, in standard deviations. */
    private double times() {
        return Estimate.deviations(run.cleaning().coverage());
    }

    /**
     * What noise adds to the greatest of many, over what it adds to that of the calm course, in which some of it is
     * left; and the standard deviation of that, as a share of it. Measured on known courses whose noise was drawn.
     */
    private static final double HIDDEN = 1.25;

    private static final double RISEN = 0.4;

    private Estimate estimate(Measure measure, int corner, CornerMeter.Reading reading, Shaken shaken) {
        Bend bend = bends.get(corner);
        double value = reading.get(measure);
        if (Double.isNaN(value)) {
            return Estimate.NONE;
        }
        boolean greatest = measure == Measure.PEAK_DECELERATION;
        double middle = greatest ? shaken.calm()[corner] : value;
        double[] apart = Series.known(shaken.readings().get(corner).stream()
                .mapToDouble(again -> again.get(measure) - middle)
                .toArray());
        double added = greatest ? Arrays.stream(apart).average().orElse(0) : 0;
        double risen = HIDDEN * added;
        double noise = Arrays.stream(apart)
                .map(x -> (x - added) * (x - added) + RISEN * RISEN * risen * risen)
                .average()
                .orElse(0);
        double unseen = unseen(measure, bend, reading);
        Estimate estimate = Estimate.normal(
                value - risen,
                Math.sqrt(noise + unseen * unseen),
                run.cleaning().coverage());
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
        return switch (measure.kind()) {
            case STATION ->
                Math.hypot(
                        Math.hypot(scale * (value - run.first()), origin()),
                        run.speedAt(value) * Math.hypot(between(measure), manner(measure, bend, reading)));
            case LENGTH -> Math.hypot(scale * value, run.speedAt(turnIn) * trailTime(reading));
            case SPEED ->
                Math.hypot(
                        run.cleaning().speedScaleError() * value,
                        measure == Measure.TURN_IN_SPEED ? speedAcross(turnIn) : 0);
            case SHARE ->
                speedAcross(turnIn) / (run.speedAt(reading.get(Measure.BRAKE_ON)) - reading.get(Measure.MINIMUM_SPEED));
            case NOT_NEGATIVE, COUNT, OTHER -> measure == Measure.TRAIL_TIME ? trailTime(reading) : 0;
        };
    }

    /** Standard deviation of how long the brake is carried past turn-in, s: of one and of the other. */
    private double trailTime(CornerMeter.Reading reading) {
        double turnIn = Math.hypot(between(Measure.TURN_IN), steeringTime());
        double released = Math.hypot(between(Measure.RELEASE_END), released(reading, ReleaseFit::end));
        return Math.hypot(turnIn, released);
    }

    /** Standard deviation, m, of where a part cut out of a longer run begins: counted by speed, and not corrected. */
    private double origin() {
        return run.cleaning().speedScaleError() * Math.abs(run.recording().origin());
    }

    /** Standard deviation, s, that comes from how a corner is driven, not from the logger. */
    private double manner(Measure measure, Bend bend, CornerMeter.Reading reading) {
        double value = reading.get(measure);
        return switch (measure) {
            case TURN_IN -> steeringTime();
            case BRAKE_ON -> pedalKnown() ? ONSET_TIME : DERIVED_TIME;
            case FIRST_EASE -> released(reading, ReleaseFit::start);
            case RELEASE_END -> released(reading, ReleaseFit::end);
            case PICK_UP -> PICK_UP_TIME;
            case APEX -> apexShare() * (bend.end() - bend.start()) / run.speedAt(value);
            case SLOWEST -> plateau(bend, value) / run.speedAt(value);
            default -> 0;
        };
    }

    /** Independent samples to which a release was fitted. */
    private double samples(CornerMeter.Reading reading) {
        return Math.max(1, reading.fitted() / brakeNoise.apart());
    }

    /** The same for an end of the release, whose shape is not known, s. */
    private double released(CornerMeter.Reading reading, ToDoubleFunction<ReleaseFit> end) {
        double reach = ReleaseFit.reach(reading.fits(), end, samples(reading), brakeNoise.deviation());
        double shape = reach
                / times()
                / run.speedAt(end.applyAsDouble(reading.release().orElseThrow()));
        return pedalKnown() ? shape : Math.hypot(shape, DERIVED_TIME);
    }

    /** What a turn-in a little earlier or later does to the speed there, m/s. */
    private double speedAcross(double turnIn) {
        double step = run.speedAt(turnIn) * Math.hypot(between(Measure.TURN_IN), steeringTime());
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

    /** Standard deviation, s, of what lies anywhere between two samples of its channel: their distance over √12. */
    private double between(Measure measure) {
        Channel channel = switch (measure) {
            case BRAKE_ON, FIRST_EASE, RELEASE_END -> pedalKnown() ? Channel.BRAKE : Channel.SPEED;
            case PICK_UP -> Channel.THROTTLE;
            case TURN_IN, APEX -> run.recording().turning();
            default -> Channel.SPEED;
        };
        return periods.computeIfAbsent(channel, run::period) / Math.sqrt(12);
    }
}
