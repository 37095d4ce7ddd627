package org.foreload.entry;

/** How an entry ended. */
public enum Outcome {
    /** The car reached the end of the exit on the track, pointing the right way, no wheel stopped for long. */
    MADE_IT("made it"),
    /** The car left the track on either side, or braked to a stop on it with its wheels turning. */
    RAN_WIDE("ran wide"),
    /** The car turned away from its course beyond recovery. */
    SPUN("spun"),
    /** A wheel stayed stopped for longer than a driver can take back, or until the car had stopped. */
    LOCKED_UP("locked up");

    private final String words;

    Outcome(String words) {
        this.words = words;
    }

    /** In words, for reports. */
    public String words() {
        return words;
    }
}
