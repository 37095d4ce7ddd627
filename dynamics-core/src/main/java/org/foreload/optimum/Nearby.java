package org.foreload.optimum;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.ToDoubleFunction;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Search;
import org.foreload.study.Sweep;

/**
 * What searches from a start came to: local ones, each setting out anew where the one before gave up, until a round of
 * them gains nothing; and wide ones around or before them.
 *
 * @param plan the best plan
 * @param time its cost, s: its time, with a price on what it does beyond what is allowed
 */
public record Nearby(BrakePlan plan, double time) {

    /** Radii of the searches, in turn. */
    private static final double[] RADII = {0.6, 0.25, 1};

    /** Seconds; a round of searches none of which gains as much has arrived. */
    private static final double ARRIVED = 2e-4;

    /** Entries that local searches get before it looks further around. */
    private static final int LOCAL = 120;

    /** Fewest entries with which it is worth looking around further. */
    private static final int LEAST_AROUND = 100;

    /** Spread of the first generation around what the local searches came to, in the units of the space. */
    private static final double AROUND = 0.05;

    /** Share of its entries that a search looks at far and wide, before it searches locally. */
    private static final double WIDE_SHARE = 0.8;

    private static final long SEED = 1;

    /**
     * The best release near one that is known: peak, start, end, shape and brake point are free. After the first
     * {@value #LOCAL} entries it looks around what it has come to: local searches stop at creases, where one limit
     * takes over from another.
     *
     * @param study car, corner, driver and margin
     * @param known a release with a brake point from which, or near which, it makes the corner
     * @param entries tried, at most
     */
    public static Nearby search(CornerStudy study, BrakePlan known, int entries) {
        ReleaseCost cost = new ReleaseCost(study, known, Optional.empty());
        Spent local = search(cost, cost.start(), Math.min(entries, LOCAL), () -> false, cost);
        Nearby near = local.nearby();
        int left = entries - local.evaluations();
        if (left < LEAST_AROUND) {
            return near;
        }
        ReleaseCost around = new ReleaseCost(study, near.plan(), Optional.empty());
        Nearby found = wide(around, AROUND, left, SEED, new Rounds(1, Sweep.Progress.SILENT, left));
        return found.time() < near.time() ? found : near;
    }

    /**
     * The same near a release that makes the corner of a study much like this one.
     *
     * @param braking the release
     * @param guess its brake point there, m
     */
    public static Nearby search(CornerStudy study, Braking braking, double guess, int entries) {
        return search(study, new QuickStart(study).near(braking, guess), entries);
    }

    /**
     * Searches wide, then locally.
     *
     * @param cost of a point; the search begins at its start
     * @param reach spread of the first generation, in the units of the space
     * @param entries tried
     * @param seed of the random draws
     * @param rounds counts them
     */
    static Nearby wide(ReleaseCost cost, double reach, int entries, long seed, Rounds rounds) {
        ReleaseSpace space = cost.space();
        double[] spread = new double[space.size()];
        Arrays.fill(spread, reach);
        int wide = (int) (WIDE_SHARE * entries);
        Search.Found found = new Search(space.low(), space.high(), wide, rounds::stopped)
                .wide(rounds.counting(cost), cost.start(), spread, seed);
        return search(cost, found.point(), entries - wide, rounds);
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
