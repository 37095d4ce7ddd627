package org.foreload.recording;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.foreload.braking.ReleaseShape;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * Finds and measures the corners of a run.
 *
 * <p>Intervals: the run is measured again and again with noise of the size of its own added to every channel; the
 * spread of the results is what the noise does to a measure. To it come what noise does not show: the scale of the
 * distances, and that an edge lies somewhere between two samples. The parts are independent, so their squares add up;
 * the interval is the normal one of the stated coverage.
 */
public final class RecordedCorners {

    private final Run run;
    private final List<Bend> bends;

    private RecordedCorners(Run run) {
        this.run = run;
        this.bends = Bends.find(run);
    }

    /** The corners of a run in driving order, measured; none if the course is nowhere bent. */
    public static List<RecordedCorner> of(Run run) {
        return new RecordedCorners(run).measured();
    }

    private List<RecordedCorner> measured() {
        List<CornerMeter.Reading> readings = new ArrayList<>();
        for (int i = 0; i < bends.size(); i++) {
            readings.add(meter(run, i).read(Optional.empty()));
        }
        List<List<CornerMeter.Reading>> shaken = shaken(readings);
        List<RecordedCorner> corners = new ArrayList<>();
        for (int i = 0; i < bends.size(); i++) {
            CornerMeter.Reading reading = readings.get(i);
            Map<Measure, Estimate> measures = new EnumMap<>(Measure.class);
            for (Measure measure : Measure.values()) {
                measures.put(measure, estimate(measure, reading, shaken.get(i)));
            }
            corners.add(new RecordedCorner(bends.get(i), reading.release().map(ReleaseFit::shape), measures));
        }
        return corners;
    }

    private CornerMeter meter(Run of, int i) {
        double from = i == 0 ? run.first() : bends.get(i - 1).end();
        double to = i + 1 == bends.size() ? run.last() : bends.get(i + 1).start();
        return new CornerMeter(of, bends.get(i), from, to);
    }

    private List<List<CornerMeter.Reading>> shaken(List<CornerMeter.Reading> readings) {
        List<List<CornerMeter.Reading>> all = new ArrayList<>();
        readings.forEach(reading -> all.add(new ArrayList<>()));
        SplittableRandom random = new SplittableRandom(run.cleaning().seed());
        for (int k = 0; k < run.cleaning().resamples() && !bends.isEmpty(); k++) {
            Run again = run.shaken(random.split());
            for (int i = 0; i < bends.size(); i++) {
                Optional<ReleaseShape> shape = readings.get(i).release().map(ReleaseFit::shape);
                all.get(i).add(meter(again, i).read(shape));
            }
        }
        return all;
    }

    private Estimate estimate(Measure measure, CornerMeter.Reading reading, List<CornerMeter.Reading> shaken) {
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
        double unseen = unseen(measure, reading);
        double times = new NormalDistribution()
                .inverseCumulativeProbability((1 + run.cleaning().coverage()) / 2);
        Estimate estimate = Estimate.around(value, times * Math.sqrt(noise + unseen * unseen));
        return switch (measure.kind()) {
            case SHARE -> estimate.within(0, 1);
            case LENGTH, COUNT, NOT_NEGATIVE -> estimate.within(0, Double.POSITIVE_INFINITY);
            case STATION, SPEED, OTHER -> estimate;
        };
    }

    /** Standard deviation of what noise does not show. */
    private double unseen(Measure measure, CornerMeter.Reading reading) {
        double value = reading.get(measure);
        double turnIn = reading.get(Measure.TURN_IN);
        return switch (measure.kind()) {
            case STATION -> Math.hypot(run.scaleError() * (value - run.first()), between(value));
            case LENGTH -> Math.hypot(run.scaleError() * value, between(turnIn));
            case SPEED -> run.cleaning().speedScaleError() * value;
            case SHARE -> shareOfStep(reading, turnIn);
            case NOT_NEGATIVE, COUNT, OTHER -> 0;
        };
    }

    /** Standard deviation of a place that lies anywhere between two samples: their distance over √12. */
    private double between(double station) {
        return run.speedAt(station) * run.period() / Math.sqrt(12);
    }

    /** What a turn-in between two samples does to the trail share. */
    private double shareOfStep(CornerMeter.Reading reading, double turnIn) {
        double step = between(turnIn);
        double change = Math.abs(run.speedAt(turnIn + step) - run.speedAt(turnIn - step)) / 2;
        double shed = run.speedAt(reading.get(Measure.BRAKE_ON)) - reading.get(Measure.MINIMUM_SPEED);
        return shed > 0 ? change / shed : 0;
    }
}
