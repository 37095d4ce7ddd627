package org.foreload.entry;

/** How an entry ended. */
public enum Outcome {
    /**
     * The car reached the end of the exit on the track, pointing the right way, and no wheel stood in one go for longer
     * than the driver needs to take it back: a tenth of a second for a foot that brakes as planned, else the reaction's
     * delay and what it has to take a lock back.
     */
    MADE_IT("made it"),
    /** The car left the track on either side. */
    RAN_WIDE("ran wide"),
    /** The car turned away from its course beyond recovery. */
    SPUN("spun"),
    /** The car stayed on the track, but a wheel stood in one go for longer than that. */
    LOCKED_UP("locked up"),
    /**
     * The car braked to a stop on the track with its wheels turning. It lost no grip, so it neither ran wide nor spun
     * nor locked up; and it never reached the exit, so it did not make it either: too much brake, too early, by a foot
     * that follows its plan to a stop.
     */
    STOPPED("stopped"),
    /**
     * Both inner wheels left the road: all load had moved to the outer ones, which hold the car no longer. What becomes
     * of it then is past the end of the model.
     */
    ROLLED_OVER("rolled over");

    private final String words;

    Outcome(String words) {
        this.words = words;
    }

    /** In words, for reports. */
    public String words() {
        return words;
    }
}
