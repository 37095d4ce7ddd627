package org.foreload.handling;

import java.util.List;
import java.util.Objects;
import java.util.function.UnaryOperator;

/** The natural motions of a system of equations near a state that holds still, its matrix taken off by differences. */
public final class Linearisation {

    private Linearisation() {}

    /**
     * Eigenvalues of the matrix of slopes, the least stable first; of a pair the one with the positive imaginary part.
     *
     * @param rates rates per second of each state, as a function of all of them; it may return one reused buffer
     * @param state where
     * @param bend changes over which the rates surely bend, one for each state
     * @throws ArithmeticException if the eigenvalues are not found
     */
    public static List<Eigenvalue> eigenvalues(UnaryOperator<double[]> rates, double[] state, double[] bend) {
        Objects.requireNonNull(rates, "rates");
        Objects.requireNonNull(state, "state");
        Objects.requireNonNull(bend, "bend");
        return Linear.eigenvalues(Derivative.matrix(rates, state, bend));
    }
}
