package org.foreload.optimum;

import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.ToDoubleFunction;
import org.foreload.braking.BrakePlan;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Search;

/**
 * What local searches from a start came to, each setting out anew where the one before gave up, until a round of them
 * gains nothing.
 *
 * @param plan the best plan
 * @param time its cost, s: its time, with a price on what it does beyond what is allowed
 */
public record Nearby(BrakePlan plan, double time) {

    /** Radii of the searches, in turn. */
    private static final double[] RADII = {0.6, 0.25, 1};

    /** Seconds; a round of searches none of which gains as much has arrived. */
    private static final double ARRIVED = 2e-4;

    /**
     * The best release near one that is known: peak, start, end, shape and brake point are free.
     *
     * @param study car, corner, driver and margin
     * @param known a release with a brake point from which, or near which, it makes the corner
     * @param entries looked at, at most
     */
    public static Nearby search(CornerStudy study, BrakePlan known, int entries) {
        ReleaseCost cost = new ReleaseCost(study, known, Optional.empty());
        return search(cost, cost.start(), entries, () -> false, cost).nearby();
    }

    /**
     * Searches.
     *
     * @param cost of a point
     * @param start where
     * @param most evaluations at most
     * @param rounds counts them
     */
    static Nearby search(ReleaseCost cost, double[] start, int most, Rounds rounds) {
        Spent spent = search(cost, start, most, rounds::stopped, rounds.counting(cost));
        rounds.skip(Math.max(0, most - spent.evaluations()));
        return spent.nearby();
    }

    private record Spent(Nearby nearby, int evaluations) {}

    private static Spent search(
            ReleaseCost cost, double[] start, int most, BooleanSupplier stopped, ToDoubleFunction<double[]> counted) {
        ReleaseSpace space = cost.space();
        double[] point = start;
        double time = Double.POSITIVE_INFINITY;
        int left = most;
        int idle = 0;
        for (int i = 0; idle < RADII.length && left > 0; i++) {
            Search.Found found = new Search(space.low(), space.high(), left, stopped)
                    .nearby(counted, point, RADII[i % RADII.length]);
            idle = time - found.cost() < ARRIVED ? idle + 1 : 0;
            if (found.cost() < time) {
                time = found.cost();
                point = found.point();
            }
            left -= found.evaluations();
        }
        return new Spent(new Nearby(cost.plan(point), time), most - left);
    }
}
