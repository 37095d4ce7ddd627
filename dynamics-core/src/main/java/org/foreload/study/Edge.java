package org.foreload.study;

import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.foreload.conventions.Checks;
import org.hipparchus.analysis.solvers.AllowedSolution;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * The largest value that still keeps something, where each look costs a run: strides up or down until one value keeps
 * it and the next does not, then the library's root finder between the two.
 */
public final class Edge {

    private static final int ORDER = 3;

    /** Of the function, beside the accuracy of the place: whichever is met first ends the search. */
    private static final double FLATTER = 0.1;

    private Edge() {}

    /**
     * The edge.
     *
     * @param left what is left: at or above zero where it is kept; it need not be continuous
     * @param first where to look first, above zero
     * @param stride factor of the next look, up or down, above one
     * @param least what is not gone below, zero to {@code first}; taken where nothing keeps it
     * @param most what is not gone beyond, at least {@code first}; taken where all keep it
     * @param accuracy of the edge, relative and absolute
     * @return a value with {@code left} at or above zero, but for {@code least}
     * @throws org.foreload.conventions.InvalidValueException if a number is outside what it must be
     */
    public static double largest(
            DoubleUnaryOperator left, double first, double stride, double least, double most, double accuracy) {
        Objects.requireNonNull(left, "left");
        Checks.positive("first", first);
        Checks.between("stride", stride, 1, Double.POSITIVE_INFINITY);
        Checks.within("least", least, 0, first);
        Checks.within("most", most, first, Double.MAX_VALUE);
        Checks.positive("accuracy", accuracy);
        double keeps = first;
        double fails = first;
        if (left.applyAsDouble(first) >= 0) {
            fails = Math.min(most, keeps * stride);
            while (left.applyAsDouble(fails) >= 0) {
                if (fails == most) {
                    return most;
                }
                keeps = fails;
                fails = Math.min(most, keeps * stride);
            }
        } else {
            keeps = Math.max(least, fails / stride);
            while (left.applyAsDouble(keeps) < 0) {
                if (keeps == least) {
                    return least;
                }
                fails = keeps;
                keeps = Math.max(least, fails / stride);
            }
        }
        return new BracketingNthOrderBrentSolver(accuracy, accuracy, FLATTER * accuracy, ORDER)
                .solve(Integer.MAX_VALUE, left::applyAsDouble, keeps, fails, AllowedSolution.ABOVE_SIDE);
    }
}
