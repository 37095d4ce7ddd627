package org.foreload.examples.own;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.junit.jupiter.api.Test;

/** The example of a tyre from outside the core does what it says. */
class OwnTyreTest {

    @Test
    void itBreaksNoLaw() {
        assertEquals(List.of(), OwnTyre.brokenLaws());
    }

    @Test
    void itDrivesAnEntry() {
        EntryResult entry = OwnTyre.entry();
        assertEquals(Outcome.MADE_IT, entry.outcome(), entry.cause());
        // A point mass on this friction takes the tightest 60 m at √(1.15 · 9.81 · 60) = 26.0 m/s at most.
        assertTrue(entry.minimumSpeed() < Math.sqrt(1.15 * 9.81 * 60));
        assertTrue(entry.minimumSpeed() > 10);
    }
}
