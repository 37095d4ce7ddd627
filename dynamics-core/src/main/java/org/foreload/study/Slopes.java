package org.foreload.study;

import java.util.Arrays;
import java.util.Objects;

/**
 * How a cost and its limits change along each variable, as far as is known: what a {@link LinearStep} goes by. Slopes
 * learn from each step, so that they need not be measured anew (C. G. Broyden, A class of methods for solving nonlinear
 * simultaneous equations, Mathematics of Computation 19, 1965, from memory).
 */
public final class Slopes {

    private final double[] cost;
    private final double[][] limits;

    /**
     * Slopes as they were measured.
     *
     * @param cost slope of the cost along each variable
     * @param limits slope of each limit along each variable
     */
    public Slopes(double[] cost, double[][] limits) {
        this.cost = Objects.requireNonNull(cost, "cost").clone();
        this.limits = copy(Objects.requireNonNull(limits, "limits"));
    }

    private static double[][] copy(double[][] rows) {
        return Arrays.stream(rows).map(double[]::clone).toArray(double[][]::new);
    }

    /** Slope of the cost along each variable. */
    public double[] cost() {
        return cost.clone();
    }

    /** Slope of each limit along each variable. */
    public double[][] limits() {
        return copy(limits);
    }

    /**
     * The same after a step of which the outcome is known: right for that step, and as before across it.
     *
     * @param step change of each variable
     * @param change of the cost
     * @param changes of the limits; what is not finite, or left out at the end, teaches nothing
     */
    public Slopes learned(double[] step, double change, double[] changes) {
        Objects.requireNonNull(step, "step");
        Objects.requireNonNull(changes, "changes");
        double[][] all = limits.clone();
        for (int j = 0; j < changes.length; j++) {
            if (Double.isFinite(changes[j])) {
                all[j] = learned(limits[j], step, changes[j]);
            }
        }
        return new Slopes(learned(cost, step, change), all);
    }

    private static double[] learned(double[] slopes, double[] step, double change) {
        double off = (change - along(slopes, step)) / along(step, step);
        double[] learned = slopes.clone();
        for (int i = 0; i < learned.length; i++) {
            learned[i] += off * step[i];
        }
        return learned;
    }

    /** How much the cost changes with a step, by these slopes. */
    public double change(double[] step) {
        return along(cost, Objects.requireNonNull(step, "step"));
    }

    @Override
    public String toString() {
        return "Slopes[cost=" + Arrays.toString(cost) + ", limits=" + Arrays.deepToString(limits) + "]";
    }

    private static double along(double[] slopes, double[] step) {
        double sum = 0;
        for (int i = 0; i < slopes.length; i++) {
            sum += slopes[i] * step[i];
        }
        return sum;
    }
}
