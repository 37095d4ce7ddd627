package org.foreload.tyre;

import java.util.function.DoubleUnaryOperator;

/** A smooth function as cubic pieces of equal length that share its values and slopes at their ends. */
final class CurveTable {

    private final double start;
    private final double end;
    private final double perUnit;
    private final double[] values;
    private final double[] slopes;

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
        this.start = start;
        this.end = start + (double) (values.length - 1) / perUnit;
        this.perUnit = perUnit;
        this.values = values.clone();
        this.slopes = new double[slopes.length];
        for (int i = 0; i < slopes.length; i++) {
            this.slopes[i] = slopes[i] / perUnit;
        }
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
        double rise = values[i + 1] - values[i];
        double a = slopes[i] - rise;
        double b = rise - slopes[i + 1];
        return values[i] + t * rise + t * (1 - t) * (a * (1 - t) + b * t);
    }

    double slope(double x) {
        double at = (x - start) * perUnit;
        int i = (int) at;
        double t = at - i;
        double rise = values[i + 1] - values[i];
        double a = slopes[i] - rise;
        double b = rise - slopes[i + 1];
        return perUnit * (rise + (1 - 2 * t) * (a * (1 - t) + b * t) + t * (1 - t) * (b - a));
    }
}
