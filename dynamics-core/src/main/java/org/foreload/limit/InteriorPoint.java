package org.foreload.limit;

import static org.foreload.limit.RoadEquations.BOUNDS;
import static org.foreload.limit.Unknowns.ALL;
import static org.foreload.limit.Unknowns.STATES;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A primal-dual interior-point method with a filter (A. Wächter, L. T. Biegler, On the implementation of an
 * interior-point filter line-search algorithm for large-scale nonlinear programming, Mathematical Programming 106(1),
 * 2006, 25-57, from memory), for the equations on a mesh: each bound has a slack that a logarithm keeps above zero,
 * Newton's step comes from {@link QuadraticStep}, and the logarithm's weight goes to zero.
 */
final class InteriorPoint {

    private static final double FIRST_BARRIER = 1e-3;
    private static final double LAST_BARRIER = 1e-8;
    private static final double BARRIER_FACTOR = 0.2;
    private static final double BARRIER_POWER = 1.5;
    private static final double BARRIER_DONE = 10;
    private static final double LEAST_FRACTION = 0.99;
    private static final double SMALLEST_SLACK = 1e-3;
    private static final double DUAL_SPREAD = 1e10;
    private static final double FIRST_SHIFT = 1e-4;
    private static final double LARGEST_SHIFT = 1e10;
    private static final double SMALLEST_STEP = 1e-6;

    static boolean trace;

    private final Mesh mesh;
    private final RoadEquations equations;
    private final boolean[] freeStart;
    private final int count;
    private final PointValues[] values;
    private final double[] unknowns;
    private final double[] start;
    private final double[] slack;
    private final double[] dual;
    private final double[] multiplier;
    private final double[] defect;
    private final double[] gradient;
    private final double[][] curvature;
    private final double[] change;
    private final double[] startChange = new double[STATES];
    private final double[] newMultiplier;
    private final double[] slackChange;
    private final double[] dualChange;
    private final double[] trialUnknowns;
    private final double[] trialStart = new double[STATES];
    private final double[] trialSlack;
    private final double[] trialDefect;
    private final PointValues trialValues = new PointValues();
    private final QuadraticStep newton;
    private final List<double[]> filter = new ArrayList<>();
    private double shift;
    private double lastShift;
    private double trialViolation;
    private double trialObjective;

    /**
     * @param start the first state, scaled
     * @param freeStart which of its parts are free
     * @param guess unknowns at all points, scaled
     */
    InteriorPoint(Mesh mesh, RoadEquations equations, double[] start, boolean[] freeStart, double[] guess) {
        this.mesh = mesh;
        this.equations = equations;
        this.freeStart = freeStart;
        this.count = mesh.points().size();
        this.values = new PointValues[count];
        Arrays.setAll(values, i -> new PointValues());
        this.unknowns = guess.clone();
        this.start = start.clone();
        this.slack = new double[count * BOUNDS];
        this.dual = new double[count * BOUNDS];
        this.multiplier = new double[count * STATES];
        this.defect = new double[count * STATES];
        this.gradient = new double[count * ALL];
        this.curvature = new double[count][ALL * ALL];
        this.change = new double[count * ALL];
        this.newMultiplier = new double[count * STATES];
        this.slackChange = new double[count * BOUNDS];
        this.dualChange = new double[count * BOUNDS];
        this.trialUnknowns = new double[count * ALL];
        this.trialSlack = new double[count * BOUNDS];
        this.trialDefect = new double[count * STATES];
        this.newton = new QuadraticStep(mesh, equations, freeStart);
    }

    /**
     * How it ended.
     *
     * @param converged whether the optimality conditions hold
     * @param optimality greatest residual of them, scaled
     * @param iterations Newton steps
     * @param start first state, scaled
     * @param unknowns at all points, scaled
     */
    record Ending(boolean converged, double optimality, int iterations, double[] start, double[] unknowns) {}

    Ending solve(double tolerance, int mostIterations) {
        double barrier = FIRST_BARRIER;
        for (int p = 0; p < count; p++) {
            equations.values(mesh.points().get(p), unknowns, p * ALL, values[p]);
            for (int i = 0; i < BOUNDS; i++) {
                slack[p * BOUNDS + i] = Math.max(values[p].room[i], SMALLEST_SLACK);
                dual[p * BOUNDS + i] = barrier / slack[p * BOUNDS + i];
            }
        }
        double error = Double.POSITIVE_INFINITY;
        int iteration = 0;
        while (true) {
            evaluate();
            error = error(0);
            if (error <= tolerance || iteration == mostIterations) {
                break;
            }
            while (barrier > LAST_BARRIER && error(barrier) <= BARRIER_DONE * barrier) {
                barrier = Math.max(
                        LAST_BARRIER, Math.min(BARRIER_FACTOR * barrier, Math.pow(barrier, BARRIER_POWER)));
                filter.clear();
            }
            if (!newton.linearise(values, defect) || !step(barrier)) {
                break;
            }
            double[] accepted = search(barrier);
            if (accepted == null) {
                break;
            }
            if (trace) {
                System.err.printf(
                        "%3d mu %.1e err %.2e theta %.2e T %.5f alpha %.4f shift %.1e%n",
                        iteration, barrier, error, violation(defect), time(), accepted[0], shift);
            }
            take(accepted[0], accepted[1], barrier);
            iteration++;
        }
        return new Ending(error <= tolerance, error, iteration, start, unknowns);
    }

    private double time() {
        double sum = 0;
        for (int p = 0; p < count; p++) {
            sum += weight(p) * values[p].slowness;
        }
        return sum;
    }

    private double weight(int p) {
        int points = mesh.perInterval();
        return mesh.lengths()[p / points] * mesh.collocation().weight(p % points);
    }

    private void evaluate() {
        double[] weights = new double[STATES];
        double[] rooms = new double[BOUNDS];
        for (int p = 0; p < count; p++) {
            double length = mesh.lengths()[p / mesh.perInterval()];
            for (int i = 0; i < STATES; i++) {
                weights[i] = -multiplier[p * STATES + i] * (equations.atOnce(i) ? 1 : length);
            }
            for (int i = 0; i < BOUNDS; i++) {
                rooms[i] = -dual[p * BOUNDS + i];
            }
            equations.derivatives(
                    mesh.points().get(p), unknowns, p * ALL, weight(p), weights, 0, rooms, 0, values[p]);
        }
        defects(unknowns, start, defect, null);
    }

    /** Residuals of the equations; the rates are those of {@code values}, or of one point that was just evaluated. */
    private void defects(double[] x, double[] first, double[] into, PointValues single) {
        for (int p = 0; p < count; p++) {
            defect(p, x, first, values[p], into);
        }
    }

    private void defect(int p, double[] x, double[] first, PointValues at, double[] into) {
        int points = mesh.perInterval();
        int k = p / points;
        int i = p % points;
        double length = mesh.lengths()[k];
        for (int row = 0; row < STATES; row++) {
            double sum;
            if (equations.atOnce(row)) {
                sum = -at.rate[row];
            } else {
                double before = k == 0 ? first[row] : x[(k * points - 1) * ALL + row];
                sum = mesh.collocation().slope(i, -1) * before - length * at.rate[row];
                for (int j = 0; j < points; j++) {
                    sum += mesh.collocation().slope(i, j) * x[(k * points + j) * ALL + row];
                }
            }
            into[p * STATES + row] = sum;
        }
    }

    /** Greatest residual of the optimality conditions for a weight of the logarithm. */
    private double error(double barrier) {
        int points = mesh.perInterval();
        double most = 0;
        double sizeOfMultipliers = 0;
        for (double m : multiplier) {
            sizeOfMultipliers += Math.abs(m);
        }
        double sizeOfDuals = 0;
        for (double z : dual) {
            sizeOfDuals += z;
        }
        double scale = Math.max(100, (sizeOfMultipliers + sizeOfDuals) / (multiplier.length + dual.length)) / 100;
        double dualScale = Math.max(100, sizeOfDuals / dual.length) / 100;
        double[] slope = new double[ALL];
        for (int p = 0; p < count; p++) {
            int k = p / points;
            int j = p % points;
            double length = mesh.lengths()[k];
            for (int c = 0; c < ALL; c++) {
                slope[c] = weight(p) * values[p].costSlope[c];
            }
            for (int row = 0; row < STATES; row++) {
                double own = multiplier[p * STATES + row];
                double factor = equations.atOnce(row) ? own : own * length;
                for (int c = 0; c < ALL; c++) {
                    slope[c] -= factor * values[p].rateSlope[row * ALL + c];
                }
                if (!equations.atOnce(row)) {
                    for (int i = 0; i < points; i++) {
                        slope[row] += mesh.collocation().slope(i, j) * multiplier[(k * points + i) * STATES + row];
                        if (j == points - 1 && k + 1 < mesh.intervals()) {
                            slope[row] += mesh.collocation().slope(i, -1)
                                    * multiplier[((k + 1) * points + i) * STATES + row];
                        }
                    }
                }
                most = Math.max(most, Math.abs(defect[p * STATES + row]));
            }
            for (int i = 0; i < BOUNDS; i++) {
                double z = dual[p * BOUNDS + i];
                double s = slack[p * BOUNDS + i];
                for (int c = 0; c < ALL; c++) {
                    slope[c] -= z * values[p].roomSlope[i * ALL + c];
                }
                most = Math.max(most, Math.abs(values[p].room[i] - s));
                most = Math.max(most, Math.abs(z * s - barrier) / dualScale);
            }
            for (int c = 0; c < ALL; c++) {
                most = Math.max(most, Math.abs(slope[c]) / scale);
            }
            if (Double.isNaN(slope[0])) {
                return Double.NaN;
            }
        }
        return most;
    }

    /** The Newton step, with a convex shift where it is needed. */
    private boolean step(double barrier) {
        shift = 0;
        while (true) {
            model(barrier);
            if (newton.solve(curvature, gradient, change, newMultiplier, startChange)) {
                break;
            }
            shift = shift == 0
                    ? Math.max(1e-9, lastShift == 0 ? FIRST_SHIFT : lastShift / 3)
                    : shift * (lastShift == 0 ? 100 : 8);
            if (shift > LARGEST_SHIFT) {
                return false;
            }
        }
        if (shift > 0) {
            lastShift = shift;
        }
        for (int p = 0; p < count; p++) {
            for (int i = 0; i < BOUNDS; i++) {
                int b = p * BOUNDS + i;
                double sum = values[p].room[i] - slack[b];
                for (int c = 0; c < ALL; c++) {
                    sum += values[p].roomSlope[i * ALL + c] * change[p * ALL + c];
                }
                slackChange[b] = sum;
                dualChange[b] = barrier / slack[b] - dual[b] - dual[b] / slack[b] * sum;
            }
        }
        return true;
    }

    private void model(double barrier) {
        for (int p = 0; p < count; p++) {
            PointValues at = values[p];
            double[] bend = curvature[p];
            System.arraycopy(at.curvature, 0, bend, 0, bend.length);
            for (int c = 0; c < ALL; c++) {
                gradient[p * ALL + c] = weight(p) * at.costSlope[c];
                bend[c * ALL + c] += shift;
            }
            for (int i = 0; i < BOUNDS; i++) {
                int b = p * BOUNDS + i;
                double stiffness = dual[b] / slack[b];
                double force = barrier / slack[b] - stiffness * (at.room[i] - slack[b]);
                int row = i * ALL;
                for (int c = 0; c < ALL; c++) {
                    double own = at.roomSlope[row + c];
                    if (own != 0) {
                        gradient[p * ALL + c] -= force * own;
                        for (int d = 0; d < ALL; d++) {
                            bend[c * ALL + d] += stiffness * own * at.roomSlope[row + d];
                        }
                    }
                }
            }
        }
    }

    private double violation(double[] defects) {
        double sum = 0;
        for (double d : defects) {
            sum += Math.abs(d);
        }
        for (int p = 0; p < count; p++) {
            for (int i = 0; i < BOUNDS; i++) {
                sum += Math.abs(values[p].room[i] - slack[p * BOUNDS + i]);
            }
        }
        return sum;
    }

    private double objective(double barrier) {
        double sum = 0;
        for (int p = 0; p < count; p++) {
            sum += weight(p) * values[p].cost;
            for (int i = 0; i < BOUNDS; i++) {
                sum -= barrier * Math.log(slack[p * BOUNDS + i]);
            }
        }
        return sum;
    }

    private static double fraction(double[] value, double[] change, double least) {
        double most = 1;
        for (int i = 0; i < value.length; i++) {
            if (change[i] < 0) {
                most = Math.min(most, -least * value[i] / change[i]);
            }
        }
        return most;
    }

    /** The step lengths of the unknowns and of the duals; null if none makes progress. */
    private double[] search(double barrier) {
        double least = Math.max(LEAST_FRACTION, 1 - barrier);
        double longest = fraction(slack, slackChange, least);
        double dualLength = fraction(dual, dualChange, least);
        double violation = violation(defect);
        double objective = objective(barrier);
        double descent = 0;
        for (int p = 0; p < count; p++) {
            for (int c = 0; c < ALL; c++) {
                descent += weight(p) * values[p].costSlope[c] * change[p * ALL + c];
            }
            for (int i = 0; i < BOUNDS; i++) {
                descent -= barrier / slack[p * BOUNDS + i] * slackChange[p * BOUNDS + i];
            }
        }
        double small = 1e-4 * Math.max(1, violation);
        double length = longest;
        while (length > SMALLEST_STEP * longest) {
            if (trial(length, barrier) && passesFilter()) {
                boolean armijo = descent < 0
                        && length * Math.pow(-descent, 2.3) > Math.pow(violation, 1.1)
                        && violation <= small;
                double rounding = 1e-13 * Math.abs(objective);
                if (armijo) {
                    if (trialObjective <= objective + 1e-8 * length * descent + rounding) {
                        return new double[] {length, dualLength};
                    }
                } else if (trialViolation <= (1 - 1e-5) * violation
                        || trialObjective <= objective - 1e-5 * violation + rounding) {
                    filter.add(new double[] {(1 - 1e-5) * violation, objective - 1e-5 * violation});
                    return new double[] {length, dualLength};
                }
            }
            length /= 2;
        }
        if (trace) {
            System.err.println("no step: theta " + violation + " phi " + objective + " descent " + descent);
        }
        return null;
    }

    private boolean passesFilter() {
        for (double[] corner : filter) {
            if (trialViolation >= corner[0] && trialObjective >= corner[1]) {
                return false;
            }
        }
        return true;
    }

    private boolean trial(double length, double barrier) {
        for (int i = 0; i < unknowns.length; i++) {
            trialUnknowns[i] = unknowns[i] + length * change[i];
        }
        for (int i = 0; i < STATES; i++) {
            trialStart[i] = start[i] + length * startChange[i];
        }
        trialViolation = 0;
        trialObjective = 0;
        for (int p = 0; p < count; p++) {
            equations.values(mesh.points().get(p), trialUnknowns, p * ALL, trialValues);
            defect(p, trialUnknowns, trialStart, trialValues, trialDefect);
            trialObjective += weight(p) * trialValues.cost;
            for (int i = 0; i < STATES; i++) {
                trialViolation += Math.abs(trialDefect[p * STATES + i]);
            }
            for (int i = 0; i < BOUNDS; i++) {
                int b = p * BOUNDS + i;
                double s = slack[b] + length * slackChange[b];
                trialObjective -= barrier * Math.log(s);
                trialViolation += Math.abs(trialValues.room[i] - s);
            }
        }
        return Double.isFinite(trialViolation) && Double.isFinite(trialObjective);
    }

    private void take(double length, double dualLength, double barrier) {
        for (int i = 0; i < unknowns.length; i++) {
            unknowns[i] += length * change[i];
        }
        for (int i = 0; i < STATES; i++) {
            start[i] += length * startChange[i];
        }
        for (int i = 0; i < slack.length; i++) {
            slack[i] += length * slackChange[i];
            dual[i] += dualLength * dualChange[i];
            double centre = barrier / slack[i];
            dual[i] = Math.max(centre / DUAL_SPREAD, Math.min(centre * DUAL_SPREAD, dual[i]));
        }
        for (int i = 0; i < multiplier.length; i++) {
            multiplier[i] += length * (newMultiplier[i] - multiplier[i]);
        }
    }
}
