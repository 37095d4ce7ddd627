package org.foreload.grip;

import org.foreload.conventions.Checks;

/**
 * A straight line through the feasible pairs of speed squared and acceleration at one place of the road, with a
 * parameter x along it. Since those pairs form a convex set (see {@link LocalGrip}), the feasible x are one interval,
 * and the utilisation falls before it and rises behind it: two searches answer everything.
 */
public final class Chord {

    private final LocalGrip grip;
    private final double limit;
    private final double speedSquared;
    private final double speedSquaredRate;
    private final double acceleration;
    private final double accelerationRate;

    /**
     * @param limit utilisation that counts as the limit: the friction scale
     * @param speedSquared at x = 0, m²/s²
     * @param speedSquaredRate per unit of x
     * @param acceleration at x = 0, m/s²
     * @param accelerationRate per unit of x
     */
    Chord(
            LocalGrip grip,
            double limit,
            double speedSquared,
            double speedSquaredRate,
            double acceleration,
            double accelerationRate) {
        this.grip = grip;
        this.limit = Checks.number("friction_scale", limit);
        this.speedSquared = Checks.number("speed_squared", speedSquared);
        this.speedSquaredRate = Checks.number("step", speedSquaredRate);
        this.acceleration = Checks.number("acceleration", acceleration);
        this.accelerationRate = accelerationRate;
    }

    private double speedSquared(double x) {
        return speedSquared + x * speedSquaredRate;
    }

    private double deceleration(double x) {
        return -(acceleration + x * accelerationRate);
    }

    /** Utilisation at x over the friction scale, minus one: zero at the limit, positive where infeasible. */
    public double excess(double x) {
        return grip.utilisation(speedSquared(x), deceleration(x)) / limit - 1;
    }

    /** Whether x is feasible. */
    public boolean feasible(double x) {
        return excess(x) <= 0;
    }

    /**
     * How far x is from being feasible, without a plateau: utilisation, squeezed between −1 and 1 with 0 at the limit;
     * where it is infinite, 1 and the load that is lacking, as a share of the weight.
     */
    private double level(double x) {
        double excess = excess(x);
        return LimitSearch.level(excess)
                + (excess == Double.POSITIVE_INFINITY ? grip.lackingLoad(speedSquared(x), deceleration(x)) : 0);
    }

    /**
     * The last feasible x from a feasible one on, in growing steps.
     *
     * @param inside a feasible x, or one that misses it by rounding; it may be the edge on the other side
     * @param step first step, with the sign of the direction
     * @param bound where to stop; returned if still feasible
     */
    public double edgeFrom(double inside, double step, double bound) {
        Checks.number("inside", inside);
        Checks.number("step", step);
        Checks.number("bound", bound);
        return LimitSearch.edgeFrom(this::level, inside, step, bound);
    }

    /**
     * A feasible x: the starting point if it is one, a neighbour of it, or else one that is found by going down in
     * utilisation from wherever it is too high.
     *
     * <p>Nothing is leapt over: the search runs separately where the tyres drive and where they brake. On each side,
     * and however far out, the utilisation, and where it is infinite the load that is lacking, fall towards what is
     * feasible. So NaN means that the least utilisation of either side is above the limit. Only a wheel that has lifted
     * while its axle has no longitudinal force to give, or has lost all friction under its load, bends this; then a
     * narrow feasible range may be missed.
     *
     * @param start where to look first
     * @param step distance of the neighbours that are looked at next
     * @param low smallest x to look at
     * @param high largest x to look at
     * @return NaN if there is none
     */
    public double feasibleNear(double start, double step, double low, double high) {
        Checks.number("start", start);
        Checks.number("step", step);
        double force = force(0);
        double coasting = force / (force - force(1));
        double middle = coasting >= low && coasting <= high ? coasting : low;
        for (double x : new double[] {start, start - step, start + step, middle}) {
            double within = Math.max(low, Math.min(high, x));
            if (feasible(within)) {
                return within;
            }
        }
        double below = LimitSearch.feasibleBetween(this::level, low, middle);
        return Double.isNaN(below) ? LimitSearch.feasibleBetween(this::level, middle, high) : below;
    }

    /** Longitudinal force of all tyres, N: linear in x. */
    private double force(double x) {
        return grip.force(speedSquared(x), deceleration(x));
    }
}
