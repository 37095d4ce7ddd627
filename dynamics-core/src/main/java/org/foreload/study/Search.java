package org.foreload.study;

import java.util.Arrays;
import java.util.Objects;
import java.util.function.BooleanSupplier;
import java.util.function.ToDoubleFunction;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.SimpleBounds;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.MultivariateOptimizer;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.BOBYQAOptimizer;
import org.hipparchus.optim.nonlinear.scalar.noderiv.CMAESOptimizer;
import org.hipparchus.random.Well19937c;

/**
 * Searches for the lowest cost within a box, without derivatives. What was found so far is never lost: neither by a
 * stop, nor by an optimiser that gives up, nor by one that wanders off. The cost must be a function of its point alone;
 * then the same search finds the same point, bit for bit. Two with the same numbers and the same stop are equal.
 *
 * @param low lowest value of each variable
 * @param high highest value of each variable
 * @param evaluations most evaluations of the cost in one search
 * @param stopped asked before each evaluation; a search that is stopped returns the best it has
 */
public record Search(double[] low, double[] high, int evaluations, BooleanSupplier stopped) {

    /** Radius, as a share of its first one, at which a local search has arrived. */
    private static final double SMALLEST_RADIUS = 0.01;

    /** Checks and copies. */
    public Search {
        Objects.requireNonNull(stopped, "stopped");
        low = Objects.requireNonNull(low, "low").clone();
        high = Objects.requireNonNull(high, "high").clone();
        if (low.length < 2 || low.length != high.length) {
            throw new InvalidValueException(
                    "search", low.length + " and " + high.length + " bounds", "2 or more pairs");
        }
        for (int i = 0; i < low.length; i++) {
            if (!(low[i] < high[i])) {
                throw new InvalidValueException("search, lower bound", low[i], "below the upper bound, " + high[i]);
            }
        }
        Checks.within("evaluations", evaluations, 1, Integer.MAX_VALUE);
    }

    /**
     * The lowest cost that was seen. Two with the same numbers are equal.
     *
     * @param point where
     * @param cost how low
     * @param evaluations evaluations that it took
     */
    public record Found(double[] point, double cost, int evaluations) {

        /** Copies the point. */
        public Found {
            point = Objects.requireNonNull(point, "point").clone();
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Found found
                    && Arrays.equals(point, found.point)
                    && Double.compare(cost, found.cost) == 0
                    && evaluations == found.evaluations;
        }

        @Override
        public int hashCode() {
            return 31 * Objects.hash(cost, evaluations) + Arrays.hashCode(point);
        }

        @Override
        public double[] point() {
            return point.clone();
        }
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Search search
                && Arrays.equals(low, search.low)
                && Arrays.equals(high, search.high)
                && evaluations == search.evaluations
                && stopped.equals(search.stopped);
    }

    @Override
    public int hashCode() {
        return 31 * Objects.hash(evaluations, stopped, Arrays.hashCode(low)) + Arrays.hashCode(high);
    }

    @Override
    public double[] low() {
        return low.clone();
    }

    @Override
    public double[] high() {
        return high.clone();
    }

    /**
     * Searches wide: covariance matrix adaptation evolution strategy (N. Hansen and A. Ostermeier, Completely
     * derandomized self-adaptation in evolution strategies, Evolutionary Computation 9(2), 2001, from memory), as in
     * Hipparchus.
     *
     * @param cost finite for each point of the box
     * @param start where it starts
     * @param spread standard deviation of the first generation, per variable
     * @param seed of its random draws
     */
    public Found wide(ToDoubleFunction<double[]> cost, double[] start, double[] spread, long seed) {
        Objects.requireNonNull(cost, "cost");
        Objects.requireNonNull(start, "start");
        Objects.requireNonNull(spread, "spread");
        for (double one : spread) {
            Checks.positive("spread", one);
        }
        int population = 4 + (int) (3 * Math.log(start.length));
        MultivariateOptimizer optimizer =
                new CMAESOptimizer(Integer.MAX_VALUE, 0, true, 0, 0, new Well19937c(seed), false, null);
        return run(
                optimizer,
                cost,
                start,
                new CMAESOptimizer.Sigma(spread.clone()),
                new CMAESOptimizer.PopulationSize(population));
    }

    /**
     * Searches nearby: a quadratic model in a shrinking region (M. J. D. Powell, The BOBYQA algorithm for bound
     * constrained optimization without derivatives, Cambridge DAMTP 2009/NA06, from memory), as in Hipparchus.
     *
     * @param cost finite for each point of the box
     * @param start where it starts
     * @param radius how far it looks at first, in every variable; scale the variables so that one radius suits all
     */
    public Found nearby(ToDoubleFunction<double[]> cost, double[] start, double radius) {
        Objects.requireNonNull(cost, "cost");
        Objects.requireNonNull(start, "start");
        Checks.positive("radius", radius);
        for (int i = 0; i < low.length; i++) {
            radius = Math.min(radius, (high[i] - low[i]) / 3);
        }
        return run(new BOBYQAOptimizer(2 * start.length + 1, radius, radius * SMALLEST_RADIUS), cost, start);
    }

    private Found run(
            MultivariateOptimizer optimizer,
            ToDoubleFunction<double[]> cost,
            double[] start,
            org.hipparchus.optim.OptimizationData... own) {
        Memory memory = new Memory(cost);
        double[] inside = start.clone();
        for (int i = 0; i < inside.length; i++) {
            inside[i] = Math.max(low[i], Math.min(high[i], Checks.number("start", start[i])));
        }
        try {
            memory.cost(inside);
            org.hipparchus.optim.OptimizationData[] data = new org.hipparchus.optim.OptimizationData[5 + own.length];
            data[0] = MaxEval.unlimited();
            data[1] = new ObjectiveFunction(memory::cost);
            data[2] = GoalType.MINIMIZE;
            data[3] = new InitialGuess(inside);
            data[4] = new SimpleBounds(low, high);
            System.arraycopy(own, 0, data, 5, own.length);
            optimizer.optimize(data);
        } catch (Enough stop) {
            // Stopped, or all evaluations used: the best so far is the answer.
        } catch (MathRuntimeException givenUp) {
            // Rounding can leave an optimiser no way on; what it has found until then stands.
        }
        return new Found(memory.best, memory.lowest, memory.count);
    }

    /** Ends a search from inside its cost. */
    private static final class Enough extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Enough() {
            super(null, null, false, false);
        }
    }

    /** Counts evaluations and remembers the best. */
    private final class Memory {
        private final ToDoubleFunction<double[]> cost;
        private double[] best = new double[0];
        private double lowest = Double.POSITIVE_INFINITY;
        private int count;

        Memory(ToDoubleFunction<double[]> cost) {
            this.cost = cost;
        }

        double cost(double[] point) {
            if (count >= evaluations || count > 0 && stopped.getAsBoolean()) {
                throw new Enough();
            }
            count++;
            double value = cost.applyAsDouble(point);
            if (value < lowest || count == 1) {
                lowest = value;
                best = point.clone();
            }
            return value;
        }
    }
}
