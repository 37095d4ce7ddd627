package org.foreload.tyre;

/**
 * The search of {@link CombinedSlip}, made for speed: it runs for each wheel in each evaluation of the equations of
 * motion. It begins so near its end that two or three of Newton's steps suffice, and makes no objects.
 */
final class QuickShare {

    /** Relative step at which the search ends: about its square, near rounding, is what is then left. */
    private static final double CLOSE = 1e-6;

    /** Rounds after which the search ends in any case; halving alone finds neighbouring doubles in that many. */
    private static final int ROUNDS = 64;

    private QuickShare() {}

    /**
     * Lateral share of the peak beside a longitudinal one. Between a wheel that carries nothing along itself and one
     * that carries the most it can, lateral over longitudinal share is nearly an ellipse, and a pair of shares gives
     * the length, as force and slip have one direction: there Newton's rule begins. Where its step leaves what is known
     * to hold the answer, that range is halved instead.
     *
     * @param curve shape of force over slip
     * @param y normalised lateral slip, above zero
     * @param along longitudinal share, zero or above, below {@code most}
     * @param most largest longitudinal share up to which {@code curve} is searched
     * @param left lateral share beside {@code most}
     */
    static double lateral(SlipCurve curve, double y, double along, double most, double left) {
        double free = curve.value(y);
        if (along == 0) {
            return free;
        }
        double ratio = along / most;
        double guess = left + (free - left) * Math.sqrt(1 - ratio * ratio);
        double square = along * along;
        double x = y * Math.sqrt(square + guess * guess) / guess;
        double bottom = y;
        double top = y * Math.sqrt(most * most + left * left) / left;
        double lateral = guess;
        for (int round = 0; round < ROUNDS; round++) {
            double force = curve.value(x);
            double slope = curve.slope(x);
            double perLength = 1 / x;
            double across = y * perLength;
            double acrossSquare = across * across;
            double excess = force * force * (1 - acrossSquare) - square;
            if (excess > 0) {
                top = x;
            } else {
                bottom = x;
            }
            double next = x - excess / (2 * force * (slope * (1 - acrossSquare) + force * acrossSquare * perLength));
            lateral = (force + slope * (next - x)) * y / next;
            if (Math.abs(next - x) <= CLOSE * x) {
                return lateral;
            }
            x = next > bottom && next < top ? next : (bottom + top) / 2;
        }
        return curve.value(x) * y / x;
    }
}
