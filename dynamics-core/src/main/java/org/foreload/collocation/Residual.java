package org.foreload.collocation;

/**
 * How far a point is from satisfying the conditions of an optimum (Karush, Kuhn and Tucker): the Lagrangian's slope is
 * zero, the equations hold, no bound is passed, and each bound is reached or has no force. The slope and the products
 * of bounds and forces are divided by the mean size of multipliers where that is large.
 *
 * <p>What does not depend on the logarithm's weight is found once, by {@link #measure}.
 */
final class Residual {

    /**
     * Weight of a slope among the residuals: one of 5e-4 s for each unit of an unknown counts as 1e-5. Where the time
     * hardly depends on how it is done (the last metres of a release, a shift of the line by a centimetre) the search
     * could go on below that for hundreds of steps; in thirty random corners it then gained up to a millisecond in half
     * a minute of driving.
     */
    private static final double SLOPE_WEIGHT = 0.02;

    /** Mean size of multipliers above which residuals are divided by it. */
    private static final double LARGE = 100;

    private final Mesh mesh;
    private final StageEquations equations;
    private double slopes;
    private double violations;
    private double dualScale;
    private double most;
    private double least;

    Residual(Mesh mesh, StageEquations equations) {
        this.mesh = mesh;
        this.equations = equations;
    }

    /** The greatest residual of the last point measured, for a weight of the logarithm; zero for the optimum itself. */
    double greatest(double barrier) {
        double products = Math.max(most - barrier, barrier - least) / dualScale;
        return Math.max(Math.max(slopes, violations), products);
    }

    /**
     * Measures a point.
     *
     * @param values at the points, with slopes
     * @param multiplier of the equations
     * @param defect of the equations
     * @param slack of the bounds
     * @param dual of the bounds
     */
    void measure(PointValues[] values, double[] multiplier, double[] defect, double[] slack, double[] dual) {
        int points = mesh.perInterval();
        int states = equations.states();
        int all = states + equations.controls();
        int bounds = equations.bounds();
        double sizeOfMultipliers = 0;
        for (double m : multiplier) {
            sizeOfMultipliers += Math.abs(m);
        }
        double sizeOfDuals = 0;
        for (double z : dual) {
            sizeOfDuals += z;
        }
        double scale = Math.max(LARGE, (sizeOfMultipliers + sizeOfDuals) / (multiplier.length + dual.length)) / LARGE;
        dualScale = Math.max(LARGE, sizeOfDuals / dual.length) / LARGE;
        slopes = 0;
        violations = 0;
        most = Double.NEGATIVE_INFINITY;
        least = Double.POSITIVE_INFINITY;
        double[] slope = new double[all];
        for (int p = 0; p < values.length; p++) {
            int k = p / points;
            int j = p % points;
            double length = mesh.lengths()[k];
            double weight = mesh.weight(p);
            double[] costSlope = values[p].costSlope();
            for (int c = 0; c < all; c++) {
                slope[c] = weight * costSlope[c];
            }
            double[] rateSlope = values[p].rateSlope();
            for (int row = 0; row < states; row++) {
                double own = multiplier[p * states + row];
                double factor = equations.atOnce(row) ? own : own * length;
                for (int c = 0; c < all; c++) {
                    slope[c] -= factor * rateSlope[row * all + c];
                }
                if (!equations.atOnce(row)) {
                    for (int i = 0; i < points; i++) {
                        slope[row] += mesh.collocation().slope(i, j) * multiplier[(k * points + i) * states + row];
                        if (j == points - 1 && k + 1 < mesh.intervals()) {
                            slope[row] +=
                                    mesh.collocation().slope(i, -1) * multiplier[((k + 1) * points + i) * states + row];
                        }
                    }
                }
                violations = Math.max(violations, Math.abs(defect[p * states + row]));
            }
            double[] roomSlope = values[p].roomSlope();
            for (int i = 0; i < bounds; i++) {
                double z = dual[p * bounds + i];
                double s = slack[p * bounds + i];
                for (int c = 0; c < all; c++) {
                    slope[c] -= z * roomSlope[i * all + c];
                }
                violations = Math.max(violations, Math.abs(values[p].room()[i] - s));
                most = Math.max(most, z * s);
                least = Math.min(least, z * s);
            }
            for (int c = 0; c < all; c++) {
                slopes = Math.max(slopes, SLOPE_WEIGHT * Math.abs(slope[c]) / scale);
            }
        }
    }
}
