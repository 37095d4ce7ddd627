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
        KnownRun known = new KnownRun(
                Braking.of(8, 0.2, new Release(ReleaseShapes.LINEAR, -10, 40)).from(brakePoint));
        Run run = Run.of(behind(known.recording(RATE, 0, 1, seed, false), straight), Cleaning.STANDARD);
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

    @Test
    void whatIsNotThereHasNoDistance() {
        RecordedCorner corner = corner(BEFORE, 0, 1);
        assertEquals(Estimate.NONE, corner.fromTurnIn(Measure.PICK_UP));
        assertEquals(Estimate.NONE, corner.besideTurnIn(Measure.PICK_UP));
    }
}
