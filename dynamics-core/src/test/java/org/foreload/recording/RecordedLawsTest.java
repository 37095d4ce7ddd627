package org.foreload.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiFunction;
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
import org.junit.jupiter.api.Test;

/** What a measure must not depend on: when the clock began, where the map lies, which way the road turns. */
class RecordedLawsTest {

    private static final Cleaning QUICK = Cleaning.STANDARD.withoutResamples();

    /**
     * Where a window ends exactly on a row, rounding decides whether the row is in it: what one row more of noise does,
     * m, m/s or a plain number.
     */
    private static final double ONE_ROW = 1e-3;

    /**
     * Part of its interval by which a measure may move besides: where a release runs out so gently that its end is
     * known to metres only, the search for it ends millimetres away when its numbers are rounded otherwise.
     */
    private static final double OF_THE_INTERVAL = 0.005;

    private static void same(RecordedCorner one, RecordedCorner other) {
        for (Measure measure : Measure.values()) {
            Estimate a = one.get(measure);
            double open = a.high() - a.low();
            double room = ONE_ROW + (open > 0 ? OF_THE_INTERVAL * open : 0);
            assertEquals(a.value(), other.get(measure).value(), room, () -> measure.field() + " in " + a);
        }
    }

    private static final Set<Measure> PLACES =
            Set.of(Measure.BRAKE_ON, Measure.RELEASE_END, Measure.TURN_IN, Measure.APEX);

    private static final Set<Measure> OTHERS =
            Set.of(Measure.MINIMUM_SPEED, Measure.TURN_IN_SPEED, Measure.TRAIL_SHARE);

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

    private static Recording logged(BrakePlan plan) {
        return new KnownRun(plan).recording(50, 0.3, 1, 7, true);
    }

    private static RecordedCorner corner(Recording recording, Cleaning cleaning) {
        return RecordedCorners.of(Run.of(recording, cleaning)).get(0);
    }

    private static Recording changed(Recording recording, BiFunction<Channel, double[], double[]> change) {
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        for (Channel channel : Channel.values()) {
            if (recording.has(channel)) {
                columns.put(channel, change.apply(channel, recording.column(channel)));
            }
        }
        return Recording.of(columns);
    }

    private static double[] each(double[] values, double factor, double added) {
        return Arrays.stream(values).map(x -> factor * x + added).toArray();
    }

    /**
     * Speed or time in another unit than was said: positions show it; 3.6, 1.609 and 1.852 by definition (SI Brochure).
     */
    @Test
    void aWrongUnitIsRefused() {
        Recording right = logged(
                Braking.of(6, 0.2, new Release(ReleaseShapes.LINEAR, -10, 20)).from(-115));
        assertTrue(Run.of(right, QUICK).last() > 400);
        for (double factor : new double[] {3.6, 1 / 3.6, 1.609, 1 / 1.609, 1.852, 1 / 1.852}) {
            Recording wrong =
                    changed(right, (channel, values) -> channel == Channel.SPEED ? each(values, factor, 0) : values);
            InvalidValueException refused = assertThrows(InvalidValueException.class, () -> Run.of(wrong, QUICK));
            assertEquals("speed_mps", refused.field());
        }
        for (double factor : new double[] {1e-3, 1e3, 60}) {
            Recording wrong =
                    changed(right, (channel, values) -> channel == Channel.TIME ? each(values, factor, 0) : values);
            assertThrows(InvalidValueException.class, () -> Run.of(wrong, QUICK));
        }
    }

    /** What a run would have logged besides: the way, and the slope of the speed, without noise. */
    private static Map<Channel, double[]> withLengths(Recording recording) {
        Map<Channel, double[]> columns = new EnumMap<>(recording.columns());
        double[] time = recording.column(Channel.TIME);
        double[] speed = recording.column(Channel.SPEED);
        columns.put(Channel.DISTANCE, Signals.integrated(time, speed));
        columns.put(Channel.LONGITUDINAL, Series.slope(time, speed, 0.1));
        return columns;
    }

    /** The same units without positions: the way shows them, and so does each of two accelerations. */
    @Test
    void aWrongUnitIsRefusedByWhateverShowsIt() {
        Recording right = new KnownRun(Braking.of(6, 0.2, new Release(ReleaseShapes.LINEAR, -10, 20))
                        .from(-115))
                .recording(50, 0.3, 1, 7, false);
        Map<Channel, double[]> all = withLengths(right);
        for (Set<Channel> shown : List.of(
                Set.of(Channel.DISTANCE), Set.of(Channel.LONGITUDINAL), Set.of(Channel.LATERAL, Channel.YAW_RATE))) {
            Map<Channel, double[]> columns = new EnumMap<>(all);
            columns.keySet().retainAll(Set.of(Channel.TIME, Channel.SPEED, Channel.BRAKE, Channel.YAW_RATE));
            shown.forEach(channel -> columns.put(channel, all.get(channel)));
            assertTrue(Run.of(Recording.of(columns), QUICK).last() > 400);
            for (double factor : new double[] {3.6, 1 / 3.6, 1.609, 1 / 1.609, 1.852, 1 / 1.852}) {
                columns.put(Channel.SPEED, each(all.get(Channel.SPEED), factor, 0));
                Recording wrong = Recording.of(columns);
                InvalidValueException refused = assertThrows(
                        InvalidValueException.class, () -> Run.of(wrong, QUICK), () -> shown + " " + factor);
                assertEquals("speed_mps", refused.field());
                double said = Double.parseDouble(refused.value().split(" ")[0]);
                assertEquals(1, said / factor, 0.1, () -> shown + " " + refused.value());
            }
        }
    }

    /** Where the way shows that the speed is right, an acceleration in g that was read as m/s² is to blame. */
    @Test
    void anAccelerationInAnotherUnitIsRefusedByItsName() {
        Recording right = logged(
                Braking.of(6, 0.2, new Release(ReleaseShapes.LINEAR, -10, 20)).from(-115));
        for (Channel channel : List.of(Channel.LONGITUDINAL, Channel.LATERAL)) {
            Map<Channel, double[]> columns = withLengths(right);
            columns.put(channel, each(columns.get(channel), 1 / 9.80665, 0));
            Recording wrong = Recording.of(columns);
            InvalidValueException refused = assertThrows(InvalidValueException.class, () -> Run.of(wrong, QUICK));
            assertEquals(channel.field(), refused.field());
            assertTrue(refused.value().startsWith("0.10 times "), refused.value());
        }
    }

    @Property(tries = 20)
    void clockAndMapMayBeginAnywhere(@ForAll("plans") BrakePlan plan) {
        Recording recording = logged(plan);
        RecordedCorner plain = corner(recording, QUICK);
        RecordedCorner moved = corner(
                changed(recording, (channel, values) -> switch (channel) {
                    case TIME -> each(values, 1, 4321);
                    case X -> each(values, 1, 700);
                    case Y -> each(values, 1, -900);
                    default -> values;
                }),
                QUICK);
        same(plain, moved);
    }

    @Property(tries = 20)
    void theRoadMayTurnTheOtherWay(@ForAll("plans") BrakePlan plan) {
        Recording recording = logged(plan);
        RecordedCorner left = corner(recording, QUICK);
        RecordedCorner right = corner(
                changed(recording, (channel, values) -> switch (channel) {
                    case LATERAL, YAW_RATE, STEERING, Y -> each(values, -1, 0);
                    default -> values;
                }),
                QUICK);
        assertEquals(left.bend().left(), !right.bend().left());
        for (Measure measure : Measure.values()) {
            assertEquals(left.get(measure).value(), right.get(measure).value(), 1e-9, measure.field());
        }
    }

    /** Any unit that grows with the brake will do, and any resting level. */
    @Property(tries = 20)
    void theBrakeMayHaveAnyUnit(@ForAll("plans") BrakePlan plan) {
        Recording recording = logged(plan);
        RecordedCorner plain = corner(recording, QUICK);
        RecordedCorner other = corner(
                changed(recording, (channel, values) -> channel == Channel.BRAKE ? each(values, 13.7, 4) : values),
                QUICK);
        same(plain, other);
    }

    /** Half the samples, and a part cut out: what is measured changes by no more than its intervals say. */
    @Property(tries = 10)
    void fewerSamplesAndACutChangeNothingBeyondTheIntervals(@ForAll("plans") BrakePlan plan) {
        Recording recording = logged(plan);
        RecordedCorner whole = corner(recording, Cleaning.STANDARD);
        Recording half = changed(recording, (channel, values) -> {
            double[] some = new double[values.length / 2];
            for (int i = 0; i < some.length; i++) {
                some[i] = values[2 * i];
            }
            return some;
        });
        alike(whole, corner(half, Cleaning.STANDARD), 0);
        int from = 120;
        Recording part = changed(recording, (channel, values) -> Arrays.copyOfRange(values, from, values.length - 100));
        double begun = Run.of(recording, QUICK).stationAt(recording.column(Channel.TIME)[from]);
        alike(whole, corner(part, Cleaning.STANDARD), begun);
    }

    /**
     * Intervals hold nine times in ten, and some hundred pairs are compared: none may be farther apart than twice what
     * both intervals reach.
     */
    private static final double FARTHEST = 2;

    private static void alike(RecordedCorner one, RecordedCorner other, double later) {
        for (Measure measure : Measure.values()) {
            if (PLACES.contains(measure) || OTHERS.contains(measure)) {
                double moved = PLACES.contains(measure) ? later : 0;
                Estimate a = one.get(measure);
                Estimate b = other.get(measure);
                double apart = Math.abs(a.value() - b.value() - moved);
                boolean alike = apart <= FARTHEST * (a.high() - a.low() + b.high() - b.low()) / 2;
                assertTrue(alike, () -> measure.field() + ": " + a + ", " + b + " later by " + moved);
            }
        }
    }
}
