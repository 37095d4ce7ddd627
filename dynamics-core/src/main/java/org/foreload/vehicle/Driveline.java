package org.foreload.vehicle;

import java.util.Objects;
import org.foreload.conventions.Checks;

/**
 * What drives the car.
 *
 * @param power greatest power at the wheels, W
 * @param drivenAxle which wheels share the drive force equally
 */
public record Driveline(double power, DrivenAxle drivenAxle) {

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public Driveline {
        Checks.notNegative("power_w", power);
        Objects.requireNonNull(drivenAxle);
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
