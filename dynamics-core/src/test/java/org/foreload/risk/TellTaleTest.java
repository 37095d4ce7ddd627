package org.foreload.risk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntryEvent.Kind;
import org.foreload.entry.EntryResult;
import org.foreload.entry.MadeUpEntry;
import org.foreload.entry.Outcome;
import org.junit.jupiter.api.Test;

/** What a driver feels belongs to what went wrong first. */
class TellTaleTest {

    private static String felt(Outcome outcome, Kind... kinds) {
        List<EntryEvent> events = java.util.Arrays.stream(kinds)
                .map(kind -> new EntryEvent(kind, 20, 5))
                .toList();
        return TellTale.of(MadeUpEntry.of(outcome, 0, 17, EntryResult.Limit.FRONT_AXLE, events));
    }

    @Test
    void theRearIsNotFeltAtTheFront() {
        assertTrue(felt(Outcome.RAN_WIDE, Kind.REAR_SATURATES).startsWith("the rear moves out, and catching it"));
        assertTrue(felt(Outcome.SPUN, Kind.REAR_SATURATES).startsWith("the rear moves out and the wheel goes light"));
        assertTrue(felt(Outcome.SPUN, Kind.REAR_LOCKS).startsWith("the rear steps out"));
        assertTrue(felt(Outcome.LOCKED_UP, Kind.REAR_LOCKS).startsWith("a rear wheel locks"));
    }

    @Test
    void theFrontIsFeltAtTheFront() {
        assertTrue(felt(Outcome.RAN_WIDE, Kind.FRONT_SATURATES).endsWith("the front washes out"));
        assertTrue(felt(Outcome.SPUN, Kind.FRONT_SATURATES).startsWith("the front washes out, then grips"));
        assertTrue(felt(Outcome.RAN_WIDE, Kind.FRONT_LOCKS).startsWith("a front wheel locks"));
        assertTrue(felt(Outcome.LOCKED_UP, Kind.FRONT_LOCKS).startsWith("a front wheel locks"));
    }

    @Test
    void withoutAWordOnTheAxlesTheEndingDecides() {
        assertTrue(felt(Outcome.RAN_WIDE).contains("the front washes out"));
        assertTrue(felt(Outcome.SPUN).startsWith("the rear moves out"));
        assertEquals("the car is slow long before the corner", felt(Outcome.STOPPED, Kind.FRONT_SATURATES));
        assertEquals("the inner wheels go light and leave the road", felt(Outcome.ROLLED_OVER, Kind.REAR_LOCKS));
        assertEquals("none", felt(Outcome.MADE_IT, Kind.FRONT_LOCKS));
    }

    /** A wheel that stops is felt whether or not the car makes the corner, and whatever ends the entry. */
    @Test
    void aLockIsFeltWhateverComesOfIt() {
        for (Outcome outcome : Outcome.values()) {
            assertEquals(
                    "a rear wheel locks: the rear goes loose under braking",
                    lock(outcome, Kind.REAR_SATURATES, Kind.REAR_LOCKS, Kind.FRONT_LOCKS)
                            .orElseThrow());
            assertTrue(lock(outcome, Kind.FRONT_LOCKS, Kind.REAR_LOCKS)
                    .orElseThrow()
                    .startsWith("a front wheel"));
            assertEquals(Optional.empty(), lock(outcome, Kind.FRONT_SATURATES));
        }
    }

    private static Optional<String> lock(Outcome outcome, Kind... kinds) {
        List<EntryEvent> events = java.util.Arrays.stream(kinds)
                .map(kind -> new EntryEvent(kind, 20, 5))
                .toList();
        return TellTale.ofLock(MadeUpEntry.of(outcome, 0, 17, EntryResult.Limit.FRONT_AXLE, events));
    }
}
