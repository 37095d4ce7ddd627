package org.foreload.strategy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.Outcome;
import org.junit.jupiter.api.Test;

/** How far entries go beyond what is allowed, and where two of them say that a limit is reached: straight lines. */
class ExcessTest {

    private static final double NONE = Double.NEGATIVE_INFINITY;

    private static final Excess KEPT = new Excess(-0.6, -0.3, -1, -0.2, -0.5);
    private static final Excess BROKEN = new Excess(0.2, 0.3, -0.9, -0.1, -0.4);

    @Test
    void theLargestDecides() {
        assertEquals(-0.2, KEPT.largest());
        assertEquals(0.3, BROKEN.largest());
        assertEquals(7, new Excess(NONE, NONE, 7, NONE, NONE).largest());
        assertEquals(5, new Excess(NONE, NONE, NONE, NONE, 5).largest());
        assertEquals(Double.POSITIVE_INFINITY, Excess.NOT_MADE.largest());
    }

    /** The edge runs from -0.3 to 0.3 and is reached half the way, the drift after three quarters. */
    @Test
    void theFirstLimitOnTheWayIsTheOneThatIsReached() {
        assertEquals(0.5, KEPT.shareTo(BROKEN), 1e-12);
        assertEquals(0.75, KEPT.shareTo(new Excess(0.2, -0.2, -1, -0.2, -0.5)), 1e-12);
        assertEquals(0, new Excess(0, NONE, NONE, NONE, NONE).shareTo(BROKEN), 1e-12);
    }

    /** Beyond a corner that is not made no line can be drawn, and none where nothing is broken. */
    @Test
    void whereNothingCanBeReadThereIsNoShare() {
        assertEquals(Double.NaN, KEPT.shareTo(Excess.NOT_MADE));
        assertEquals(Double.NaN, KEPT.shareTo(KEPT));
        assertEquals(Double.NaN, BROKEN.shareTo(new Excess(0.4, 0.6, -0.9, -0.1, -0.4)));
    }

    /** Each step brings the rear 0.1 nearer, which has 0.2 left: two steps. The front needs ten. */
    @Test
    void stepsToTheFirstLimit() {
        Excess before = new Excess(-0.6, -0.2, -1.1, -0.3, -0.5);
        assertEquals(2, KEPT.stepsToGo(before), 1e-12);
        assertEquals(Double.POSITIVE_INFINITY, KEPT.stepsToGo(KEPT));
        assertEquals(10, new Excess(-0.6, NONE, -1, NONE, NONE).stepsToGo(before), 1e-9);
        assertEquals(
                0, new Excess(0.1, NONE, NONE, NONE, NONE).stepsToGo(new Excess(-0.1, NONE, NONE, NONE, NONE)), 1e-12);
    }

    /**
     * A step took 0.1 off the drift, of which 0.2 are left, and 0.3 off the edge, of which 0.3 are: two steps and one.
     */
    @Test
    void stepsBackToTheLastLimit() {
        assertEquals(2, BROKEN.stepsBack(new Excess(0.3, 0.6, -0.9, -0.1, -0.4)), 1e-12);
        assertEquals(0, KEPT.stepsBack(BROKEN), 1e-12);
        assertEquals(Double.NaN, BROKEN.stepsBack(new Excess(0.2, 0.6, -0.9, -0.1, -0.4)));
    }

    /** Exactly at a limit it is kept: no step back is left to go, none leads to it, and no other is beyond it. */
    @Test
    void whatIsExactlyAtALimitKeepsIt() {
        Excess at = new Excess(0, NONE, NONE, NONE, NONE);
        assertEquals(0, at.stepsBack(at), 1e-12);
        assertEquals(Double.POSITIVE_INFINITY, at.stepsToGo(at));
        assertEquals(Double.NaN, KEPT.shareTo(at));
    }

    /** Before, no wheel could stop at all, and now one could: no line can be drawn from there, the others decide. */
    @Test
    void aLimitThatWasNotThereBeforeIsNotReached() {
        Excess before = new Excess(-0.6, -0.3, -1.1, -0.2, NONE);
        assertEquals(10, KEPT.stepsToGo(before), 1e-9);
        assertEquals(0.5, new Excess(-0.6, -0.3, -1, -0.2, NONE).shareTo(BROKEN), 1e-12);
    }

    /** Who must make the corner and no more has the edge, 3 m away, and the brake, a tenth of which is left. */
    @Test
    void makingTheCornerAsksForTheEdgeAndTheBrakeAlone() {
        Excess excess = Excess.ofEdge(MadeTrials.entry(
                Braking.of(8, 0.25, new Release(ReleaseShapes.LINEAR, -5, 30)).from(-90),
                Outcome.MADE_IT,
                20,
                List.of()));
        assertEquals(new Excess(NONE, -3, NONE, NONE, -1), excess);
    }
}
