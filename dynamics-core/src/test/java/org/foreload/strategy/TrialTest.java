package org.foreload.strategy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.InvalidValueException;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntryEvent.Kind;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.junit.jupiter.api.Test;

/** An entry held against a margin, and the slips of a driver, on numbers made by hand. */
class TrialTest {

    private static final BrakePlan PLAN =
            Braking.of(8, 0.25, new Release(ReleaseShapes.LINEAR, -5, 30)).from(-90);

    @Test
    void aMarginThatIsJustKeptIsKept() {
        assertTrue(MadeTrials.made(PLAN, 0, 20).met());
        assertFalse(MadeTrials.made(PLAN, 1e-12, 20).met());
        assertTrue(MadeTrials.made(PLAN, 1, 20).made());
        assertFalse(MadeTrials.wide(PLAN).made());
        Trial failed = MadeTrials.made(PLAN, -1, 20).failed();
        assertTrue(failed.made() && !failed.met());
        assertEquals(-90, failed.point());
    }

    @Test
    void itKnowsWhetherTheCarStopped() {
        assertTrue(MadeTrials.ended(PLAN, Outcome.STOPPED, new EntryEvent(Kind.STOPPED, -20, 9))
                .stopped());
        assertFalse(MadeTrials.wide(PLAN).stopped());
    }

    /** Ten metres before turn-in, or before a release that begins earlier: from there on the brake point may decide. */
    @Test
    void aWheelThatStopsWellBeforeTheReleaseStopsFromEverywhere() {
        for (Kind kind : List.of(Kind.FRONT_LOCKS, Kind.REAR_LOCKS)) {
            assertTrue(locked(kind, -15.1, -5).lockedStraight());
            assertFalse(locked(kind, -14.9, -5).lockedStraight());
            assertFalse(locked(kind, -15, -5).lockedStraight());
            assertTrue(locked(kind, -10.1, 8).lockedStraight());
            assertFalse(locked(kind, -9.9, 8).lockedStraight());
        }
        assertFalse(locked(Kind.BRAKE_ON, -60, -5).lockedStraight());
    }

    private static Trial locked(Kind kind, double station, double releaseStart) {
        BrakePlan plan = PLAN.with(new Release(ReleaseShapes.LINEAR, releaseStart, 30));
        return MadeTrials.ended(plan, Outcome.LOCKED_UP, new EntryEvent(kind, station, 5));
    }

    /** Two metres late on the brake, two late off it, or a twentieth too hard. */
    @Test
    void whatCountsAsTwoMetres() {
        assertEquals(-88, Slip.LATE_BRAKE.of(PLAN, 2).brakePoint());
        assertEquals(PLAN.braking(), Slip.LATE_BRAKE.of(PLAN, 2).braking());
        BrakePlan late = Slip.LATE_RELEASE.of(PLAN, 2);
        assertEquals(-90, late.brakePoint());
        assertEquals(-3, late.release().start(), 1e-12);
        assertEquals(32, late.release().end(), 1e-12);
        BrakePlan hard = Slip.HARD_PEAK.of(PLAN, 2);
        assertEquals(8.4, hard.peakDeceleration(), 1e-12);
        assertEquals(PLAN.release(), hard.release());
    }

    /** 0.1 m of 0.5 m of drift, 3 m to the edge, a tenth of each axle and of the brake left. */
    @Test
    void eachMarginIsHeldAgainstItsOwnNumber() {
        EntryResult entry = MadeTrials.entry(PLAN, Outcome.MADE_IT, 20, List.of());
        Excess excess = new Allowance(0.5, 1, 0.05, 0.25, 0).trial(entry).excess();
        assertEquals(-0.8, excess.drift(), 1e-12);
        assertEquals(-2, excess.edge(), 1e-12);
        assertEquals(-0.5, excess.front(), 1e-12);
        assertEquals(1.5, excess.rear(), 1e-12);
        assertEquals(-1, excess.lock(), 1e-12);
        Excess unasked = new Allowance(0.5, 0, 0, 0, 0).trial(entry).excess();
        assertEquals(Double.NEGATIVE_INFINITY, unasked.front());
        assertEquals(Double.NEGATIVE_INFINITY, unasked.rear());
        assertEquals(
                Excess.NOT_MADE,
                Allowance.NO_MARGIN
                        .trial(MadeTrials.entry(PLAN, Outcome.RAN_WIDE, 20, List.of()))
                        .excess());
        assertTrue(Allowance.NO_MARGIN.met(entry));
        assertFalse(new Allowance(0.5, 1, 0.05, 0.25, 0).met(entry));
    }

    @Test
    void marginsThatCannotBeAreRefusedByName() {
        refused("drift", () -> new Allowance(0, 0, 0, 0, 0));
        refused("edge_margin", () -> new Allowance(0.5, -0.1, 0, 0, 0));
        refused("front_margin", () -> new Allowance(0.5, 0, 1.1, 0, 0));
        refused("rear_margin", () -> new Allowance(0.5, 0, 0, -0.1, 0));
        refused("in_hand", () -> new Allowance(0.5, 0, 0, 0, InHand.MOST + 0.1));
    }

    private static void refused(String field, Runnable made) {
        assertEquals(field, assertThrows(InvalidValueException.class, made::run).field());
    }
}
