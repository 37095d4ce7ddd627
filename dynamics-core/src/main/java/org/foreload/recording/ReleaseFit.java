package org.foreload.recording;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.hipparchus.analysis.MultivariateFunction;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.SimpleValueChecker;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.hipparchus.optim.nonlinear.scalar.noderiv.SimplexOptimizer;

/**
 * The release that fits a recorded one best: shape, start and end, by least squares over distance. Fitting the whole
 * course finds an end that fades into the noise better than any threshold. The release point lies within the course: a
 * shape that is steep at its end would else be taken for the last piece of one much longer and harder.
 *
 * @param shape the shape
 * @param start station of the release point, m
 * @param end station where the brake is off, m
 * @param level brake before the release, in its own unit
 * @param error root mean square difference over that level
 */
record ReleaseFit(ReleaseShape shape, double start, double end, double level, double error) {

    /** A release shorter than this, m, is a foot taken off at once. */
    private static final double ABRUPT = 3;

    /** Points at most that a course is thinned to: a release has no finer detail than a sixtieth of its length. */
    private static final int MOST_POINTS = 100;

    private static final int MOST_EVALUATIONS = 300;

    private static final double CONVERGED = 1e-8;

    /** The ready shapes that a foot needs time for. */
    static List<ReleaseShape> shapes() {
        return ReleaseShapes.all().stream()
                .filter(shape -> !shape.equals(ReleaseShapes.ABRUPT))
                .toList();
    }

    /** The nearest of some; of a release too short for a shape, as abrupt. */
    static Optional<ReleaseFit> nearest(List<ReleaseFit> fits) {
        return fits.stream()
                .min(Comparator.comparingDouble(ReleaseFit::difference))
                .map(best -> best.end - best.start < ABRUPT ? best.with(ReleaseShapes.ABRUPT) : best);
    }

    /** Likelihood, that of the nearest being one, below which a shape cannot have been it. */
    private static final double UNLIKELY = 0.01;

    /**
     * Those of some fits to one release whose shape may have been it: the likelihood of each, that of the nearest being
     * one, is exp(−n (d² − d₀²)/2σ²) with its difference d, that of the nearest d₀.
     *
     * @param samples n, so many as are independent
     * @param noise σ, standard deviation of a sample; at least d₀ is taken for it
     */
    static List<ReleaseFit> likely(List<ReleaseFit> fits, double samples, double noise) {
        double least = nearest(fits).map(ReleaseFit::difference).orElse(0.0);
        double most = -2 * Math.log(UNLIKELY) * Math.pow(Math.max(noise, least), 2) / samples;
        return fits.stream()
                .filter(fit -> !(fit.difference() * fit.difference() > least * least + most))
                .toList();
    }

    /** How far a place of a fit, m, is from the nearest's in any of those whose shape may have been it. */
    static double reach(List<ReleaseFit> fits, ToDoubleFunction<ReleaseFit> place, double samples, double noise) {
        double best = nearest(fits).map(place::applyAsDouble).orElse(Double.NaN);
        return likely(fits, samples, noise).stream()
                .mapToDouble(fit -> Math.abs(place.applyAsDouble(fit) - best))
                .max()
                .orElse(0);
    }

    /** Root mean square difference, in the brake's own unit: what shapes are compared by. */
    private double difference() {
        return error * Math.abs(level);
    }

    private ReleaseFit with(ReleaseShape other) {
        return new ReleaseFit(other, start, end, level, error);
    }

    /** The best release of one shape. */
    static ReleaseFit of(ReleaseShape shape, double[] station, double[] brake, double guessStart, double guessEnd) {
        ReleaseShape fitted = shape.equals(ReleaseShapes.ABRUPT) ? ReleaseShapes.LINEAR : shape;
        double size = Math.max(1, guessEnd - guessStart);
        Misfit misfit = new Misfit(fitted, station, brake, new double[] {
            Math.max(station[0], guessStart), Math.max(station[0], guessStart) + size
        });
        try {
            new SimplexOptimizer(new SimpleValueChecker(CONVERGED, CONVERGED))
                    .optimize(
                            new MaxEval(MOST_EVALUATIONS),
                            new ObjectiveFunction(misfit),
                            GoalType.MINIMIZE,
                            new InitialGuess(misfit.best),
                            new NelderMeadSimplex(new double[] {size / 4, size / 4}));
        } catch (MathIllegalStateException e) {
            // Out of evaluations: what was best so far is near enough, and its error is reported.
        }
        double[] found = misfit.best;
        double level = misfit.bestLevel;
        double error = Math.sqrt(misfit.least / station.length) / Math.abs(level);
        return new ReleaseFit(shape, found[0], found[1], level, error);
    }

    /** Sum of squares over start and end; keeps the best that it was asked for. */
    private static final class Misfit implements MultivariateFunction {

        private final ReleaseShape shape;
        private final double[] station;
        private final double[] brake;
        private final double[] remaining;
        private double[] best;
        private double bestLevel;
        private double least;

        Misfit(ReleaseShape shape, double[] station, double[] brake, double[] guess) {
            this.shape = shape;
            this.station = station;
            this.brake = brake;
            this.remaining = new double[station.length];
            this.best = guess;
            this.least = Double.POSITIVE_INFINITY;
            value(guess);
        }

        @Override
        public double value(double[] place) {
            if (!(place[1] > place[0] && place[0] >= station[0])) {
                return Double.MAX_VALUE;
            }
            for (int i = 0; i < station.length; i++) {
                remaining[i] = remaining(shape, station[i], place[0], place[1]);
            }
            double level = level(remaining, brake);
            double sum = 0;
            for (int i = 0; i < station.length; i++) {
                double left = brake[i] - level * remaining[i];
                sum += left * left;
            }
            if (sum < least) {
                least = sum;
                bestLevel = level;
                best = place.clone();
            }
            return sum;
        }
    }

    /** The level with which what remains of it at each station comes nearest to a brake. */
    private static double level(double[] remaining, double[] brake) {
        double ff = 0;
        double fb = 0;
        for (int i = 0; i < remaining.length; i++) {
            double f = remaining[i];
            ff += f * f;
            fb += f * brake[i];
        }
        return ff > 0 ? fb / ff : 0;
    }

    private static double remaining(ReleaseShape shape, double s, double start, double end) {
        return s >= end ? 0 : shape.remaining((s - start) / (end - start));
    }

    /** What the fit says at a station. */
    double at(double s) {
        ReleaseShape fitted = shape.equals(ReleaseShapes.ABRUPT) ? ReleaseShapes.LINEAR : shape;
        return level * remaining(fitted, s, start, end);
    }

    /** Means of neighbouring rows, so many that a fit stays quick: rows of stations, then of brakes. */
    static double[][] thinned(double[] station, double[] brake, int from, int to) {
        int rows = to - from + 1;
        int step = (rows + MOST_POINTS - 1) / MOST_POINTS;
        int points = rows / step;
        double[][] thinned = new double[2][points];
        for (int p = 0; p < points; p++) {
            for (int k = 0; k < step; k++) {
                thinned[0][p] += station[from + p * step + k] / step;
                thinned[1][p] += brake[from + p * step + k] / step;
            }
        }
        return thinned;
    }
}
