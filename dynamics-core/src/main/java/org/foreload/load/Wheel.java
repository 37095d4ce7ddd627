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
    REAR_RIGHT
}
