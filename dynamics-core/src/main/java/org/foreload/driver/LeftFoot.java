package org.foreload.driver;

import org.foreload.conventions.Checks;

/**
 * How a driver works the brake, besides what the plan asks.
 *
 * @param lag time constant between the foot and the brake force, s
 * @param slowestBraking share of the speed at which the throttle opens below which the driver no longer brakes,
 *     whatever the plan says; the foot begins to come off at twice that speed; zero for a driver who follows the plan
 *     to a stop
 */
public record LeftFoot(double lag, double slowestBraking) {

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public LeftFoot {
        Checks.positive("brake_lag_s", lag);
        Checks.within("slowest_braking", slowestBraking, 0, 1);
    }

    /** A practised driver. Invented for want of a source. */
    public static LeftFoot practised() {
        return new LeftFoot(0.04, 0);
    }

    /** The same foot with another lag, s. */
    public LeftFoot withLag(double seconds) {
        return new LeftFoot(seconds, slowestBraking);
    }

    /** The same foot, which no longer brakes below this share of the speed at which the throttle opens. */
    public LeftFoot withSlowestBraking(double share) {
        return new LeftFoot(lag, share);
    }
}
