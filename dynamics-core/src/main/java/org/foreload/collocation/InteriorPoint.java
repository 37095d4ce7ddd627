package org.foreload.collocation;

import java.util.Arrays;

/**
 * A primal-dual interior-point method with a filter (A. Wächter, L. T. Biegler, On the implementation of an
 * interior-point filter line-search algorithm for large-scale nonlinear programming, Mathematical Programming 106(1),
 * 2006, 25-57, from memory), for the equations on a mesh: each bound has a slack that a logarithm keeps above zero,
 * Newton's step comes from {@link QuadraticStep}, and the logarithm's weight goes to zero.
 */
final class InteriorPoint {

    /** First weight of the logarithm, s: with it the start, which is near its bounds, is not driven far from them. */
    private static final double FIRST_BARRIER = 1e-4;
    /** Last weight: times the number of bounds, it is what is then still lost to keeping off them: a millisecond. */
    private static final double LAST_BARRIER = 1e-7;
    /** Fall of the weight from one problem to the next: by this factor, or to this power. */
    private static final double BARRIER_FACTOR = 0.2;

    private static final double BARRIER_POWER = 1.5;
    /** A problem counts as solved when its residual is this many times the weight. */
    private static final double BARRIER_DONE = 10;
    /** Part of the way to a bound that a step may go. */
    private static final double LEAST_FRACTION = 0.99;
    /** Least slack at the start, in units of the bound. */
    private static final double SMALLEST_SLACK = 1e-3;
    /** How far a dual may be from the weight over its slack. */
    private static final double DUAL_SPREAD = 1e10;
    /**
     * Convex shift that is tried first where the model is not convex; what counts as none; how it falls from step to
     * step and rises within one; and the largest.
     */
    private static final double FIRST_SHIFT = 1e-4;

    private static final double SMALLEST_SHIFT = 1e-6;
    private static final double SHIFT_FALL = 3;
    private static final double SHIFT_RISE = 8;
    private static final double LARGEST_SHIFT = 1e10;
    /** Steps that are tried with ever larger shifts before the search gives up, and how much larger. */
    private static final int ATTEMPTS = 5;

    private static final double ATTEMPT_FACTOR = 100;

    /** Shortest part of a step that is tried. */
    private static final double SMALLEST_STEP = 1e-6;

    private final Mesh mesh;
    private final StageEquations equations;
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
    private final int states;
    private final int all;
    private final int bounds;
    private final double[] startChange;
    private final double[] newMultiplier;
    private final double[] slackChange;
    private final double[] dualChange;
    private final int[] touched;
    private final double[] trialUnknowns;
    private final double[] trialStart;
    private final double[] trialSlack;
    private final double[] trialDefect;
    private final PointValues trialValues;
    private final QuadraticStep newton;
    private final Residual residual;
    private final Violation violation;
    private final Filter filter = new Filter();
    private double shift;
    private double lastShift;
    private double leastShift;
    private double trialViolation;
    private double trialObjective;

    /**
     * @param start the first state, scaled
     * @param freeStart which of its parts are free
     * @param guess unknowns at all points, scaled
     */
    InteriorPoint(Mesh mesh, StageEquations equations, double[] start, boolean[] freeStart, double[] guess) {
        this.mesh = mesh;
        this.equations = equations;
        this.count = mesh.points();
        this.states = equations.states();
        this.all = states + equations.controls();
        this.bounds = equations.bounds();
        this.startChange = new double[states];
        this.trialStart = new double[states];
        this.trialValues = new PointValues(equations);
        this.values = new PointValues[count];
        Arrays.setAll(values, i -> new PointValues(equations));
        this.unknowns = guess.clone();
        this.start = start.clone();
        this.slack = new double[count * bounds];
        this.dual = new double[count * bounds];
        this.multiplier = new double[count * states];
        this.defect = new double[count * states];
        this.gradient = new double[count * all];
        this.curvature = new double[count][all * all];
        this.change = new double[count * all];
        this.newMultiplier = new double[count * states];
        this.slackChange = new double[count * bounds];
        this.dualChange = new double[count * bounds];
        this.touched = new int[all];
        this.trialUnknowns = new double[count * all];
        this.trialSlack = new double[count * bounds];
        this.trialDefect = new double[count * states];
        this.residual = new Residual(mesh, equations);
        this.violation = new Violation(mesh, equations);
        this.newton = new QuadraticStep(mesh, equations, freeStart);
    }

    /**
     * Searches until the residual is below the tolerance, no step makes progress, or the steps are used up.
     *
     * @param watcher gets the number of each step and the residual before it
     */
    OptimalControl.Ending solve(double tolerance, int mostIterations, Progress watcher) {
        double barrier = FIRST_BARRIER;
        for (int p = 0; p < count; p++) {
            equations.values(p, unknowns, values[p]);
            for (int i = 0; i < bounds; i++) {
                slack[p * bounds + i] = Math.max(values[p].room()[i], SMALLEST_SLACK);
                dual[p * bounds + i] = barrier / slack[p * bounds + i];
            }
        }
        evaluate();
        violation.weigh(values);
        double error = Double.POSITIVE_INFINITY;
        int iteration = 0;
        boolean done;
        Stillness stillness = new Stillness();
        while (true) {
            residual.measure(values, multiplier, defect, slack, dual);
            error = residual.greatest(0);
            stillness.add(objective(0));
            done = barrier == LAST_BARRIER
                    && (residual.strict() <= tolerance || error <= tolerance && stillness.holds());
            if (done || iteration == mostIterations) {
                break;
            }
            while (barrier > LAST_BARRIER && residual.greatest(barrier) <= BARRIER_DONE * barrier) {
                barrier = Math.max(LAST_BARRIER, Math.min(BARRIER_FACTOR * barrier, Math.pow(barrier, BARRIER_POWER)));
                filter.clear();
            }
            double[] accepted = newton.linearise(values, defect) ? progress(barrier) : null;
            if (accepted == null) {
                break;
            }
            watcher.accept(iteration, error);
            take(accepted[0], accepted[1], barrier);
            evaluate();
            iteration++;
        }
        return new OptimalControl.Ending(done, error, iteration, start, unknowns);
    }

    /** A step that makes progress, with an ever more convex model where one fails; its lengths, or null. */
    private double[] progress(double barrier) {
        leastShift = 0;
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            if (!step(barrier)) {
                return null;
            }
            double[] accepted = search(barrier);
            if (accepted != null) {
                return accepted;
            }
            leastShift = Math.max(FIRST_SHIFT, ATTEMPT_FACTOR * shift);
            if (attempt == 0) {
                filter.clear();
            }
        }
        return null;
    }

    private void evaluate() {
        double[] weights = new double[states];
        double[] rooms = new double[bounds];
        for (int p = 0; p < count; p++) {
            double length = mesh.lengths()[p / mesh.perInterval()];
            for (int i = 0; i < states; i++) {
                weights[i] = -multiplier[p * states + i] * (equations.atOnce(i) ? 1 : length);
            }
            for (int i = 0; i < bounds; i++) {
                rooms[i] = -dual[p * bounds + i];
            }
            equations.derivatives(p, unknowns, mesh.weight(p), weights, rooms, values[p]);
        }
        for (int p = 0; p < count; p++) {
            defect(p, unknowns, start, values[p], defect);
        }
    }

    /** Residuals of the equations at a point. */
    private void defect(int p, double[] x, double[] first, PointValues at, double[] into) {
        int points = mesh.perInterval();
        int k = p / points;
        int i = p % points;
        double length = mesh.lengths()[k];
        for (int row = 0; row < states; row++) {
            double sum;
            if (equations.atOnce(row)) {
                sum = -at.rate()[row];
            } else {
                double before = k == 0 ? first[row] : x[(k * points - 1) * all + row];
                sum = mesh.collocation().slope(i, -1) * before - length * at.rate()[row];
                for (int j = 0; j < points; j++) {
                    sum += mesh.collocation().slope(i, j) * x[(k * points + j) * all + row];
                }
            }
            into[p * states + row] = sum;
        }
    }

    /** The Newton step, with a convex shift where it is needed. */
    private boolean step(double barrier) {
        shift = Math.max(leastShift, lastShift < SMALLEST_SHIFT ? 0 : lastShift / SHIFT_FALL);
        while (true) {
            model(barrier);
            if (newton.solve(curvature, gradient, change, newMultiplier, startChange)) {
                break;
            }
            shift = shift == 0 ? FIRST_SHIFT : shift * SHIFT_RISE;
            if (shift > LARGEST_SHIFT) {
                return false;
            }
        }
        lastShift = shift;
        for (int p = 0; p < count; p++) {
            for (int i = 0; i < bounds; i++) {
                int b = p * bounds + i;
                double sum = values[p].room()[i] - slack[b];
                for (int c = 0; c < all; c++) {
                    sum += values[p].roomSlope()[i * all + c] * change[p * all + c];
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
            System.arraycopy(at.curvature(), 0, bend, 0, bend.length);
            for (int c = 0; c < all; c++) {
                gradient[p * all + c] = mesh.weight(p) * at.costSlope()[c];
                bend[c * all + c] += shift;
            }
            for (int i = 0; i < bounds; i++) {
                int b = p * bounds + i;
                double stiffness = dual[b] / slack[b];
                double force = barrier / slack[b] - stiffness * (at.room()[i] - slack[b]);
                int row = i * all;
                int count = 0;
                for (int c = 0; c < all; c++) {
                    if (at.roomSlope()[row + c] != 0) {
                        touched[count++] = c;
                    }
                }
                for (int j = 0; j < count; j++) {
                    int c = touched[j];
                    double own = at.roomSlope()[row + c];
                    gradient[p * all + c] -= force * own;
                    double bent = stiffness * own;
                    for (int l = 0; l < count; l++) {
                        bend[c * all + touched[l]] += bent * at.roomSlope()[row + touched[l]];
                    }
                }
            }
        }
    }

    private double violation() {
        double sum = 0;
        for (int p = 0; p < count; p++) {
            sum += violation.ofEquations(p, defect);
        }
        for (int b = 0; b < slack.length; b++) {
            sum += Math.abs(values[b / bounds].room()[b % bounds] - slack[b]);
        }
        return sum;
    }

    private double objective(double barrier) {
        double sum = 0;
        for (int p = 0; p < count; p++) {
            sum += mesh.weight(p) * values[p].cost();
            for (int i = 0; i < bounds; i++) {
                sum -= barrier * Math.log(slack[p * bounds + i]);
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
        double violated = violation();
        double objective = objective(barrier);
        double descent = 0;
        for (int p = 0; p < count; p++) {
            for (int c = 0; c < all; c++) {
                descent += mesh.weight(p) * values[p].costSlope()[c] * change[p * all + c];
            }
            for (int i = 0; i < bounds; i++) {
                descent -= barrier / slack[p * bounds + i] * slackChange[p * bounds + i];
            }
        }
        double small = 1e-4 * Math.max(1, violated);
        double length = longest;
        while (length > SMALLEST_STEP * longest) {
            if (trial(length, barrier) && filter.passes(trialViolation, trialObjective)) {
                boolean armijo =
                        descent < 0 && length * Math.pow(-descent, 2.3) > Math.pow(violated, 1.1) && violated <= small;
                double rounding = 1e-13 * Math.abs(objective);
                if (armijo) {
                    if (trialObjective <= objective + 1e-8 * length * descent + rounding) {
                        return new double[] {length, dualLength};
                    }
                } else if (trialViolation <= (1 - Filter.MARGIN) * violated
                        || trialObjective <= objective - Filter.MARGIN * violated + rounding) {
                    filter.add(violated, objective);
                    return new double[] {length, dualLength};
                }
            }
            length /= 2;
        }
        return null;
    }

    private boolean trial(double length, double barrier) {
        for (int i = 0; i < unknowns.length; i++) {
            trialUnknowns[i] = unknowns[i] + length * change[i];
        }
        for (int i = 0; i < states; i++) {
            trialStart[i] = start[i] + length * startChange[i];
        }
        trialViolation = 0;
        trialObjective = 0;
        for (int p = 0; p < count; p++) {
            equations.values(p, trialUnknowns, trialValues);
            defect(p, trialUnknowns, trialStart, trialValues, trialDefect);
            trialObjective += mesh.weight(p) * trialValues.cost();
            trialViolation += violation.ofEquations(p, trialDefect);
            for (int i = 0; i < bounds; i++) {
                int b = p * bounds + i;
                double s = slack[b] + length * slackChange[b];
                trialObjective -= barrier * Math.log(s);
                trialViolation += Math.abs(trialValues.room()[i] - s);
            }
        }
        return Double.isFinite(trialViolation) && Double.isFinite(trialObjective);
    }

    private void take(double length, double dualLength, double barrier) {
        for (int i = 0; i < unknowns.length; i++) {
            unknowns[i] += length * change[i];
        }
        for (int i = 0; i < states; i++) {
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
