package org.foreload.comparison;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.InvalidValueException;
import org.foreload.recording.Channel;
import org.foreload.recording.Cleaning;
import org.foreload.recording.KnownRun;
import org.foreload.recording.RecordedCorner;
import org.foreload.recording.RecordedCorners;
import org.foreload.recording.Recording;
import org.foreload.recording.Run;
import org.junit.jupiter.api.Test;

/**
 * Corners that only one of two runs has. What is lost in a corner does not hang on whether the recordings go on behind
 * it: cause and effect, no source needed.
 */
class CornersOfOneRunTest {

    private static final double RATE = 50;

    private static final List<Channel> CHANNELS =
            List.of(Channel.TIME, Channel.SPEED, Channel.BRAKE, Channel.LATERAL, Channel.YAW_RATE);

    /** Road on which a point mass gains speed between two corners, m: as long for all who drive it. */
    private static final double GAINING = 250;

    private static final BrakePlan EARLY = plan(-125);
    private static final BrakePlan LATE = plan(-108);

    private static BrakePlan plan(double brakePoint) {
        return Braking.of(7, 0.2, new Release(ReleaseShapes.LINEAR, -10, 40)).from(brakePoint);
    }

    /** Rows of runs of point masses, one corner behind the other. */
    private static final class Road {

        private final Map<Channel, List<Double>> rows = new EnumMap<>(Channel.class);
        private int count;

        /** A corner that is driven to a plan: to the left, or mirrored. */
        Road corner(BrakePlan plan, boolean left) {
            Recording one = new KnownRun(plan).recording(RATE, 0, 0, 1, false);
            gain(one.column(Channel.SPEED)[0]);
            for (int i = 0; i < one.rows(); i++) {
                for (Channel channel : CHANNELS) {
                    boolean across = channel == Channel.LATERAL || channel == Channel.YAW_RATE;
                    double value = one.column(channel)[i];
                    put(channel, channel == Channel.TIME ? count / RATE : across && !left ? -value : value);
                }
                count++;
            }
            return this;
        }

        private void gain(double to) {
            double gain = count == 0 ? 0 : (to * to - last() * last()) / (2 * GAINING);
            while (count > 0 && last() + gain / RATE < to) {
                double speed = last() + gain / RATE;
                rows.forEach((channel, values) ->
                        values.add(channel == Channel.TIME ? count / RATE : channel == Channel.SPEED ? speed : 0));
                count++;
            }
        }

        private double last() {
            return rows.get(Channel.SPEED).get(count - 1);
        }

        private void put(Channel channel, double value) {
            rows.computeIfAbsent(channel, none -> new ArrayList<>()).add(value);
        }

        /** The run without its last rows. */
        Measured without(int last) {
            Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
            rows.forEach((channel, values) -> columns.put(
                    channel,
                    values.subList(0, count - last).stream()
                            .mapToDouble(Double::doubleValue)
                            .toArray()));
            Run run = Run.of(Recording.of(columns), Cleaning.STANDARD.withoutResamples());
            return new Measured(run, RecordedCorners.of(run));
        }
    }

    private record Measured(Run run, List<RecordedCorner> corners) {

        Comparison against(Measured other) {
            return Comparison.of(run, corners, other.run, other.corners);
        }
    }

    /** Rows from half a second behind the brake point of a plan to the end of its run. */
    private static int fromBrakingOn(BrakePlan plan) {
        KnownRun known = new KnownRun(plan);
        int rows = known.recording(RATE, 0, 0, 1, false).rows();
        return rows - (int) ((known.timeAt(KnownRun.APPROACH + plan.brakePoint()) + 0.5) * RATE);
    }

    /** A reference that ends on the brake for the second corner says as much of the first as one that goes on. */
    @Test
    void theTimeLostOnTheBrakeForTheNextCornerIsNotCharged() {
        Measured mine = new Road().corner(EARLY, true).corner(EARLY, true).without(0);
        Road reference = new Road().corner(LATE, true).corner(LATE, true);
        Comparison whole = mine.against(reference.without(0));
        Comparison cut = mine.against(reference.without(fromBrakingOn(LATE)));
        assertEquals(2, whole.corners().size());
        assertEquals(1, cut.corners().size());
        CornerGap first = cut.corners().get(0);
        assertEquals(whole.corners().get(0).toExit().value(), first.toExit().value(), 0.04);
        assertEquals(cut.gap().value(), first.gap().value() + cut.elsewhere(), 1e-9);
        assertTrue(cut.elsewhere() > 0.05, cut.elsewhere() + " s");
        assertEquals(0, whole.elsewhere(), 1e-9);
    }

    @Test
    void roadsWithOneBendAlikeAreRefused() {
        Measured one = new Road()
                .corner(EARLY, true)
                .corner(EARLY, true)
                .corner(EARLY, true)
                .without(0);
        Measured other = new Road()
                .corner(EARLY, true)
                .corner(EARLY, false)
                .corner(EARLY, false)
                .without(0);
        InvalidValueException e = assertThrows(InvalidValueException.class, () -> one.against(other));
        assertEquals("corners", e.field());
        assertTrue(e.getMessage().contains("1 in common"), e.getMessage());
    }
}
