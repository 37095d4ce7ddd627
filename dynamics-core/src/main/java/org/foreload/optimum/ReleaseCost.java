package org.foreload.optimum;

import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.ReleaseShape;
import org.foreload.strategy.BrakePointSearch;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Trial;

/**
 * Time of an entry as a function of its point in the space of brake plans, with prices on what is not allowed: one
 * entry for each point. The latest brake point of a release is seldom its quickest, and as the limits change from one
 * place of the corner to another the latest one jumps; with the brake point free, time is smooth.
 */
final class ReleaseCost implements ToDoubleFunction<double[]> {

    /**
     * Seconds by which an entry that does not make the corner counts as slower than the start of the search: enough to
     * be turned away from, too little to be all that a search sees of a neighbourhood.
     */
    private static final double NOT_MADE = 0.2;

    /** Seconds per unit of distance from the start by which such entries rise: back is where the corner is made. */
    private static final double WAY_BACK = 0.01;

    /**
     * Seconds per excess over what is allowed: more than a drift or a margin can gain, so that a search ends within
     * what is allowed or as good as on its edge.
     */
    private static final double EXCESS_PRICE = 1;

    private final ReleaseSpace space;
    private final Pricing pricing;
    private final double promising;
    private final double notMade;
    private final double[] start;

    /**
     * @param study car, corner, driver
     * @param plan one with its brake point
     * @param shape the shape, where the search is within one family
     */
    ReleaseCost(CornerStudy study, BrakePlan plan, Optional<ReleaseShape> shape) {
        BrakePlan known = shape.isEmpty() ? RestOfRelease.of(plan) : plan;
        pricing = new Pricing(study);
        space = new ReleaseSpace(
                study.lockLimit(),
                Math.max(study.lockLimit(), pricing.reserve.hardest(known.buildUpTime())),
                study.simulator().apex(),
                -study.bound().brakePoint().orElse(0),
                known.buildUpTime(),
                shape);
        start = space.point(known, known.brakePoint() - pricing.search.estimate(known.braking()));
        Trial trial = pricing.trial(known);
        notMade = NOT_MADE
                + (trial.made() ? trial.entry().time() : 2 * study.bound().time());
        promising = trial.made() && early(known).made() ? pricing.cost(trial) : Double.POSITIVE_INFINITY;
    }

    /** The point of the known plan. */
    double[] start() {
        return start.clone();
    }

    ReleaseSpace space() {
        return space;
    }

    @Override
    public double applyAsDouble(double[] point) {
        BrakePlan plan = plan(point);
        Trial trial = pricing.trial(plan);
        double cost = pricing.cost(trial);
        boolean made = trial.made();
        if (made && cost <= promising) {
            Trial earlier = early(plan);
            made = earlier.made();
            cost += pricing.price(earlier);
        }
        return made ? cost : notMade + WAY_BACK * distance(point);
    }

    /** The same plan from a little earlier. */
    private Trial early(BrakePlan plan) {
        return pricing.trial(plan.withBrakePoint(plan.brakePoint() - EARLY));
    }

    /**
     * Distance, m, by which a driver may be early and must still make the corner: a search finds every gap between
     * spins that is a decimetre wide. Only what is quicker than the start is tried so, since nothing else can win.
     */
    private static final double EARLY = 1;

    private double distance(double[] point) {
        double sum = 0;
        for (int i = 0; i < point.length; i++) {
            sum += (point[i] - start[i]) * (point[i] - start[i]);
        }
        return Math.sqrt(sum);
    }

    /** The plan at a point. */
    BrakePlan plan(double[] point) {
        Braking braking = space.braking(point);
        return braking.from(pricing.search.estimate(braking) + ReleaseSpace.shift(point));
    }

    /** Entries of a study, and what they cost. */
    static final class Pricing {
        private final BrakePointSearch search;
        private final LockReserve reserve;

        Pricing(CornerStudy study) {
            search = study.search();
            reserve = new LockReserve(study);
        }

        Trial trial(BrakePlan plan) {
            return search.trial(plan);
        }

        /** Time of an entry, s, with prices on an excess over what is allowed and on a brake too near to a lock. */
        double cost(Trial trial) {
            return trial.entry().time() + price(trial);
        }

        private double price(Trial trial) {
            return EXCESS_PRICE * Math.max(0, trial.excess().largest()) + reserve.price(trial.entry());
        }
    }
}
