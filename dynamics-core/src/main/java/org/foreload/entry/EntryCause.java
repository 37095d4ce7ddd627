package org.foreload.entry;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.foreload.entry.EntryEvent.Kind;

/** Says in one line why an entry ended as it did: the first thing that went wrong, then what came of it. */
final class EntryCause {

    /**
     * Time, s, within which a wheel's lock follows the saturation of its axle that goes with it: an axle is full when
     * its first wheel is about to stop, so its use always passes the threshold first.
     */
    private static final double GOES_WITH = 0.3;

    private EntryCause() {}

    static String describe(Outcome outcome, Kind ending, List<EntryEvent> events, double longestLock) {
        String first = wentFirst(outcome, events).map(EntryCause::words).orElse("");
        String last = ending == null ? "" : at(events, ending);
        return switch (outcome) {
            case MADE_IT ->
                longestLock > 0
                        ? first
                                + String.format(
                                        Locale.ROOT, ", turning again within %.2f s, and held to the exit", longestLock)
                        : "held to the exit";
            case LOCKED_UP ->
                ending == Kind.STOPPED
                        ? first + ", then " + last
                        : first + String.format(Locale.ROOT, ", wheels stopped for %.2f s", longestLock);
            case STOPPED -> last;
            case RAN_WIDE, SPUN -> first.isEmpty() ? last : first + ", then " + last;
        };
    }

    /**
     * A lock if the entry made it or locked up; else also an axle that was full in the turn, if no lock went with it.
     */
    static Optional<EntryEvent> wentFirst(Outcome outcome, List<EntryEvent> events) {
        if (outcome == Outcome.STOPPED) {
            return Optional.empty();
        }
        boolean onlyLocks = outcome == Outcome.MADE_IT || outcome == Outcome.LOCKED_UP;
        return events.stream()
                .filter(event -> lock(event) || !onlyLocks && fullInTheTurn(event) && !goesWithALock(event, events))
                .findFirst();
    }

    private static boolean lock(EntryEvent event) {
        return event.kind() == Kind.FRONT_LOCKS || event.kind() == Kind.REAR_LOCKS;
    }

    /** On the straight an axle that is full of braking lacks nothing. */
    private static boolean fullInTheTurn(EntryEvent event) {
        return event.station() >= 0 && (event.kind() == Kind.FRONT_SATURATES || event.kind() == Kind.REAR_SATURATES);
    }

    private static boolean goesWithALock(EntryEvent saturation, List<EntryEvent> events) {
        Kind lock = saturation.kind() == Kind.FRONT_SATURATES ? Kind.FRONT_LOCKS : Kind.REAR_LOCKS;
        return events.stream()
                .anyMatch(event -> event.kind() == lock
                        && event.time() >= saturation.time()
                        && event.time() <= saturation.time() + GOES_WITH);
    }

    private static String at(List<EntryEvent> events, Kind kind) {
        return events.stream()
                .filter(event -> event.kind() == kind)
                .reduce((earlier, later) -> later)
                .map(EntryCause::words)
                .orElse("");
    }

    private static String words(EntryEvent event) {
        return String.format(Locale.ROOT, "%s at %.1f m", event.kind().words(), event.station());
    }
}
