package org.foreload.advice;

import java.util.function.Function;

/**
 * Least squares in two variables where each evaluation is dear: the way of Gauss and Newton, its slopes taken once by
 * differences and corrected by every further evaluation. Source: C. G. Broyden, A class of methods for solving
 * nonlinear simultaneous equations, Mathematics of Computation 19, 1965, update (4.5) (from memory).
 */
final class SecantFit {

    /** Evaluations for the slopes, and at most: a good fit is there after two or three rounds more. */
    private static final int FOR_SLOPES = 4;

    private static final int MOST = 10;

    /** A step of less than this has arrived: a third of what the variables are known to. */
    private static final double ARRIVED = 0.003;

    /** Differences over which the slopes are taken; far above the noise of an evaluation. */
    private static final double DIFFERENCE = 0.02;

    /** Share of a step that is tried where the whole one is no better. */
    private static final double SHORTER = 0.4;

    private final Function<double[], double[]> residuals;
    private final double[] low;
    private final double[] high;
    private final double[][] slopes = new double[2][];
    private double[] best;
    private double[] at;

    /**
     * A fit.
     *
     * @param residuals as many at each point, all finite
     * @param low lowest value of each variable
     * @param high highest value
     */
    SecantFit(Function<double[], double[]> residuals, double[] low, double[] high) {
        this.residuals = residuals;
        this.low = low.clone();
        this.high = high.clone();
    }

    /**
     * The best point that was seen on the way from a guess inside the bounds. The first variable alone is brought near
     * first: the slope over the second is worth something only there.
     */
    double[] from(double[] guess) {
        move(guess.clone(), residuals.apply(guess));
        slopes[0] = slope(0);
        slopes[1] = new double[at.length];
        advance(1);
        slopes[1] = slope(1);
        double share = 1;
        for (int count = FOR_SLOPES; count < MOST && share > 0; count++) {
            share = advance(share);
        }
        return best;
    }

    /** Tries a share of the step that the slopes suggest; gives the share for the next, zero where it has arrived. */
    private double advance(double share) {
        double[] step = step(share);
        if (!(Math.max(Math.abs(step[0]), Math.abs(step[1])) > ARRIVED)) {
            return 0;
        }
        double[] next = {best[0] + step[0], best[1] + step[1]};
        double[] there = residuals.apply(next);
        corrected(step, there);
        if (square(there) < square(at)) {
            move(next, there);
            return 1;
        }
        return SHORTER * share;
    }

    private void move(double[] point, double[] there) {
        best = point;
        at = there;
    }

    /** Change of each residual with one variable; the better of the two points is gone on from. */
    private double[] slope(int variable) {
        double[] other = best.clone();
        boolean room = best[variable] - DIFFERENCE >= low[variable];
        other[variable] += room ? -DIFFERENCE : DIFFERENCE;
        double[] there = residuals.apply(other);
        double[] slope = new double[at.length];
        for (int i = 0; i < slope.length; i++) {
            slope[i] = (there[i] - at[i]) / (other[variable] - best[variable]);
        }
        if (square(there) < square(at)) {
            move(other, there);
        }
        return slope;
    }

    /** A share of the step to where the squares would be least if the residuals were linear, kept in the box. */
    private double[] step(double share) {
        double a = dot(slopes[0], slopes[0]);
        double b = dot(slopes[0], slopes[1]);
        double c = dot(slopes[1], slopes[1]);
        double d = -dot(slopes[0], at);
        double e = -dot(slopes[1], at);
        double determinant = a * c - b * b;
        boolean both = determinant > SINGULAR * a * c;
        double alone = a > 0 ? d / a : 0;
        double first = both ? (c * d - b * e) / determinant : alone;
        double second = both ? (a * e - b * d) / determinant : 0;
        return new double[] {inside(share * first, 0), inside(share * second, 1)};
    }

    /** Share of the product of two squares below which two slopes are one and the same. */
    private static final double SINGULAR = 1e-6;

    private double inside(double step, int variable) {
        return Math.max(low[variable], Math.min(high[variable], best[variable] + step)) - best[variable];
    }

    /** The slopes become those that lead from the one point to the other. */
    private void corrected(double[] step, double[] there) {
        double length = step[0] * step[0] + step[1] * step[1];
        for (int i = 0; i < at.length; i++) {
            double missed = there[i] - at[i] - slopes[0][i] * step[0] - slopes[1][i] * step[1];
            slopes[0][i] += missed * step[0] / length;
            slopes[1][i] += missed * step[1] / length;
        }
    }

    private static double square(double[] values) {
        return dot(values, values);
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
