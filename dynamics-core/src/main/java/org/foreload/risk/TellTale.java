package org.foreload.risk;

import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;

/** What a driver feels when an entry goes wrong. */
public final class TellTale {

    private TellTale() {}

    /** The tell-tale of an entry, in words; {@code none} for one that made the corner. */
    public static String of(EntryResult entry) {
        boolean front = entry.event(EntryEvent.Kind.FRONT_LOCKS).isPresent();
        boolean rear = entry.event(EntryEvent.Kind.REAR_LOCKS).isPresent();
        if (entry.outcome() == Outcome.SPUN) {
            return rear ? "the rear steps out with the brake on" : "the rear moves out and the wheel goes light";
        }
        if (front) {
            return "a front wheel stops: the steering goes dead until the brake is eased";
        }
        if (entry.outcome() == Outcome.RAN_WIDE) {
            return "more steering brings no more turn: the front washes out";
        }
        return entry.made() ? "none" : "a wheel stops turning";
    }
}
