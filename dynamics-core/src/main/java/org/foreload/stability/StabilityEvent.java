package org.foreload.stability;

import java.util.Objects;

/**
 * A moment of an entry at which stability was lost or least.
 *
 * @param kind what
 * @param row where and when, with margins
 * @param cause what did most to it, in words
 */
public record StabilityEvent(Kind kind, StabilityRow row, String cause) {

    /** Refuses null. */
    public StabilityEvent {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(row, "row");
        Objects.requireNonNull(cause, "cause");
    }

    /** Kinds of such events. */
    public enum Kind {
        /** The growth rate is highest. */
        LEAST_STABLE("least stable"),
        /** The growth rate rises through zero. */
        TURNS_UNSTABLE("turns unstable");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** In words, for reports. */
        public String words() {
            return words;
        }
    }

    /** The event in one line. */
    public String describe() {
        return kind.words() + " at " + Tenths.of(row.station()) + " m: " + cause + "; " + row.margins();
    }
}
