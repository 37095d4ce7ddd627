package org.foreload.tyre;

import java.util.function.DoubleUnaryOperator;

/**
 * A smooth function as cubic pieces of equal length that share its values and slopes at their ends. The four
 * coefficients of a piece lie side by side, so that one place in memory answers for value and slope.
 */
final class CurveTable {

    private final double start;
    private final double end;
    private final double perUnit;
    private final double[] coefficients;

    /**
     * @param start where the first piece begins
     * @param pieces number of pieces
     * @param perUnit pieces in a unit of x
     */
    CurveTable(double start, int pieces, int perUnit, DoubleUnaryOperator value, DoubleUnaryOperator slope) {
        this(start, perUnit, at(start, pieces, perUnit, value), at(start, pieces, perUnit, slope));
    }

    /**
     * @param start where the first piece begins
     * @param perUnit pieces in a unit of x
     * @param values at the ends of the pieces
     * @param slopes at the same places, per unit of x
     */
    CurveTable(double start, int perUnit, double[] values, double[] slopes) {
        int pieces = values.length - 1;
        this.start = start;
        this.end = start + (double) pieces / perUnit;
        this.perUnit = perUnit;
        coefficients = new double[4 * pieces];
        for (int i = 0; i < pieces; i++) {
            double rise = values[i + 1] - values[i];
            double first = slopes[i] / perUnit;
            double last = slopes[i + 1] / perUnit;
            coefficients[4 * i] = values[i];
            coefficients[4 * i + 1] = first;
            coefficients[4 * i + 2] = 3 * rise - 2 * first - last;
            coefficients[4 * i + 3] = first + last - 2 * rise;
        }
    }

    /** Fewest and most pieces in a unit of x that {@link #accurate} tries. */
    private static final int FEWEST = 64;

    private static final int MOST = 256;

    /**
     * A table with as few pieces as an accuracy allows, since what is small stays close at hand: x times the error of
     * the value, in the middle of each piece, where it is largest.
     *
     * @param start where the first piece begins
     * @param units length of the table
     * @param accuracy of x times the value
     */
    static CurveTable accurate(
            double start, int units, double accuracy, DoubleUnaryOperator value, DoubleUnaryOperator slope) {
        for (int perUnit = FEWEST; ; perUnit *= 2) {
            CurveTable table = new CurveTable(start, units * perUnit, perUnit, value, slope);
            if (perUnit >= MOST || table.error(value) <= accuracy) {
                return table;
            }
        }
    }

    /** Largest error of x times the value in the middle of a piece. */
    double error(DoubleUnaryOperator value) {
        double error = 0;
        for (int i = 0; 4 * i < coefficients.length; i++) {
            double x = start + (i + 0.5) / perUnit;
            error = Math.max(error, x * Math.abs(value(x) - value.applyAsDouble(x)));
        }
        return error;
    }

    private static double[] at(double start, int pieces, int perUnit, DoubleUnaryOperator function) {
        double[] found = new double[pieces + 1];
        for (int i = 0; i <= pieces; i++) {
            found[i] = function.applyAsDouble(start + (double) i / perUnit);
        }
        return found;
    }

    /** Whether {@code x} lies on the table. */
    boolean holds(double x) {
        return x >= start && x < end;
    }

    double value(double x) {
        double at = (x - start) * perUnit;
        int i = (int) at;
        double t = at - i;
        double[] c = coefficients;
        return c[4 * i] + t * (c[4 * i + 1] + t * (c[4 * i + 2] + t * c[4 * i + 3]));
    }

    double slope(double x) {
        double at = (x - start) * perUnit;
        int i = (int) at;
        double t = at - i;
        double[] c = coefficients;
        return perUnit * (c[4 * i + 1] + t * (2 * c[4 * i + 2] + t * (3 * c[4 * i + 3])));
    }

    double bend(double x) {
        double at = (x - start) * perUnit;
        int i = (int) at;
        double t = at - i;
        double[] c = coefficients;
        return perUnit * perUnit * (2 * c[4 * i + 2] + t * (6 * c[4 * i + 3]));
    }
}
