package org.foreload.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.junit.jupiter.api.Test;

/** What is said of a corner that was not recorded throughout. */
class HolesTest {

    private static final BrakePlan PLAN =
            Braking.of(6, 0.2, new Release(ReleaseShapes.LINEAR, -10, 20)).from(-115);

    private static final double RATE = 50;

    /** The usual cleaning with half its resamples. */
    private static final Cleaning QUICK = new Cleaning(0.1, 0.005, 0.9, 20, 1);

    private static final KnownRun KNOWN = new KnownRun(PLAN);

    private static final Recording WHOLE = KNOWN.recording(RATE, 0.3, 1, 7, false);

    private static final RecordedCorner CLEAN = corner(WHOLE);

    private static RecordedCorner corner(Recording recording) {
        List<RecordedCorner> corners = RecordedCorners.of(Run.of(recording, QUICK));
        assertEquals(1, corners.size());
        return corners.get(0);
    }

    private static int row(double station) {
        return (int) Math.round(RATE * KNOWN.timeAt(station));
    }

    /** Without the rows between two stations, m. */
    private static Recording without(double from, double to) {
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        WHOLE.columns().forEach((channel, values) -> {
            double[] before = Arrays.copyOf(values, row(from) + values.length - row(to));
            System.arraycopy(values, row(to), before, row(from), values.length - row(to));
            columns.put(channel, before);
        });
        return Recording.of(columns);
    }

    /** Without what one channel says between two stations, m. */
    private static Recording without(Channel channel, double from, double to) {
        int[] rows = IntStream.range(row(from), row(to)).toArray();
        return WHOLE.without(channel, rows);
    }

    /** Whatever is still given holds what the whole recording says, within what both leave open. */
    private static void assertHonest(Recording recording, String where) {
        RecordedCorner found = corner(recording);
        for (Measure measure : Measure.values()) {
            Estimate clean = CLEAN.get(measure);
            Estimate holed = found.get(measure);
            double room = (clean.high() - clean.low()) / 2;
            boolean honest = !holed.known()
                    || clean.known() && clean.value() >= holed.low() - room && clean.value() <= holed.high() + room;
            assertTrue(honest, () -> where + ", " + measure.field() + ": " + holed + ", but " + clean);
        }
        assertTrue(found.shape().isEmpty() || found.shape().equals(CLEAN.shape()), () -> where + found.shape());
    }

    /** Anywhere from well before the brake point to the end of the bend. */
    @Property(tries = 25)
    void whatIsGivenIsTrueWhereverRowsAreMissing(
            @ForAll @DoubleRange(min = 130, max = 420) double from,
            @ForAll @DoubleRange(min = 1, max = 60) double length) {
        assertHonest(without(from, from + length), "rows from " + from + " for " + length);
    }

    /** Next to a hole the filter sees one side alone, and twice the noise: of that no peak is made. */
    @Test
    void thePeakIsNoNoiseBesideAHole() {
        for (double from : new double[] {196.3, 206.5, 254.1}) {
            assertHonest(without(from, from + 40), "rows from " + from);
        }
        assertHonest(without(Channel.SPEED, 203.01, 263.01), "speeds from 203");
    }

    /** As long as the cleaning rounds off, over the place where the foot comes down. */
    @Test
    void aHoleOfAFifthOfASecondCounts() {
        assertHonest(without(178.51, 187.5), "rows over the brake point");
    }

    @Property(tries = 25)
    void whatIsGivenIsTrueWhereverAChannelIsMissing(
            @ForAll @DoubleRange(min = 130, max = 420) double from,
            @ForAll @DoubleRange(min = 1, max = 60) double length) {
        for (Channel channel : List.of(Channel.BRAKE, Channel.LATERAL, Channel.SPEED)) {
            assertHonest(without(channel, from, from + length), channel + " from " + from + " for " + length);
        }
    }

    @Test
    void aHoleIsNamedByPlaceLengthAndChannel() {
        assertEquals(List.of(), Run.of(WHOLE, Cleaning.STANDARD).holes());
        double lasts = KNOWN.timeAt(310) - KNOWN.timeAt(280);
        Recording.Hole rows =
                Run.of(without(280, 310), Cleaning.STANDARD).holes().get(0);
        assertTrue(rows.whole());
        assertEquals(280, rows.from(), 1);
        assertEquals(310, rows.to(), 1);
        assertEquals(lasts, rows.lasts(), 2 / RATE);
        List<Recording.Hole> brake =
                Run.of(without(Channel.BRAKE, 280, 310), Cleaning.STANDARD).holes();
        assertEquals(1, brake.size());
        assertEquals(Set.of(Channel.BRAKE), brake.get(0).channels());
        assertEquals(lasts, brake.get(0).lasts(), 2 / RATE);
    }

    /** Three rows at 50 Hz are less than the filters are wide: nothing is lost by them. */
    @Test
    void aFewRowsAreNoHole() {
        double v = KnownRun.SPEED;
        Recording few = without(200, 200 + 3 * v / RATE);
        assertEquals(List.of(), Run.of(few, Cleaning.STANDARD).holes());
        assertTrue(corner(few).braked());
    }

    /** A receiver that writes once a second into a table of fifty rows a second has that rate, and no holes. */
    @Test
    void aSlowChannelHasNoHoles() {
        int[] between =
                IntStream.range(0, WHOLE.rows()).filter(i -> i % 50 != 0).toArray();
        assertEquals(
                List.of(),
                Run.of(WHOLE.without(Channel.SPEED, between), Cleaning.STANDARD).holes());
    }

    @Test
    void aReleaseInAHoleIsNotGivenAndAllElseIs() {
        RecordedCorner found = corner(without(285, 325));
        assertFalse(found.braked());
        assertTrue(found.shape().isEmpty());
        assertFalse(found.get(Measure.RELEASE_END).known());
        assertFalse(found.get(Measure.TRAIL_SHARE).known());
        assertEquals(KNOWN.brakeOn(), found.get(Measure.BRAKE_ON).value(), 1);
        Estimate turnIn = found.get(Measure.TURN_IN);
        assertTrue(turnIn.holds(KnownRun.APPROACH), turnIn::toString);
        assertTrue(turnIn.high() >= 325 - 1);
    }

    @Test
    void aBrakePointInAHoleIsNotGivenAndTheReleaseIs() {
        RecordedCorner found = corner(without(Channel.BRAKE, 170, 200));
        assertFalse(found.get(Measure.BRAKE_ON).known());
        assertFalse(found.braked());
        assertEquals(CLEAN.shape(), found.shape());
        assertEquals(KNOWN.releaseEnd(), found.get(Measure.RELEASE_END).value(), 1);
    }
}
