package org.foreload.vehicle;

import java.util.Objects;
import org.foreload.conventions.Checks;

/**
 * How load moves between the wheels, and how fast.
 *
 * @param frontRollStiffnessShare front share of the roll stiffness, 0 to 1
 * @param frontRollCenterHeight m above the road
 * @param rearRollCenterHeight m above the road
 * @param pitch how the sprung mass follows braking; {@link Response#RIGID} for at once
 * @param roll how the sprung mass follows cornering; {@link Response#RIGID} for at once
 */
public record Suspension(
        double frontRollStiffnessShare,
        double frontRollCenterHeight,
        double rearRollCenterHeight,
        Response pitch,
        Response roll) {

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public Suspension {
        Checks.within("front_roll_stiffness_share", frontRollStiffnessShare, 0, 1);
        Checks.finite("front_roll_center_height_m", frontRollCenterHeight);
        Checks.finite("rear_roll_center_height_m", rearRollCenterHeight);
        Objects.requireNonNull(pitch, "pitch");
        Objects.requireNonNull(roll, "roll");
    }

    /** Makes a suspension step by step, each number by its name and unit. */
    public static SuspensionBuilder.FrontRollStiffness builder() {
        return SuspensionBuilder.start();
    }

    /** The same with another pitch. */
    public Suspension withPitch(Response other) {
        return new Suspension(frontRollStiffnessShare, frontRollCenterHeight, rearRollCenterHeight, other, roll);
    }

    /** The same with another roll. */
    public Suspension withRoll(Response other) {
        return new Suspension(frontRollStiffnessShare, frontRollCenterHeight, rearRollCenterHeight, pitch, other);
    }

    /**
     * Second-order response of the sprung mass.
     *
     * @param frequency undamped natural frequency in Hz; infinite for a rigid body
     * @param dampingRatio plain number
     */
    public record Response(double frequency, double dampingRatio) {

        /** A body that follows at once. */
        public static final Response RIGID = new Response(Double.POSITIVE_INFINITY, 1);

        /** Checks the numbers. */
        public Response {
            if (!(frequency > 0)) {
                throw new org.foreload.conventions.InvalidValueException("frequency_hz", frequency, "above 0");
            }
            Checks.positive("damping_ratio", dampingRatio);
        }

        /** Whether the body follows at once. */
        public boolean rigid() {
            return Double.isInfinite(frequency);
        }
    }
}
