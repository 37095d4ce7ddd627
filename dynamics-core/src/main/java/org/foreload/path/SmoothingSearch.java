package org.foreload.path;

import org.foreload.conventions.InvalidValueException;

/**
 * How smooth a fit should be: first the smoothing length that the points speak for most likely, and with it their
 * scatter; then on to the smoothest fit whose root mean square distance keeps within that scatter and within the
 * tolerance.
 */
final class SmoothingSearch {

    /** Shortest smoothing length tried, in pieces: the line then follows all that the pieces can. */
    private static final double LEAST_SMOOTHING = 0.3;

    /**
     * Ratio of the smoothing lengths tried: rms distance changes by far less than its uncertainty from one to the next.
     */
    private static final double SMOOTHING_RATIO = 1.25;

    /** Halvings of that ratio at the end: a tenth of a percent. */
    private static final int HALVINGS = 8;

    /** Gap of unlikelihood behind which no better smoothing length is looked for: odds of e^25 against it. */
    private static final double CLEARLY = 50;

    /** Scatter that no coordinates can be believed below, m. */
    private static final double LEAST_NOISE = 1e-6;

    private SmoothingSearch() {}

    /**
     * Leaves {@code fit} as smooth as allowed.
     *
     * @param tolerance largest root mean square distance, m
     * @throws InvalidValueException if the points scatter by more than the tolerance, or no line settles among them
     */
    static void smoothAsMuchAsAllowed(ClothoidSmoother fit, double tolerance) {
        double most = fit.station(fit.points() - 1);
        double unlikelihood = Double.POSITIVE_INFINITY;
        double likeliest = Double.NaN;
        double noise = Double.NaN;
        double closeness = Double.NaN;
        double least = LEAST_SMOOTHING * Math.max(fit.meanStep(), ClothoidSmoother.SHORTEST_PIECE);
        for (double length = least; length < most; length *= SMOOTHING_RATIO) {
            if (!fit.fit(length)) {
                continue;
            }
            double found = fit.unlikelihood(LEAST_NOISE);
            if (found < unlikelihood) {
                unlikelihood = found;
                likeliest = length;
                noise = Math.max(fit.noise(), LEAST_NOISE);
                closeness = fit.rmsDeviation();
            } else if (found > unlikelihood + CLEARLY) {
                break;
            }
        }
        if (Double.isNaN(likeliest)) {
            throw new InvalidValueException(
                    "x_m", fit.points() + " points", "points along a line that a car can follow");
        }
        if (!(closeness <= tolerance)) {
            throw new InvalidValueException(
                    "tolerance_m",
                    tolerance,
                    "at least " + closeness + " m: that far do the points scatter about a line");
        }
        smoothUpTo(Math.min(tolerance, noise), likeliest, fit);
    }

    /** Smooths on from a length that is allowed as long as the rms distance keeps within the limit. */
    private static void smoothUpTo(double limit, double allowed, ClothoidSmoother fit) {
        double most = fit.station(fit.points() - 1);
        double length = allowed;
        double ratio = SMOOTHING_RATIO;
        while (length * ratio < most && fit.fit(length * ratio) && fit.rmsDeviation() <= limit) {
            length *= ratio;
        }
        for (int i = 0; i < HALVINGS; i++) {
            ratio = Math.sqrt(ratio);
            if (fit.fit(length * ratio) && fit.rmsDeviation() <= limit) {
                length *= ratio;
            }
        }
        fit.fit(length);
    }
}
