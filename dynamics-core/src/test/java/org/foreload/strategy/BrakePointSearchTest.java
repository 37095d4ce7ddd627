package org.foreload.strategy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.entry.SampleEntries;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.junit.jupiter.api.Test;

/** The search against a scan that drives every brake point, and what its answers must keep. */
class BrakePointSearchTest {

    /** A hairpin at the end of a straight on which the car gains half as much speed again before it brakes. */
    private static final Corner AFTER_A_LONG_STRAIGHT = new Corner(
            "hairpin after a long straight",
            30,
            SegmentPath.of(
                    350,
                    List.of(
                            Segment.spiralIn(15, 22, Turn.RIGHT),
                            Segment.arc(45, 22, Turn.RIGHT),
                            Segment.spiralOut(15, 22, Turn.RIGHT)),
                    60,
                    5));

    private static final CornerStudy STUDY = CornerStudy.of(SampleEntries.LIGHT, AFTER_A_LONG_STRAIGHT);

    private static Braking braking(ReleaseShape shape, double start, double end) {
        return Braking.of(0.7 * STUDY.lockLimit(), 0.25, new Release(shape, start, end));
    }

    private static final List<Braking> RELEASES = List.of(
            braking(ReleaseShapes.ABRUPT, 0, 0),
            braking(ReleaseShapes.LINEAR, -7, 20),
            braking(ReleaseShapes.PROGRESSIVE, 0, 25));

    private static boolean keepsAll(Braking braking, double point) {
        BrakePlan plan = braking.from(point);
        return STUDY.search().trial(plan).met()
                && InHand.forgives(STUDY.simulator(), plan, STUDY.allowance().inHand());
    }

    /** Nothing later keeps the margin, decimetre by decimetre; the last of all that do is the answer. */
    @Test
    void noLaterBrakePointKeepsTheMargin() {
        for (Braking braking : RELEASES) {
            Trial latest = STUDY.search().lastOfAll(braking);
            assertTrue(latest.met());
            assertTrue(keepsAll(braking, latest.point()), braking.toString());
            for (int i = 1; i <= 120; i++) {
                double later = Math.rint(10 * latest.point() + i) / 10;
                assertFalse(keepsAll(braking, later), braking + " from " + later);
            }
        }
    }

    /** Where the search begins must not decide what it finds. */
    @Test
    void theGuessDoesNotDecide() {
        for (Braking braking : RELEASES) {
            double from = STUDY.search().latest(braking).point();
            for (double off : new double[] {-12, -3, -0.4, 0.4, 3, 12}) {
                Trial again = STUDY.search().latest(braking, from + off);
                assertTrue(again.met(), braking + " " + off);
                assertEquals(from, again.point(), 0.11, braking + " " + off);
            }
        }
    }

    /** Without margin the last decimetres of drift cost time: then none from there to 6 m earlier is quicker. */
    @Test
    void theQuickestBrakePointIsQuickerThanAllEarlierOnes() {
        CornerStudy bare = STUDY.with(Allowance.NO_MARGIN);
        int moved = 0;
        for (Braking braking : RELEASES) {
            Trial latest = bare.search().latest(braking);
            Trial quickest = bare.search().quickest(braking);
            assertTrue(quickest.met() && quickest.point() <= latest.point());
            moved += quickest.point() < latest.point() ? 1 : 0;
            for (int i = 0; i <= 60; i++) {
                Trial earlier = bare.search().trial(braking.from(Math.rint(10 * latest.point() - i) / 10));
                assertTrue(
                        !earlier.met()
                                || earlier.entry().time() > quickest.entry().time() - 0.002,
                        braking + " from " + earlier.point());
            }
        }
        assertTrue(moved > 0, "the latest was the quickest for all, and nothing was tried");
    }

    /** Driven with full accuracy, the answer keeps its margin; its plan is in decimetres. */
    @Test
    void theAnswerHoldsAtFullAccuracy() {
        for (Braking braking : RELEASES) {
            Finding finding = STUDY.latest(braking);
            assertTrue(finding.found());
            BrakePlan plan = finding.entry().plan();
            assertEquals(Math.rint(10 * plan.brakePoint()), 10 * plan.brakePoint(), 1e-9);
            assertTrue(STUDY.allowance().met(STUDY.simulator().run(plan)));
            assertTrue(finding.inHand() >= STUDY.allowance().inHand());
        }
    }

    /** Half as hard again as locks the wheels, from anywhere: no answer, and soon. */
    @Test
    void aPeakThatLocksTheWheelsHasNoAnswer() {
        Braking hard = Braking.of(1.5 * STUDY.lockLimit(), 0.25, new Release(ReleaseShapes.LINEAR, -20, 10));
        assertFalse(STUDY.search().latest(hard).met());
        assertFalse(STUDY.latest(hard).found());
    }

    /** Each limit by itself: what is beyond it is above zero, what is within it below. */
    @Test
    void theExcessHasTheSignOfWhatIsLeft() {
        EntryResult entry = STUDY.latest(RELEASES.get(1)).entry();
        double drift = entry.farthestOffset();
        double front = entry.margins().front();
        double rear = entry.margins().rear();
        double edge = entry.margins().edge();
        Excess kept = new Allowance(2 * drift, edge - 0.1, front - 0.01, rear - 0.01, 0)
                .trial(entry)
                .excess();
        assertEquals(-0.5, kept.drift(), 1e-12);
        assertEquals(-0.1, kept.edge(), 1e-12);
        assertEquals(-0.1, kept.front(), 1e-12);
        assertEquals(-0.1, kept.rear(), 1e-12);
        Excess broken = new Allowance(drift / 2, edge + 0.1, front + 0.01, rear + 0.01, 0)
                .trial(entry)
                .excess();
        assertEquals(1, broken.drift(), 1e-12);
        assertEquals(0.1, broken.edge(), 1e-12);
        assertEquals(0.1, broken.front(), 1e-12);
        assertEquals(0.1, broken.rear(), 1e-12);
        assertEquals(1, broken.largest(), 1e-12);
        // The drift runs from -0.5 to 1, the others from -0.1 to 0.1: the drift is reached first.
        assertEquals(1.0 / 3, kept.shareTo(broken), 1e-9);
    }
}
