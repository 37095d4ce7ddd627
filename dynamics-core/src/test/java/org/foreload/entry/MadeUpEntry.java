package org.foreload.entry;

import java.util.List;
import java.util.Optional;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;

/** Entries that nobody drove, for tests of what is made of an entry. */
public final class MadeUpEntry {

    private MadeUpEntry() {}

    /**
     * An entry of which only this counts.
     *
     * @param outcome how it ended
     * @param longestLock s
     * @param time s
     * @param limit what came closest to its limit
     * @param events what happened
     */
    public static EntryResult of(
            Outcome outcome, double longestLock, double time, EntryResult.Limit limit, List<EntryEvent> events) {
        return new EntryResult(
                Braking.of(8, 0.25, new Release(ReleaseShapes.LINEAR, 0, 10)).from(-100),
                outcome,
                longestLock,
                events,
                30,
                50,
                20,
                30,
                time,
                0.2,
                0.3,
                0.1,
                new EntryResult.Margins(0.1, 0.1, 0.1, 3),
                limit,
                Optional.empty(),
                1000);
    }
}
