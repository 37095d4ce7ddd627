package org.foreload.envelope;

import java.util.Arrays;
import org.foreload.study.Search;

/**
 * Quantile regression of an ellipse: the limits that minimise the sum of ρ(ln u²) over all worked moments, where u is
 * how much of the limit a moment uses and ρ(x), τ x for x above zero and (τ − 1) x below, weighs what lies outside τ
 * times and what lies inside 1 − τ times. At the minimum a share τ of the moments lies inside. Source: R. Koenker and
 * G. Bassett, Regression quantiles, Econometrica 46(1), 1978 (from memory).
 */
final class EllipseFit {

    /** Share of the limit from which a moment counts as worked: what lies below says nothing about the limit. */
    private static final double WORKED = 0.6;

    /** Rounds of fitting and of choosing anew which moments are worked. */
    private static final int ROUNDS = 3;

    private static final int EVALUATIONS = 250;

    /** Radius of the first search: a tenth of either limit. */
    private static final double RADIUS = 0.1;

    /** Largest share of a limit that may be owed to speed. */
    private static final double MOST_GROWTH = 0.8;

    /** Logarithms of the smallest and the greatest limit that is looked at, m/s². */
    private static final double LEAST = -2;

    private static final double MOST = 5;

    private final Moments moments;
    private final double quantile;
    private final double reference;

    private EllipseFit(Moments moments, double quantile, double reference) {
        this.moments = moments;
        this.quantile = quantile;
        this.reference = reference;
    }

    /** The ellipse of a quantile. */
    static Ellipse of(Moments moments, double quantile) {
        EllipseFit fit = new EllipseFit(moments, quantile, rootMeanSquare(moments.speed()));
        double[] point = {Math.log(most(moments.across())), 0, Math.log(most(moments.along())), 0};
        for (int round = 0; round < ROUNDS; round++) {
            point = fit.nearby(point, RADIUS / (1 + round), EVALUATIONS);
        }
        return fit.ellipse(point);
    }

    /** The ellipse of a quantile of like moments, near a known one. */
    static Ellipse near(Ellipse known, Moments moments, double quantile) {
        EllipseFit fit = new EllipseFit(moments, quantile, known.reference());
        double[] point = {
            Math.log(known.lateral()), known.lateralGrowth(), Math.log(known.braking()), known.brakingGrowth()
        };
        return fit.ellipse(fit.nearby(point, RADIUS / ROUNDS, EVALUATIONS / ROUNDS));
    }

    private static double rootMeanSquare(double[] values) {
        double square = 0;
        for (double value : values) {
            square += value * value / values.length;
        }
        return Math.sqrt(square);
    }

    /** A first guess of a limit: a high quantile of one direction. */
    private static double most(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return Math.max(1, sorted[(int) (GUESS * (sorted.length - 1))]);
    }

    private static final double GUESS = 0.98;

    private Ellipse ellipse(double[] point) {
        return new Ellipse(reference, Math.exp(point[0]), point[1], Math.exp(point[2]), point[3]);
    }

    private double[] nearby(double[] point, double radius, int evaluations) {
        Moments worked = moments.worked(ellipse(point), WORKED);
        Search search = new Search(
                new double[] {LEAST, 0, LEAST, 0},
                new double[] {MOST, MOST_GROWTH, MOST, MOST_GROWTH},
                evaluations,
                () -> false);
        return search.nearby(candidate -> loss(ellipse(candidate), worked), point, radius)
                .point();
    }

    private double loss(Ellipse ellipse, Moments worked) {
        double sum = 0;
        for (int i = 0; i < worked.size(); i++) {
            double square = ellipse.usedSquare(worked.speed()[i], worked.along()[i], worked.across()[i]);
            double x = Math.log(square);
            sum += x * (x < 0 ? quantile - 1 : quantile);
        }
        return sum / Math.max(1, worked.size());
    }
}
