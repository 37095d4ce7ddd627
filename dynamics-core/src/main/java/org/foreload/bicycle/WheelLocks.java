package org.foreload.bicycle;

/**
 * Which wheels are stopped.
 *
 * @param mask one bit per wheel, in the order of {@link org.foreload.load.Wheel}
 */
public record WheelLocks(int mask) {

    /** All wheels roll. */
    public static final WheelLocks NONE = new WheelLocks(0);

    /** Whether the wheel at a buffer index is stopped. */
    public boolean locked(int wheel) {
        return (mask >> wheel & 1) != 0;
    }

    /** Whether any wheel is stopped. */
    public boolean any() {
        return mask != 0;
    }

    /** The same set with the wheel at a buffer index stopped. */
    public WheelLocks with(int wheel) {
        return new WheelLocks(mask | 1 << wheel);
    }

    /** The same set with the wheel at a buffer index rolling. */
    public WheelLocks without(int wheel) {
        return new WheelLocks(mask & ~(1 << wheel));
    }
}
