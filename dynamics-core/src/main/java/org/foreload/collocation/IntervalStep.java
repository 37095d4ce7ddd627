package org.foreload.collocation;

import java.util.Arrays;

/**
 * The linearised equations of one interval, solved for the states at its points, and what is left to decide when they
 * are put into the quadratic model of the Lagrangian: the state at the start and the controls at the points.
 *
 * <p>With q the start state and all controls, the change of the states at point i is {@code map_i·q + shift_i}; that of
 * its controls is a part of q.
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
    private final double[][] table;

    private final int stride;

    /** Rows in the order in which they were eliminated. */
    private final int[] order;

    private final double[] map;
    private final double[] product;
    private final double[] column;

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
        this.table = new double[stacked][stride];
        this.order = new int[stacked];
        this.map = new double[points * states * width];
        this.product = new double[all * width];
        this.column = new double[stacked];
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
        for (double[] one : table) {
            Arrays.fill(one, 0);
        }
        for (int i = 0; i < points; i++) {
            double[] slope = values[first + i].rateSlope();
            for (int row = 0; row < states; row++) {
                int r = i * states + row;
                boolean atOnce = equations.atOnce(row);
                double factor = atOnce ? 1 : length;
                double[] line = table[r];
                int right = stacked;
                if (!atOnce) {
                    for (int j = 0; j < points; j++) {
                        line[j * states + row] = collocation.slope(i, j);
                    }
                    line[right + row] = -collocation.slope(i, -1);
                }
                int diagonal = i * states;
                for (int col = 0; col < states; col++) {
                    line[diagonal + col] -= factor * slope[row * all + col];
                }
                int controls = right + states + i * controlsEach;
                for (int col = 0; col < controlsEach; col++) {
                    line[controls + col] = factor * slope[row * all + states + col];
                }
                line[right + free] = -defect[defectAt + r];
            }
        }
        if (!eliminate()) {
            return false;
        }
        for (int r = 0; r < stacked; r++) {
            System.arraycopy(table[r], stacked, map, r * width, width);
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
                if (Math.abs(table[r][p]) > Math.abs(table[largest][p])) {
                    largest = r;
                }
            }
            swap(p, largest);
            double[] from = table[p];
            double pivot = from[p];
            if (!(Math.abs(pivot) > 0)) {
                return false;
            }
            for (int r = p + 1; r < stacked; r++) {
                double own = table[r][p];
                if (own != 0) {
                    double factor = own / pivot;
                    table[r][p] = factor;
                    subtract(factor, from, table[r], p + 1);
                }
            }
        }
        for (int r = stacked - 1; r >= 0; r--) {
            double[] to = table[r];
            for (int c = r + 1; c < stacked; c++) {
                double factor = to[c];
                if (factor != 0) {
                    subtract(factor, table[c], to, stacked);
                }
            }
            double inverse = 1 / to[r];
            for (int c = stacked; c < stride; c++) {
                to[c] *= inverse;
            }
        }
        return true;
    }

    private void swap(int one, int other) {
        int kept = order[one];
        order[one] = order[other];
        order[other] = kept;
        double[] row = table[one];
        table[one] = table[other];
        table[other] = row;
    }

    private static void subtract(double factor, double[] from, double[] to, int firstColumn) {
        for (int c = firstColumn; c < to.length; c++) {
            to[c] -= factor * from[c];
        }
    }

    /** Forgets the quadratic model. */
    void clear() {
        Arrays.fill(quadratic, 0);
        Arrays.fill(linear, 0);
    }

    /** Adds the model of point i: ½·dᵀ·curvature·d + gradient·d. */
    void add(int i, double[] curvature, double[] gradient, int gradientAt) {
        int at = i * states * width;
        int own = states + i * controlsEach;
        Arrays.fill(product, 0);
        Products.addTransposed(states, all, width, curvature, 0, all, map, at, width, product, width);
        for (int row = 0; row < all; row++) {
            for (int c = 0; c < controlsEach; c++) {
                product[row * width + own + c] += curvature[row * all + states + c];
            }
        }
        Products.addTransposedLower(states, free, map, at, width, product, 0, width, quadratic, free);
        for (int c = 0; c < controlsEach; c++) {
            int from = (states + c) * width;
            int to = (own + c) * free;
            for (int col = 0; col <= own + c; col++) {
                quadratic[to + col] += product[from + col];
            }
            linear[own + c] += product[from + free] + gradient[gradientAt + states + c];
        }
        for (int row = 0; row < states; row++) {
            double slope = product[row * width + free] + gradient[gradientAt + row];
            for (int c = 0; c < free; c++) {
                linear[c] += slope * map[at + row * width + c];
            }
        }
    }

    /** Change of the unknowns at point i for a q. */
    void change(int i, double[] q, double[] into, int at) {
        for (int row = 0; row < states; row++) {
            int from = (i * states + row) * width;
            double sum = map[from + free];
            for (int c = 0; c < free; c++) {
                sum += map[from + c] * q[c];
            }
            into[at + row] = sum;
        }
        System.arraycopy(q, states + i * controlsEach, into, at + states, controlsEach);
    }

    /** Multipliers of the equations: the transposed inverse times the slopes, with the sign changed. */
    void multipliers(double[] slopes, double[] into, int at) {
        for (int r = 0; r < stacked; r++) {
            column[r] = -slopes[r];
        }
        for (int p = 0; p < stacked; p++) {
            column[p] /= table[p][p];
            for (int c = p + 1; c < stacked; c++) {
                column[c] -= table[p][c] * column[p];
            }
        }
        for (int p = stacked - 1; p >= 0; p--) {
            for (int c = 0; c < p; c++) {
                column[c] -= table[p][c] * column[p];
            }
            into[at + order[p]] = column[p];
        }
    }
}
