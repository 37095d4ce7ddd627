package org.foreload.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is measured in runs of a point mass whose every place is known in closed form or by a fine integration. */
class RecordedCornersTest {

    private static BrakePlan plan(ReleaseShape shape) {
        return Braking.of(9, 0.2, new Release(shape, -10, 45)).from(-110);
    }

    static Stream<ReleaseShape> shapes() {
        return ReleaseShapes.all().stream().filter(shape -> !shape.equals(ReleaseShapes.ABRUPT));
    }

    private static RecordedCorner only(Recording recording) {
        List<RecordedCorner> corners = RecordedCorners.of(Run.of(recording, Cleaning.STANDARD));
        assertEquals(1, corners.size());
        return corners.get(0);
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void aCleanRunGivesItsPlanBack(ReleaseShape shape) {
        KnownRun known = new KnownRun(plan(shape));
        RecordedCorner corner = only(known.recording(100, 0, 0, 1, false));
        assertEquals(shape.name(), corner.shape().orElseThrow().name());
        assertTrue(corner.bend().left());
        assertEquals(known.brakeOn(), corner.get(Measure.BRAKE_ON).value(), 0.3);
        assertEquals(known.brakeOn() + 100, corner.get(Measure.FIRST_EASE).value(), 0.5);
        assertEquals(known.releaseEnd(), corner.get(Measure.RELEASE_END).value(), 0.5);
        assertEquals(KnownRun.APPROACH, corner.get(Measure.TURN_IN).value(), 0.5);
        double middle = KnownRun.APPROACH + KnownRun.SPIRAL + KnownRun.ARC / 2;
        assertEquals(middle, corner.get(Measure.APEX).value(), 1);
        assertEquals(known.minimumSpeed(), corner.get(Measure.MINIMUM_SPEED).value(), 0.02);
        assertEquals(known.trailShare(), corner.get(Measure.TRAIL_SHARE).value(), 0.005);
        assertEquals(9, corner.get(Measure.PEAK_DECELERATION).value(), 0.05);
        assertEquals(45, corner.get(Measure.TRAIL_LENGTH).value(), 0.7);
        assertEquals(
                known.timeAt(known.releaseEnd()) - known.timeAt(KnownRun.APPROACH),
                corner.get(Measure.TRAIL_TIME).value(),
                0.03);
        assertEquals(0, corner.get(Measure.REAPPLICATIONS).value());
        assertTrue(corner.get(Measure.SHAPE_ERROR).value() < 0.01);
    }

    /** Which channel the curvature comes from changes nothing. */
    @ParameterizedTest
    @ValueSource(strings = {"LATERAL", "YAW_RATE", "X"})
    void cornersAreFoundFromAnyOfThreeChannels(String kept) {
        KnownRun known = new KnownRun(plan(ReleaseShapes.LINEAR));
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        Recording whole = known.recording(50, 0, 0, 1, true);
        for (Channel channel : List.of(Channel.TIME, Channel.SPEED, Channel.BRAKE, Channel.valueOf(kept))) {
            columns.put(channel, whole.column(channel));
        }
        if (kept.equals("X")) {
            columns.put(Channel.Y, whole.column(Channel.Y));
        }
        RecordedCorner corner = only(Recording.of(columns));
        assertEquals(KnownRun.APPROACH, corner.get(Measure.TURN_IN).value(), 3);
        assertEquals(known.brakeOn(), corner.get(Measure.BRAKE_ON).value(), 0.7);
        assertTrue(corner.bend().left());
    }

    /** A speed sensor that reads two per cent high is put right by positions. */
    @Test
    void positionsCorrectTheDistance() {
        KnownRun known = new KnownRun(plan(ReleaseShapes.LINEAR));
        Recording whole = known.recording(50, 0, 0, 1, true);
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        for (Channel channel : Channel.values()) {
            if (whole.has(channel)) {
                columns.put(channel, whole.column(channel));
            }
        }
        double[] speed = columns.get(Channel.SPEED);
        for (int i = 0; i < speed.length; i++) {
            speed[i] *= 1.02;
        }
        Run run = Run.of(Recording.of(columns), Cleaning.STANDARD);
        assertEquals(1 / 1.02, run.distanceFactor(), 0.003);
        Run without = Run.of(known.recording(50, 0, 0, 1, false), Cleaning.STANDARD);
        assertEquals(1, without.distanceFactor());
    }

    @Test
    void aFootThatPressesAgainIsCounted() {
        KnownRun known = new KnownRun(plan(ReleaseShapes.LINEAR));
        Recording recording = known.recording(100, 0, 0, 1, false);
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        for (Channel channel : List.of(Channel.TIME, Channel.SPEED, Channel.LATERAL)) {
            columns.put(channel, recording.column(channel));
        }
        double[] brake = recording.column(Channel.BRAKE);
        double[] speed = recording.column(Channel.SPEED);
        double s = 0;
        for (int i = 0; i < brake.length; i++) {
            s += speed[i] / 100;
            double dip = Math.exp(-Math.pow((s - known.brakeOn() - 60) / 4, 2));
            brake[i] *= 1 - 0.4 * dip;
        }
        columns.put(Channel.BRAKE, brake);
        assertEquals(1, only(Recording.of(columns)).get(Measure.REAPPLICATIONS).value());
    }

    @Test
    void aCornerTakenWithoutBrakeHasNoBrakePoint() {
        KnownRun known = new KnownRun(plan(ReleaseShapes.LINEAR));
        Recording recording = known.recording(50, 0, 0, 1, false);
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        for (Channel channel : List.of(Channel.TIME, Channel.SPEED, Channel.LATERAL)) {
            columns.put(channel, recording.column(channel));
        }
        columns.put(Channel.BRAKE, new double[recording.rows()]);
        RecordedCorner corner = only(Recording.of(columns));
        assertFalse(corner.braked());
        assertFalse(corner.get(Measure.BRAKE_ON).known());
        assertEquals(KnownRun.APPROACH, corner.get(Measure.TURN_IN).value(), 1);
    }

    /** Where no brake was recorded, braking is read from the deceleration. */
    @Test
    void brakingShowsInTheSpeedToo() {
        KnownRun known = new KnownRun(plan(ReleaseShapes.LINEAR));
        Recording recording = known.recording(50, 0, 0, 1, false);
        Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
        for (Channel channel : List.of(Channel.TIME, Channel.SPEED, Channel.LATERAL)) {
            columns.put(channel, recording.column(channel));
        }
        RecordedCorner corner = only(Recording.of(columns));
        assertEquals(known.brakeOn(), corner.get(Measure.BRAKE_ON).value(), 5);
    }

    /**
     * Nine intervals in ten hold the truth: of 40 runs at least 31, which chance alone misses about once in two
     * hundred.
     */
    @ParameterizedTest
    @ValueSource(doubles = {10, 50})
    void intervalsHoldTheTruth(double rate) {
        holdTheTruth(rate);
    }

    @Tag("long")
    @Test
    void intervalsOfTheFinestRecordingHoldTheTruth() {
        holdTheTruth(100);
    }

    private static void holdTheTruth(double rate) {
        KnownRun known = new KnownRun(plan(ReleaseShapes.HELD));
        int runs = 40;
        int[] held = new int[4];
        Cleaning cleaning = new Cleaning(0.1, 0.005, 0.9, 20, 1);
        for (int k = 0; k < runs; k++) {
            double phase = (k + 0.5) / runs;
            Run run = Run.of(known.recording(rate, phase, 1, k, false), cleaning.withSeed(k));
            RecordedCorner corner = RecordedCorners.of(run).get(0);
            double first = known.first(rate, phase);
            held[0] += corner.get(Measure.BRAKE_ON).holds(known.brakeOn() - first) ? 1 : 0;
            held[1] += corner.get(Measure.RELEASE_END).holds(known.releaseEnd() - first) ? 1 : 0;
            held[2] += corner.get(Measure.TURN_IN).holds(KnownRun.APPROACH - first) ? 1 : 0;
            held[3] += corner.get(Measure.TRAIL_SHARE).holds(known.trailShare()) ? 1 : 0;
        }
        for (int count : held) {
            assertTrue(count >= 31, java.util.Arrays.toString(held));
        }
    }

    @Test
    void whatIsMissingIsSaid() {
        double[] rising = new double[20];
        for (int i = 0; i < rising.length; i++) {
            rising[i] = i;
        }
        assertMissing("time_s", Map.of(Channel.SPEED, rising));
        assertMissing("speed_mps", Map.of(Channel.TIME, rising));
        assertMissing("rows", Map.of(Channel.TIME, new double[3], Channel.SPEED, new double[3]));
        InvalidValueException e = assertThrows(
                InvalidValueException.class,
                () -> Run.of(Recording.of(Map.of(Channel.TIME, rising, Channel.SPEED, rising)), Cleaning.STANDARD));
        assertEquals("yaw_rate_rad_per_s", e.field());
        double[] back = rising.clone();
        back[7] = 3;
        assertMissing("time_s, row 8", Map.of(Channel.TIME, back, Channel.SPEED, rising));
    }

    /** The row that is named is that of the table, though a row above it has no distance. Counting. */
    @Test
    void theWrongRowIsNamedWhateverIsMissingAboveIt() {
        double[] time = new double[100];
        double[] distance = new double[100];
        for (int i = 0; i < time.length; i++) {
            time[i] = 0.02 * i;
            distance[i] = i % 2 == 0 ? i : Double.NaN;
        }
        distance[80] = 70;
        assertMissing("s_m, row 81", Map.of(Channel.TIME, time, Channel.DISTANCE, distance));
        distance[80] = 80;
        assertEquals(
                100,
                Recording.of(Map.of(Channel.TIME, time, Channel.DISTANCE, distance))
                        .rows());
    }

    /** A recorded distance is left as it is by where a part begins, and so is how well it is known. */
    @Test
    void aPartWithItsOwnDistanceHasNoOrigin() {
        Recording recording = new KnownRun(plan(ReleaseShapes.HELD)).recording(50, 0, 1, 3, false);
        Map<Channel, double[]> columns = new EnumMap<>(recording.columns());
        columns.put(
                Channel.DISTANCE, Signals.integrated(recording.column(Channel.TIME), recording.column(Channel.SPEED)));
        Recording measured = Recording.of(columns);
        assertEquals(0, measured.startingAt(5000).origin());
        assertEquals(
                only(measured).get(Measure.BRAKE_ON),
                only(measured.startingAt(5000)).get(Measure.BRAKE_ON));
        // A distance made of speed is as badly known as the road before it: half a per cent of 5 km.
        Estimate far = only(recording.startingAt(5000)).get(Measure.BRAKE_ON);
        assertEquals(25, far.deviation(), 1);
        assertThrows(InvalidValueException.class, () -> measured.startingAt(Double.NaN));
    }

    private static void assertMissing(String field, Map<Channel, double[]> columns) {
        assertEquals(
                field,
                assertThrows(InvalidValueException.class, () -> Recording.of(columns))
                        .field());
    }

    /** The same table in, the same recording out. */
    @Test
    void aRecordingIsATableAndATableARecording() {
        Recording recording = new KnownRun(plan(ReleaseShapes.LINEAR)).recording(20, 0, 1, 5, true);
        Recording again = Recording.of(recording.trace());
        for (Channel channel : Channel.values()) {
            assertEquals(recording.has(channel), again.has(channel));
            if (recording.has(channel)) {
                org.junit.jupiter.api.Assertions.assertArrayEquals(recording.column(channel), again.column(channel));
            }
        }
    }

    /** A table has steps of a centimetre or more; what is none is refused by its name. */
    @ParameterizedTest
    @ValueSource(doubles = {0, -1, 1e-9, Double.NaN, Double.POSITIVE_INFINITY})
    void aStepThatIsNoneIsRefused(double step) {
        Run run = Run.of(
                new KnownRun(plan(ReleaseShapes.LINEAR)).recording(50, 0, 0, 1, false),
                Cleaning.STANDARD.withoutResamples());
        InvalidValueException refused = assertThrows(InvalidValueException.class, () -> run.resampled(step));
        assertEquals("step_m", refused.field());
    }
}
