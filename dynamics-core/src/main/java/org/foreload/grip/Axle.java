package org.foreload.grip;

/** One of the two axles. */
public enum Axle {
    /** The front axle. */
    FRONT,
    /** The rear axle. */
    REAR
}
