package org.foreload.optimum;

import org.foreload.braking.BrakePlan;
import org.foreload.strategy.BrakePointSearch;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Excess;
import org.foreload.strategy.Trial;

/** What a search for releases drives, and the limits that it keeps: those of the margin, and a reserve to a lock. */
final class KeptLimits {

    /** Seconds that an excess of one counts as: more than it can gain. */
    static final double PRICE = 0.5;

    /** From this limit on they are about grip: rear axle, and wheels that stop. */
    static final int OF_GRIP = 3;

    /** Distance, m, by which a driver may be early and must still keep the margin. */
    private static final double EARLY = 1;

    /**
     * Share of the reserve before a wheel stops that the search itself keeps: the entry with a hard foot has the last
     * word.
     */
    private static final double RESERVE_KEPT = 0.9;

    private final BrakePointSearch search;
    private final double reserve;

    KeptLimits(CornerStudy study) {
        this.search = study.search();
        this.reserve = RESERVE_KEPT * new LockReserve(study).wanted();
    }

    BrakePointSearch search() {
        return search;
    }

    /** How far an entry goes beyond drift, edge, front, rear and lock; below zero what it has left. */
    double[] of(Trial trial) {
        Excess excess = trial.excess();
        double lock = Excess.SHARE_WEIGHT * (reserve - trial.entry().lockReserve());
        return new double[] {excess.drift(), excess.edge(), excess.front(), excess.rear(), lock};
    }

    /** The entry of who brakes a little earlier than planned. */
    Trial early(BrakePlan plan) {
        return search.trial(plan.withBrakePoint(plan.brakePoint() - EARLY));
    }
}
