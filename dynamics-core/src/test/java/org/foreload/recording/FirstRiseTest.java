package org.foreload.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.path.Segment;
import org.foreload.path.Turn;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Turn-in is where the course first leaves the straight, whatever it does behind: the way of a point mass on a line of
 * clothoids and arcs, whose turn-in is the end of its straight.
 */
class FirstRiseTest {

    private static final int RUNS = 20;

    /** Of twenty intervals that hold nine times in ten, fewer do about once in a hundred. */
    private static final int FEWEST = 15;

    private static final BrakePlan PLAN =
            Braking.of(8, 0.2, new Release(ReleaseShapes.LINEAR, -10, 25)).from(-115);

    /** Lines that do not rise at once to where they are tightest. */
    private enum Line {
        TIGHTENS(
                Segment.spiralIn(20, 90, Turn.LEFT),
                Segment.arc(55, 90, Turn.LEFT),
                Segment.spiralBetween(25, 90, 40, Turn.LEFT),
                Segment.arc(31, 40, Turn.LEFT),
                Segment.spiralOut(20, 40, Turn.LEFT)),
        TIGHTENS_A_LITTLE(
                Segment.spiralIn(25, 80, Turn.LEFT),
                Segment.arc(40, 80, Turn.LEFT),
                Segment.spiralBetween(25, 80, 46, Turn.LEFT),
                Segment.arc(31, 46, Turn.LEFT),
                Segment.spiralOut(20, 46, Turn.LEFT)),
        GOES_ON_TIGHTENING(
                Segment.spiralIn(20, 90, Turn.LEFT),
                Segment.spiralBetween(70, 90, 40, Turn.LEFT),
                Segment.arc(31, 40, Turn.LEFT),
                Segment.spiralOut(20, 40, Turn.LEFT)),
        OPENS_BETWEEN(
                Segment.spiralIn(20, 80, Turn.LEFT),
                Segment.arc(30, 80, Turn.LEFT),
                Segment.spiralBetween(20, 80, 250, Turn.LEFT),
                Segment.spiralBetween(20, 250, 40, Turn.LEFT),
                Segment.arc(31, 40, Turn.LEFT),
                Segment.spiralOut(20, 40, Turn.LEFT));

        private final KnownRun known;

        Line(Segment... corner) {
            this.known = new KnownRun(PLAN, List.of(corner));
        }

        double truth(Measure measure) {
            return switch (measure) {
                case TURN_IN -> KnownRun.APPROACH;
                case TURN_IN_SPEED -> known.speedAt(KnownRun.APPROACH);
                case TRAIL_SHARE -> known.trailShare();
                default -> throw new IllegalArgumentException(measure.field());
            };
        }

        RecordedCorner corner(double rate, double noise, int run, boolean position) {
            double phase = (run + 0.5) / RUNS;
            Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
            columns.putAll(known.recording(rate, phase, noise, run, position).columns());
            if (position) {
                columns.remove(Channel.LATERAL);
                columns.remove(Channel.YAW_RATE);
            }
            Recording recording = Recording.of(columns).startingAt(known.first(rate, phase));
            return RecordedCorners.of(Run.of(recording, new Cleaning(0.1, 0, 0.9, 20, run)))
                    .get(0);
        }
    }

    /** Without noise the first clothoid is followed back to where it begins: geometry. */
    @ParameterizedTest
    @EnumSource(Line.class)
    void theFirstClothoidCountsToADecimetre(Line line) {
        RecordedCorner corner = line.corner(50, 0, 0, false);
        assertEquals(KnownRun.APPROACH, corner.get(Measure.TURN_IN).value(), 0.1);
        assertEquals(
                line.truth(Measure.TURN_IN_SPEED),
                corner.get(Measure.TURN_IN_SPEED).value(),
                0.05);
    }

    /** With the noise of a usual logger, nine times in ten; and no metre early or late on average. */
    @ParameterizedTest
    @EnumSource(Line.class)
    void underNoiseIntervalsHoldIt(Line line) {
        List<RecordedCorner> corners = IntStream.range(0, RUNS)
                .mapToObj(run -> line.corner(50, 1, run, false))
                .toList();
        for (Measure measure : List.of(Measure.TURN_IN, Measure.TURN_IN_SPEED, Measure.TRAIL_SHARE)) {
            double truth = line.truth(measure);
            long held = corners.stream()
                    .filter(corner -> corner.get(measure).holds(truth))
                    .count();
            double mean = corners.stream()
                    .mapToDouble(corner -> corner.get(measure).value() - truth)
                    .average()
                    .orElseThrow();
            assertTrue(held >= FEWEST, measure.field() + ": " + held + " of " + RUNS);
            assertEquals(0, mean, measure == Measure.TURN_IN ? 1 : 0.5, measure.field());
        }
    }

    /** The same where the course is known by positions alone, which smooth 0.8 s of it. */
    @Test
    void byPositionsIntervalsHoldATighteningBend() {
        int held = 0;
        for (int run = 0; run < RUNS; run++) {
            held += Line.TIGHTENS.corner(50, 1, run, true).get(Measure.TURN_IN).holds(KnownRun.APPROACH) ? 1 : 0;
        }
        assertTrue(held >= FEWEST, held + " of " + RUNS);
    }
}
