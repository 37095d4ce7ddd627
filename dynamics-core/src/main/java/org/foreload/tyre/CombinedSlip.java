package org.foreload.tyre;

/**
 * What a wheel carries along itself over the length x of its normalised slip vector, beside a normalised lateral slip
 * y: the share curve(x)·√(1 − (y/x)²) of the longitudinal peak. It rises with x from zero at y up to the largest share.
 * Searched for is its square, which needs no root.
 *
 * @param curve shape of force over slip
 * @param lateral y, above zero
 */
record CombinedSlip(SlipCurve curve, double lateral) {

    /** The squared share at a length. */
    double squaredShare(double length) {
        double fraction = curve.value(length);
        double ratio = lateral / length;
        return fraction * fraction * (1 - ratio * ratio);
    }

    /** The derivative of the squared share over the length. */
    double slope(double length) {
        double fraction = curve.value(length);
        double ratio = lateral / length;
        double square = ratio * ratio;
        return 2 * fraction * (curve.slope(length) * (1 - square) + fraction * square / length);
    }

    /**
     * Length that carries a share of the peak; where that is more than a rolling wheel can have, the length at which it
     * has most, which may be infinite.
     */
    double lengthFor(double share) {
        double square = share * share;
        double high = Math.hypot(lateral, curve.peakSlip());
        if (!(squaredShare(high) > square)) {
            high = curve.lengthOfLargestShare(lateral);
            if (high == Double.POSITIVE_INFINITY) {
                // Beyond the peak the force has the direction of the slip alone.
                return lateral / Math.sqrt(Math.max(0, 1 - square));
            }
            if (!(squaredShare(high) > square)) {
                return high;
            }
        }
        double guess = Math.hypot(lateral, guess(curve.peakSlip(), share));
        return RisingSearch.solve(this::squaredShare, this::slope, square, guess, lateral, high);
    }

    /** Slip at which a curve has about a value below one: exactly so for the brush. */
    static double guess(double peakSlip, double value) {
        return peakSlip * (1 - Math.cbrt(1 - value));
    }
}
