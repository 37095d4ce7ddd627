package org.foreload.recording;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Intervals hold the truth of a known run about nine times in ten, whatever the logger did to its channels. */
class HonestIntervalsTest {

    private static final BrakePlan PLAN =
            Braking.of(8, 0.2, new Release(ReleaseShapes.LINEAR, -10, 25)).from(-115);

    private static final KnownRun KNOWN = new KnownRun(PLAN);

    private static final int RUNS = 20;

    /** Of twenty intervals that hold nine times in ten, fewer do about once in a hundred. */
    private static final int FEWEST = 15;

    private static Map<Channel, double[]> columns(double rate, int run) {
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        columns.putAll(KNOWN.recording(rate, phase(run), 1, run, false).columns());
        return columns;
    }

    private static double phase(int run) {
        return (run + 0.5) / RUNS;
    }

    private static RecordedCorner corner(Map<Channel, double[]> columns, int run) {
        Cleaning cleaning = Cleaning.STANDARD.withSeed(run);
        return RecordedCorners.of(Run.of(Recording.of(columns), cleaning)).get(0);
    }

    private static boolean holds(RecordedCorner corner, Measure measure, double station, double rate, int run) {
        return corner.get(measure).holds(station - KNOWN.first(rate, phase(run)));
    }

    private static void assertHeld(int held, String what) {
        assertTrue(held >= FEWEST, what + ": " + held + " of " + RUNS);
    }

    /** A straight rise from the pick-up point on, and half a cosine: the two ends of what feet do. Common practice. */
    @ParameterizedTest
    @CsvSource({"straight, 1", "straight, 0.3", "round, 1", "round, 0.3"})
    void thePickUpIsWhereTheFootLeavesRest(String kind, double lasts) {
        DoubleUnaryOperator rise = kind.equals("straight") ? u -> u : u -> (1 - Math.cos(Math.PI * u)) / 2;
        double rate = 50;
        double place = KNOWN.releaseEnd() + 12;
        double lifted = KNOWN.timeAt(KNOWN.brakeOn() - 5);
        double asked = KNOWN.timeAt(place);
        int held = 0;
        for (int run = 0; run < RUNS; run++) {
            Map<Channel, double[]> columns = columns(rate, run);
            double[] time = columns.get(Channel.TIME);
            SplittableRandom random = new SplittableRandom(run);
            double[] throttle = new double[time.length];
            for (int i = 0; i < throttle.length; i++) {
                double risen = rise.applyAsDouble(Math.max(0, Math.min(1, (time[i] - asked) / lasts)));
                throttle[i] = Math.max(0, (time[i] < lifted ? 1 : risen) + 0.005 * random.nextGaussian());
            }
            columns.put(Channel.THROTTLE, throttle);
            held += holds(corner(columns, run), Measure.PICK_UP, place, rate, run) ? 1 : 0;
        }
        assertHeld(held, "pick-up");
    }
}
