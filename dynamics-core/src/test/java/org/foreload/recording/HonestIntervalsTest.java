package org.foreload.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.BiConsumer;
import java.util.function.DoubleUnaryOperator;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

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
        return between(columns, 0, 500);
    }

    private static double phase(int run) {
        return (run + 0.5) / RUNS;
    }

    private static RecordedCorner corner(Map<Channel, double[]> columns, int run) {
        return RecordedCorners.of(Run.of(Recording.of(columns), cleaning(run))).get(0);
    }

    /** The speed of these runs has no error of scale, which would hide others; half the usual resamples are enough. */
    private static Cleaning cleaning(int run) {
        return new Cleaning(0.1, 0, 0.9, 20, run);
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

    /**
     * A kink of 100 m, of a radius of 280 m, in which the foot comes down for the corner behind it, or before which it
     * does: the braking is for the corner, and none for the kink. Kinematics: the run brakes once.
     */
    @ParameterizedTest
    @ValueSource(doubles = {130, 185})
    void aBrakingThatBeginsInABendBelongsToTheNext(double kink) {
        double rate = 50;
        int held = 0;
        for (int run = 0; run < RUNS; run++) {
            Map<Channel, double[]> columns = columns(rate, run);
            double[] speed = columns.get(Channel.SPEED);
            double[] across = columns.get(Channel.LATERAL);
            double s = KNOWN.first(rate, phase(run));
            for (int i = 0; i < speed.length; i++) {
                double inside = Math.min(s - kink, kink + 100 - s);
                across[i] -= speed[i] * speed[i] * Math.max(0, Math.min(1, inside / 10)) / 280;
                s += speed[i] / rate;
            }
            List<RecordedCorner> corners = RecordedCorners.of(Run.of(Recording.of(columns), cleaning(run)));
            assertEquals(2, corners.size());
            assertFalse(corners.get(0).get(Measure.BRAKE_ON).known());
            assertFalse(corners.get(0).get(Measure.SLOWEST).value() > kink + 100);
            held += holds(corners.get(1), Measure.BRAKE_ON, KNOWN.brakeOn(), rate, run)
                            && holds(corners.get(1), Measure.RELEASE_END, KNOWN.releaseEnd(), rate, run)
                    ? 1
                    : 0;
        }
        assertHeld(held, "braking");
    }

    /** Two brakings, one for each of two bends, meet at a tenth of the pressure: each bend has its own. Kinematics. */
    @Test
    void aBrakingThatIsEasedAndPressedAgainIsPartedWhereItIsLeast() {
        double rate = 50;
        Map<Channel, double[]> columns = columns(rate, 1);
        double[] time = columns.get(Channel.TIME);
        double[] speed = columns.get(Channel.SPEED);
        double[] across = columns.get(Channel.LATERAL);
        double[] brake = columns.get(Channel.BRAKE);
        double s = KNOWN.first(rate, phase(1));
        double second = KNOWN.timeAt(KNOWN.brakeOn());
        double first = second - 1;
        for (int i = 0; i < speed.length; i++) {
            double inside = Math.min(s - 130, 190 - s);
            across[i] -= speed[i] * speed[i] * Math.max(0, Math.min(1, inside / 10)) / 150;
            s += speed[i] / rate;
            double level = Math.max(0, Math.min((time[i] - first) / 0.2, (second - time[i]) / 0.8));
            boolean held = time[i] > first && time[i] < second + 0.1;
            brake[i] = Math.max(brake[i], held ? 0.8 + 6 * level : brake[i]);
        }
        List<RecordedCorner> corners = RecordedCorners.of(Run.of(Recording.of(columns), Cleaning.STANDARD));
        assertEquals(2, corners.size());
        assertEquals(135, corners.get(0).get(Measure.BRAKE_ON).value(), 5);
        assertEquals(187.5, corners.get(0).get(Measure.RELEASE_END).value(), 5);
        assertEquals(185, corners.get(1).get(Measure.BRAKE_ON).value(), 3);
    }

    private static Map<Channel, double[]> between(Map<Channel, double[]> columns, double from, double to) {
        double[] time = columns.get(Channel.TIME);
        int first = Series.index(time, KNOWN.timeAt(from));
        int last = Series.index(time, KNOWN.timeAt(to));
        Map<Channel, double[]> part = new EnumMap<>(Channel.class);
        columns.forEach((channel, values) -> part.put(channel, Arrays.copyOfRange(values, first, last)));
        return part;
    }

    /**
     * At the begin of the tightest stretch, in its middle, and behind turn-in: too little of the bend to measure it by.
     */
    @Test
    void aCornerThatTheRunCutsIsNotMeasured() {
        Map<Channel, double[]> whole = columns(50, 1);
        double tight = KnownRun.APPROACH + KnownRun.SPIRAL;
        for (double end : new double[] {tight + 5, tight + KnownRun.ARC / 2}) {
            Run run = Run.of(Recording.of(between(whole, 0, end)), Cleaning.STANDARD);
            assertEquals(List.of(), RecordedCorners.of(run));
            assertEquals(1, RecordedCorners.cut(run).size());
        }
        for (double start : new double[] {KnownRun.APPROACH + 15, tight + 20}) {
            Run run = Run.of(Recording.of(between(whole, start, 480)), Cleaning.STANDARD);
            assertEquals(List.of(), RecordedCorners.of(run));
            assertEquals(1, RecordedCorners.cut(run).size());
        }
        Run run = Run.of(Recording.of(whole), Cleaning.STANDARD);
        assertEquals(1, RecordedCorners.of(run).size());
        assertEquals(List.of(), RecordedCorners.cut(run));
    }

    /** A run that begins with the brake on shows no brake point; its release is measured. */
    @Test
    void aBrakingThatTheRunCutsHasNoBrakePoint() {
        int held = 0;
        for (int run = 0; run < RUNS; run++) {
            double start = KNOWN.brakeOn() + 4 + run;
            RecordedCorner corner = corner(between(columns(50, run), start, 480), run);
            assertFalse(corner.get(Measure.BRAKE_ON).known());
            assertFalse(corner.get(Measure.TRAIL_SHARE).known());
            Estimate trail = corner.get(Measure.TRAIL_LENGTH);
            held += trail.holds(KNOWN.releaseEnd() - KnownRun.APPROACH) ? 1 : 0;
        }
        assertHeld(held, "trail");
    }

    private static final List<Measure> PEDAL = List.of(Measure.BRAKE_ON, Measure.FIRST_EASE, Measure.RELEASE_END);

    private static final double[] TRUE_PEDAL = {
        KNOWN.brakeOn(),
        KNOWN.releaseEnd() - PLAN.release().end() + PLAN.release().start(),
        KNOWN.releaseEnd()
    };

    /** Of twenty runs whose channels are changed, those whose intervals hold what the foot did. */
    private static int[] held(double rate, BiConsumer<Map<Channel, double[]>, Integer> change) {
        int[] held = new int[PEDAL.size() + 1];
        for (int run = 0; run < RUNS; run++) {
            Map<Channel, double[]> columns = columns(rate, run);
            change.accept(columns, run);
            RecordedCorner corner = corner(columns, run);
            for (int i = 0; i < PEDAL.size(); i++) {
                held[i] += holds(corner, PEDAL.get(i), TRUE_PEDAL[i], rate, run) ? 1 : 0;
            }
            double trail = KNOWN.releaseEnd() - KnownRun.APPROACH;
            held[PEDAL.size()] += corner.get(Measure.TRAIL_LENGTH).holds(trail) ? 1 : 0;
        }
        return held;
    }

    private static void assertHeld(int[] held) {
        for (int count : held) {
            assertHeld(count, Arrays.toString(held));
        }
    }

    /** A channel of 20 Hz in a table of 100 Hz, each number written five times. Common practice, no source. */
    @Test
    void aSlowChannelThatRepeatsItsNumbersHoldsTheTruth() {
        assertHeld(held(100, (columns, run) -> {
            double[] brake = columns.get(Channel.BRAKE);
            for (int i = 0; i < brake.length; i++) {
                brake[i] = brake[Math.max(0, (i + run) / 5 * 5 - run)];
            }
        }));
    }

    /** A speed to the next km/h at its own rate repeats its numbers as well, but is not slow. Arithmetic. */
    @Test
    void coarseStepsAreNoSlowChannel() {
        double[] coarse = Arrays.stream(columns(100, 1).get(Channel.SPEED))
                .map(v -> Math.rint(3.6 * v) / 3.6)
                .toArray();
        assertEquals(0, Cleaning.repeats(coarse).length);
    }

    /** A pressure whose noise, 2 % of it, is let through to 5 Hz: first-order, as an analogue filter's. */
    @Test
    void slowNoiseOfTheBrakeIsInItsIntervals() {
        double rate = 50;
        double like = Math.exp(-2 * Math.PI * 5 / rate);
        assertHeld(held(rate, (columns, run) -> {
            SplittableRandom random = new SplittableRandom(run);
            double[] brake = columns.get(Channel.BRAKE);
            double noise = random.nextGaussian();
            for (int i = 0; i < brake.length; i++) {
                brake[i] += 0.16 * noise;
                noise = like * noise + Math.sqrt(1 - like * like) * random.nextGaussian();
            }
        }));
    }

    /** A foot that is only seen in the speed. */
    @Test
    void aFootSeenInTheSpeedAloneHoldsTheTruth() {
        assertHeld(held(50, (columns, run) -> columns.remove(Channel.BRAKE)));
    }
}
