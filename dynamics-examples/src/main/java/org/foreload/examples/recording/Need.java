package org.foreload.examples.recording;

import java.util.EnumSet;
import java.util.Set;

/** What a file must have beyond time or distance, and speed. */
public enum Need {
    /** To measure corners: the course. A brake that is there must work. */
    CORNERS(true, true),
    /** To advise on a brake: one that is there must work. */
    ADVICE(false, true),
    /** To compare times: nothing more. */
    TIMES(false, false);

    private final boolean course;
    private final boolean brake;

    Need(boolean course, boolean brake) {
        this.course = course;
        this.brake = brake;
    }

    /** Whether lateral acceleration, yaw rate or position must be there. */
    boolean course() {
        return course;
    }

    /** Those of some quantities that the file cannot do without once it has them. */
    Set<Quantity> of(Set<Quantity> known) {
        Set<Quantity> needed = EnumSet.of(Quantity.TIME, Quantity.SPEED);
        if (!known.contains(Quantity.TIME)) {
            needed.add(Quantity.DISTANCE);
        }
        if (brake) {
            needed.add(Quantity.BRAKE);
        }
        needed.retainAll(known);
        return needed;
    }
}
