package org.foreload.tyre;

import java.util.function.DoubleUnaryOperator;

/** Searches on the combined-slip force alone: the defaults of {@link Tyre}, for models that bring no closed form. */
final class ImposedForce {

    /** Longest longitudinal slip that is searched: a stopped wheel. */
    private static final double STOPPED = 1;

    /** Longest lateral slip that is searched: a wheel that moves across, as good as. */
    private static final double SIDEWAYS = 10;

    /**
     * Slip to which a search ends, in units of a stopped wheel's and of its own size. On the stiffest tyre, 30 per unit
     * of slip, it leaves 3e-8 of the peak force: a thirtieth of what {@link TyreLaws} allow.
     */
    private static final double CLOSE = 1e-9;

    /** Factor of the strides in which a force or its peak is looked for. */
    private static final double STRIDE = 1.5;

    /** Rounds after which a search between two ends gives up: golden sections alone end in 43. */
    private static final int ROUNDS = 60;

    /** Share of a stretch that a golden section takes off. */
    private static final double SECTION = (3 - Math.sqrt(5)) / 2;

    /** Slip before the longest by which a force that falls there shows. */
    private static final double BACK = 1e-6;

    private ImposedForce() {}

    static double lateralForce(Tyre tyre, double lateralSlip, double longitudinalForce, double load) {
        if (Double.isNaN(load + lateralSlip)) {
            return Double.NaN;
        }
        if (load <= 0) {
            return 0;
        }
        double linear = longitudinalForce / tyre.slipStiffness(load);
        double slip = reaching(along(tyre, lateralSlip, load), longitudinalForce, linear, STOPPED);
        return tyre.force(slip, lateralSlip, load).lateral();
    }

    static double rollingForceLimit(Tyre tyre, double lateralSlip, double load) {
        if (Double.isNaN(load + lateralSlip)) {
            return Double.NaN;
        }
        if (load <= 0) {
            return 0;
        }
        double linear = tyre.peakForceX(load) / tyre.slipStiffness(load);
        DoubleUnaryOperator along = along(tyre, lateralSlip, load);
        return along.applyAsDouble(peak(along, linear, STOPPED));
    }

    static double lateralSlipFor(Tyre tyre, double fraction, double load) {
        double peak = tyre.peakForceY(load);
        double linear = peak / tyre.corneringStiffness(load);
        return reaching(slip -> tyre.force(0, slip, load).lateral(), fraction * peak, linear, SIDEWAYS);
    }

    private static DoubleUnaryOperator along(Tyre tyre, double lateralSlip, double load) {
        return slip -> tyre.force(slip, lateralSlip, load).longitudinal();
    }

    /** A slip to look at: neither so short that no stride gets anywhere, nor beyond the longest. */
    private static double within(double slip, double longest) {
        return Math.min(longest, Math.max(CLOSE, slip));
    }

    /**
     * The slip at which a force is first reached; where it never is, that of its peak.
     *
     * @param target force, N, zero or above
     * @param first slip to look at first
     * @param longest no slip is longer
     */
    private static double reaching(DoubleUnaryOperator force, double target, double first, double longest) {
        if (!(target > 0)) {
            // What is not a number stays that.
            return 0 * target;
        }
        DoubleUnaryOperator beyond = slip -> force.applyAsDouble(slip) - target;
        double low = 0;
        double atLow = -target;
        double high = within(first, longest);
        double atHigh = beyond.applyAsDouble(high);
        while (atHigh < 0) {
            if (high == longest || atHigh < atLow) {
                // Past the peak, which may lie above the target for all that.
                double peak = peak(force, first, longest);
                double atPeak = beyond.applyAsDouble(peak);
                return atPeak > 0 ? rising(beyond, 0, -target, peak, atPeak) : peak;
            }
            low = high;
            atLow = atHigh;
            high = within(STRIDE * high, longest);
            atHigh = beyond.applyAsDouble(high);
        }
        return rising(beyond, low, atLow, high, atHigh);
    }

    /**
     * Where a value rises through zero between two ends, by Ridders' rule: the secant through a value and its
     * neighbours bent straight by an exponential (C. J. F. Ridders, IEEE Transactions on Circuits and Systems 26
     * (1979), 979, from memory).
     */
    private static double rising(DoubleUnaryOperator value, double from, double atFrom, double to, double atTo) {
        double low = from;
        double high = to;
        double below = atFrom;
        double above = atTo;
        double found = high;
        for (int round = 0; round < ROUNDS; round++) {
            double middle = (low + high) / 2;
            double between = value.applyAsDouble(middle);
            double bend = Math.sqrt(between * between - below * above);
            double next = bend > 0 ? middle - (middle - low) * between / bend : middle;
            double there = value.applyAsDouble(next);
            boolean close = Math.abs(next - found) <= CLOSE * high;
            found = next;
            if (close || there == 0) {
                break;
            }
            if (there < 0) {
                low = next;
                below = there;
                if (between > 0 && middle > next) {
                    high = middle;
                    above = between;
                }
            } else {
                high = next;
                above = there;
                if (between < 0 && middle < next) {
                    low = middle;
                    below = between;
                }
            }
        }
        return found;
    }

    /**
     * The slip of the largest force: of the first peak from no slip on that strides show, or the longest where the
     * force rises up to there.
     *
     * @param linear slip at which the peak would be reached if the curve went on as it begins, with its steepest slope
     * @param longest no slip is longer
     */
    private static double peak(DoubleUnaryOperator force, double linear, double longest) {
        double low = 0;
        double atLow = 0;
        double slip = within(linear / 2, longest);
        double there = force.applyAsDouble(slip);
        while (slip < longest) {
            double next = within(STRIDE * slip, longest);
            double atNext = force.applyAsDouble(next);
            if (atNext < there) {
                return there > atLow ? highest(force, low, atLow, slip, there, next, atNext) : slip;
            }
            low = slip;
            atLow = there;
            slip = next;
            there = atNext;
        }
        double back = longest - BACK;
        double atBack = force.applyAsDouble(back);
        return atBack > there && back > low ? highest(force, low, atLow, back, atBack, longest, there) : longest;
    }

    /**
     * Where a value with one peak is highest: by the vertex of a parabola through the three best places so far, by
     * golden section where that shrinks too little (R. P. Brent, Algorithms for Minimization without Derivatives, 1973,
     * ch. 5, from memory).
     *
     * @param from one end
     * @param between a place between the ends with a value above theirs
     * @param to the other end
     */
    private static double highest(
            DoubleUnaryOperator value,
            double from,
            double atFrom,
            double between,
            double atBetween,
            double to,
            double atTo) {
        double low = from;
        double high = to;
        double best = between;
        double atBest = atBetween;
        double second = atFrom > atTo ? from : to;
        double atSecond = Math.max(atFrom, atTo);
        double third = atFrom > atTo ? to : from;
        double atThird = Math.min(atFrom, atTo);
        double step = high - low;
        double before = step;
        for (int round = 0; round < ROUNDS; round++) {
            double middle = (low + high) / 2;
            if (Math.abs(best - middle) + (high - low) / 2 <= 2 * CLOSE) {
                break;
            }
            double r = (best - second) * (atBest - atThird);
            double q = (best - third) * (atBest - atSecond);
            double p = (best - third) * q - (best - second) * r;
            double vertex = best - p / (2 * (q - r));
            boolean shrinks = Math.abs(vertex - best) < Math.abs(before) / 2 && vertex > low && vertex < high;
            before = shrinks ? step : best < middle ? high - best : low - best;
            step = shrinks ? vertex - best : SECTION * before;
            if (Math.abs(step) < CLOSE) {
                step = Math.copySign(CLOSE, shrinks ? middle - best : step);
            }
            double next = best + step;
            double there = value.applyAsDouble(next);
            if (there >= atBest) {
                if (next < best) {
                    high = best;
                } else {
                    low = best;
                }
                third = second;
                atThird = atSecond;
                second = best;
                atSecond = atBest;
                best = next;
                atBest = there;
            } else {
                if (next < best) {
                    low = next;
                } else {
                    high = next;
                }
                if (there >= atSecond) {
                    third = second;
                    atThird = atSecond;
                    second = next;
                    atSecond = there;
                } else if (there >= atThird) {
                    third = next;
                    atThird = there;
                }
            }
        }
        return best;
    }
}
