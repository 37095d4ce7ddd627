package org.foreload.bicycle;

/** The four wheels, in the order in which the buffers of this package hold them. */
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

    /** The wheel at a buffer index, 0 to 3. */
    public static Wheel at(int index) {
        return ALL[index];
    }

    /** Whether it sits on the front axle. */
    public boolean front() {
        return ordinal() < 2;
    }
}
