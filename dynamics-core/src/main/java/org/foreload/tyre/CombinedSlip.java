package org.foreload.tyre;

/** The one-unknown searches of combined slip on a {@link SlipCurve}. */
final class CombinedSlip {

    /** Relative accuracy of the slip length; force errors are of the same size or smaller. */
    private static final double ACCURACY = 1e-12;

    /** Error of the squared force share at which rounding takes over and the search ends. */
    private static final double ROUNDING = 1e-15;

    private CombinedSlip() {}

    /**
     * Length of the normalised slip vector whose lateral part is {@code y} and whose longitudinal force share is
     * {@code share}; where the share is more than a rolling wheel can have, the length at which it has most, which may
     * be infinite.
     */
    static double length(SlipCurve curve, double y, double share) {
        if (share == 0) {
            return y;
        }
        if (y == 0) {
            return share >= 1 ? curve.peakSlip() : curve.inverse(share);
        }
        double low = y;
        double high = lengthOfLargestShare(curve, y);
        if (Double.isInfinite(high)) {
            if (share >= 1) {
                return Double.POSITIVE_INFINITY;
            }
            double sliding = y / Math.sqrt(1 - share * share);
            if (sliding >= curve.peakSlip()) {
                return sliding;
            }
            high = curve.peakSlip();
        } else if (longitudinalShare(curve, y, high) <= share) {
            return high;
        }
        double alone = curve.inverse(Math.min(share, 1));
        double guess = Math.sqrt(y * y + alone * alone);
        double x = guess < high ? guess : (low + high) / 2;
        // Newton on the squared equation curve(x)²(1 − y²/x²) = share², kept inside the bracket.
        for (int i = 0; i < 80; i++) {
            double value = curve.value(x);
            double ratio = y / x;
            double excess = value * value * (1 - ratio * ratio) - share * share;
            if (Math.abs(excess) <= ROUNDING) {
                return x;
            }
            if (excess > 0) {
                high = x;
            } else {
                low = x;
            }
            double derivative =
                    2 * value * curve.slope(x) * (1 - ratio * ratio) + 2 * value * value * ratio * ratio / x;
            double next = x - excess / derivative;
            if (!(next > low && next < high)) {
                next = (low + high) / 2;
            }
            if (Math.abs(next - x) <= ACCURACY * x) {
                return next;
            }
            x = next;
        }
        return x;
    }

    /** Largest longitudinal share that a rolling wheel can have beside the normalised lateral slip {@code y}. */
    static double largestShare(SlipCurve curve, double y) {
        if (y == 0) {
            return 1;
        }
        double length = lengthOfLargestShare(curve, y);
        return Double.isInfinite(length) ? 1 : longitudinalShare(curve, y, length);
    }

    private static double longitudinalShare(SlipCurve curve, double y, double length) {
        double ratio = y / length;
        return curve.value(length) * Math.sqrt(Math.max(0, 1 - ratio * ratio));
    }

    /** Where the longitudinal share is largest; infinite for curves that never fall, whose share tends to one. */
    private static double lengthOfLargestShare(SlipCurve curve, double y) {
        if (!(curve instanceof SlipCurve.MagicFormula)) {
            return Double.POSITIVE_INFINITY;
        }
        // Golden section on the logarithm of the length; the maximum lies at or beyond the peak of the curve.
        double low = Math.log(Math.max(y, curve.peakSlip()));
        double high = low + 6;
        double golden = (Math.sqrt(5) - 1) / 2;
        double a = high - golden * (high - low);
        double b = low + golden * (high - low);
        double atA = longitudinalShare(curve, y, Math.exp(a));
        double atB = longitudinalShare(curve, y, Math.exp(b));
        while (high - low > 1e-9) {
            if (atA >= atB) {
                high = b;
                b = a;
                atB = atA;
                a = high - golden * (high - low);
                atA = longitudinalShare(curve, y, Math.exp(a));
            } else {
                low = a;
                a = b;
                atA = atB;
                b = low + golden * (high - low);
                atB = longitudinalShare(curve, y, Math.exp(b));
            }
        }
        return Math.exp((low + high) / 2);
    }
}
