package org.foreload.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.recording.Bend;
import org.foreload.recording.Estimate;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;
import org.foreload.study.Proportion;
import org.junit.jupiter.api.Test;

/** Which advice stands first. Common practice, no source. */
class AdviceOrderTest {

    private static final BrakePlan PLAN =
            Braking.of(8, 0.2, new Release(ReleaseShapes.LINEAR, -20, 10)).from(-100);

    private static final Step LATER = new Step(Change.BRAKE_POINT, 2);
    private static final Step SOFTER = new Step(Change.PEAK, -0.6);

    private static Advice advice(double gain, double half, Step... steps) {
        return new Advice(List.of(steps), PLAN, Estimate.around(gain, half), new Proportion(0, 32));
    }

    private static RecordedCorner corner(double brakeOn, double peak, ReleaseShape shape) {
        Map<Measure, Estimate> measures = new EnumMap<>(Measure.class);
        for (Measure measure : Measure.values()) {
            measures.put(measure, Estimate.NONE);
        }
        measures.put(Measure.TURN_IN, Estimate.around(500, 1));
        measures.put(Measure.BRAKE_ON, Estimate.around(500 + brakeOn, 1));
        measures.put(Measure.PEAK_DECELERATION, Estimate.around(peak, 0.1));
        return new RecordedCorner(
                new Bend(1, 505, 560, true, 1.5),
                Optional.of(shape),
                measures,
                new RecordedCorner.AxisError(0.001, 0, 1));
    }

    private static final RecordedCorner DID = corner(-100, 8, ReleaseShapes.LINEAR);
    private static final RecordedCorner QUICKER = corner(-90, 8.5, ReleaseShapes.SMOOTH);

    private static List<Advice> ordered(Advice... items) {
        return new CornerAdvice(1, DriverScatter.PRACTISED, Optional.empty(), List.of(items), Optional.empty())
                .towards(DID, QUICKER)
                .items();
    }

    /**
     * Worth the same within their uncertainty: what the quicker lap did comes first, although it gains a little less.
     */
    @Test
    void whatTheQuickerLapDidComesFirst() {
        Advice later = advice(0.10, 0.05, LATER);
        Advice softer = advice(0.12, 0.05, SOFTER);
        assertEquals(List.of(later, softer), ordered(softer, later));
    }

    /** Two intervals that lie apart are not the same: then the quicker lap has no say. */
    @Test
    void whatClearlyGainsMoreComesFirst() {
        Advice later = advice(0.05, 0.02, LATER);
        Advice softer = advice(0.12, 0.04, SOFTER);
        assertEquals(List.of(softer, later), ordered(later, softer));
    }

    /**
     * Of those that the quicker lap does not speak for, the one that surely gains more; so the most that is gained may
     * stand second.
     */
    @Test
    void whatSurelyGainsMoreComesFirst() {
        Advice sure = advice(0.10, 0.03, SOFTER);
        Advice unsure = advice(0.12, 0.10, new Step(Change.PICK_UP, -4));
        assertEquals(List.of(sure, unsure), ordered(unsure, sure));
        assertEquals(
                0.12,
                new CornerAdvice(1, DriverScatter.PRACTISED, Optional.empty(), List.of(sure, unsure), Optional.empty())
                        .best());
    }

    /** Towards the quicker lap is what comes nearer to it: no step beyond it, none from what is not known. */
    @Test
    void aStepIsTowardsAnotherLapWhereItComesNearer() {
        assertTrue(LATER.towards(DID, QUICKER));
        assertFalse(new Step(Change.BRAKE_POINT, -2).towards(DID, QUICKER));
        assertTrue(new Step(Change.PEAK, 0.6).towards(DID, QUICKER));
        assertFalse(SOFTER.towards(DID, QUICKER));
        assertFalse(LATER.towards(DID, corner(-99.5, 8, ReleaseShapes.LINEAR)));
        assertFalse(new Step(Change.PICK_UP, 4).towards(DID, QUICKER));
        int smooth = ReleaseShapes.all().indexOf(ReleaseShapes.SMOOTH);
        assertTrue(new Step(Change.SHAPE, smooth).towards(DID, QUICKER));
        assertFalse(new Step(Change.SHAPE, smooth).towards(DID, DID));
    }
}
