package org.foreload.grip;

import org.foreload.tyre.Tyre;

/**
 * Two equal tyres on one axle that share a longitudinal force half and half, and carry a lateral one together.
 *
 * <p>Friction ellipse per wheel: a wheel with load N that carries the longitudinal force F has PY(N)·√(1 − (F/PX(N))²)
 * left for cornering (H. B. Pacejka, Tyre and Vehicle Dynamics, ch. 1, from memory).
 */
final class AxleGrip {

    private AxleGrip() {}

    /** Load on the wheel that a transfer relieves, N; never below zero. */
    private static double innerLoad(double axleLoad, double transfer) {
        return Math.max(0, axleLoad / 2 - Math.abs(transfer));
    }

    /**
     * Lateral capacity in newtons; a wheel over its limit counts nothing.
     *
     * @param axleLoad N, zero or above
     * @param transfer load that has moved across the axle, N, of any sign
     * @param force longitudinal force of the axle, N, of any sign
     */
    static double capacity(Tyre tyre, double axleLoad, double transfer, double force) {
        double inner = innerLoad(axleLoad, transfer);
        double wheelForce = Math.abs(force) / 2;
        return tyre.peakForceYBeside(wheelForce, inner) + tyre.peakForceYBeside(wheelForce, axleLoad - inner);
    }

    /**
     * Smallest friction scale λ with which the axle carries its demand.
     *
     * <p>With friction scaled by λ the wheels have A·√(λ² − p²) and B·√(λ² − q²) left, where A and B are their pure
     * lateral peaks and p ≥ q the used shares of their pure longitudinal peaks. If B·√(p² − q²) already covers the
     * demand D, the wheel that locks first decides: λ = p. Otherwise put λ² = p² + x²; then A·x + B·√(x² + p² − q²) =
     * D, a quadratic equation in x after squaring, of which the root below is the positive one.
     *
     * @param axleLoad N, zero or above
     * @param transfer load that has moved across the axle, N, of any sign
     * @param force longitudinal force of the axle, N, of any sign
     * @param demand lateral force, N, of any sign
     */
    static double utilisation(Tyre tyre, double axleLoad, double transfer, double force, double demand) {
        double inner = innerLoad(axleLoad, transfer);
        double outer = axleLoad - inner;
        double peakFirst = tyre.peakForceY(inner);
        double peakOther = tyre.peakForceY(outer);
        double first = 0;
        double other = 0;
        if (force != 0) {
            double wheelForce = Math.abs(force) / 2;
            first = ratio(wheelForce, tyre.peakForceX(inner));
            other = ratio(wheelForce, tyre.peakForceX(outer));
            if (first == Double.POSITIVE_INFINITY || other == Double.POSITIVE_INFINITY) {
                return Double.POSITIVE_INFINITY;
            }
        }
        return least(first, peakFirst, other, peakOther, demand);
    }

    /**
     * An axle whose anti-lock brakes hold each wheel as hard as it can be held and no harder: both wheels then pull in
     * one direction, and the axle has an ellipse with the sums of their peaks.
     *
     * @param along most that it can brake with, N
     * @param across share of its lateral peak that is asked for
     */
    record Held(double along, double across) {

        /**
         * @param load N, zero or above
         * @param transfer load that has moved across the axle, N, of any sign
         * @param demand lateral force, N, of any sign
         * @param braked whether it has brakes at all
         */
        static Held of(Tyre tyre, double load, double transfer, double demand, boolean braked) {
            double inner = innerLoad(load, transfer);
            double outer = load - inner;
            return new Held(
                    braked ? tyre.peakForceX(inner) + tyre.peakForceX(outer) : 0,
                    ratio(Math.abs(demand), tyre.peakForceY(inner) + tyre.peakForceY(outer)));
        }

        /** Smallest friction scale with which this axle and another brake with a force, N, and keep what is asked. */
        double with(Held other, double force) {
            return Math.max(across, other.across) < Double.POSITIVE_INFINITY
                    ? least(across, along, other.across, other.along, force)
                    : Double.POSITIVE_INFINITY;
        }
    }

    /** Smallest λ, no less than p and q, with A·√(λ² − p²) + B·√(λ² − q²) ≥ D. */
    private static double least(double p, double a, double q, double b, double demand) {
        boolean ordered = p >= q;
        double first = ordered ? p : q;
        double other = ordered ? q : p;
        double peakFirst = ordered ? a : b;
        double peakOther = ordered ? b : a;
        double excess = first * first - other * other;
        double demandSquared = demand * demand;
        double missing = demandSquared - peakOther * peakOther * excess;
        if (!(missing > 0)) {
            return first;
        }
        double root = Math.sqrt(demandSquared - excess * (peakOther * peakOther - peakFirst * peakFirst));
        double x = missing / (Math.abs(demand) * peakFirst + peakOther * root);
        return first == 0 ? x : Math.sqrt(first * first + x * x);
    }

    private static double ratio(double force, double peak) {
        return force == 0 ? 0 : force / peak;
    }
}
