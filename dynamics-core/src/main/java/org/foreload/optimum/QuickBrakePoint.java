package org.foreload.optimum;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.entry.Margins;
import org.foreload.entry.Outcome;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.InHand;
import org.foreload.strategy.LatestBrakePoint;

/**
 * The latest brake point near a guess, for the thousands of releases that an optimiser looks at. It does less than
 * {@link org.foreload.strategy.LatestBrakePoint}, which has the last word: no scan, and a time read between the last
 * two trials, so that it changes smoothly with the release.
 */
public final class QuickBrakePoint {

    /** First step from the guess, m; each further one is twice as long. */
    private static final double FIRST_STEP = 0.5;

    /** Farthest way from the guess, m. */
    private static final double FARTHEST = 80;

    /** Farthest step, m, that a trial's excess can ask for. */
    private static final double FARTHEST_STEP = 10;

    /** The change is known to this, m, where it is a jump (the car spins) that cannot be read between trials. */
    private static final double ACCURACY = 0.02;

    /**
     * Difference of excess between two trials over which time is read linearly: a tenth of the drift that is allowed,
     * about a decimetre of brake point, over which time bends by microseconds.
     */
    private static final double CLOSE = 0.1;

    /** Most trials after the change is bracketed. */
    private static final int MOST_TRIALS = 12;

    /** Trials in a row with wheels stopped for long after which the peak is taken to be too high from anywhere. */
    private static final int HOPELESS = 3;

    /** Excess that stands for an entry that did not make the corner. */
    private static final double NOT_MADE = 20;

    private final EntrySimulator simulator;
    private final Allowance allowance;
    private final double lockLimit;
    private final double wantedReserve;
    private final LatestBrakePoint full;

    /** Searches with the simulator of a study, for its margin. */
    public QuickBrakePoint(CornerStudy study) {
        simulator = study.simulator();
        allowance = study.allowance();
        wantedReserve = Math.max(LOCK_RESERVE, InHand.HARDER_PER_METRE * allowance.inHand());
        lockLimit = study.lockLimit();
        full = new LatestBrakePoint(study.bound(), simulator, allowance);
    }

    /**
     * What one release gives.
     *
     * @param brakePoint m
     * @param time s, at the margin exactly; NaN if none was found
     * @param excess over what is allowed, as a share of it, where none was found: how far off it was
     * @param lockReserve share by which the brake could be harder before a wheel stops; 0 where one does
     * @param lockPrice price of a brake that is too near to that, s
     */
    public record Answer(double brakePoint, double time, double excess, double lockReserve, double lockPrice) {

        /**
         * Time, s, with a price on a brake that is too near to stopping a wheel; NaN if no brake point was found. The
         * price rises from nothing, so that a search that runs along this limit meets a crease and no cliff.
         */
        public double cost() {
            return time + lockPrice;
        }
    }

    /** One entry from one brake point. */
    record Trial(double point, double time, double excess, double lockReserve, boolean locked, double lockPrice) {
        boolean met() {
            return excess <= 0;
        }

        boolean made() {
            return excess < NOT_MADE;
        }

        /** Time, s, with prices on an excess over what is allowed and on a brake too near to stopping a wheel. */
        double cost() {
            return time + ReleaseCost.price(excess) + lockPrice;
        }
    }

    /** Searches near where a car of constant brake force would have to brake. */
    public Answer find(BrakePlan plan) {
        return find(plan, full.estimate(plan), 1);
    }

    /** Brake point, m, of a car of constant brake force. */
    public double estimate(BrakePlan plan) {
        return full.estimate(plan);
    }

    /**
     * Searches near a guess.
     *
     * @param plan the release
     * @param guess m; the nearer it is, the fewer trials: two where it is good
     * @param driftShare share of the drift allowed that may be used, above 0 to 1: on the last decimetres of drift a
     *     later brake can cost more time than it gains
     */
    public Answer find(BrakePlan plan, double guess, double driftShare) {
        double latest = plan.release().end();
        double earliest = simulator.corner().path().start();
        Trial low = null;
        Trial high = null;
        double least = NOT_MADE;
        int locked = 0;
        double step = FIRST_STEP;
        double point = Math.max(earliest, Math.min(latest, guess));
        while (low == null || high == null) {
            Trial trial = trial(plan, point, driftShare);
            least = Math.min(least, trial.excess());
            locked = trial.locked() ? locked + 1 : 0;
            if (locked == HOPELESS) {
                return new Answer(guess, Double.NaN, least, 0, lockPrice(0));
            }
            if (trial.met()) {
                low = trial;
                if (high == null && point >= latest) {
                    return new Answer(point, trial.time(), 0, trial.lockReserve(), trial.lockPrice());
                }
            } else {
                high = trial;
            }
            if (low != null && high != null) {
                break;
            }
            point = Math.min(latest, point + move(trial, step));
            step *= 2;
            if (!(Math.abs(point - guess) <= FARTHEST) || point < earliest) {
                return new Answer(guess, Double.NaN, least, 0, lockPrice(0));
            }
        }
        return narrowed(plan, low, high, driftShare);
    }

    /**
     * The release from the quickest brake point among a few near a guess; where it makes the corner from none of them,
     * from its latest one.
     *
     * @param plan the release
     * @param guess brake point, m, of a release much like it that makes the corner of a study much like this one
     */
    public BrakePlan near(BrakePlan plan, double guess) {
        Trial best = trial(plan, guess, 1);
        for (double earlier : EARLIER) {
            Trial trial = trial(plan, guess - earlier, 1);
            if (trial.made() && (!best.made() || trial.cost() < best.cost())) {
                best = trial;
            }
        }
        return plan.withBrakePoint(
                best.made() ? best.point() : find(plan, guess, SOME_DRIFT).brakePoint());
    }

    /** Distances, m, before a guess at which a release is tried. */
    private static final double[] EARLIER = {0.3, 0.7, 1.5};

    /** Share of the drift allowed that leaves room for a search around. */
    private static final double SOME_DRIFT = 0.7;

    /** How far to go on while all trials were on one side: a little further than to where the excess would be zero. */
    private static double move(Trial trial, double step) {
        if (!trial.made()) {
            return -Math.max(step, OFF_STEP);
        }
        double there = Math.max(-FARTHEST_STEP, Math.min(FARTHEST_STEP, trial.excess() * METRES_PER_EXCESS));
        return trial.met() ? Math.max(step / 4, -there * BEYOND) : -Math.max(step / 4, there * BEYOND);
    }

    /** How far earlier, m, takes the excess from one to zero, roughly. */
    private static final double METRES_PER_EXCESS = 1;

    /** A trial aims this much beyond the change, so that it comes to lie on the other side of it. */
    private static final double BEYOND = 1.3;

    /** Step back, m, from an entry that did not make the corner. */
    private static final double OFF_STEP = 2;

    private Answer narrowed(BrakePlan plan, Trial met, Trial failed, double driftShare) {
        Trial low = met;
        Trial high = failed;
        boolean halve = false;
        for (int i = 0; i < MOST_TRIALS; i++) {
            double width = high.point() - low.point();
            boolean readable = high.made();
            if (readable && high.excess() - low.excess() < CLOSE || width < ACCURACY) {
                break;
            }
            double share = readable && !halve ? -low.excess() / (high.excess() - low.excess()) : 0.5;
            double inside = Math.max(0.02, Math.min(0.98, share));
            Trial trial = trial(plan, low.point() + inside * width, driftShare);
            if (trial.met()) {
                low = trial;
            } else {
                high = trial;
            }
            halve = high.point() - low.point() > width / 2 && i > 0;
        }
        if (!high.made()) {
            return new Answer(low.point(), low.time(), 0, low.lockReserve(), low.lockPrice());
        }
        double share = -low.excess() / (high.excess() - low.excess());
        return new Answer(
                between(low.point(), high.point(), share),
                between(low.time(), high.time(), share),
                0,
                between(low.lockReserve(), high.lockReserve(), share),
                between(low.lockPrice(), high.lockPrice(), share));
    }

    private double lockPrice(double reserve) {
        return LOCK_PRICE * Math.max(0, wantedReserve - reserve);
    }

    private static double between(double a, double b, double share) {
        return share == 0 ? a : a + share * (b - a);
    }

    /**
     * Hardest braking in a straight line, m/s², that keeps the reserve: found by driving, so that it knows of banking,
     * which takes load off the wheels of one side, and of a body that still pitches when the foot is down.
     *
     * @param buildUpTime time in which the foot reaches the peak, s
     */
    public double hardest(double buildUpTime) {
        double peak = FIRST_PEAK * lockLimit;
        for (int i = 0; i < PEAK_ROUNDS; i++) {
            BrakePlan straight = new BrakePlan(0, peak, buildUpTime, new Release(ReleaseShapes.ABRUPT, 0, 0));
            EntryResult entry = simulator.probe(straight.withBrakePoint(full.estimate(straight)));
            double reserve = Math.min(MOST_RESERVE, entry.lockReserve());
            peak *= (1 + reserve) / (1 + wantedReserve);
        }
        return peak;
    }

    /** Share of the locking limit with which the search for the hardest braking begins: no wheel stops with it. */
    private static final double FIRST_PEAK = 0.7;

    /** Rounds of that search: each leaves a small part of the error, since load follows force. */
    private static final int PEAK_ROUNDS = 4;

    /** The reserve that is believed at most in one round. */
    private static final double MOST_RESERVE = 0.3;

    /** Drives from one brake point. */
    Trial trial(BrakePlan plan, double point, double driftShare) {
        BrakePlan moved = plan.withBrakePoint(point);
        EntryResult entry = simulator.probe(moved);
        return new Trial(
                point,
                entry.time(),
                entry.made() ? excess(entry, driftShare) : NOT_MADE,
                entry.lockReserve(),
                entry.outcome() == Outcome.LOCKED_UP,
                lockPrice(entry.lockReserve()));
    }

    private double excess(EntryResult entry, double driftShare) {
        double excess = entry.farthestOffset() / (driftShare * allowance.drift()) - 1;
        Margins margins = entry.margins();
        excess = Math.max(excess, allowance.edge() - margins.edge());
        excess = Math.max(excess, lack(allowance.front(), margins.front()));
        excess = Math.max(excess, lack(allowance.rear(), margins.rear()));
        return Math.min(excess, NOT_MADE * 0.99);
    }

    private static double lack(double asked, double left) {
        return asked > 0 ? (asked - left) * MARGIN_WEIGHT : Double.NEGATIVE_INFINITY;
    }

    /**
     * Share by which the brake must be able to be harder before a wheel stops. A wheel that only just does not stop is
     * a matter of rounding, and one that does costs a tenth of a second.
     */
    private static final double LOCK_RESERVE = 0.003;

    /**
     * Seconds per share of brake force that the reserve is short: some times what harder braking on the straight gains.
     */
    private static final double LOCK_PRICE = 15;

    /** A tenth of an axle's friction counts as much as the whole drift that is allowed. */
    private static final double MARGIN_WEIGHT = 10;
}
