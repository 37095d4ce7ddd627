package org.foreload.optimum;

import java.util.Arrays;
import org.foreload.braking.BrakePlan;
import org.foreload.strategy.BrakePointSearch;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Trial;
import org.foreload.study.Rounds;

/**
 * An entry at a point of the space of brake plans, in the numbers to which surfaces are fitted.
 *
 * @param x the point
 * @param made whether the car makes the corner
 * @param time s
 * @param limits how far it goes beyond drift, edge, front, rear and lock, within plus and minus one
 * @param verdict the largest of these; above zero, too, where the corner is not made or who is a metre early does not
 *     keep them
 * @param slips how far each error that must be forgiven goes beyond the edge of the track and a wheel that stops,
 *     within plus and minus one; NaN where that is not known, empty if it was not asked
 */
record EntryAtPoint(double[] x, boolean made, double time, double[] limits, double verdict, double[] slips) {

    /** Farther within a limit, or beyond one, than this says nothing of what happens where it is reached. */
    private static final double FAR = 1;

    /** Seconds that an excess of one counts as while searching: more than it can gain. */
    static final double PRICE = 0.5;

    /** Verdict on an entry that keeps its limits, but not from a metre earlier. */
    private static final double NOT_EARLIER = 0.3;

    /** Whether all that is asked is kept, as far as that was looked at. */
    boolean allowed() {
        return made && verdict <= 0 && Arrays.stream(slips).noneMatch(slip -> slip > 0);
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
         * The entry at a point; only one that keeps its limits and is quicker than another time, s, is asked what it
         * forgives.
         *
         * @param than negative infinity not to ask, infinity to ask of each that makes the corner
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
            if (verdict <= 0 && time < than) {
                count();
                verdict = search.early(plan).met() ? verdict : NOT_EARLIER;
            }
            boolean asked = trial.made() && (than == Double.POSITIVE_INFINITY || verdict <= 0 && time < than);
            return new EntryAtPoint(x, trial.made(), time, limits, verdict, asked ? slips(plan) : new double[0]);
        }

        /** How far slips go beyond their limits. */
        private double[] slips(BrakePlan plan) {
            return search.slips(plan).stream()
                    .peek(slip -> count())
                    .flatMapToDouble(LockReserve::ofSlip)
                    .map(EntryAtPoint::capped)
                    .toArray();
        }

        private void count() {
            driven++;
            rounds.count();
        }
    }
}
