package org.foreload.tyre;

import org.foreload.conventions.Bounds;

/**
 * What a wheel carries along itself over the length x of its normalised slip vector, beside a normalised lateral slip
 * y: the share curve(x)·√(1 − (y/x)²) of the longitudinal peak. It rises with x from zero at y up to the largest share.
 * Searched for is its square, which needs no root.
 *
 * @param curve shape of force over slip
 * @param lateral y, above zero
 */
record CombinedSlip(SlipCurve curve, double lateral) {

    /** Relative step at which the search ends: about its cube, near rounding, is what is then left. */
    private static final double CLOSE = 1e-4;

    /** Longitudinal share so small that its square, by which it counts, is below rounding. */
    private static final double NONE = 1e-9;

    /** Rounds after which the search ends in any case; halving alone finds neighbouring doubles in that many. */
    private static final int ROUNDS = 64;

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

    /**
     * Lateral share of the peak beside a longitudinal one, made for speed: it begins so near its end that one or two of
     * Halley's steps suffice, and makes no objects. With g the secant of the curve at the length x of the slip, a wheel
     * has g·√(x² − y²) along itself and g·y across. Between a wheel that carries nothing along itself and one that
     * carries the most it can, the two shares nearly follow an ellipse: there Halley's rule begins (E. Halley, 1694,
     * from memory: Newton's with the bend of the function). Where its step leaves what is known to hold the answer,
     * that range is halved instead.
     *
     * @param curve shape of force over slip
     * @param y normalised lateral slip, above zero
     * @param along longitudinal share, zero or above, below the most that there is
     * @param free secant of the curve at y
     * @param perMost one over the longitudinal share at {@code farthest}
     * @param farthest length up to which the share along the wheel rises
     * @param left secant of the curve at {@code farthest}
     */
    static double quickly(
            SlipCurve curve, double y, double along, double free, double perMost, double farthest, double left) {
        if (along < NONE) {
            return y * free;
        }
        double ratio = along * perMost;
        double reach = along / (left + (free - left) * Math.sqrt(Bounds.larger(1 - ratio * ratio, 0)));
        double square = along * along;
        double ySquare = y * y;
        double x = Math.sqrt(ySquare + reach * reach);
        double bottom = y;
        double top = farthest;
        for (int round = 0; round < ROUNDS; round++) {
            double secant = curve.secant(x);
            double slope = curve.secantSlope(x);
            double bend = curve.secantBend(x);
            double rest = x * x - ySquare;
            double excess = secant * secant * rest - square;
            if (excess > 0) {
                top = x;
            } else {
                bottom = x;
            }
            double step = halley(x, rest, secant, slope, bend, excess);
            if (Math.abs(step) <= CLOSE * x) {
                return y * (secant + step * (slope + 0.5 * step * bend));
            }
            double next = x + step;
            x = next > bottom && next < top ? next : (bottom + top) / 2;
        }
        return y * curve.secant(x);
    }

    /**
     * Halley's step to the root of the excess, of which rise and turn are half the first and second derivative over x.
     */
    private static double halley(double x, double rest, double secant, double slope, double bend, double excess) {
        double rise = secant * (slope * rest + secant * x);
        double turn = slope * (slope * rest + 4 * secant * x) + secant * (bend * rest + secant);
        return -excess * rise / (2 * rise * rise - 0.5 * excess * turn);
    }

    /** One over the longitudinal share with which a brush that slips sideways by y begins to slide wholly. */
    static double perMostOfBrush(double y) {
        double sliding = y * (1.0 / 3);
        return 1 / Math.sqrt(1 - sliding * sliding);
    }

    /**
     * {@link SlipCurve.Brush#lateralShare}, by the steps of {@link #quickly}, with the secant of the brush and its
     * slopes written out: every evaluation of a car on such tyres asks four times.
     *
     * @param y normalised lateral slip, above zero
     * @param along longitudinal share, zero or above
     * @param free secant of the brush at y
     * @param perMost what {@link #perMostOfBrush} is at y
     */
    static double ofBrush(double y, double along, double free, double perMost) {
        double square = along * along;
        double sliding = y * (1.0 / 3);
        if (!(sliding * sliding < 1 - square)) {
            return Double.isNaN(y) ? y : Math.sqrt(Bounds.larger(1 - square, 0));
        }
        if (along < NONE) {
            return y * free;
        }
        double ratio = along * perMost;
        double left = 1 / 3.0;
        double reach = along / (left + (free - left) * Math.sqrt(Bounds.larger(1 - ratio * ratio, 0)));
        double ySquare = y * y;
        double x = Math.sqrt(ySquare + reach * reach);
        double bend = 2.0 / 27;
        double bottom = y;
        double top = 3;
        for (int round = 0; round < ROUNDS; round++) {
            double secant = 1 + x * (x * (1.0 / 27) - 1.0 / 3);
            double slope = x * bend - 1.0 / 3;
            double rest = x * x - ySquare;
            double excess = secant * secant * rest - square;
            if (excess > 0) {
                top = x;
            } else {
                bottom = x;
            }
            double step = halley(x, rest, secant, slope, bend, excess);
            if (Math.abs(step) <= CLOSE * x) {
                return y * (secant + step * (slope + 0.5 * step * bend));
            }
            double next = x + step;
            x = next > bottom && next < top ? next : (bottom + top) / 2;
        }
        return y * (1 + x * (x * (1.0 / 27) - 1.0 / 3));
    }
}
