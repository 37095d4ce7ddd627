package org.foreload.sensitivity;

import java.util.Objects;
import org.foreload.conventions.Checks;
import org.foreload.parameter.Parameter;

/**
 * A number of a setup, and by how much to turn it.
 *
 * @param parameter the number
 * @param change one unit of change for people, in the parameter's unit: a centimetre of CG height, a hundredth of
 *     friction; results are those of this change upwards
 * @param kind what the number belongs to
 */
public record Knob(Parameter<Setup> parameter, double change, Kind kind) {

    /** Checks that the change is one. */
    public Knob {
        Objects.requireNonNull(parameter, "parameter");
        Objects.requireNonNull(kind, "kind");
        Checks.positive("change", change);
    }

    /** What a number belongs to, which says what is held while it is turned. */
    public enum Kind {
        /** Car, tyre, corner or driver: the best release and its brake point are found again. */
        WORLD,
        /** The plan: everything else is held, the brake point too. It says what missing the plan costs. */
        PLAN
    }
}
