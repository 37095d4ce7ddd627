package org.foreload.collocation;

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
    /**
     * Convex shift that is tried first; what counts as none; what counts as small: a larger one would hold back the
     * whole run for one bend somewhere; how it falls from step to step and rises within one; and the largest.
     */
    private static final double FIRST_SHIFT = 1e-4;

    private static final double SMALLEST_SHIFT = 1e-6;
    private static final double SMALL_SHIFT = 1e-2;
    private static final double SHIFT_FALL = 3;
    private static final double SHIFT_RISE = 8;
    private static final double LARGEST_SHIFT = 1e10;
    /** Steps that are tried with ever larger shifts before the search gives up, and how much larger. */
    private static final int ATTEMPTS = 5;

    private static final double ATTEMPT_FACTOR = 100;

    /**
     * No step may break equations and bounds by more than the start did, or by this where that is next to nothing: who
     * trades them for a better cost without end finds no way back to them.
     */
    private static final double LEAST_BOUND = 1;

    /** Shortest part of a step that is tried. */
    private static final double SMALLEST_STEP = 1e-6;

    private final Mesh mesh;
    private final int states;
    private final int all;
    private final int bounds;
    private final double[] gradient;
    private final double[][] curvature;
    private final int[] touched;
    private final Iterate.Step step;
    private final QuadraticStep newton;
    private final Residual residual;
    private final EquationWeights weights;
    private final Filter filter = new Filter();

    private final boolean careful;

    /** Where the search stands. */
    private Iterate now;

    /** Where a part of the step would lead. */
    private Iterate next;

    /** Whether the last step was taken as it was tried first: with the next, slopes are found at once. */
    private boolean tookFirst;

    private double shift;
    private double lastShift;
    private double leastShift;

    /** Whether the last step needed a larger shift than it began with: from the second problem on the next keeps it. */
    private boolean rose;

    /**
     * @param start the first state, scaled
     * @param freeStart which of its parts are free
     * @param guess unknowns at all points, scaled
     * @param careful whether to turn bends that are the wrong way point by point, make slacks as wide as there is room,
     *     and keep equations and bounds from being broken more than at the start: takes longer, and finds some optima
     *     that one shift of all bends does not
     */
    InteriorPoint(
            Mesh mesh, StageEquations equations, double[] start, boolean[] freeStart, double[] guess, boolean careful) {
        int count = mesh.points();
        this.careful = careful;
        this.mesh = mesh;
        this.states = equations.states();
        this.all = states + equations.controls();
        this.bounds = equations.bounds();
        this.gradient = new double[count * all];
        this.curvature = new double[count][all * all];
        this.touched = new int[all];
        this.step = Iterate.Step.of(mesh, equations);
        this.newton = new QuadraticStep(mesh, equations, freeStart);
        this.residual = new Residual(mesh, equations);
        this.weights = new EquationWeights(mesh, equations);
        this.now = new Iterate(mesh, equations);
        this.next = new Iterate(mesh, equations);
        now.begin(start, guess, FIRST_BARRIER, SMALLEST_SLACK);
    }

    /**
     * Searches until the residual is below the tolerance, no step makes progress, or the steps are used up.
     *
     * @param watcher gets the number of each step and the residual before it
     */
    OptimalControl.Ending solve(double tolerance, int mostIterations, Progress watcher) {
        double barrier = FIRST_BARRIER;
        weights.weigh(now.values);
        if (careful) {
            filter.bound(Math.max(LEAST_BOUND, now.violation(weights)));
        }
        double error = Double.POSITIVE_INFINITY;
        int iteration = 0;
        boolean done;
        Stillness stillness = new Stillness();
        while (true) {
            residual.measure(now.values, now.multiplier, now.defect, now.slack, now.dual);
            error = residual.greatest(0);
            stillness.add(now.objective(0));
            done = barrier == LAST_BARRIER
                    && (residual.strict() <= tolerance || error <= tolerance && stillness.holds());
            if (done || iteration == mostIterations) {
                break;
            }
            while (barrier > LAST_BARRIER && residual.greatest(barrier) <= BARRIER_DONE * barrier) {
                barrier = Math.max(LAST_BARRIER, Math.min(BARRIER_FACTOR * barrier, Math.pow(barrier, BARRIER_POWER)));
                filter.clear();
            }
            if (!newton.linearise(now.values, now.defect) || !progress(barrier)) {
                break;
            }
            watcher.accept(iteration, error);
            Iterate left = now;
            now = next;
            next = left;
            if (careful) {
                now.useRoom();
            }
            if (!now.sloped()) {
                now.slopes();
            }
            iteration++;
        }
        return new OptimalControl.Ending(done, error, iteration, now.start, now.unknowns);
    }

    /** Finds the next place by a step that makes progress, with an ever more convex model where one fails. */
    private boolean progress(double barrier) {
        leastShift = 0;
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            if (!step(barrier)) {
                return false;
            }
            if (search(barrier)) {
                return true;
            }
            leastShift = Math.max(FIRST_SHIFT, ATTEMPT_FACTOR * shift);
            if (attempt == 0 && !careful) {
                filter.clear();
            }
        }
        return false;
    }

    /**
     * The Newton step, with a convex shift where it is needed. Who is careful turns the bends of each point that are
     * the wrong way, and only where that is not enough, or a step led nowhere, shifts all, too; from the second problem
     * on a small shift is tried before: along a flat valley it takes longer steps.
     */
    private boolean step(double barrier) {
        boolean turned = careful && leastShift > 0;
        double fall = rose && barrier < FIRST_BARRIER ? 1 : SHIFT_FALL;
        rose = false;
        shift = Math.max(leastShift, lastShift < SMALLEST_SHIFT ? 0 : lastShift / fall);
        while (true) {
            model(barrier);
            if (turned) {
                newton.turn(curvature);
            }
            if (newton.solve(curvature, gradient, step.unknowns(), step.multiplier(), step.start())) {
                break;
            }
            shift = shift == 0 ? FIRST_SHIFT : shift * SHIFT_RISE;
            rose = true;
            if (careful && !turned && (shift > SMALL_SHIFT || barrier == FIRST_BARRIER)) {
                turned = true;
                shift = 0;
            }
            if (shift > LARGEST_SHIFT) {
                return false;
            }
        }
        lastShift = turned ? Math.max(SMALL_SHIFT, shift) : shift;
        double[] slack = now.slack;
        double[] dual = now.dual;
        for (int p = 0; p < mesh.points(); p++) {
            double[] slope = now.values[p].roomSlope();
            for (int i = 0; i < bounds; i++) {
                int b = p * bounds + i;
                double sum = now.values[p].room()[i] - slack[b];
                for (int c = 0; c < all; c++) {
                    sum += slope[i * all + c] * step.unknowns()[p * all + c];
                }
                step.slack()[b] = sum;
                step.dual()[b] = barrier / slack[b] - dual[b] - dual[b] / slack[b] * sum;
            }
        }
        return true;
    }

    private void model(double barrier) {
        double[] slack = now.slack;
        double[] dual = now.dual;
        for (int p = 0; p < mesh.points(); p++) {
            PointValues at = now.values[p];
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

    /** Finds the next place by a part of the step that makes progress; false if none does. */
    private boolean search(double barrier) {
        double least = Math.max(LEAST_FRACTION, 1 - barrier);
        double longest = fraction(now.slack, step.slack(), least);
        double dualLength = fraction(now.dual, step.dual(), least);
        double violation = now.violation(weights);
        double objective = now.objective(barrier);
        double descent = 0;
        for (int p = 0; p < mesh.points(); p++) {
            for (int c = 0; c < all; c++) {
                descent += mesh.weight(p) * now.values[p].costSlope()[c] * step.unknowns()[p * all + c];
            }
            for (int b = p * bounds; b < (p + 1) * bounds; b++) {
                descent -= barrier / now.slack[b] * step.slack()[b];
            }
        }
        double small = 1e-4 * Math.max(1, violation);
        double rounding = 1e-13 * Math.abs(objective);
        boolean slopes = tookFirst;
        for (double length = longest; length > SMALLEST_STEP * longest; length /= 2) {
            next.move(now, step, length, dualLength, barrier);
            next.evaluate(slopes);
            slopes = false;
            double nextViolation = next.violation(weights);
            double nextObjective = next.objective(barrier);
            tookFirst = length == longest;
            if (!Double.isFinite(nextViolation + nextObjective) || !filter.passes(nextViolation, nextObjective)) {
                continue;
            }
            boolean falls =
                    descent < 0 && length * Math.pow(-descent, 2.3) > Math.pow(violation, 1.1) && violation <= small;
            if (falls) {
                if (nextObjective <= objective + 1e-8 * length * descent + rounding) {
                    return true;
                }
            } else if (nextViolation <= (1 - Filter.MARGIN) * violation
                    || nextObjective <= objective - Filter.MARGIN * violation + rounding) {
                filter.add(violation, objective);
                return true;
            }
        }
        return false;
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
}
