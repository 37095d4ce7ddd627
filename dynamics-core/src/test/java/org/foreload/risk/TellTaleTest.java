package org.foreload.risk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntryEvent.Kind;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Margins;
import org.foreload.entry.Outcome;
import org.junit.jupiter.api.Test;

/** What a driver feels belongs to what went wrong first. */
class TellTaleTest {

    private static String felt(Outcome outcome, Kind... kinds) {
        List<EntryEvent> events = java.util.Arrays.stream(kinds)
                .map(kind -> new EntryEvent(kind, 20, 5))
                .toList();
        BrakePlan plan =
                Braking.of(8, 0.25, new Release(ReleaseShapes.LINEAR, 0, 10)).from(-100);
        return TellTale.of(new EntryResult(
                plan,
                outcome,
                0,
                events,
                30,
                50,
                20,
                30,
                17,
                0.2,
                0.3,
                0.1,
                new Margins(0.1, 0.1, 3),
                EntryResult.Limit.FRONT_AXLE,
                Optional.empty(),
                1000));
    }

    @Test
    void theRearIsNotFeltAtTheFront() {
        assertTrue(felt(Outcome.RAN_WIDE, Kind.REAR_SATURATES).startsWith("the rear moves out"));
        assertTrue(felt(Outcome.SPUN, Kind.REAR_SATURATES).startsWith("the rear moves out"));
        assertTrue(felt(Outcome.SPUN, Kind.REAR_LOCKS).startsWith("the rear steps out"));
        assertTrue(felt(Outcome.LOCKED_UP, Kind.REAR_LOCKS).startsWith("a rear wheel locks"));
    }

    @Test
    void theFrontIsFeltAtTheFront() {
        assertTrue(felt(Outcome.RAN_WIDE, Kind.FRONT_SATURATES).contains("the front washes out"));
        assertTrue(felt(Outcome.SPUN, Kind.FRONT_SATURATES).startsWith("the front washes out"));
        assertTrue(felt(Outcome.RAN_WIDE, Kind.FRONT_LOCKS).startsWith("a front wheel locks"));
        assertTrue(felt(Outcome.LOCKED_UP, Kind.FRONT_LOCKS).startsWith("a front wheel locks"));
    }

    @Test
    void withoutAWordOnTheAxlesTheEndingDecides() {
        assertTrue(felt(Outcome.RAN_WIDE).contains("the front washes out"));
        assertTrue(felt(Outcome.SPUN).startsWith("the rear moves out"));
        assertEquals("the car is slow long before the corner", felt(Outcome.STOPPED, Kind.FRONT_SATURATES));
        assertEquals("none", felt(Outcome.MADE_IT, Kind.FRONT_LOCKS));
    }
}
