package org.foreload.strategy;

import java.util.Objects;
import org.foreload.entry.EntryResult;

/**
 * What a search for a brake point came to.
 *
 * @param entry the entry from there, with profile; if there is none, the attempt that came closest
 * @param found whether a brake point makes the corner with the margin asked for
 * @param inHand what the plan has {@link InHand in hand}, m; NaN if not found
 */
public record Finding(EntryResult entry, boolean found, double inHand) {

    /** Refuses null. */
    public Finding {
        Objects.requireNonNull(entry, "entry");
    }
}
