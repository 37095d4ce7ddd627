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
        ClothoidSmoother.Fit likeliestFit = null;
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
                likeliestFit = fit.lastFit();
                noise = Math.max(fit.noise(), LEAST_NOISE);
                closeness = fit.rmsDeviation();
            } else if (found > unlikelihood + CLEARLY) {
                break;
            }
        }
        if (likeliestFit == null) {
            throw new InvalidValueException(
                    "x_m", fit.points() + " points", "points along a line that a car can follow");
        }
        if (!(closeness <= tolerance)) {
            throw new InvalidValueException(
                    "tolerance_m",
                    tolerance,
                    "at least " + closeness + " m: that far do the points scatter about a line");
        }
        fit.goBackTo(likeliestFit);
        smoothOn(fit, likeliest, Math.min(tolerance, noise));
    }

    /** Smooths on from a fit that is allowed, as long as the rms distance keeps within the limit. */
    private static void smoothOn(ClothoidSmoother fit, double from, double limit) {
        double most = fit.station(fit.points() - 1);
        double length = from;
        double ratio = SMOOTHING_RATIO;
        while (length * ratio < most && isAllowed(fit, length * ratio, limit)) {
            length *= ratio;
        }
        for (int i = 0; i < HALVINGS; i++) {
            ratio = Math.sqrt(ratio);
            if (isAllowed(fit, length * ratio, limit)) {
                length *= ratio;
            }
        }
    }

    /** Whether the fit with this smoothing length keeps within the limit; if not, the last fit stands. */
    private static boolean isAllowed(ClothoidSmoother fit, double smoothingLength, double limit) {
        ClothoidSmoother.Fit last = fit.lastFit();
        if (!fit.fit(smoothingLength)) {
            return false;
        }
        if (fit.rmsDeviation() <= limit) {
            return true;
        }
        fit.goBackTo(last);
        return false;
    }
}
