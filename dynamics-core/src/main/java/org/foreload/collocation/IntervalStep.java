package org.foreload.collocation;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;

/**
 * The linearised equations of one interval, solved for the states at its points, and what is left to decide when they
 * are put into the quadratic model of the Lagrangian: the state at the start and the controls at the points.
 *
 * <p>With q the start state and all controls, the change of the unknowns at point i is {@code map_i·q + shift_i}.
 */
final class IntervalStep {

    private final StageEquations equations;
    private final int states;
    private final int controlsEach;
    private final int all;
    private final int points;
    private final int stacked;

    /** Length of q. */
    final int free;

    private final DMatrixRMaj jacobian;
    private final DMatrixRMaj inverse;
    private final DMatrixRMaj right;
    private final DMatrixRMaj solution;
    private final double[] map;
    private final double[] product;

    /** Quadratic and linear part over q, of this interval alone. */
    final double[] quadratic;

    final double[] linear;

    IntervalStep(StageEquations equations, int points) {
        this.equations = equations;
        this.states = equations.states();
        this.controlsEach = equations.controls();
        this.all = states + controlsEach;
        this.points = points;
        this.stacked = points * states;
        this.free = states + points * controlsEach;
        this.jacobian = new DMatrixRMaj(stacked, stacked);
        this.inverse = new DMatrixRMaj(stacked, stacked);
        this.right = new DMatrixRMaj(stacked, free + 1);
        this.solution = new DMatrixRMaj(stacked, free + 1);
        this.map = new double[points * all * (free + 1)];
        this.product = new double[all * (free + 1)];
        this.quadratic = new double[free * free];
        this.linear = new double[free];
    }

    /**
     * Solves the linearised equations.
     *
     * @return false if they cannot be solved
     */
    boolean linearise(
            Collocation collocation, double length, PointValues[] values, int first, double[] defect, int defectAt) {
        right.zero();
        jacobian.zero();
        for (int i = 0; i < points; i++) {
            double[] slope = values[first + i].rateSlope();
            for (int row = 0; row < states; row++) {
                int r = i * states + row;
                boolean atOnce = equations.atOnce(row);
                double factor = atOnce ? 1 : length;
                int target = r * stacked;
                if (!atOnce) {
                    for (int j = 0; j < points; j++) {
                        jacobian.data[target + j * states + row] = collocation.slope(i, j);
                    }
                    right.data[r * (free + 1) + row] = -collocation.slope(i, -1);
                }
                int diagonal = target + i * states;
                for (int col = 0; col < states; col++) {
                    jacobian.data[diagonal + col] -= factor * slope[row * all + col];
                }
                int controls = r * (free + 1) + states + i * controlsEach;
                for (int col = 0; col < controlsEach; col++) {
                    right.data[controls + col] = factor * slope[row * all + states + col];
                }
                right.data[r * (free + 1) + free] = -defect[defectAt + r];
            }
        }
        if (!CommonOps_DDRM.invert(jacobian, inverse)) {
            return false;
        }
        CommonOps_DDRM.mult(inverse, right, solution);
        for (int i = 0; i < points; i++) {
            int at = i * all * (free + 1);
            System.arraycopy(solution.data, i * states * (free + 1), map, at, states * (free + 1));
            for (int c = 0; c < controlsEach; c++) {
                int row = at + (states + c) * (free + 1);
                java.util.Arrays.fill(map, row, row + free + 1, 0);
                map[row + states + i * controlsEach + c] = 1;
            }
        }
        return Double.isFinite(solution.data[0]);
    }

    /** Forgets the quadratic model. */
    void clear() {
        java.util.Arrays.fill(quadratic, 0);
        java.util.Arrays.fill(linear, 0);
    }

    /**
     * Adds the model of point i: ½·dᵀ·curvature·d + gradient·d.
     *
     * @param size unknowns that count, from the first on: all, or the states alone
     */
    void add(int i, double[] curvature, double[] gradient, int gradientAt, int size) {
        int width = free + 1;
        int at = i * all * width;
        for (int row = 0; row < size; row++) {
            int to = row * width;
            java.util.Arrays.fill(product, to, to + width, 0);
            for (int k = 0; k < size; k++) {
                double factor = curvature[row * size + k];
                if (factor != 0) {
                    int from = at + k * width;
                    for (int c = 0; c < width; c++) {
                        product[to + c] += factor * map[from + c];
                    }
                }
            }
            product[to + free] += gradient[gradientAt + row];
        }
        for (int k = 0; k < size; k++) {
            int from = at + k * width;
            int with = k * width;
            for (int r = 0; r < free; r++) {
                double factor = map[from + r];
                if (factor != 0) {
                    int to = r * free;
                    for (int c = 0; c <= r; c++) {
                        quadratic[to + c] += factor * product[with + c];
                    }
                    linear[r] += factor * product[with + free];
                }
            }
        }
    }

    /** Change of the unknowns at point i for a q. */
    void change(int i, double[] q, double[] into, int at) {
        int width = free + 1;
        for (int row = 0; row < all; row++) {
            int from = (i * all + row) * width;
            double sum = map[from + free];
            for (int c = 0; c < free; c++) {
                sum += map[from + c] * q[c];
            }
            into[at + row] = sum;
        }
    }

    /** Multipliers of the equations: the transposed inverse times the slopes, with the sign changed. */
    void multipliers(double[] slopes, double[] into, int at) {
        for (int c = 0; c < stacked; c++) {
            into[at + c] = 0;
        }
        for (int r = 0; r < stacked; r++) {
            double factor = -slopes[r];
            for (int c = 0; c < stacked; c++) {
                into[at + c] += factor * inverse.data[r * stacked + c];
            }
        }
    }
}
