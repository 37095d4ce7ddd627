package org.foreload.collocation;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;

/**
 * Newton's step of the whole problem by recursion from the last interval to the first (Riccati's): the best controls of
 * an interval as a linear law of the state at its start, and what a state there costs from there on. It succeeds only
 * if the controls of every interval see a convex model, which is the condition for a step that descends. They do where
 * the model of each point is convex, as {@link #turn} makes it.
 */
final class QuadraticStep {

    private final Mesh mesh;
    private final int states;
    private final int all;
    private final IntervalStep[] steps;
    private final int controls;
    private final int free;
    private final double[] lastCurvature;
    private final double[] lastGradient;
    private final double[][] gain;
    private final double[][] offer;
    private final double[][] costs;
    private final double[][] costSlopes;
    private final CholeskyDecomposition_F64<DMatrixRMaj> cholesky;
    private final CholeskyDecomposition_F64<DMatrixRMaj> startCholesky;
    private final CholeskyDecomposition_F64<DMatrixRMaj> pointCholesky;
    private final EigenDecomposition_F64<DMatrixRMaj> eigen;
    private final EigenDecomposition_F64<DMatrixRMaj> pointEigen;
    private final boolean[] freeStart;

    QuadraticStep(Mesh mesh, StageEquations equations, boolean[] freeStart) {
        this.mesh = mesh;
        this.states = equations.states();
        this.all = states + equations.controls();
        this.freeStart = freeStart;
        this.steps = new IntervalStep[mesh.intervals()];
        for (int k = 0; k < steps.length; k++) {
            steps[k] = new IntervalStep(equations, mesh.perInterval());
        }
        this.controls = equations.controls() * mesh.perInterval();
        this.free = states + controls;
        this.lastCurvature = new double[all * all];
        this.lastGradient = new double[all];
        this.gain = new double[steps.length][controls * states];
        this.offer = new double[steps.length][controls];
        this.costs = new double[steps.length + 1][states * states];
        this.costSlopes = new double[steps.length + 1][states];
        this.cholesky = DecompositionFactory_DDRM.chol(controls, true);
        this.startCholesky = DecompositionFactory_DDRM.chol(states, true);
        this.pointCholesky = DecompositionFactory_DDRM.chol(all, true);
        this.eigen = DecompositionFactory_DDRM.eig(controls, true, true);
        this.pointEigen = DecompositionFactory_DDRM.eig(all, true, true);
    }

    /** Solves the linearised equations of all intervals; false if one cannot be solved. */
    boolean linearise(PointValues[] values, double[] defect) {
        int points = mesh.perInterval();
        for (int k = 0; k < steps.length; k++) {
            if (!steps[k].linearise(
                    mesh.collocation(), mesh.lengths()[k], values, k * points, defect, k * points * states)) {
                return false;
            }
        }
        return true;
    }

    /**
     * The step.
     *
     * @param curvature of each point, full
     * @param gradient of all points
     * @param change receives the change of the unknowns
     * @param multipliers receives the new multipliers of the equations
     * @param startChange receives the change of the first state
     * @return whether every model was convex
     */
    boolean solve(
            double[][] curvature, double[] gradient, double[] change, double[] multipliers, double[] startChange) {
        int points = mesh.perInterval();
        Arrays.fill(costs[steps.length], 0);
        Arrays.fill(costSlopes[steps.length], 0);
        for (int k = steps.length - 1; k >= 0; k--) {
            IntervalStep step = steps[k];
            step.clear();
            for (int i = 0; i + 1 < points; i++) {
                step.add(i, curvature[k * points + i], gradient, (k * points + i) * all);
            }
            last(k, curvature, gradient);
            step.add(points - 1, lastCurvature, lastGradient, 0);
            if (!reduce(k, step)) {
                return false;
            }
        }
        if (!start(startChange)) {
            return false;
        }
        forward(curvature, gradient, change, multipliers, startChange);
        return true;
    }

    /** The model of the last point of an interval, with what its state costs from there on. */
    private void last(int k, double[][] curvature, double[] gradient) {
        int p = (k + 1) * mesh.perInterval() - 1;
        System.arraycopy(curvature[p], 0, lastCurvature, 0, all * all);
        System.arraycopy(gradient, p * all, lastGradient, 0, all);
        for (int r = 0; r < states; r++) {
            lastGradient[r] += costSlopes[k + 1][r];
            for (int c = 0; c < states; c++) {
                lastCurvature[r * all + c] += costs[k + 1][r * states + c];
            }
        }
    }

    private boolean reduce(int k, IntervalStep step) {
        DMatrixRMaj block = new DMatrixRMaj(controls, controls);
        double[] q = step.quadratic;
        for (int r = 0; r < controls; r++) {
            for (int c = 0; c <= r; c++) {
                double value = q[(states + r) * free + states + c];
                block.data[r * controls + c] = value;
                block.data[c * controls + r] = value;
            }
        }
        DMatrixRMaj keep = block.copy();
        if (!cholesky.decompose(block)) {
            if (!convex(keep) || !cholesky.decompose(keep)) {
                return false;
            }
            System.arraycopy(keep.data, 0, block.data, 0, block.data.length);
        }
        double[] lower = block.data;
        double[] column = new double[controls];
        for (int c = 0; c <= states; c++) {
            for (int r = 0; r < controls; r++) {
                column[r] = c < states ? q[(states + r) * free + c] : step.linear[states + r];
            }
            backSolve(lower, column);
            for (int r = 0; r < controls; r++) {
                if (c < states) {
                    gain[k][r * states + c] = -column[r];
                } else {
                    offer[k][r] = -column[r];
                }
            }
        }
        double[] next = costs[k];
        double[] nextSlope = costSlopes[k];
        for (int r = 0; r < states; r++) {
            for (int c = 0; c <= r; c++) {
                double sum = q[r * free + c];
                for (int u = 0; u < controls; u++) {
                    sum += q[(states + u) * free + r] * gain[k][u * states + c];
                }
                next[r * states + c] = sum;
                next[c * states + r] = sum;
            }
            double sum = step.linear[r];
            for (int u = 0; u < controls; u++) {
                sum += q[(states + u) * free + r] * offer[k][u];
            }
            nextSlope[r] = sum;
        }
        return true;
    }

    /**
     * Makes the model of each point convex: it keeps the directions of its bends and turns those that are the wrong way
     * (J. Greenstadt, Mathematics of Computation 21, 1967, 360-367, from memory). Unlike a shift of all models it
     * leaves alone the points and directions that need none.
     */
    void turn(double[][] models) {
        for (double[] model : models) {
            DMatrixRMaj block = DMatrixRMaj.wrap(all, all, model);
            if (!pointCholesky.decompose(block.copy())) {
                pointEigen.decompose(block.copy());
                turn(block, pointEigen, FLOOR);
            }
        }
    }

    /** Turns small negative eigenvalues positive; false if there is a large one. */
    private boolean convex(DMatrixRMaj block) {
        eigen.decompose(block.copy());
        double largest = 0;
        for (int i = 0; i < controls; i++) {
            double value = eigen.getEigenvalue(i).real;
            if (!(value > -MOST_TURNED)) {
                return false;
            }
            largest = Math.max(largest, Math.abs(value));
        }
        double least = Math.max(FLOOR, ROUNDING * largest);
        Arrays.fill(block.data, 0);
        for (int i = 0; i < controls; i++) {
            add(block, Math.max(Math.abs(eigen.getEigenvalue(i).real), least), eigen.getEigenVector(i).data);
        }
        return true;
    }

    /** Gives each direction in which a matrix bends by less than a least the same bend the other way, or the least. */
    private static void turn(DMatrixRMaj block, EigenDecomposition_F64<DMatrixRMaj> eigen, double least) {
        int size = block.numRows;
        for (int i = 0; i < size; i++) {
            double value = eigen.getEigenvalue(i).real;
            if (value >= least) {
                continue;
            }
            add(block, Math.max(-value, least) - value, eigen.getEigenVector(i).data);
        }
    }

    /** Adds a bend in one direction. */
    private static void add(DMatrixRMaj block, double bend, double[] direction) {
        int size = block.numRows;
        for (int r = 0; r < size; r++) {
            for (int c = 0; c < size; c++) {
                block.data[r * size + c] += bend * direction[r] * direction[c];
            }
        }
    }

    /** Bend, as a share of the largest, that rounding alone makes. */
    private static final double ROUNDING = 1e-13;

    /** Least bend, in scaled units, that a control, or a direction that was turned, is given. */
    private static final double FLOOR = 1e-6;

    /** Bend against the step, in scaled units, that is turned round in place; a greater one needs another model. */
    private static final double MOST_TURNED = 1e-3;

    private void backSolve(double[] lower, double[] x) {
        solve(lower, controls, x);
    }

    private static void solve(double[] lower, int size, double[] x) {
        for (int r = 0; r < size; r++) {
            double sum = x[r];
            for (int c = 0; c < r; c++) {
                sum -= lower[r * size + c] * x[c];
            }
            x[r] = sum / lower[r * size + r];
        }
        for (int r = size - 1; r >= 0; r--) {
            double sum = x[r];
            for (int c = r + 1; c < size; c++) {
                sum -= lower[c * size + r] * x[c];
            }
            x[r] = sum / lower[r * size + r];
        }
    }

    /** The first state: what of it is free goes where the cost from there on is lowest. */
    private boolean start(double[] startChange) {
        Arrays.fill(startChange, 0);
        int count = 0;
        int[] which = new int[states];
        for (int i = 0; i < states; i++) {
            if (freeStart[i]) {
                which[count++] = i;
            }
        }
        if (count == 0) {
            return true;
        }
        DMatrixRMaj block = new DMatrixRMaj(count, count);
        double[] x = new double[count];
        for (int r = 0; r < count; r++) {
            for (int c = 0; c < count; c++) {
                block.data[r * count + c] = costs[0][which[r] * states + which[c]];
            }
            x[r] = -costSlopes[0][which[r]];
        }
        if (!startCholesky.decompose(block)) {
            return false;
        }
        solve(block.data, count, x);
        for (int r = 0; r < count; r++) {
            startChange[which[r]] = x[r];
        }
        return true;
    }

    private void forward(
            double[][] curvature, double[] gradient, double[] change, double[] multipliers, double[] startChange) {
        int points = mesh.perInterval();
        double[] q = new double[free];
        double[] slopes = new double[points * states];
        System.arraycopy(startChange, 0, q, 0, states);
        for (int k = 0; k < steps.length; k++) {
            for (int r = 0; r < controls; r++) {
                double sum = offer[k][r];
                for (int c = 0; c < states; c++) {
                    sum += gain[k][r * states + c] * q[c];
                }
                q[states + r] = sum;
            }
            for (int i = 0; i < points; i++) {
                int p = k * points + i;
                steps[k].change(i, q, change, p * all);
                for (int r = 0; r < states; r++) {
                    double sum = gradient[p * all + r];
                    for (int c = 0; c < all; c++) {
                        sum += curvature[p][r * all + c] * change[p * all + c];
                    }
                    slopes[i * states + r] = sum;
                }
            }
            int last = (k * points + points - 1) * all;
            System.arraycopy(change, last, q, 0, states);
            for (int r = 0; r < states; r++) {
                double sum = costSlopes[k + 1][r];
                for (int c = 0; c < states; c++) {
                    sum += costs[k + 1][r * states + c] * q[c];
                }
                slopes[(points - 1) * states + r] += sum;
            }
            steps[k].multipliers(slopes, multipliers, k * points * states);
        }
    }
}
