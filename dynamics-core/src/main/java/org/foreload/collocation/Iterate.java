package org.foreload.collocation;

import java.util.Arrays;

/** Where a search stands: all unknowns, the multipliers of equations and bounds, and what the problem says of them. */
final class Iterate {

    /** How far a dual may be from the weight over its slack. */
    private static final double DUAL_SPREAD = 1e10;

    private final Mesh mesh;
    private final StageEquations equations;
    private final int states;
    private final int all;
    private final int bounds;
    private final double[] weights;
    private final double[] rooms;

    /** At all points, one after the other. */
    final double[] unknowns;

    /** First state. */
    final double[] start;

    /** Of the bounds, point by point, above zero. */
    final double[] slack;

    /** Forces of the bounds, above zero. */
    final double[] dual;

    /** Of the equations. */
    final double[] multiplier;

    /** Residuals of the equations. */
    final double[] defect;

    /** What the problem says at each point. */
    final PointValues[] values;

    private boolean sloped;

    Iterate(Mesh mesh, StageEquations equations) {
        this.mesh = mesh;
        this.equations = equations;
        this.states = equations.states();
        this.all = states + equations.controls();
        this.bounds = equations.bounds();
        this.weights = new double[states];
        this.rooms = new double[bounds];
        int count = mesh.points();
        this.unknowns = new double[count * all];
        this.start = new double[states];
        this.slack = new double[count * bounds];
        this.dual = new double[count * bounds];
        this.multiplier = new double[count * states];
        this.defect = new double[count * states];
        this.values = new PointValues[count];
        Arrays.setAll(values, i -> new PointValues(equations));
    }

    /**
     * Begins at a guess, with slacks as large as the room there is.
     *
     * @param least of a slack
     */
    void begin(double[] first, double[] guess, double barrier, double least) {
        System.arraycopy(first, 0, start, 0, states);
        System.arraycopy(guess, 0, unknowns, 0, unknowns.length);
        evaluate(false);
        for (int b = 0; b < slack.length; b++) {
            slack[b] = Math.max(values[b / bounds].room()[b % bounds], least);
            dual[b] = barrier / slack[b];
        }
        slopes();
    }

    /**
     * Changes of all that an iterate is made of.
     *
     * @param multiplier the new multipliers themselves
     */
    record Step(double[] unknowns, double[] start, double[] slack, double[] dual, double[] multiplier) {

        static Step of(Mesh mesh, StageEquations equations) {
            int count = mesh.points();
            int states = equations.states();
            return new Step(
                    new double[count * (states + equations.controls())],
                    new double[states],
                    new double[count * equations.bounds()],
                    new double[count * equations.bounds()],
                    new double[count * states]);
        }
    }

    /** Goes to another place by a part of a step, and of a step of the duals. */
    void move(Iterate from, Step step, double length, double dualLength, double barrier) {
        for (int i = 0; i < unknowns.length; i++) {
            unknowns[i] = from.unknowns[i] + length * step.unknowns[i];
        }
        for (int i = 0; i < states; i++) {
            start[i] = from.start[i] + length * step.start[i];
        }
        for (int i = 0; i < slack.length; i++) {
            slack[i] = from.slack[i] + length * step.slack[i];
            double centre = barrier / slack[i];
            double moved = from.dual[i] + dualLength * step.dual[i];
            dual[i] = Math.max(centre / DUAL_SPREAD, Math.min(centre * DUAL_SPREAD, moved));
        }
        for (int i = 0; i < multiplier.length; i++) {
            multiplier[i] = from.multiplier[i] + length * (step.multiplier[i] - from.multiplier[i]);
        }
    }

    /**
     * Makes each slack as wide as the room there is, where it is narrower: the bound is then met, the logarithm lower,
     * and the next step is not cut short by a slack that the bound's own bend has left behind (R. H. Byrd, M. E.
     * Hribar, J. Nocedal, SIAM Journal on Optimization 9(4), 1999, 877-900, from memory).
     */
    void useRoom() {
        for (int b = 0; b < slack.length; b++) {
            slack[b] = Math.max(slack[b], values[b / bounds].room()[b % bounds]);
        }
    }

    /** Finds values and residuals, with slopes and curvatures if wanted. */
    void evaluate(boolean withSlopes) {
        if (withSlopes) {
            slopes();
            return;
        }
        sloped = false;
        for (int p = 0; p < values.length; p++) {
            equations.values(p, unknowns, values[p]);
            defect(p);
        }
    }

    /** Finds values and residuals with slopes and curvatures. */
    void slopes() {
        sloped = true;
        for (int p = 0; p < values.length; p++) {
            double length = mesh.lengths()[p / mesh.perInterval()];
            for (int i = 0; i < states; i++) {
                weights[i] = -multiplier[p * states + i] * (equations.atOnce(i) ? 1 : length);
            }
            for (int i = 0; i < bounds; i++) {
                rooms[i] = -dual[p * bounds + i];
            }
            equations.derivatives(p, unknowns, mesh.weight(p), weights, rooms, values[p]);
            defect(p);
        }
    }

    /** Whether slopes and curvatures are those of this place. */
    boolean sloped() {
        return sloped;
    }

    private void defect(int p) {
        int points = mesh.perInterval();
        int k = p / points;
        int i = p % points;
        double length = mesh.lengths()[k];
        double[] rate = values[p].rate();
        for (int row = 0; row < states; row++) {
            double sum;
            if (equations.atOnce(row)) {
                sum = -rate[row];
            } else {
                double before = k == 0 ? start[row] : unknowns[(k * points - 1) * all + row];
                sum = mesh.collocation().slope(i, -1) * before - length * rate[row];
                for (int j = 0; j < points; j++) {
                    sum += mesh.collocation().slope(i, j) * unknowns[(k * points + j) * all + row];
                }
            }
            defect[p * states + row] = sum;
        }
    }

    /** By how much equations and bounds are broken. */
    double violation(EquationWeights weights) {
        double sum = 0;
        for (int p = 0; p < values.length; p++) {
            sum += weights.violation(p, defect);
            double[] room = values[p].room();
            for (int i = 0; i < bounds; i++) {
                sum += Math.abs(room[i] - slack[p * bounds + i]);
            }
        }
        return sum;
    }

    /** Cost, and the logarithm of the slacks with its weight. */
    double objective(double barrier) {
        double sum = 0;
        for (int p = 0; p < values.length; p++) {
            sum += mesh.weight(p) * values[p].cost();
            if (barrier > 0) {
                for (int i = 0; i < bounds; i++) {
                    sum -= barrier * Math.log(slack[p * bounds + i]);
                }
            }
        }
        return sum;
    }
}
