package org.foreload.handling;

import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;

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
        return ofEach(at -> new double[] {function.applyAsDouble(at)}, x, largestStep)[0];
    }

    /**
     * Derivatives of several functions at a point.
     *
     * @param functions their values, which are found together; it may return one reused buffer
     * @param largestStep distance over which the functions surely bend, in the units of {@code x}
     */
    static double[] ofEach(DoubleFunction<double[]> functions, double x, double largestStep) {
        double[][] differences = new double[STEPS][];
        double step = largestStep;
        for (int i = 0; i < STEPS; i++, step /= SHRINK) {
            double[] slopes = functions.apply(x + step).clone();
            double[] below = functions.apply(x - step);
            for (int k = 0; k < slopes.length; k++) {
                slopes[k] = (slopes[k] - below[k]) / (2 * step);
            }
            differences[i] = slopes;
        }
        return IntStream.range(0, differences[0].length)
                .mapToDouble(k -> extrapolated(differences, k))
                .toArray();
    }

    /**
     * The matrix of the slopes of several functions over several numbers, a row for each function.
     *
     * @param functions their values for all the numbers; it may return one reused buffer
     * @param at where
     * @param largestSteps distances over which the functions surely bend, one for each number
     */
    static double[][] matrix(UnaryOperator<double[]> functions, double[] at, double[] largestSteps) {
        double[][] columns = new double[at.length][];
        for (int column = 0; column < at.length; column++) {
            int changed = column;
            columns[column] = ofEach(
                    x -> {
                        double[] moved = at.clone();
                        moved[changed] = x;
                        return functions.apply(moved);
                    },
                    at[column],
                    largestSteps[column]);
        }
        double[][] matrix = new double[columns[0].length][at.length];
        for (int row = 0; row < matrix.length; row++) {
            for (int column = 0; column < at.length; column++) {
                matrix[row][column] = columns[column][row];
            }
        }
        return matrix;
    }

    /** The best of the values to which the differences of one function lead, as their steps shrink. */
    private static double extrapolated(double[][] differences, int function) {
        double[] before = new double[STEPS];
        double best = Double.NaN;
        double leastError = Double.POSITIVE_INFINITY;
        for (int i = 0; i < STEPS; i++) {
            double[] row = new double[STEPS];
            row[0] = differences[i][function];
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
