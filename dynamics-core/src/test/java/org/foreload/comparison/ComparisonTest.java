package org.foreload.comparison;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.InvalidValueException;
import org.foreload.recording.Channel;
import org.foreload.recording.Cleaning;
import org.foreload.recording.Estimate;
import org.foreload.recording.KnownRun;
import org.foreload.recording.RecordedCorner;
import org.foreload.recording.RecordedCorners;
import org.foreload.recording.Recording;
import org.foreload.recording.Run;
import org.junit.jupiter.api.Test;

/** Laws of comparing, on point masses whose every place is known. */
class ComparisonTest {

    private static final Cleaning QUICK = Cleaning.STANDARD.withoutResamples();

    /** Round-off: sums taken in another order. */
    private static final double ROUND_OFF = 1e-9;

    @Provide
    Arbitrary<BrakePlan> plans() {
        return Combinators.combine(
                        Arbitraries.doubles().between(-125, -105),
                        Arbitraries.doubles().between(5.5, 7),
                        Arbitraries.of(ReleaseShapes.LINEAR, ReleaseShapes.HELD, ReleaseShapes.PROGRESSIVE),
                        Arbitraries.doubles().between(-30, -5),
                        Arbitraries.doubles().between(5, 50))
                .as((point, peak, shape, start, end) ->
                        Braking.of(peak, 0.2, new Release(shape, start, end)).from(point));
    }

    private record Measured(Run run, List<RecordedCorner> corners) {

        static Measured of(Recording recording) {
            Run run = Run.of(recording, QUICK);
            return new Measured(run, RecordedCorners.of(run));
        }

        Comparison against(Measured other) {
            return Comparison.of(run, corners, other.run, other.corners);
        }
    }

    private static Measured noisy(BrakePlan plan, double rate, long seed, boolean position) {
        return Measured.of(new KnownRun(plan).recording(rate, 0.3, 1, seed, position));
    }

    @Property(tries = 20)
    void aRunHasNoGapToItself(@ForAll("plans") BrakePlan plan, @ForAll boolean position) {
        Measured run = noisy(plan, 50, 1, position);
        Comparison comparison = run.against(run);
        assertEquals(0, comparison.gap().value(), ROUND_OFF);
        for (double gap : comparison.curve(5).column("gap_s").values()) {
            assertEquals(0, gap, ROUND_OFF);
        }
        CornerGap corner = comparison.corners().get(0);
        for (Estimate part : List.of(corner.gap(), corner.toTurnIn(), corner.toApex(), corner.toExit())) {
            assertEquals(0, part.value(), ROUND_OFF);
        }
    }

    @Property(tries = 20)
    void exchangingTheTwoTurnsEverySign(
            @ForAll("plans") BrakePlan one, @ForAll("plans") BrakePlan other, @ForAll boolean position) {
        Measured a = noisy(one, 50, 1, position);
        Measured b = noisy(other, 20, 2, position);
        Comparison there = a.against(b);
        Comparison back = b.against(a);
        turned(there.gap(), back.gap());
        for (int i = 0; i <= 20; i++) {
            double place = there.start() + i * (there.end() - there.start()) / 20;
            assertEquals(-there.gapAt(place), back.gapAt(place), ROUND_OFF);
        }
        CornerGap forth = there.corners().get(0);
        CornerGap reverse = back.corners().get(0);
        turned(forth.gap(), reverse.gap());
        turned(forth.toTurnIn(), reverse.toTurnIn());
        turned(forth.toApex(), reverse.toApex());
        turned(forth.toExit(), reverse.toExit());
    }

    private static void turned(Estimate there, Estimate back) {
        assertEquals(-there.value(), back.value(), ROUND_OFF);
        assertEquals(-there.high(), back.low(), ROUND_OFF);
        assertEquals(-there.low(), back.high(), ROUND_OFF);
    }

    @Property(tries = 20)
    void thePartsSumToTheWhole(@ForAll("plans") BrakePlan one, @ForAll("plans") BrakePlan other) {
        Comparison comparison = noisy(one, 50, 1, false).against(noisy(other, 50, 2, false));
        double sum = 0;
        for (CornerGap corner : comparison.corners()) {
            double phases = corner.toTurnIn().value()
                    + corner.toApex().value()
                    + corner.toExit().value();
            assertEquals(corner.gap().value(), phases, ROUND_OFF);
            sum += corner.gap().value();
        }
        assertEquals(comparison.gap().value(), sum, ROUND_OFF);
    }

    /** The gap is that of the two point masses, at 10, 50 and 100 Hz, within the interval that is told. */
    @Property(tries = 20)
    void theGapIsTheTrueOne(
            @ForAll("plans") BrakePlan one, @ForAll("plans") BrakePlan other, @ForAll("rates") int rate) {
        KnownRun mine = new KnownRun(one);
        KnownRun theirs = new KnownRun(other);
        Comparison comparison = Measured.of(mine.recording(rate, 0.3, 1, 1, false))
                .against(Measured.of(theirs.recording(rate, 0.3, 1, 2, false)));
        double from = mine.first(rate, 0.3);
        double end = 580;
        double truth = mine.timeAt(end) - mine.timeAt(from) - theirs.timeAt(end) + theirs.timeAt(from);
        double found = comparison.gapAt(end - from);
        double half = comparison.gap().high() - comparison.gap().value();
        assertEquals(truth, found, 2 * half);
    }

    @Provide
    Arbitrary<Integer> rates() {
        return Arbitraries.of(10, 50, 100);
    }

    /** A clock that starts elsewhere, a map that is moved, and fewer samples change nothing beyond the stated error. */
    @Property(tries = 20)
    void shiftingAndResamplingChangeNothing(@ForAll("plans") BrakePlan one, @ForAll("plans") BrakePlan other) {
        Recording mine = new KnownRun(one).recording(50, 0, 1, 1, true);
        Measured theirs = noisy(other, 50, 2, true);
        Comparison plain = Measured.of(mine).against(theirs);
        Comparison later = Measured.of(changed(mine, 1234.5, 0, 1)).against(theirs);
        assertEquals(plain.gap().value(), later.gap().value(), 1e-6);
        Comparison moved = Measured.of(changed(mine, 0, 500, 1)).against(theirs);
        assertEquals(plain.gap().value(), moved.gap().value(), 1e-6);
        Comparison fewer = Measured.of(changed(mine, 0, 0, 2)).against(theirs);
        double half = plain.gap().high() - plain.gap().value();
        assertEquals(plain.gap().value(), fewer.gap().value(), 2 * half);
    }

    /** What is cut off at the start and end is not compared; what is left is as before. */
    @Property(tries = 20)
    void cuttingChangesNothing(@ForAll("plans") BrakePlan one, @ForAll("plans") BrakePlan other) {
        Recording mine = new KnownRun(one).recording(50, 0, 1, 1, false);
        Measured theirs = noisy(other, 50, 2, false);
        Comparison whole = Measured.of(mine).against(theirs);
        Comparison part = Measured.of(cut(mine, 100, mine.rows() - 80)).against(theirs);
        double from = part.start();
        double to = part.end();
        // The part's own axis starts where it was cut: places are told by the reference.
        double a = whole.alignment().placeOfSecond(part.alignment().second(from));
        double b = whole.alignment().placeOfSecond(part.alignment().second(to));
        double half = whole.gap().high() - whole.gap().value();
        assertEquals(whole.gapAt(b) - whole.gapAt(a), part.gap().value(), half);
        assertEquals(
                whole.corners().get(0).toApex().value(),
                part.corners().get(0).toApex().value(),
                half);
    }

    private static Recording changed(Recording recording, double later, double moved, int every) {
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        for (Channel channel : Channel.values()) {
            if (recording.has(channel)) {
                double[] all = recording.column(channel);
                double[] some = new double[(all.length + every - 1) / every];
                double add = channel == Channel.TIME ? later : channel == Channel.X || channel == Channel.Y ? moved : 0;
                for (int i = 0; i < some.length; i++) {
                    some[i] = all[i * every] + add;
                }
                columns.put(channel, some);
            }
        }
        return Recording.of(columns);
    }

    private static Recording cut(Recording recording, int from, int to) {
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        for (Channel channel : Channel.values()) {
            if (recording.has(channel)) {
                columns.put(channel, Arrays.copyOfRange(recording.column(channel), from, to));
            }
        }
        return Recording.of(columns);
    }

    @Test
    void twoRoadsWithoutACornerInCommonAreRefused() {
        BrakePlan plan =
                Braking.of(8, 0.2, new Release(ReleaseShapes.LINEAR, -10, 40)).from(-110);
        Recording left = new KnownRun(plan).recording(50, 0, 0, 1, false);
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        for (Channel channel : Channel.values()) {
            if (left.has(channel)) {
                boolean across = channel == Channel.LATERAL || channel == Channel.YAW_RATE;
                double sign = across ? -1 : 1;
                columns.put(
                        channel,
                        Arrays.stream(left.column(channel)).map(x -> sign * x).toArray());
            }
        }
        Measured one = Measured.of(left);
        Measured mirrored = Measured.of(Recording.of(columns));
        InvalidValueException e = assertThrows(InvalidValueException.class, () -> one.against(mirrored));
        assertEquals("corners", e.field());
        assertTrue(e.getMessage().contains("none in common"), e.getMessage());
    }

    /** Runs that know only positions are laid on each other by them. */
    @Test
    void positionsAloneWillDo() {
        BrakePlan early =
                Braking.of(8, 0.2, new Release(ReleaseShapes.LINEAR, -10, 40)).from(-125);
        BrakePlan late =
                Braking.of(8, 0.2, new Release(ReleaseShapes.LINEAR, -5, 55)).from(-110);
        KnownRun mine = new KnownRun(early);
        KnownRun theirs = new KnownRun(late);
        Comparison comparison =
                placed(mine.recording(20, 0.3, 1, 1, true)).against(placed(theirs.recording(20, 0.3, 1, 2, true)));
        assertEquals(Alignment.Basis.POSITION, comparison.alignment().basis());
        double truth = mine.timeAt(580) - theirs.timeAt(580);
        assertEquals(truth, comparison.gapAt(580 - mine.first(20, 0.3)), 0.03);
    }

    private static Measured placed(Recording recording) {
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        for (Channel channel : List.of(Channel.TIME, Channel.X, Channel.Y)) {
            columns.put(channel, recording.column(channel));
        }
        return Measured.of(Recording.of(columns));
    }
}
