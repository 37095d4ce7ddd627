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
        double high = Math.hypot(y, curve.peakSlip());
        if (longitudinalShare(curve, y, high) <= share) {
            high = curve.lengthOfLargestShare(y);
            if (Double.isInfinite(high)) {
                // Beyond the peak the force has the direction of the slip alone.
                return share >= 1 ? Double.POSITIVE_INFINITY : y / Math.sqrt(1 - share * share);
            }
            if (longitudinalShare(curve, y, high) <= share) {
                return high;
            }
        }
        double alone = curve.peakSlip() * (1 - Math.cbrt(1 - Math.min(share, 1))); // as on the brush curve
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
        return curve.largestShare(y);
    }

    private static double longitudinalShare(SlipCurve curve, double y, double length) {
        double ratio = y / length;
        return curve.value(length) * Math.sqrt(Math.max(0, 1 - ratio * ratio));
    }
}
