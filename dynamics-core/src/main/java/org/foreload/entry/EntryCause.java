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

    static String describe(EntryResult entry) {
        String first = entry.wentFirst().map(EntryCause::words).orElse("");
        return switch (entry.outcome()) {
            case MADE_IT ->
                entry.longestLock() > 0
                        ? first + seconds(", turning again within %.2f s, and on its line to the exit", entry)
                        : "on its line to the exit";
            case LOCKED_UP ->
                entry.event(Kind.STOPPED).isPresent()
                        ? then(first, last(entry, Kind.STOPPED, "the car stops"))
                        : first + seconds(", wheels stopped for %.2f s", entry);
            case STOPPED -> last(entry, Kind.STOPPED, "the car stops");
            case RAN_WIDE -> then(first, last(entry, Kind.TRACK_EDGE, "the car leaves the track"));
            case SPUN -> then(first, last(entry, Kind.SPIN, "the car spins"));
            case ROLLED_OVER -> then(first, last(entry, Kind.ROLL_OVER, "the inner wheels leave the road"));
        };
    }

    private static String seconds(String words, EntryResult entry) {
        return String.format(Locale.ROOT, words, entry.longestLock());
    }

    private static String then(String first, String last) {
        return first.isEmpty() ? last : first + ", then " + last;
    }

    /** What ended it; each of these kinds happens once at most. */
    private static String last(EntryResult entry, Kind ending, String words) {
        return entry.event(ending).map(event -> words + at(event)).orElse("");
    }

    /**
     * A lock if the entry made it, locked up or rolled over: a car that rolls over has too much grip. Else also an axle
     * that was full in the turn, if no lock went with it.
     */
    static Optional<EntryEvent> wentFirst(Outcome outcome, List<EntryEvent> events) {
        if (outcome == Outcome.STOPPED) {
            return Optional.empty();
        }
        boolean onlyLocks =
                outcome == Outcome.MADE_IT || outcome == Outcome.LOCKED_UP || outcome == Outcome.ROLLED_OVER;
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

    private static String words(EntryEvent event) {
        return event.kind().words() + at(event);
    }

    private static String at(EntryEvent event) {
        return event.station() < 0
                ? String.format(Locale.ROOT, " %.1f m before turn-in", -event.station())
                : String.format(Locale.ROOT, " at %.1f m", event.station());
    }
}
