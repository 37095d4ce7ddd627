package org.foreload.entry;

import java.util.Objects;

/**
 * Something that happened at one point of an entry.
 *
 * @param kind what
 * @param station where, m along the line
 * @param time when, s from the start of the approach
 */
public record EntryEvent(Kind kind, double station, double time) {

    /** Refuses null. */
    public EntryEvent {
        Objects.requireNonNull(kind, "kind");
    }

    /** Kinds of events. */
    public enum Kind {
        /** The foot comes down on the brake. */
        BRAKE_ON("brake point"),
        /** Curvature leaves zero. */
        TURN_IN("turn-in"),
        /** The brake starts to come off. */
        RELEASE_START("release point"),
        /** The foot is off the brake. */
        RELEASE_END("brake off"),
        /** The foot asks for drive again after the brake. */
        PICK_UP("pick-up"),
        /** A front wheel stops. */
        FRONT_LOCKS("front wheel locks"),
        /** A rear wheel stops. */
        REAR_LOCKS("rear wheel locks"),
        /** A stopped wheel turns again. */
        WHEEL_TURNS("wheel turns again"),
        /** The front axle has no more lateral force to give. */
        FRONT_SATURATES("front axle saturates"),
        /** The rear axle has no more lateral force to give. */
        REAR_SATURATES("rear axle saturates"),
        /** Speed is lowest. */
        MINIMUM_SPEED("slowest point"),
        /** The middle of the tightest part of the line. */
        APEX("apex"),
        /** The CG crosses the edge of the track. */
        TRACK_EDGE("track edge"),
        /** The car turns away from its course. */
        SPIN("spin"),
        /** Both inner wheels leave the road. */
        ROLL_OVER("roll-over"),
        /** The car has all but stopped. */
        STOPPED("stopped"),
        /** The end of the exit. */
        EXIT("exit");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** In words, for reports. */
        public String words() {
            return words;
        }
    }
}
