package org.foreload.optimum;

import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.ReleaseShape;
import org.foreload.strategy.CornerStudy;

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
    private final QuickBrakePoint quick;
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
        quick = new QuickBrakePoint(study);
        space = new ReleaseSpace(
                study.lockLimit(),
                Math.max(study.lockLimit(), quick.hardest(known.buildUpTime())),
                study.simulator().apex(),
                -study.bound().brakePoint().orElse(0),
                known.buildUpTime(),
                shape);
        start = space.point(known, known.brakePoint() - quick.estimate(known));
        QuickBrakePoint.Trial trial = quick.trial(known, known.brakePoint(), 1);
        notMade = NOT_MADE + (trial.made() ? trial.time() : 2 * study.bound().time());
        promising = trial.made() && early(known).made() ? trial.cost() : Double.POSITIVE_INFINITY;
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
        QuickBrakePoint.Trial trial = quick.trial(plan, plan.brakePoint(), 1);
        double cost = trial.cost();
        boolean made = trial.made();
        if (made && cost <= promising) {
            QuickBrakePoint.Trial earlier = early(plan);
            made = earlier.made();
            cost += earlier.cost() - earlier.time();
        }
        return made ? cost : notMade + WAY_BACK * distance(point);
    }

    /** The same plan from a little earlier. */
    private QuickBrakePoint.Trial early(BrakePlan plan) {
        return quick.trial(plan, plan.brakePoint() - EARLY, 1);
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
        BrakePlan plan = space.plan(point);
        return plan.withBrakePoint(quick.estimate(plan) + ReleaseSpace.shift(point));
    }

    /** Price, s, of an excess. */
    static double price(double excess) {
        return EXCESS_PRICE * Math.max(0, excess);
    }
}
