package org.foreload.collocation;

import java.util.Arrays;
import java.util.Objects;

/** Solves problems of optimal control by collocation and an interior-point method. */
public final class OptimalControl {

    private OptimalControl() {}

    /**
     * Where the points lie in an interval of length one: Radau's two, the second its end.
     *
     * @return rising, the last one 1
     */
    public static double[] nodes() {
        Collocation collocation = Collocation.two();
        double[] nodes = new double[collocation.points()];
        for (int i = 0; i < nodes.length; i++) {
            nodes[i] = collocation.node(i);
        }
        return nodes;
    }

    /** Weights of these points in an integral over the interval. */
    public static double[] weights() {
        Collocation collocation = Collocation.two();
        double[] weights = new double[collocation.points()];
        for (int i = 0; i < weights.length; i++) {
            weights[i] = collocation.weight(i);
        }
        return weights;
    }

    /**
     * Searches for an optimum near a guess; where that does not converge, once more from there with more care.
     *
     * @param equations the problem
     * @param lengths of the intervals, m
     * @param start first state
     * @param freeStart which parts of the first state are free
     * @param guess unknowns at all points, one after the other
     * @param tolerance greatest residual that counts as converged
     * @param mostSteps steps after which each of the two gives up
     * @param watcher follows each step; those of the second search count on from the first
     */
    public static Ending solve(
            StageEquations equations,
            double[] lengths,
            double[] start,
            boolean[] freeStart,
            double[] guess,
            double tolerance,
            int mostSteps,
            Progress watcher) {
        Objects.requireNonNull(equations, "equations");
        Objects.requireNonNull(lengths, "lengths");
        Objects.requireNonNull(start, "start");
        Objects.requireNonNull(freeStart, "freeStart");
        Objects.requireNonNull(guess, "guess");
        Objects.requireNonNull(watcher, "watcher");
        Mesh mesh = new Mesh(Collocation.two(), lengths.clone());
        Ending ending =
                new InteriorPoint(mesh, equations, start, freeStart, guess, false).solve(tolerance, mostSteps, watcher);
        if (ending.converged()) {
            return ending;
        }
        int taken = ending.steps();
        Ending careful = new InteriorPoint(mesh, equations, start, freeStart, guess, true)
                .solve(tolerance, mostSteps, (step, residual) -> watcher.accept(taken + step, residual));
        boolean better = careful.converged() || careful.residual() < ending.residual();
        return better ? careful.after(taken) : ending.after(careful.steps());
    }

    /**
     * How a search ended. Two with the same numbers are equal.
     *
     * @param converged whether the conditions of a local optimum hold
     * @param residual greatest residual of them, scaled
     * @param steps Newton steps taken
     * @param start first state
     * @param unknowns at all points, one after the other
     */
    public record Ending(boolean converged, double residual, int steps, double[] start, double[] unknowns) {

        /** The same with the steps of another search counted too. */
        private Ending after(int others) {
            return new Ending(converged, residual, others + steps, start, unknowns);
        }

        /** Copies the arrays. */
        public Ending {
            start = Objects.requireNonNull(start, "start").clone();
            unknowns = Objects.requireNonNull(unknowns, "unknowns").clone();
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Ending ending
                    && converged == ending.converged
                    && Double.compare(residual, ending.residual) == 0
                    && steps == ending.steps
                    && Arrays.equals(start, ending.start)
                    && Arrays.equals(unknowns, ending.unknowns);
        }

        @Override
        public int hashCode() {
            return 31 * Objects.hash(converged, residual, steps, Arrays.hashCode(start)) + Arrays.hashCode(unknowns);
        }

        @Override
        public double[] start() {
            return start.clone();
        }

        @Override
        public double[] unknowns() {
            return unknowns.clone();
        }
    }
}
