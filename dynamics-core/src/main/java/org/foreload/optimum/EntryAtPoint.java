package org.foreload.optimum;

import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryResult;
import org.foreload.strategy.BrakePointSearch;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Excess;
import org.foreload.strategy.Trial;
import org.foreload.study.Rounds;

/**
 * An entry at a point of the space of brake plans, in the numbers to which surfaces are fitted.
 *
 * @param x the point
 * @param made whether the car makes the corner
 * @param time s
 * @param limits how far it goes beyond drift, edge, front, rear and lock, within plus and minus one
 * @param verdict the largest of these; above zero, too, where the corner is not made or an error is not forgiven that
 *     must be
 * @param slips what the errors that must be forgiven leave, below zero where they are; empty if that was not asked
 */
record EntryAtPoint(double[] x, boolean made, double time, double[] limits, double verdict, double[] slips) {

    /** Farther within a limit, or beyond one, than this says nothing of what happens where it is reached. */
    private static final double FAR = 1;

    /** Seconds that an excess of one counts as while searching: more than it can gain. */
    static final double PRICE = 0.5;

    /** Verdict on an entry that keeps its limits and does not forgive what it must. */
    private static final double UNFORGIVING = 0.3;

    /** A slip that is just forgiven is so far within: whether the car makes the corner changes at once. */
    private static final double FORGIVEN = 0.2;

    /** How fast a slip's number rises with the rear axle's and the brake's reserve. */
    private static final double SLIP_WEIGHT = 0.8 * Excess.SHARE_WEIGHT;

    /** Whether all that is asked is kept, as far as that was looked at. */
    boolean allowed() {
        return made && verdict <= 0;
    }

    /** The numbers to which surfaces of entries that make the corner are fitted: time, then the limits. */
    double[] values() {
        double[] values = new double[1 + limits.length];
        values[0] = time;
        System.arraycopy(limits, 0, values, 1, limits.length);
        return values;
    }

    /** The same with time and limits changed by so much: what an entry of a study much like this one is taken for. */
    EntryAtPoint changedBy(double[] change) {
        double[] changed = new double[limits.length];
        double largest = -FAR;
        for (int i = 0; i < changed.length; i++) {
            changed[i] = capped(limits[i] + change[1 + i]);
            largest = Math.max(largest, changed[i]);
        }
        return new EntryAtPoint(x, made, time + change[0], changed, verdict <= 0 ? largest : verdict, slips);
    }

    private static double capped(double limit) {
        return Math.max(-FAR, Math.min(FAR, limit));
    }

    /** What a search asks of the entries at the points of one space. */
    interface Source {

        /** The space. */
        ReleaseSpace space();

        /** Whether nothing must be in hand. */
        boolean onTheEdge();

        /** Entries driven so far. */
        int driven();

        /** The point of a plan. */
        double[] point(BrakePlan plan);

        /**
         * The entry at a point; only one that is quicker than another time, s, is asked what it forgives.
         *
         * @param than negative infinity not to ask, infinity to ask of each that keeps its limits
         */
        EntryAtPoint at(double[] x, double than);
    }

    /** Drives at points of one space. */
    static final class Driver implements Source {

        private final BrakePointSearch search;
        private final ReleaseSpace space;
        private final LockReserve reserve;
        private final Rounds rounds;
        private final double inHand;
        private int driven;

        /**
         * @param study car, corner, driver and margin
         * @param space of the points
         * @param rounds counts the entries
         */
        Driver(CornerStudy study, ReleaseSpace space, Rounds rounds) {
            this.reserve = new LockReserve(study);
            this.search = study.search();
            this.space = space;
            this.rounds = rounds;
            this.inHand = study.allowance().inHand();
        }

        @Override
        public ReleaseSpace space() {
            return space;
        }

        @Override
        public boolean onTheEdge() {
            return !(inHand > 0);
        }

        @Override
        public int driven() {
            return driven;
        }

        @Override
        public double[] point(BrakePlan plan) {
            return space.point(plan, search);
        }

        /** The plan at a point. */
        BrakePlan plan(double[] x) {
            return space.plan(x, search);
        }

        @Override
        public EntryAtPoint at(double[] x, double than) {
            BrakePlan plan = plan(x);
            count();
            Trial trial = search.trial(plan);
            double[] limits = reserve.limits(trial);
            double largest = Math.max(trial.excess().largest(), limits[limits.length - 1]);
            double verdict = trial.made() ? capped(largest) : FAR;
            for (int i = 0; i < limits.length; i++) {
                limits[i] = capped(limits[i]);
            }
            double time = trial.entry().time();
            double[] slips = {};
            if (verdict <= 0 && time < than) {
                count();
                if (!search.early(plan).met()) {
                    verdict = UNFORGIVING;
                } else {
                    List<Trial> all = search.slips(plan);
                    all.forEach(one -> count());
                    slips = all.stream().mapToDouble(Driver::left).toArray();
                    verdict = all.stream().allMatch(Trial::met) ? verdict : UNFORGIVING;
                }
            }
            return new EntryAtPoint(x, trial.made(), time, limits, verdict, slips);
        }

        private void count() {
            driven++;
            rounds.count();
        }

        private static double left(Trial slip) {
            EntryResult entry = slip.entry();
            return slip.met()
                    ? -FORGIVEN
                            - Math.min(
                                    FAR - FORGIVEN,
                                    SLIP_WEIGHT * Math.min(entry.margins().rear(), entry.lockReserve()))
                    : UNFORGIVING;
        }
    }
}
