package org.foreload.optimum;

import java.util.ArrayList;
import java.util.List;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.BrakePointSearch;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Trial;
import org.foreload.study.LowDiscrepancy;

/**
 * Where searches over releases set out from: the latest brake point of a release with some of the drift left, and
 * whatever it has in hand, since both are the search's own to settle.
 */
final class QuickStart {

    /** Share of the drift allowed that leaves room for a search around. */
    private static final double SOME_DRIFT = 0.7;

    /** Coarse releases of each shape. */
    static final int EACH_SHAPE = 16;

    /** They are spread evenly over what a release may be. */
    private static final List<double[]> COARSE = LowDiscrepancy.points(3, EACH_SHAPE, 1);

    /** Between which the peaks of coarse releases lie, as shares of the locking limit. */
    private static final double[] PEAKS = {0.35, 0.9};

    /** Between which they start, as shares of the way to the apex. */
    private static final double[] STARTS = {-0.45, 0.4};

    /** Between which they end. */
    private static final double[] ENDS = {0.3, 1.25};

    /** Shortest of them, as a share of the way to the apex. */
    private static final double SHORTEST = 0.1;

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

    /** The same, NaN too where the release could only be a slow one. */
    Neighbourhood.Best latestWorthwhile(Braking braking) {
        return costing(braking, search.latestWorthwhile(braking));
    }

    private Neighbourhood.Best costing(Braking braking, Trial trial) {
        return new Neighbourhood.Best(braking.from(trial.point()), trial.met() ? cost(trial) : Double.NaN);
    }

    /** Time of an entry, s, with a price on a brake too near to a lock. */
    private double cost(Trial trial) {
        return trial.entry().time() + reserve.price(trial.entry());
    }

    /**
     * Coarse releases of some shapes, {@value #EACH_SHAPE} of each.
     *
     * @param buildUpTime time in which the foot reaches the peak, s
     */
    static List<Braking> coarse(CornerStudy study, List<ReleaseShape> shapes, double buildUpTime) {
        double limit = study.lockLimit();
        double apex = study.simulator().apex();
        List<Braking> plans = new ArrayList<>();
        for (ReleaseShape shape : shapes) {
            for (double[] point : COARSE) {
                double start = between(STARTS, point[1]);
                double end = Math.max(start + SHORTEST, between(ENDS, point[2]));
                plans.add(Braking.of(
                        between(PEAKS, point[0]) * limit, buildUpTime, new Release(shape, start * apex, end * apex)));
            }
        }
        return plans;
    }

    private static double between(double[] ends, double share) {
        return ends[0] + share * (ends[1] - ends[0]);
    }
}
