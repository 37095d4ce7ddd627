package org.foreload.study;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.foreload.conventions.Checks;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;

/**
 * Smooth functions through what several functions came to at some points: cubic radial basis functions and a plane (M.
 * J. D. Powell, The theory of radial basis function approximation in 1990, in Advances in Numerical Analysis II, 1992,
 * from memory). All share their points, so that one factorisation serves all.
 */
public final class ResponseSurface {

    private final double[][] points;
    private final double[] centre;
    private final double[][] weights;

    /** Points whose equations are factorised: any functions that are known there can be fitted through them. */
    public static final class Points {

        private final double[][] points;
        private final double[] centre;
        private final DecompositionSolver solver;

        private Points(List<double[]> all, double smoothing) {
            int size = all.size();
            int variables = all.get(0).length;
            points = all.toArray(new double[0][]);
            centre = all.get(0).clone();
            double[][] matrix = new double[size + 1 + variables][size + 1 + variables];
            for (int i = 0; i < size; i++) {
                for (int j = 0; j < i; j++) {
                    double r = distance(points[i], points[j]);
                    matrix[i][j] = r * r * r;
                    matrix[j][i] = matrix[i][j];
                }
                matrix[i][i] = smoothing;
                matrix[i][size] = 1;
                matrix[size][i] = 1;
                for (int k = 0; k < variables; k++) {
                    matrix[i][size + 1 + k] = points[i][k] - centre[k];
                    matrix[size + 1 + k][i] = matrix[i][size + 1 + k];
                }
            }
            solver = new LUDecomposition(MatrixUtils.createRealMatrix(matrix), SINGULAR).getSolver();
        }

        /**
         * Fits.
         *
         * @param values of each function at each point: a row for each point
         */
        public ResponseSurface through(List<double[]> values) {
            Objects.requireNonNull(values, "values");
            double[][] right = new double[points.length + 1 + centre.length][values.get(0).length];
            for (int i = 0; i < points.length; i++) {
                right[i] = values.get(i).clone();
            }
            return new ResponseSurface(
                    points,
                    centre,
                    solver.solve(MatrixUtils.createRealMatrix(right)).getData());
        }
    }

    /**
     * Factorises the equations of points.
     *
     * @param points at which values are known
     * @param smoothing zero to pass through all values; more lets them be missed, as values with kinks should be
     * @return empty if the points are too few, or lie in one plane
     */
    public static Optional<Points> at(List<double[]> points, double smoothing) {
        Objects.requireNonNull(points, "points");
        Checks.notNegative("smoothing", smoothing);
        if (points.isEmpty() || points.size() <= points.get(0).length) {
            return Optional.empty();
        }
        Points factorised = new Points(points, smoothing);
        return factorised.solver.isNonSingular() ? Optional.of(factorised) : Optional.empty();
    }

    private ResponseSurface(double[][] points, double[] centre, double[][] weights) {
        this.points = points;
        this.centre = centre;
        this.weights = weights;
    }

    /** Pivots below this are none. */
    private static final double SINGULAR = 1e-12;

    /** Number of functions. */
    public int functions() {
        return weights[0].length;
    }

    /** What the functions come to at a point. */
    public double[] at(double[] x) {
        Objects.requireNonNull(x, "x");
        double[] sum = weights[points.length].clone();
        for (int i = 0; i < points.length; i++) {
            double r = distance(x, points[i]);
            add(sum, r * r * r, weights[i]);
        }
        for (int k = 0; k < x.length; k++) {
            add(sum, x[k] - centre[k], weights[points.length + 1 + k]);
        }
        return sum;
    }

    /** Slopes of the functions along each variable at a point: a row for each variable. */
    public double[][] slopesAt(double[] x) {
        Objects.requireNonNull(x, "x");
        double[][] slopes = new double[x.length][];
        for (int k = 0; k < x.length; k++) {
            slopes[k] = weights[points.length + 1 + k].clone();
        }
        for (int i = 0; i < points.length; i++) {
            double r = distance(x, points[i]);
            for (int k = 0; k < x.length; k++) {
                add(slopes[k], 3 * r * (x[k] - points[i][k]), weights[i]);
            }
        }
        return slopes;
    }

    private static void add(double[] sum, double factor, double[] row) {
        for (int j = 0; j < sum.length; j++) {
            sum[j] += factor * row[j];
        }
    }

    private static double distance(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += (a[i] - b[i]) * (a[i] - b[i]);
        }
        return Math.sqrt(sum);
    }
}
