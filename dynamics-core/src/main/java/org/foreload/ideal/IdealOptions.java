package org.foreload.ideal;

import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;

/**
 * Numerical settings and the driver's margin.
 *
 * @param step longest step along the line, m, a millimetre or more; in tight curves the steps are shorter (see
 *     {@link IdealEntry})
 * @param frictionScale factor on all friction: 1 for the car as it is, less for a driver who keeps a margin
 */
public record IdealOptions(double step, double frictionScale) {

    /**
     * Shortest step that may be asked for, m: the error falls with its square and is lost in rounding by then, and a
     * line of a kilometre already has a million of them.
     */
    private static final double SHORTEST_STEP = 1e-3;

    /** Half-metre steps, full friction. */
    public static final IdealOptions DEFAULT = new IdealOptions(0.5, 1);

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public IdealOptions {
        if (!(step >= SHORTEST_STEP && Double.isFinite(step))) {
            throw new InvalidValueException("step_m", step, "a number of " + SHORTEST_STEP + " or more");
        }
        Checks.positive("friction_scale", frictionScale);
    }

    /** The same options with another longest step, m. */
    public IdealOptions withStep(double longest) {
        return new IdealOptions(longest, frictionScale);
    }

    /** The same options with another factor on all friction. */
    public IdealOptions withFrictionScale(double scale) {
        return new IdealOptions(step, scale);
    }
}
