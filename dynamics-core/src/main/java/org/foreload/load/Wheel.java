package org.foreload.load;

/** One of the four wheels. */
public enum Wheel {
    /** Front left. */
    FRONT_LEFT,
    /** Front right. */
    FRONT_RIGHT,
    /** Rear left. */
    REAR_LEFT,
    /** Rear right. */
    REAR_RIGHT;

    private static final Wheel[] ALL = values();

    /** The wheel at an index, 0 to 3 in the order of this list. */
    public static Wheel at(int index) {
        return ALL[index];
    }

    /** Whether it sits on the front axle. */
    public boolean front() {
        return this == FRONT_LEFT || this == FRONT_RIGHT;
    }
}
