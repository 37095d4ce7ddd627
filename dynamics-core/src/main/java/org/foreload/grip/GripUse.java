package org.foreload.grip;

import java.util.Objects;
import org.foreload.load.WheelLoads;

/**
 * How much of its grip a car uses in a motion.
 *
 * @param loads wheel loads
 * @param front what is asked of the front axle
 * @param rear what is asked of the rear axle
 * @param tippingUtilisation lateral force over that at which the car tips over its outer wheels
 * @param powerUtilisation drive power asked for over the greatest power; zero when none is asked for
 */
public record GripUse(
        WheelLoads loads, AxleUse front, AxleUse rear, double tippingUtilisation, double powerUtilisation) {

    /** Refuses null. */
    public GripUse {
        Objects.requireNonNull(loads, "loads");
        Objects.requireNonNull(front, "front");
        Objects.requireNonNull(rear, "rear");
    }

    /** The axle that is nearer to its limit; the front one if both are equally near. */
    public Axle limitingAxle() {
        return front.utilisation() >= rear.utilisation() ? Axle.FRONT : Axle.REAR;
    }

    /** The larger of the axle utilisations: 1 at the limit. */
    public double utilisation() {
        return Math.max(front.utilisation(), rear.utilisation());
    }

    /** Whether the car is nearer to rolling over than each axle to its limit. */
    public boolean rollsOverFirst() {
        return tippingUtilisation > utilisation();
    }

    /** Whether both axles and the engine can do what is asked, and the car stays on its wheels. */
    public boolean feasible() {
        return utilisation() <= 1 && tippingUtilisation <= 1 && powerUtilisation <= 1;
    }
}
