package org.foreload.handling;

import java.util.function.DoubleUnaryOperator;

/**
 * Derivative by central differences whose step is checked: Ridders' extrapolation over ever smaller steps, of which the
 * one with the smallest estimate of error counts. Source: C. J. F. Ridders, Advances in Engineering Software 4(2),
 * 1982, 75–76 (from memory).
 */
final class Derivative {

    /** Factor by which the step shrinks. */
    private static final double SHRINK = 4;

    /** Steps tried: from the largest down to its 65 536th part, where rounding takes over. */
    private static final int STEPS = 9;

    private Derivative() {}

    /**
     * Derivative of a function at a point.
     *
     * @param largestStep distance over which the function surely bends, in the units of {@code x}
     */
    static double of(DoubleUnaryOperator function, double x, double largestStep) {
        double[] before = new double[STEPS];
        double best = Double.NaN;
        double leastError = Double.POSITIVE_INFINITY;
        double step = largestStep;
        for (int i = 0; i < STEPS; i++, step /= SHRINK) {
            double[] row = new double[STEPS];
            row[0] = (function.applyAsDouble(x + step) - function.applyAsDouble(x - step)) / (2 * step);
            double factor = SHRINK * SHRINK;
            for (int j = 1; j <= i; j++, factor *= SHRINK * SHRINK) {
                row[j] = (row[j - 1] * factor - before[j - 1]) / (factor - 1);
                double error = Math.max(Math.abs(row[j] - row[j - 1]), Math.abs(row[j] - before[j - 1]));
                if (error <= leastError) {
                    leastError = error;
                    best = row[j];
                }
            }
            before = row;
        }
        return best;
    }
}
