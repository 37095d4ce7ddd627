package org.foreload.strategy;

import java.util.Objects;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntryResult;

/**
 * One entry held against what is allowed.
 *
 * @param point brake point of the plan that is tried, m
 * @param entry the entry
 * @param excess how far it goes beyond what is allowed
 */
public record Trial(double point, EntryResult entry, Excess excess) {

    /** Refuses null. */
    public Trial {
        Objects.requireNonNull(entry, "entry");
        Objects.requireNonNull(excess, "excess");
    }

    /** Distance, m, before the release over which the brake point may decide whether a wheel stops long enough. */
    private static final double WELL_BEFORE = 10;

    /** Whether the entry keeps what is allowed. */
    public boolean met() {
        return excess.largest() <= 0;
    }

    /** Whether the car makes the corner, with the margin or without. */
    public boolean made() {
        return entry.made();
    }

    /** The same entry, taken for one that does not keep what is allowed. */
    Trial failed() {
        return new Trial(point, entry, Excess.NOT_MADE);
    }

    /** Whether the car stopped before the corner: braking earlier does not help. */
    boolean stopped() {
        return entry.event(EntryEvent.Kind.STOPPED).isPresent();
    }

    /** Whether a wheel stopped on the straight, well before the release: braking earlier does not help either. */
    boolean lockedStraight() {
        double before = Math.min(0, entry.plan().release().start()) - WELL_BEFORE;
        return entry.events().stream()
                .anyMatch(event -> event.station() < before
                        && (event.kind() == EntryEvent.Kind.FRONT_LOCKS || event.kind() == EntryEvent.Kind.REAR_LOCKS));
    }
}
