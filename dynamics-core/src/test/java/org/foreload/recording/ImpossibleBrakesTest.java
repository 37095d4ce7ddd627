package org.foreload.recording;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Brake cells that no foot can have given, and all that one can. */
class ImpossibleBrakesTest {

    private static final double PEAK = 6;

    private static final BrakePlan PLAN =
            Braking.of(PEAK, 0.2, new Release(ReleaseShapes.LINEAR, -10, 20)).from(-115);

    /** The usual cleaning with half its resamples. */
    private static final Cleaning QUICK = new Cleaning(0.1, 0.005, 0.9, 20, 1);

    private static final Recording CLEAN = new KnownRun(PLAN).recording(50, 0.3, 1, 7, false);

    private static final RecordedCorner TRUE_CORNER = corner(CLEAN);

    private static RecordedCorner corner(Recording recording) {
        return RecordedCorners.of(Run.of(recording, QUICK)).get(0);
    }

    private static Recording braking(Recording recording, double[] brake) {
        Map<Channel, double[]> columns = new EnumMap<>(recording.columns());
        columns.put(Channel.BRAKE, brake);
        return Recording.of(columns);
    }

    private static Recording spoiled(int row, double value) {
        double[] brake = CLEAN.column(Channel.BRAKE);
        brake[row] = value;
        return braking(CLEAN, brake);
    }

    /** From a second before the brake point to a second behind brake off: where a wrong cell would do most harm. */
    private static int row(double share) {
        double[] station = Run.of(CLEAN, Cleaning.STANDARD.withoutResamples()).station();
        int first = Series.index(station, KnownRun.APPROACH + PLAN.brakePoint()) - 50;
        int last = Series.index(station, KnownRun.APPROACH + PLAN.release().end()) + 50;
        return first + (int) Math.round(share * (last - first));
    }

    private static void assertBridged(int row, double value) {
        Recording wrong = spoiled(row, value);
        assertArrayEquals(new int[] {row}, wrong.impossibleBrakes());
        RecordedCorner found = corner(wrong);
        assertEquals(TRUE_CORNER.shape(), found.shape());
        for (Measure measure : Measure.values()) {
            Estimate clean = TRUE_CORNER.get(measure);
            boolean within = Double.isNaN(clean.value())
                    ? !found.get(measure).known()
                    : clean.holds(found.get(measure).value());
            assertTrue(within, () -> measure.field() + ": " + found.get(measure) + ", but " + clean);
        }
    }

    /** Far outside: a sensor's error code, a pulse, a sign that flipped. */
    @Property(tries = 30)
    void aCellFarOutsideChangesNoMeasure(
            @ForAll @DoubleRange(min = 0, max = 1) double share, @ForAll @DoubleRange(min = 3, max = 2000) double far) {
        assertBridged(row(share), far * PEAK);
        assertBridged(row(share), -far * PEAK);
    }

    /** Inside the range, but there and back within two hundredths of a second. */
    @Test
    void aCellThatAFootHasNoTimeForChangesNoMeasure() {
        int pressed = row(0.5);
        assertEquals(PEAK, CLEAN.column(Channel.BRAKE)[pressed], PEAK / 10);
        assertBridged(pressed, 0);
        assertBridged(row(0), PEAK);
        assertBridged(row(0.1), 0.9 * PEAK);
        assertBridged(row(1), PEAK);
    }

    /** Several in a row, as where a plug works loose, at 100 Hz. */
    @Test
    void severalInARowAreFound() {
        Recording fine = new KnownRun(PLAN).recording(100, 0, 1, 7, false);
        double[] brake = fine.column(Channel.BRAKE);
        int[] wrong = {300, 301, 302, 303, 500, 501, 502};
        for (int row : wrong) {
            brake[row] = 65535;
        }
        assertArrayEquals(wrong, braking(fine, brake).impossibleBrakes());
    }

    private static Recording lasting(int first, int count, double code) {
        double[] brake = CLEAN.column(Channel.BRAKE);
        Arrays.fill(brake, first, first + count, code);
        return braking(CLEAN, brake);
    }

    /**
     * An error code that lasts is left out, wherever it lies and whatever the foot does meanwhile, as long as braking
     * is left to compare it with; and what is still given holds the truth.
     */
    @Property(tries = 30)
    void anErrorCodeThatLastsIsFound(
            @ForAll @DoubleRange(min = 0, max = 1) double share,
            @ForAll @IntRange(min = 5, max = 60) int count,
            @ForAll("codes") double code) {
        int first = row(share);
        int last = Math.min(first + count, CLEAN.rows());
        Recording wrong = lasting(first, last - first, code);
        assertArrayEquals(IntStream.range(first, last).toArray(), wrong.impossibleBrakes());
        for (RecordedCorner found : RecordedCorners.of(Run.of(wrong, QUICK))) {
            Estimate brakeOn = found.get(Measure.BRAKE_ON);
            double clean = TRUE_CORNER.get(Measure.BRAKE_ON).value();
            assertTrue(!brakeOn.known() || brakeOn.holds(clean), () -> brakeOn + ", but " + clean);
        }
    }

    @Provide
    Arbitrary<Double> codes() {
        return Arbitraries.of(9999.0, -9999.0, 999.0, 32767.0, -32768.0, 65535.0, 1e9);
    }

    /** Three codes in one recording, the last of them to its end. */
    @Test
    void severalErrorCodesAreFound() {
        double[] brake = CLEAN.column(Channel.BRAKE);
        int end = brake.length;
        Arrays.fill(brake, 100, 120, 9999);
        Arrays.fill(brake, 130, 140, -1000);
        Arrays.fill(brake, end - 50, end, 65535);
        int[] rows = IntStream.range(0, end)
                .filter(i -> i >= 100 && i < 120 || i >= 130 && i < 140 || i >= end - 50)
                .toArray();
        assertArrayEquals(rows, braking(CLEAN, brake).impossibleBrakes());
    }

    /** One code follows another, far out or not so far, and to the other side too: no foot is seen between them. */
    @ParameterizedTest
    @CsvSource({"9999, 32767", "32767, 9999", "65535, 65534", "9999, -9999", "-1000, 32767"})
    void errorCodesInARowAreFound(double one, double other) {
        double[] brake = CLEAN.column(Channel.BRAKE);
        Arrays.fill(brake, 100, 120, one);
        Arrays.fill(brake, 120, 150, other);
        assertArrayEquals(
                IntStream.range(100, 150).toArray(), braking(CLEAN, brake).impossibleBrakes());
    }

    /**
     * A code behind a hole, before one, or behind one cell that is far out: what is seen of it is quicker than a foot.
     */
    @Test
    void anErrorCodeBesideAHoleIsFound() {
        for (int hole : new int[] {85, 120}) {
            double[] brake = CLEAN.column(Channel.BRAKE);
            Arrays.fill(brake, 100, 120, 9999);
            Arrays.fill(brake, hole, hole + 15, Double.NaN);
            assertArrayEquals(
                    IntStream.range(100, 120).toArray(), braking(CLEAN, brake).impossibleBrakes());
        }
        double[] brake = CLEAN.column(Channel.BRAKE);
        Arrays.fill(brake, 100, 120, 9999);
        brake[99] = 1e6;
        assertArrayEquals(
                IntStream.range(99, 120).toArray(), braking(CLEAN, brake).impossibleBrakes());
    }

    private static void assertAllKept(double rate, DoubleUnaryOperator foot, double noise) {
        int rows = (int) (60 * rate);
        SplittableRandom random = new SplittableRandom(11);
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        double[] time = new double[rows];
        double[] speed = new double[rows];
        double[] brake = new double[rows];
        for (int i = 0; i < rows; i++) {
            time[i] = i / rate;
            speed[i] = 40;
            brake[i] = foot.applyAsDouble(time[i]) + noise * random.nextGaussian();
        }
        columns.put(Channel.TIME, time);
        columns.put(Channel.SPEED, speed);
        columns.put(Channel.BRAKE, brake);
        assertArrayEquals(new int[0], Recording.of(columns).impossibleBrakes());
    }

    /** Down in a tenth of a second, the quickest foot, and at once off again: a stab. */
    private static double stab(double t, double at, double peak) {
        return peak * Math.max(0, 1 - Math.abs(t - at) / 0.1);
    }

    private static double pressed(double t) {
        return t > 20 && t < 23 ? 60 * Math.min(1, Math.min(t - 20, 23 - t) / 0.15) : 0;
    }

    @ParameterizedTest
    @ValueSource(doubles = {10, 20, 50, 100, 200})
    void whatAFootCanDoIsKept(double rate) {
        assertAllKept(rate, t -> pressed(t) + stab(t, 40.03, 60) + stab(t, 50.01, 25), 0.3);
        // Offset at rest, and the vacuum in the line when the foot comes off.
        assertAllKept(rate, t -> pressed(t) - 0.7 - stab(t, 23.1, 4), 0.5);
        // Pressed harder once, for a quarter of a second, than ever else.
        assertAllKept(rate, t -> pressed(t) + (t > 40 && t < 40.25 ? 110 : 0), 0.3);
        // The pump of a car with ABS: twelve times a second by a tenth of the pressure to either side.
        assertAllKept(rate, t -> pressed(t) + (t > 20.5 && t < 22.5 ? 6 * Math.sin(24 * Math.PI * t) : 0), 0.3);
        // Full pedal to the last digit, down in a tenth of a second and off as quickly, where else it is only touched.
        assertAllKept(
                rate,
                t -> 100 * Math.max(0, Math.min(1, Math.min(t - 20, 23 - t) / 0.1)) + (t > 40 && t < 41 ? 8 : 0),
                0);
        // A switch that gives a level which drifts.
        assertAllKept(rate, t -> t > 20 && t < 23 ? 38 + t : 0, 0);
        // A switch, a line on which nobody brakes, and one where a foot only rests.
        assertAllKept(rate, t -> t > 20 && t < 23 || t > 30 && t < 30.3 ? 1 : 0, 0);
        assertAllKept(rate, t -> 0, 0.3);
        assertAllKept(rate, t -> t > 20 && t < 23 ? 0.8 : 0, 0.3);
    }
}
