package org.foreload.driver;

import org.foreload.conventions.Checks;

/**
 * How a driver works the throttle.
 *
 * @param lag time constant between the foot and the drive force, s
 * @param gripUse share of an axle's grip up to which the driver adds drive to cornering, below 1
 * @param exitFriction share of the friction with which the driver reckons how fast the rest of the corner can be driven
 */
public record RightFoot(double lag, double gripUse, double exitFriction) {

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public RightFoot {
        Checks.positive("throttle_lag_s", lag);
        Checks.between("throttle_grip_use", gripUse, 0, 1);
        Checks.between("exit_friction", exitFriction, 0, 1);
    }

    /** A practised driver. Invented for want of a source. */
    public static RightFoot practised() {
        return new RightFoot(0.10, 0.98, 0.955);
    }

    /** The same foot with another share of the friction to reckon the exit with. */
    public RightFoot withExitFriction(double share) {
        return new RightFoot(lag, gripUse, share);
    }
}
