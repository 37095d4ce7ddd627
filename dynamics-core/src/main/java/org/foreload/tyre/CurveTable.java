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
        this.start = start;
        this.end = start + (double) pieces / perUnit;
        this.perUnit = perUnit;
        this.values = new double[pieces + 1];
        this.slopes = new double[pieces + 1];
        for (int i = 0; i <= pieces; i++) {
            double x = start + (double) i / perUnit;
            values[i] = value.applyAsDouble(x);
            slopes[i] = slope.applyAsDouble(x) / perUnit;
        }
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
