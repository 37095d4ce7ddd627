package org.foreload.driver;

import java.util.Objects;
import org.foreload.conventions.Checks;

/**
 * How a driver works the brake, besides what the plan asks.
 *
 * @param lag time constant between the foot and the brake force, s
 * @param slowestBraking share of the speed at which the throttle opens below which the driver no longer brakes,
 *     whatever the plan says; the foot begins to come off at twice that speed; zero for a driver who follows the plan
 *     to a stop
 * @param reaction how the foot answers a stopped wheel and a wrong speed
 */
public record LeftFoot(double lag, double slowestBraking, Reaction reaction) {

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public LeftFoot {
        Checks.positive("brake_lag_s", lag);
        Checks.within("slowest_braking", slowestBraking, 0, 1);
        Objects.requireNonNull(reaction, "reaction");
    }

    /** A practised driver who brakes as planned. Invented for want of a source. */
    public static LeftFoot practised() {
        return new LeftFoot(0.04, 0, Reaction.NONE);
    }

    /** The same foot with another lag, s. */
    public LeftFoot withLag(double seconds) {
        return new LeftFoot(seconds, slowestBraking, reaction);
    }

    /** The same foot, which no longer brakes below this share of the speed at which the throttle opens. */
    public LeftFoot withSlowestBraking(double share) {
        return new LeftFoot(lag, share, reaction);
    }

    /** The same foot with another reaction. */
    public LeftFoot with(Reaction other) {
        return new LeftFoot(lag, slowestBraking, other);
    }
}
