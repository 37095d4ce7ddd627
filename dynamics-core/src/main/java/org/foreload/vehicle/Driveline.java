package org.foreload.vehicle;

import java.util.Objects;
import org.foreload.conventions.Checks;

/**
 * What drives the car.
 *
 * @param power greatest power at the wheels, W
 * @param drivenAxle which wheels share the drive force equally
 * @param closedThrottleDrag force with which the engine slows the driven wheels while the throttle is closed, N
 */
public record Driveline(double power, DrivenAxle drivenAxle, double closedThrottleDrag) {

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public Driveline {
        Checks.notNegative("power_w", power);
        Objects.requireNonNull(drivenAxle, "drivenAxle");
        Checks.notNegative("closed_throttle_drag_n", closedThrottleDrag);
    }

    /** A driveline that does not slow the car while the throttle is closed. */
    public Driveline(double power, DrivenAxle drivenAxle) {
        this(power, drivenAxle, 0);
    }

    /** The driven wheels. */
    public enum DrivenAxle {
        /** Both front wheels. */
        FRONT(1),
        /** Both rear wheels. */
        REAR(0),
        /** All four wheels, a quarter each. */
        ALL(0.5);

        private final double frontShare;

        DrivenAxle(double frontShare) {
            this.frontShare = frontShare;
        }

        /** Front share of the drive force. */
        public double frontShare() {
            return frontShare;
        }
    }
}
