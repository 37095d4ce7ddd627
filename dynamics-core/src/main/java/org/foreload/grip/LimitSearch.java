package org.foreload.grip;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.AllowedSolution;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;

/**
 * Searches for the limit of grip along a line. A level says what is feasible: a finite number, zero or below where
 * feasible and above zero elsewhere. Root finding and minimising are the library's.
 */
final class LimitSearch {

    /** Level at which a search for an edge stops: far below what any tyre datum is known to. */
    private static final double ACCURACY = 5e-11;

    /** Bracket, relative to x and in units of x, to which an edge is found. */
    private static final double NARROW = 1e-12;

    /** Accuracy of the place of a least level, relative to x and in units of x: there the level itself is flat. */
    private static final double FLAT = 1e-8;

    /** Order of interpolation of the root finder, the library's own default. */
    private static final int ORDER = 5;

    private LimitSearch() {}

    /**
     * Level of a utilisation: rises from −1 through 0 at the limit to 1 where it is infinite.
     *
     * @param excess utilisation over the limit, minus one
     */
    static double level(double excess) {
        return excess < Double.POSITIVE_INFINITY ? excess / (excess + 2) : 1;
    }

    /**
     * The last feasible x from a feasible one on, in growing steps: through what is feasible, if that begins at
     * {@code inside}; {@code inside} itself if the first step leads out of it.
     *
     * @param inside a feasible x, or one that misses it by rounding
     * @param step first step, with the sign of the direction
     * @param bound where to stop; returned if feasible
     * @throws IllegalArgumentException if the step has no length: it would be taken for ever
     */
    static double edgeFrom(DoubleUnaryOperator level, double inside, double step, double bound) {
        if (!(Math.abs(step) > 0)) {
            throw new IllegalArgumentException("a first step of no length");
        }
        double good = inside;
        double width = step;
        while (good != bound) {
            double x = Math.abs(width) < Math.abs(bound - good) ? good + width : bound;
            if (level.applyAsDouble(x) > 0) {
                if (!(level.applyAsDouble(good) < 0)) {
                    return good;
                }
                return new BracketingNthOrderBrentSolver(NARROW, NARROW, ACCURACY, ORDER)
                        .solve(
                                Integer.MAX_VALUE,
                                level::applyAsDouble,
                                Math.min(good, x),
                                Math.max(good, x),
                                AllowedSolution.BELOW_SIDE);
            }
            good = x;
            width *= 2;
        }
        return bound;
    }

    /**
     * A feasible x between two ends, on the way to the least level; NaN if that is above zero. The level must fall and
     * then rise, without a flat part before its least.
     */
    static double feasibleBetween(DoubleUnaryOperator level, double low, double high) {
        if (!(low < high)) {
            return Double.NaN;
        }
        double x = new BrentOptimizer(FLAT, FLAT, (round, before, now) -> now.getValue() <= 0)
                .optimize(
                        new UnivariateObjectiveFunction(level::applyAsDouble),
                        GoalType.MINIMIZE,
                        new SearchInterval(low, high),
                        MaxEval.unlimited())
                .getPoint();
        return level.applyAsDouble(x) <= 0 ? x : Double.NaN;
    }
}
