package org.foreload.optimum;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.BrakePointSearch;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Trial;

/**
 * Where searches over releases set out from: the latest brake point of a release with some of the drift left, and
 * whatever it has in hand, since both are the search's own to settle.
 */
final class QuickStart {

    /** Share of the drift allowed that leaves room for a search around. */
    private static final double SOME_DRIFT = 0.7;

    /** Distances, m, before a guess at which a release is tried. */
    private static final double[] EARLIER = {0, 0.3, 0.7, 1.5};

    private final ReleaseCost.Pricing pricing;
    private final BrakePointSearch search;

    QuickStart(CornerStudy study) {
        Allowance all = study.allowance();
        pricing = new ReleaseCost.Pricing(study);
        search = study.with(new Allowance(SOME_DRIFT * all.drift(), all.edge(), all.front(), all.rear(), 0))
                .search();
    }

    /** Brake point, m, of a car of constant brake force. */
    double estimate(Braking braking) {
        return search.estimate(braking);
    }

    /** The latest brake point and its cost, NaN if there is none. */
    Nearby latest(Braking braking) {
        return latest(braking, estimate(braking));
    }

    /** The same, near a guess, m. */
    Nearby latest(Braking braking, double guess) {
        Trial trial = search.latest(braking, guess);
        double cost = trial.met() ? pricing.cost(trial) : Double.NaN;
        return new Nearby(braking.from(trial.point()), cost);
    }

    /**
     * The release from the quickest brake point among a few near a guess; where it makes the corner from none of them,
     * from its latest one.
     *
     * @param guess brake point, m, of a release much like it that makes the corner of a study much like this one
     */
    BrakePlan near(Braking braking, double guess) {
        BrakePlan best = null;
        double least = Double.POSITIVE_INFINITY;
        for (double earlier : EARLIER) {
            BrakePlan plan = braking.from(guess - earlier);
            Trial trial = pricing.trial(plan);
            if (trial.made() && pricing.cost(trial) < least) {
                least = pricing.cost(trial);
                best = plan;
            }
        }
        return best != null ? best : latest(braking, guess).plan();
    }
}
