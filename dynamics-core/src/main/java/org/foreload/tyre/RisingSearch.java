package org.foreload.tyre;

import java.util.function.DoubleUnaryOperator;

/**
 * The one search behind {@link FrictionTyre}: Newton's, kept between two ends, for where a rising function takes a
 * value. An own one, because it runs for each wheel in each evaluation of the equations of motion, has the derivative
 * to work with, and must hold its ground at the peak of a curve, where Newton's step alone leaps away.
 */
final class RisingSearch {

    /** Relative step at which the search ends: the next one, about its square, would be below rounding. */
    private static final double CLOSE = 1e-10;

    /** Rounds after which the search ends in any case; halving alone finds neighbouring doubles in that many. */
    private static final int ROUNDS = 64;

    private RisingSearch() {}

    /**
     * Where a function takes a value. On a smooth one each round doubles the number of digits; where Newton's step
     * leaves what is known to hold the answer, that range is halved instead. So nothing outside is looked at, and the
     * search ends for any function that rises, with steps and corners too.
     *
     * @param target between the function's values at both ends
     * @param guess where to look first, between both ends
     * @param low lower end, zero or above
     * @param high upper end
     */
    static double solve(
            DoubleUnaryOperator function,
            DoubleUnaryOperator derivative,
            double target,
            double guess,
            double low,
            double high) {
        double bottom = low;
        double top = high;
        double x = guess;
        for (int round = 0; round < ROUNDS; round++) {
            double value = function.applyAsDouble(x);
            if (value > target) {
                top = x;
            } else {
                bottom = x;
            }
            double next = x - (value - target) / derivative.applyAsDouble(x);
            if (Math.abs(next - x) <= CLOSE * x) {
                return next;
            }
            x = next > bottom && next < top ? next : (bottom + top) / 2;
        }
        return x;
    }
}
