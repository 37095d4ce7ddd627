package org.foreload.entry;

import org.foreload.conventions.Checks;

/**
 * Numerical settings of the simulator.
 *
 * @param tolerance relative accuracy asked of each step; the library's tests hold the default to 1 ms against 1e-10
 * @param sampling distance between the rows of a profile, m
 */
public record SimulationSettings(double tolerance, double sampling) {

    /** Tolerance 1e-6, a row per metre. */
    public static final SimulationSettings STANDARD = new SimulationSettings(1e-6, 1);

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public SimulationSettings {
        Checks.within("tolerance", tolerance, 1e-13, 1e-2);
        Checks.within("sampling", sampling, 1e-3, 1e3);
    }
}
