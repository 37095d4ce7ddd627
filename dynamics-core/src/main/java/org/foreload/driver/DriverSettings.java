package org.foreload.driver;

import java.util.Objects;

/**
 * How quick and how careful a driver is. The numbers of {@link #practised()} are plausible, not measured; a study of
 * drivers replaces them.
 *
 * @param hands on the wheel
 * @param rightFoot on the throttle
 * @param leftFoot on the brake
 */
public record DriverSettings(Hands hands, RightFoot rightFoot, LeftFoot leftFoot) {

    /** Nothing may be missing. */
    public DriverSettings {
        Objects.requireNonNull(hands, "hands");
        Objects.requireNonNull(rightFoot, "rightFoot");
        Objects.requireNonNull(leftFoot, "leftFoot");
    }

    /**
     * A practised driver who brakes as planned. Invented for want of a source; the lags are of the size of human and
     * mechanical lags.
     */
    public static DriverSettings practised() {
        return new DriverSettings(Hands.practised(), RightFoot.practised(), LeftFoot.practised());
    }

    /** The same practised driver, whose left foot reacts to stopped wheels and to a wrong speed. */
    public static DriverSettings reacting() {
        return practised().with(Reaction.practised());
    }

    /** The same driver with other hands. */
    public DriverSettings with(Hands other) {
        return new DriverSettings(other, rightFoot, leftFoot);
    }

    /** The same driver with another foot on the throttle. */
    public DriverSettings with(RightFoot other) {
        return new DriverSettings(hands, other, leftFoot);
    }

    /** The same driver with another foot on the brake. */
    public DriverSettings with(LeftFoot other) {
        return new DriverSettings(hands, rightFoot, other);
    }

    /** The same driver, whose left foot reacts otherwise. */
    public DriverSettings with(Reaction other) {
        return with(leftFoot.with(other));
    }
}
