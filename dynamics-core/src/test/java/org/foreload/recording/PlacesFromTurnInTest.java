package org.foreload.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.foreload.advice.DriverScatter;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Places counted from turn-in, in runs of a point mass whose every place is known. Two places that one sensor measured
 * share its error up to the first of them (propagation of correlated errors; from memory): the road before a corner has
 * no say in it.
 */
class PlacesFromTurnInTest {

    private static final double BEFORE = -110;

    private static final double RATE = 50;

    /** A run that brakes so far before turn-in, behind a straight of so many metres more than usual. */
    private static RecordedCorner corner(double brakePoint, double straight, long seed) {
        return corner(brakePoint, straight, seed, Cleaning.STANDARD);
    }

    private static RecordedCorner corner(double brakePoint, double straight, long seed, Cleaning cleaning) {
        KnownRun known = new KnownRun(
                Braking.of(8, 0.2, new Release(ReleaseShapes.LINEAR, -10, 40)).from(brakePoint));
        Run run = Run.of(behind(known.recording(RATE, 0, 1, seed, false), straight), cleaning);
        return RecordedCorners.of(run).get(0);
    }

    /** The same recording after a straight at the speed of its first row; what else moves there is nought. */
    private static Recording behind(Recording recording, double straight) {
        int rows = (int) Math.round(straight / KnownRun.SPEED * RATE);
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        recording.columns().forEach((channel, values) -> {
            double[] longer = new double[rows + values.length];
            for (int i = 0; i < rows; i++) {
                boolean speed = channel == Channel.SPEED;
                longer[i] = channel == Channel.TIME ? i / RATE : speed ? KnownRun.SPEED : 0;
            }
            for (int i = 0; i < values.length; i++) {
                longer[rows + i] = values[i] + (channel == Channel.TIME ? rows / RATE : 0);
            }
            columns.put(channel, longer);
        });
        return Recording.of(columns);
    }

    private static double half(Estimate estimate) {
        return (estimate.high() - estimate.low()) / 2;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void theRoadBeforeACornerDoesNotWidenThem(int seed) {
        RecordedCorner near = corner(BEFORE, 0, seed);
        RecordedCorner far = corner(BEFORE, 4000, seed);
        for (Measure place : List.of(Measure.BRAKE_ON, Measure.RELEASE_END)) {
            assertEquals(half(near.fromTurnIn(place)), half(far.fromTurnIn(place)), 0.5);
            assertEquals(half(near.besideTurnIn(place)), half(far.besideTurnIn(place)), 0.5);
            // A station is known as badly as ever.
            assertTrue(half(far.get(place)) > half(near.get(place)) + 10);
        }
        assertTrue(far.fromTurnIn(Measure.BRAKE_ON).holds(BEFORE), far.toString());
        assertTrue(far.fromTurnIn(Measure.RELEASE_END).holds(40), far.toString());
    }

    /** A driver whose brake point strays by eight metres is measured so behind any length of road. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 4000})
    void scatterIsTheDriversBehindAnyRoad(double straight) {
        double[] missed = {-10, 6, 10, -6, 0};
        List<RecordedCorner> laps = new ArrayList<>();
        double square = 0;
        for (int lap = 0; lap < missed.length; lap++) {
            laps.add(corner(BEFORE + missed[lap], straight, 10 + lap));
            square += missed[lap] * missed[lap] / (missed.length - 1);
        }
        double truth = Math.sqrt(square);
        assertEquals(truth, DriverScatter.of(laps.get(0), laps).scatter().brakePoint(), 0.15 * truth);
    }

    private static Cleaning covering(double coverage) {
        Cleaning usual = Cleaning.STANDARD;
        return new Cleaning(usual.halfWidth(), usual.speedScaleError(), coverage, usual.resamples(), usual.seed());
    }

    /** How wide intervals are asked for is no matter of the driver's, nor of how well a place was found. */
    @Test
    void scatterIsTheDriversWhateverTheCoverage() {
        List<RecordedCorner> narrow = new ArrayList<>();
        List<RecordedCorner> wide = new ArrayList<>();
        for (int lap = 0; lap < 4; lap++) {
            narrow.add(corner(BEFORE + lap, 0, 20 + lap, covering(0.5)));
            wide.add(corner(BEFORE + lap, 0, 20 + lap, covering(0.99)));
        }
        for (Measure place : List.of(Measure.BRAKE_ON, Measure.TURN_IN)) {
            Estimate one = narrow.get(0).get(place);
            Estimate other = wide.get(0).get(place);
            assertEquals(one.deviation(), other.deviation(), 1e-9);
            assertEquals(2.5758 / 0.6745, half(other) / half(one), 1e-3);
        }
        DriverScatter one = DriverScatter.of(narrow.get(0), narrow);
        DriverScatter other = DriverScatter.of(wide.get(0), wide);
        assertEquals(one.scatter().brakePoint(), other.scatter().brakePoint(), 1e-9);
        assertEquals(one.scatter().releaseTiming(), other.scatter().releaseTiming(), 0.01);
        assertEquals(one.brakePoint().high(), other.brakePoint().high(), 1e-9);
    }

    /** Quantiles of the normal law: NIST/SEMATECH, e-Handbook of Statistical Methods, 1.3.6.7.1. */
    @ParameterizedTest
    @CsvSource({"0.5, 0.6745", "0.9, 1.6449", "0.95, 1.9600", "0.99, 2.5758"})
    void anIntervalKnowsItsDeviation(double coverage, double deviations) {
        Estimate estimate = Estimate.normal(7, 2, coverage);
        assertEquals(2 * deviations, estimate.high() - 7, 1e-3);
        assertEquals(2, estimate.deviation(), 1e-12);
        assertEquals(coverage, estimate.within(6, 8).coverage());
        assertEquals(coverage, estimate.reaching(0, 20).coverage());
    }

    @Test
    void whatIsNotThereHasNoDistance() {
        RecordedCorner corner = corner(BEFORE, 0, 1);
        assertEquals(Estimate.NONE, corner.fromTurnIn(Measure.PICK_UP));
        assertEquals(Estimate.NONE, corner.besideTurnIn(Measure.PICK_UP));
    }
}
