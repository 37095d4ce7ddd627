package org.foreload.collocation;

import java.util.Arrays;

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

    /** Columns of the maps: q, and what does not depend on it. */
    private final int width;

    /** The equations and, beside them, their right sides; after the elimination both triangles and the solution. */
    private final double[] table;

    private final int stride;

    /** Rows in the order in which they were eliminated. */
    private final int[] order;

    private final double[] map;
    private final double[] product;
    private final double[] column;
    private final double[] row;

    /** Quadratic part over q, the lower half of it. */
    final double[] quadratic;

    /** Linear part over q. */
    final double[] linear;

    IntervalStep(StageEquations equations, int points) {
        this.equations = equations;
        this.states = equations.states();
        this.controlsEach = equations.controls();
        this.all = states + controlsEach;
        this.points = points;
        this.stacked = points * states;
        this.free = states + points * controlsEach;
        this.width = free + 1;
        this.stride = stacked + width;
        this.table = new double[stacked * stride];
        this.order = new int[stacked];
        this.map = new double[points * all * width];
        this.product = new double[all * width];
        this.column = new double[stacked];
        this.row = new double[stride];
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
        Arrays.fill(table, 0);
        for (int i = 0; i < points; i++) {
            double[] slope = values[first + i].rateSlope();
            for (int row = 0; row < states; row++) {
                int r = i * states + row;
                boolean atOnce = equations.atOnce(row);
                double factor = atOnce ? 1 : length;
                int left = r * stride;
                int right = left + stacked;
                if (!atOnce) {
                    for (int j = 0; j < points; j++) {
                        table[left + j * states + row] = collocation.slope(i, j);
                    }
                    table[right + row] = -collocation.slope(i, -1);
                }
                int diagonal = left + i * states;
                for (int col = 0; col < states; col++) {
                    table[diagonal + col] -= factor * slope[row * all + col];
                }
                int controls = right + states + i * controlsEach;
                for (int col = 0; col < controlsEach; col++) {
                    table[controls + col] = factor * slope[row * all + states + col];
                }
                table[right + free] = -defect[defectAt + r];
            }
        }
        if (!eliminate()) {
            return false;
        }
        for (int i = 0; i < points; i++) {
            int at = i * all * width;
            for (int row = 0; row < states; row++) {
                System.arraycopy(table, (i * states + row) * stride + stacked, map, at + row * width, width);
            }
            for (int c = 0; c < controlsEach; c++) {
                int row = at + (states + c) * width;
                Arrays.fill(map, row, row + width, 0);
                map[row + states + i * controlsEach + c] = 1;
            }
        }
        return Double.isFinite(map[0]);
    }

    /** Gauss's elimination with the largest element of each column as its pivot; many elements are zero and skipped. */
    private boolean eliminate() {
        for (int p = 0; p < stacked; p++) {
            order[p] = p;
        }
        for (int p = 0; p < stacked; p++) {
            int largest = p;
            for (int r = p + 1; r < stacked; r++) {
                if (Math.abs(table[r * stride + p]) > Math.abs(table[largest * stride + p])) {
                    largest = r;
                }
            }
            swap(p, largest);
            double pivot = table[p * stride + p];
            if (!(Math.abs(pivot) > 0)) {
                return false;
            }
            for (int r = p + 1; r < stacked; r++) {
                double own = table[r * stride + p];
                if (own != 0) {
                    double factor = own / pivot;
                    table[r * stride + p] = factor;
                    subtract(factor, p * stride, r * stride, p + 1);
                }
            }
        }
        for (int r = stacked - 1; r >= 0; r--) {
            for (int c = r + 1; c < stacked; c++) {
                double factor = table[r * stride + c];
                if (factor != 0) {
                    subtract(factor, c * stride, r * stride, stacked);
                }
            }
            double inverse = 1 / table[r * stride + r];
            for (int c = stacked; c < stride; c++) {
                table[r * stride + c] *= inverse;
            }
        }
        return true;
    }

    private void swap(int one, int other) {
        if (one == other) {
            return;
        }
        int kept = order[one];
        order[one] = order[other];
        order[other] = kept;
        System.arraycopy(table, one * stride, row, 0, stride);
        System.arraycopy(table, other * stride, table, one * stride, stride);
        System.arraycopy(row, 0, table, other * stride, stride);
    }

    private void subtract(double factor, int from, int to, int firstColumn) {
        for (int c = firstColumn; c < stride; c++) {
            table[to + c] -= factor * table[from + c];
        }
    }

    /** Forgets the quadratic model. */
    void clear() {
        Arrays.fill(quadratic, 0);
        Arrays.fill(linear, 0);
    }

    /** Adds the model of point i: ½·dᵀ·curvature·d + gradient·d. */
    void add(int i, double[] curvature, double[] gradient, int gradientAt) {
        int at = i * all * width;
        Arrays.fill(product, 0);
        Products.addTransposed(all, all, width, curvature, 0, all, map, at, width, product, width);
        Products.addTransposedLower(all, free, map, at, width, product, 0, width, quadratic, free);
        for (int row = 0; row < all; row++) {
            double slope = product[row * width + free] + gradient[gradientAt + row];
            for (int c = 0; c < free; c++) {
                linear[c] += slope * map[at + row * width + c];
            }
        }
    }

    /** Change of the unknowns at point i for a q. */
    void change(int i, double[] q, double[] into, int at) {
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
        for (int r = 0; r < stacked; r++) {
            column[r] = -slopes[r];
        }
        for (int p = 0; p < stacked; p++) {
            column[p] /= table[p * stride + p];
            for (int c = p + 1; c < stacked; c++) {
                column[c] -= table[p * stride + c] * column[p];
            }
        }
        for (int p = stacked - 1; p >= 0; p--) {
            for (int c = 0; c < p; c++) {
                column[c] -= table[p * stride + c] * column[p];
            }
            into[at + order[p]] = column[p];
        }
    }
}
