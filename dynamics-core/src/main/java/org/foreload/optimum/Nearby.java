package org.foreload.optimum;

import org.foreload.braking.BrakePlan;
import org.foreload.study.Search;

/**
 * What local searches from a start came to, each setting out anew where the one before gave up, until a round of them
 * gains nothing.
 *
 * @param plan the best plan
 * @param time its cost, s
 */
record Nearby(BrakePlan plan, double time) {

    /** Radii of the searches, in turn. */
    private static final double[] RADII = {0.6, 0.25, 1};

    /** Seconds; a round of searches none of which gains as much has arrived. */
    private static final double ARRIVED = 2e-4;

    /**
     * Searches.
     *
     * @param cost of a point
     * @param start where
     * @param most evaluations at most
     * @param rounds counts them
     */
    static Nearby search(ReleaseCost cost, double[] start, int most, Rounds rounds) {
        ReleaseSpace space = cost.space();
        double[] point = start;
        double time = Double.POSITIVE_INFINITY;
        int left = most;
        int idle = 0;
        for (int i = 0; idle < RADII.length && left > 0; i++) {
            Search.Found found = new Search(space.low(), space.high(), left, rounds::stopped)
                    .nearby(rounds.counting(cost), point, RADII[i % RADII.length]);
            idle = time - found.cost() < ARRIVED ? idle + 1 : 0;
            if (found.cost() < time) {
                time = found.cost();
                point = found.point();
            }
            left -= found.evaluations();
        }
        rounds.skip(Math.max(0, left));
        return new Nearby(cost.plan(point), time);
    }
}
