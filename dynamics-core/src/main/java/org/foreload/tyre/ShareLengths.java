package org.foreload.tyre;

import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * The lengths at which a Magic Formula wheel carries most along itself, as a table over the normalised lateral slip y.
 * One is found from the one before, by Newton's rule on the condition that {@link SlipCurve#lengthOfLargestShare}
 * searches: h(x, y) = f'(x)·x·(x² − y²) + y²·f(x) = 0. Where the rule does not settle, that search is asked.
 */
final class ShareLengths {

    private static final int PIECES = 12 * 64;

    private static final int PER_UNIT = 64;

    /** Relative step at which Newton's rule has settled. */
    private static final double SETTLED = 1e-11;

    /** From a neighbour in the table a few rounds settle, or none do. */
    private static final int ROUNDS = 12;

    /** Half the distance over which a slope of searched lengths is read, far above their accuracy. */
    private static final double PROBE = 1e-3;

    /** Largest length looked at for a largest share, as a multiple of where it could be first. */
    private static final double FARTHEST = 400;

    /** Relative accuracy of a searched length: at a maximum, the force is far more accurate than that. */
    private static final double ACCURACY = 1e-8;

    private final SlipCurve.MagicFormula curve;
    private final double[] lengths = new double[PIECES + 1];
    private final double[] slopes = new double[PIECES + 1];

    private ShareLengths(SlipCurve.MagicFormula curve) {
        this.curve = curve;
        lengths[0] = curve.peakSlip();
        for (int i = 1; i <= PIECES; i++) {
            double y = (double) i / PER_UNIT;
            double length = settle(lengths[i - 1] + slopes[i - 1] / PER_UNIT, y);
            if (length >= Math.max(y, curve.peakSlip()) && length < FARTHEST * (y + curve.peakSlip())) {
                lengths[i] = length;
                slopes[i] = 2
                        * y
                        * (curve.plain().slope(length) * length - curve.plain().value(length))
                        / steepness(length, y);
            } else {
                lengths[i] = curve.lengthOfLargestShare(y);
                slopes[i] =
                        (curve.lengthOfLargestShare(y + PROBE) - curve.lengthOfLargestShare(y - PROBE)) / (2 * PROBE);
            }
        }
    }

    /** The table for a curve. */
    static CurveTable of(SlipCurve.MagicFormula curve) {
        ShareLengths found = new ShareLengths(curve);
        return new CurveTable(0, PER_UNIT, found.lengths, found.slopes);
    }

    /** What {@link SlipCurve#lengthOfLargestShare} promises, by the library's root finder, for y above zero. */
    static double search(SlipCurve.MagicFormula curve, double y) {
        double low = Math.max(y, curve.peakSlip());
        double high = FARTHEST * (y + curve.peakSlip());
        UnivariateFunction rising = x -> condition(curve, x, y);
        if (!(rising.value(low) > 0)) {
            // The peak itself, to its last digits: there the slope of the curve is zero, or less by rounding.
            return low;
        }
        return rising.value(high) < 0
                ? new BracketingNthOrderBrentSolver(ACCURACY, ACCURACY, PlainMagicFormula.ORDER)
                        .solve(Integer.MAX_VALUE, rising, low, high)
                : high;
    }

    private static double condition(SlipCurve.MagicFormula curve, double x, double y) {
        return curve.plain().slope(x) * x * (x * x - y * y)
                + y * y * curve.plain().value(x);
    }

    private double settle(double guess, double y) {
        double x = guess;
        for (int round = 0; round < ROUNDS; round++) {
            double step = condition(curve, x, y) / steepness(x, y);
            x -= step;
            if (Math.abs(step) <= SETTLED * x) {
                return x;
            }
        }
        return Double.NaN;
    }

    /** Derivative of the condition over the length. */
    private double steepness(double x, double y) {
        return curve.plain().bend(x) * x * (x * x - y * y) + curve.plain().slope(x) * 3 * x * x;
    }
}
