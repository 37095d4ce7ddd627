package org.foreload.risk;

import java.util.Objects;
import java.util.Optional;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;

/**
 * What a driver feels when an entry goes wrong: it belongs to what went wrong first, as the cause of the entry says.
 */
public final class TellTale {

    private static final String FRONT_WASHES_OUT = "more lock no longer turns the car: the front washes out";
    private static final String REAR_MOVES_OUT = "the rear moves out and the wheel goes light";

    private static final String FRONT_LOCKS = "a front wheel locks: the steering goes dead until the brake is eased";
    private static final String REAR_LOCKS = "a rear wheel locks: the rear goes loose under braking";

    private TellTale() {}

    /** What is felt of the first wheel that stops, whatever comes of it; empty if none does. */
    public static Optional<String> ofLock(EntryResult entry) {
        Objects.requireNonNull(entry, "entry");
        return firstLock(entry).map(lock -> lock.kind() == EntryEvent.Kind.FRONT_LOCKS ? FRONT_LOCKS : REAR_LOCKS);
    }

    /** Where a wheel first stops; empty if none does, and for an entry without profile. */
    public static Optional<EntryEvent> firstLock(EntryResult entry) {
        Objects.requireNonNull(entry, "entry");
        return entry.events().stream()
                .filter(event ->
                        event.kind() == EntryEvent.Kind.FRONT_LOCKS || event.kind() == EntryEvent.Kind.REAR_LOCKS)
                .findFirst();
    }

    /** The tell-tale of an entry, in words; {@code none} for one that made the corner. */
    public static String of(EntryResult entry) {
        Objects.requireNonNull(entry, "entry");
        if (entry.made()) {
            return "none";
        }
        if (entry.outcome() == Outcome.STOPPED) {
            return "the car is slow long before the corner";
        }
        if (entry.outcome() == Outcome.ROLLED_OVER) {
            return "the inner wheels go light and leave the road";
        }
        boolean spun = entry.outcome() == Outcome.SPUN;
        return entry.wentFirst()
                .map(EntryEvent::kind)
                .map(kind -> switch (kind) {
                    case FRONT_LOCKS -> FRONT_LOCKS;
                    case REAR_LOCKS -> spun ? "the rear steps out under braking" : REAR_LOCKS;
                    case REAR_SATURATES ->
                        spun ? REAR_MOVES_OUT : "the rear moves out, and catching it takes the car wide";
                    default -> spun ? "the front washes out, then grips, and the rear comes round" : FRONT_WASHES_OUT;
                })
                .orElse(spun ? REAR_MOVES_OUT : FRONT_WASHES_OUT);
    }
}
