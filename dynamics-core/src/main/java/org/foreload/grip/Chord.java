package org.foreload.grip;

/**
 * A straight line through the feasible pairs of speed squared and acceleration at one place of the road, with a
 * parameter x along it. Since those pairs form a convex set (see {@link LocalGrip}), the feasible x are one interval,
 * and the utilisation falls before it and rises behind it: two searches answer everything.
 *
 * <p>The searches are own ones, because a search that runs ten thousand times per corner may not allocate and must
 * return the <em>feasible</em> end of its last bracket.
 */
public final class Chord {

    /** Closeness to the limit at which a search for an edge stops; far below what any tyre datum is known to. */
    private static final double ACCURACY = 1e-10;

    /** Bracket width, relative to the size of x, below which neither search can tell points apart. */
    private static final double NARROW = 1e-12;

    /** Bracket width, relative to the first step, at which the search for a feasible point gives up. */
    private static final double NO_GAP = 1e-7;

    /** Rounds after which every second one halves the bracket, whatever the shape of the excess. */
    private static final int PATIENCE = 20;

    /** Smaller part of the golden section. */
    private static final double GOLDEN = (3 - Math.sqrt(5)) / 2;

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
        this.limit = limit;
        this.speedSquared = speedSquared;
        this.speedSquaredRate = speedSquaredRate;
        this.acceleration = acceleration;
        this.accelerationRate = accelerationRate;
    }

    /** Utilisation at x over the friction scale, minus one: zero at the limit, positive where infeasible. */
    public double excess(double x) {
        return grip.utilisation(speedSquared + x * speedSquaredRate, -(acceleration + x * accelerationRate)) / limit
                - 1;
    }

    /** Whether x is feasible. */
    public boolean feasible(double x) {
        return excess(x) <= 0;
    }

    /**
     * The last feasible x on the way from a feasible to another one.
     *
     * @param inside a feasible x
     * @param outside any x
     * @return {@code outside} itself if that is feasible too
     */
    public double edge(double inside, double outside) {
        double beyond = excess(outside);
        return beyond <= 0 ? outside : edge(inside, excess(inside), outside, beyond);
    }

    /**
     * The last feasible x on the way from a feasible to an infeasible one.
     *
     * @param inside a feasible x
     * @param atInside its excess, zero or below
     * @param outside an infeasible x
     * @param atOutside its excess, above zero; may be infinite
     */
    public double edge(double inside, double atInside, double outside, double atOutside) {
        // Regula falsi with the scaling of Anderson and Björck (BIT 13, 1973, from memory), aimed just inside the
        // limit.
        double aim = ACCURACY / 2;
        double good = inside;
        double atGood = atInside + aim;
        double bad = outside;
        double atBad = atOutside + aim;
        if (atGood >= -aim) {
            return good;
        }
        int lastSide = 0;
        for (int i = 0; Math.abs(bad - good) > NARROW * Math.max(1, Math.abs(good)); i++) {
            boolean halve = atBad == Double.POSITIVE_INFINITY || i >= PATIENCE && i % 2 == 0;
            double x = halve ? (good + bad) / 2 : good - atGood * (bad - good) / (atBad - atGood);
            if (x == good || x == bad) {
                return good;
            }
            double value = excess(x) + aim;
            if (Math.abs(value) <= aim) {
                return x;
            }
            if (value < 0) {
                atBad = lastSide < 0 ? atBad * scale(value, atGood) : atBad;
                good = x;
                atGood = value;
                lastSide = -1;
            } else {
                atGood = lastSide > 0 ? atGood * scale(value, atBad) : atGood;
                bad = x;
                atBad = value;
                lastSide = 1;
            }
        }
        return good;
    }

    private static double scale(double value, double before) {
        double scale = 1 - value / before;
        return scale > 0 ? scale : 0.5;
    }

    /**
     * The last feasible x from a feasible one outwards, in growing steps.
     *
     * @param inside a feasible x
     * @param step first step, with the sign of the direction
     * @param bound where to stop; returned if still feasible
     */
    public double edgeFrom(double inside, double step, double bound) {
        double good = inside;
        double atGood = excess(inside);
        double width = step;
        while (good != bound) {
            double x = limitTo(good + width, bound, step);
            double value = excess(x);
            if (!(value <= 0)) {
                return edge(good, atGood, x, value);
            }
            good = x;
            atGood = value;
            width *= 2;
        }
        return bound;
    }

    private static double limitTo(double x, double bound, double direction) {
        return direction > 0 ? Math.min(x, bound) : Math.max(x, bound);
    }

    /**
     * A feasible x near a starting point: downhill in utilisation until it is below the limit.
     *
     * @param start where to look first; where the utilisation is infinite, growing steps may leap over a narrow range
     * @param step first step, above zero
     * @param low smallest x to look at
     * @param high largest x to look at
     * @return NaN if none was found
     */
    public double feasibleNear(double start, double step, double low, double high) {
        double best = Math.max(low, Math.min(high, start));
        double atBest = excess(best);
        double left = low;
        double right = high;
        // Walk downhill in growing steps, first up, then down, until the utilisation rises on both sides.
        for (int sign = 1; sign >= -1 && atBest > 0; sign -= 2) {
            double width = step;
            boolean falling = true;
            while (falling && atBest > 0) {
                double x = Math.max(left, Math.min(right, best + sign * width));
                double value = x == best ? Double.NaN : excess(x);
                width *= 2;
                if (value < atBest) {
                    left = sign > 0 ? best : left;
                    right = sign > 0 ? right : best;
                    best = x;
                    atBest = value;
                } else if (!(value == Double.POSITIVE_INFINITY && atBest == value && x > left && x < right)) {
                    left = sign > 0 ? left : x;
                    right = sign > 0 ? x : right;
                    falling = false;
                }
            }
        }
        // Golden section on what is left.
        double narrow = NO_GAP * step;
        while (atBest > 0 && atBest < Double.POSITIVE_INFINITY && right - left > narrow) {
            boolean up = right - best > best - left;
            double x = best + GOLDEN * (up ? right - best : left - best);
            double value = excess(x);
            if (value < atBest) {
                left = up ? best : left;
                right = up ? right : best;
                best = x;
                atBest = value;
            } else {
                left = up ? left : x;
                right = up ? x : right;
            }
        }
        return atBest <= 0 ? best : Double.NaN;
    }
}
