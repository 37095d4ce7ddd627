package org.foreload.collocation;

/**
 * How far a point is from satisfying the conditions of an optimum (Karush, Kuhn and Tucker): the Lagrangian's slope is
 * zero, the equations hold, no bound is passed, and each bound is reached or has no force. The slope and the products
 * of bounds and forces are divided by the mean size of multipliers where that is large.
 */
record Residual(Mesh mesh, StageEquations equations) {

    /**
     * Weight of a slope among the residuals: a slope of 1e-4 s for each unit of an unknown, of which the search moves
     * some hundredths in the end, is less than a hundredth of a millisecond.
     */
    private static final double SLOPE_WEIGHT = 0.1;

    /** Mean size of multipliers above which residuals are divided by it. */
    private static final double LARGE = 100;

    /**
     * The greatest residual.
     *
     * @param values at the points, with slopes
     * @param multiplier of the equations
     * @param defect of the equations
     * @param slack of the bounds
     * @param dual of the bounds
     * @param barrier weight of the logarithm; zero for the conditions of the optimum itself
     */
    double greatest(
            PointValues[] values, double[] multiplier, double[] defect, double[] slack, double[] dual, double barrier) {
        int points = mesh.perInterval();
        int states = equations.states();
        int all = states + equations.controls();
        int bounds = equations.bounds();
        double most = 0;
        double sizeOfMultipliers = 0;
        for (double m : multiplier) {
            sizeOfMultipliers += Math.abs(m);
        }
        double sizeOfDuals = 0;
        for (double z : dual) {
            sizeOfDuals += z;
        }
        double scale = Math.max(LARGE, (sizeOfMultipliers + sizeOfDuals) / (multiplier.length + dual.length)) / LARGE;
        double dualScale = Math.max(LARGE, sizeOfDuals / dual.length) / LARGE;
        double[] slope = new double[all];
        for (int p = 0; p < values.length; p++) {
            int k = p / points;
            int j = p % points;
            double length = mesh.lengths()[k];
            for (int c = 0; c < all; c++) {
                slope[c] = mesh.weight(p) * values[p].costSlope()[c];
            }
            for (int row = 0; row < states; row++) {
                double own = multiplier[p * states + row];
                double factor = equations.atOnce(row) ? own : own * length;
                for (int c = 0; c < all; c++) {
                    slope[c] -= factor * values[p].rateSlope()[row * all + c];
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
                most = Math.max(most, Math.abs(defect[p * states + row]));
            }
            for (int i = 0; i < bounds; i++) {
                double z = dual[p * bounds + i];
                double s = slack[p * bounds + i];
                for (int c = 0; c < all; c++) {
                    slope[c] -= z * values[p].roomSlope()[i * all + c];
                }
                most = Math.max(most, Math.abs(values[p].room()[i] - s));
                most = Math.max(most, Math.abs(z * s - barrier) / dualScale);
            }
            for (int c = 0; c < all; c++) {
                most = Math.max(most, SLOPE_WEIGHT * Math.abs(slope[c]) / scale);
            }
            if (Double.isNaN(slope[0])) {
                return Double.NaN;
            }
        }
        return most;
    }
}
