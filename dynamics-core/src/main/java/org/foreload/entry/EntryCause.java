package org.foreload.entry;

import java.util.List;
import java.util.Locale;
import org.foreload.entry.EntryEvent.Kind;

/** Says in one line why an entry ended as it did: the first thing that went wrong, then what came of it. */
final class EntryCause {

    private EntryCause() {}

    static String describe(Outcome outcome, Kind ending, List<EntryEvent> events, double longestLock) {
        if (outcome == Outcome.MADE_IT) {
            return "held to the exit";
        }
        if (outcome == Outcome.LOCKED_UP) {
            String locked = first(events, Kind.FRONT_LOCKS, Kind.REAR_LOCKS);
            return ending == Kind.STOPPED
                    ? locked + ", then " + at(events, ending)
                    : locked + String.format(Locale.ROOT, ", wheels stopped for %.2f s", longestLock);
        }
        String first = first(events, Kind.FRONT_LOCKS, Kind.REAR_LOCKS, Kind.FRONT_SATURATES, Kind.REAR_SATURATES);
        String last = ending == null ? "" : at(events, ending);
        return first.isEmpty() ? last : first + ", then " + last;
    }

    private static String first(List<EntryEvent> events, Kind... kinds) {
        List<Kind> wanted = List.of(kinds);
        return events.stream()
                .filter(event -> wanted.contains(event.kind()))
                .findFirst()
                .map(EntryCause::words)
                .orElse("");
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
