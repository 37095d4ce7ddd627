package org.foreload.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.optim.linear.LinearConstraint;
import org.hipparchus.optim.linear.LinearConstraintSet;
import org.hipparchus.optim.linear.LinearObjectiveFunction;
import org.hipparchus.optim.linear.NonNegativeConstraint;
import org.hipparchus.optim.linear.Relationship;
import org.hipparchus.optim.linear.SimplexSolver;
import org.hipparchus.optim.nonlinear.scalar.GoalType;

/**
 * The step that lowers a cost most, within a box and within limits, where cost and limits are taken to change in
 * proportion to the step: one step of sequential linear programming (R. E. Griffith and R. A. Stewart, A nonlinear
 * programming technique for the optimization of continuous processing systems, Management Science 7(4), 1961, from
 * memory). The linear programme is solved by the simplex method of Hipparchus.
 */
public final class LinearStep {

    private LinearStep() {}

    /**
     * The step; empty if none keeps all limits.
     *
     * @param cost slope of the cost along each variable
     * @param limits how far each limit is exceeded now; below zero where something is left, infinitely far for none
     * @param slopes slope of each limit along each variable
     * @param low least change of each variable
     * @param high greatest change of each variable
     */
    public static Optional<double[]> of(
            double[] cost, double[] limits, double[][] slopes, double[] low, double[] high) {
        Objects.requireNonNull(cost, "cost");
        Objects.requireNonNull(limits, "limits");
        Objects.requireNonNull(slopes, "slopes");
        Objects.requireNonNull(low, "low");
        Objects.requireNonNull(high, "high");
        int size = cost.length;
        List<LinearConstraint> constraints = new ArrayList<>();
        for (int j = 0; j < limits.length; j++) {
            double least = limits[j];
            double most = limits[j];
            double atLow = limits[j];
            for (int i = 0; i < size; i++) {
                double lower = slopes[j][i] * low[i];
                double upper = slopes[j][i] * high[i];
                least += Math.min(lower, upper);
                most += Math.max(lower, upper);
                atLow += lower;
            }
            if (least > 0) {
                return Optional.empty();
            }
            if (most > 0) { // A limit that the whole box keeps is none.
                constraints.add(new LinearConstraint(slopes[j], Relationship.LEQ, -atLow));
            }
        }
        if (constraints.isEmpty()) {
            return Optional.of(lowestCorner(cost, low, high));
        }
        for (int i = 0; i < size; i++) {
            double[] one = new double[size];
            one[i] = 1;
            constraints.add(new LinearConstraint(one, Relationship.LEQ, high[i] - low[i]));
        }
        try {
            // The simplex method wants variables that are not negative: they are counted from their lowest.
            double[] above = new SimplexSolver()
                    .optimize(
                            new LinearObjectiveFunction(cost, 0),
                            new LinearConstraintSet(constraints),
                            GoalType.MINIMIZE,
                            new NonNegativeConstraint(true))
                    .getPoint();
            double[] step = new double[size];
            for (int i = 0; i < size; i++) {
                step[i] = low[i] + above[i];
            }
            return Optional.of(step);
        } catch (MathIllegalStateException none) {
            return Optional.empty();
        }
    }

    private static double[] lowestCorner(double[] cost, double[] low, double[] high) {
        double[] corner = low.clone();
        for (int i = 0; i < corner.length; i++) {
            if (cost[i] < 0) {
                corner[i] = high[i];
            }
        }
        return corner;
    }
}
