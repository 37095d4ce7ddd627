package org.foreload.optimum;

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

    private final LockReserve reserve;
    private final BrakePointSearch search;

    QuickStart(CornerStudy study) {
        Allowance all = study.allowance();
        reserve = new LockReserve(study);
        search = study.with(new Allowance(SOME_DRIFT * all.drift(), all.edge(), all.front(), all.rear(), 0))
                .search();
    }

    /** Brake point, m, of a car of constant brake force. */
    double estimate(Braking braking) {
        return search.estimate(braking);
    }

    /** The latest brake point and its cost, NaN if there is none. */
    Neighbourhood.Best latest(Braking braking) {
        return costing(braking, search.latest(braking));
    }

    /** The same, near a guess, m. */
    Neighbourhood.Best latest(Braking braking, double guess) {
        return costing(braking, search.latest(braking, guess));
    }

    private Neighbourhood.Best costing(Braking braking, Trial trial) {
        return new Neighbourhood.Best(braking.from(trial.point()), trial.met() ? cost(trial) : Double.NaN);
    }

    /** Time of an entry, s, with a price on a brake too near to a lock. */
    private double cost(Trial trial) {
        return trial.entry().time() + reserve.price(trial.entry());
    }
}
