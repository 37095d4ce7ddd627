package org.foreload.strategy;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.ideal.IdealProfile;

/**
 * The one search for brake points. It holds entries against what is allowed by how far they go beyond it, their
 * {@link Excess}, and looks in whole decimetres, in which plans are given.
 *
 * <p>Making a corner is not monotone in the brake point: too late, the car runs wide or spins; too early, it crawls or
 * stops. From a guess the search climbs to the first later point that fails, or goes back to the first earlier one that
 * keeps the margin, by steps that grow; then it closes in on the change by false position on the excess, halving where
 * that is slow. A brake point counts only if the margin is kept from {@link #SOLID} earlier too.
 *
 * <p>What a plan must have in hand is asked in the same way: the entries of a driver who is a little late, comes off
 * the brake late or brakes too hard must still make the corner.
 */
public final class BrakePointSearch {

    /**
     * Distance, m, by which a driver may be early and must still keep the margin: less is a fluke and does not count.
     */
    static final double SOLID = 1;

    /** First step later, m, from a guess that keeps the margin; each further one is twice as long. */
    private static final double FIRST_LATER = 1;

    /** First step earlier, m, from a guess that fails; further ones grow by {@link #EARLIER_GROWS}. */
    private static final double FIRST_EARLIER = 2;

    private static final double EARLIER_GROWS = 1.3;

    /** Longest step, m: shorter than most windows of brake points that make a corner. */
    private static final double LONGEST_STEP = 8;

    /** Metres by which an entry brakes later for one more of excess, roughly. */
    private static final double METRES_PER_EXCESS = 1;

    /** A step aims this much beyond the change, so that it comes to lie on the other side of it. */
    private static final double BEYOND = 1.3;

    /** Trials in a row that make the corner and come no nearer to the margin after which the search ends. */
    private static final int MOST_IDLE = 3;

    /** Trials in a row with a wheel locked before turn-in after which the search ends. */
    private static final int HOPELESS = 2;

    /** Farthest that an answer may be from its guess, m: so far from it, nobody would call the release one. */
    private static final double FARTHEST = 120;

    /** How much later, m, than the estimate most brake points are. */
    private static final double USUALLY_LATER = 1.5;

    /** Within so many decimetres the excess is as good as linear, and the last step need not be tried. */
    private static final int LINEAR = 3;

    /** Part of a decimetre within which the change must then be. */
    private static final double SURE = 0.5;

    /** Time, s, by which an earlier brake point must be quicker to be preferred. */
    private static final double QUICKER = 5e-4;

    /** First step earlier, in decimetres, from the latest brake point to a quicker one; each further one is longer. */
    private static final int FIRST_QUICKER = 3;

    private final EntrySimulator simulator;
    private final Allowance allowance;
    private final BrakePointEstimate estimate;

    /** Searches with this simulator for this margin; the bound says where to start. */
    public BrakePointSearch(IdealProfile bound, EntrySimulator simulator, Allowance allowance) {
        this.simulator = simulator;
        this.allowance = allowance;
        this.estimate = new BrakePointEstimate(bound, simulator.car());
    }

    /**
     * Brake point, m, of a car of constant brake force that comes out of the release a little slower than the bound.
     */
    public double estimate(Braking braking) {
        return estimate.of(braking);
    }

    /** One plan held against the margin, whatever it has in hand; computed coarsely. */
    public Trial trial(BrakePlan plan) {
        return allowance.trial(simulator.probe(plan));
    }

    /** The latest brake point that keeps the margin, found from the {@link #estimate}. */
    public Trial latest(Braking braking) {
        return latest(braking, estimate(braking) + USUALLY_LATER);
    }

    /**
     * The latest brake point that keeps the margin and has in hand what is asked for.
     *
     * @param braking how the driver brakes
     * @param guess brake point, m; the nearer it is, the fewer trials
     * @return the entry from there, computed coarsely; if there is none, the one that came closest
     */
    public Trial latest(Braking braking, double guess) {
        return latest(new Walk(braking, this::trial), braking, guess);
    }

    /**
     * The quickest brake point that keeps the margin and has in hand what is asked for: the latest, but where the last
     * decimetres of drift cost more time on the way out than the later brake gains on the way in.
     */
    public Trial quickest(Braking braking) {
        Walk nominal = new Walk(braking, this::trial);
        Trial latest = latest(nominal, braking, estimate(braking) + USUALLY_LATER);
        if (!latest.met()) {
            return latest;
        }
        Trial quickest = nominal.quickest(latest);
        boolean kept =
                quickest == latest || leftWithNothingInHand(quickest.entry().plan()) >= 0;
        return kept ? quickest : latest;
    }

    private Trial latest(Walk nominal, Braking braking, double guess) {
        Trial found = nominal.latest(decimetre(guess), last(braking));
        if (!found.met() || !(allowance.inHand() > 0)) {
            return found;
        }
        for (boolean moved = true; moved; ) {
            moved = false;
            for (Slip slip : Slip.values()) {
                if (slip == Slip.LATE_BRAKE && nominal.latestMade >= found.point() + allowance.inHand()) {
                    continue; // Driven already.
                }
                Walk slipped = new Walk(braking, plan -> slip.trial(simulator, plan, allowance.inHand()));
                Trial keeps = slipped.latest(decimetre(found.point()), decimetre(found.point()));
                if (!keeps.met()) {
                    return new Trial(found.point(), found.entry(), Excess.NOT_MADE);
                }
                int point = decimetre(keeps.point());
                if (point < decimetre(found.point())) {
                    found = nominal.at(point);
                    moved = true;
                    if (!found.met()) {
                        return found;
                    }
                }
            }
        }
        return found;
    }

    /**
     * The answer of the search driven with full accuracy. Where the corner is made by so little that the coarser trial
     * made what this does not, a little earlier is tried.
     *
     * @return not found if the search has no answer or none that keeps its margin at full accuracy
     */
    public Finding confirmed(Trial latest) {
        Braking braking = latest.entry().plan().braking();
        EntryResult entry = simulator.run(latest.entry().plan());
        if (!latest.met()) {
            return new Finding(entry, false, Double.NaN);
        }
        int point = decimetre(latest.point());
        for (int back = 1; !allowance.met(entry) && back <= MOST_BACK; back *= 2) {
            point -= back;
            entry = simulator.run(braking.from(point / 10.0));
        }
        if (!allowance.met(entry)) {
            return new Finding(entry, false, Double.NaN);
        }
        double inHand = inHand(entry.plan());
        return inHand >= allowance.inHand() ? new Finding(entry, true, inHand) : new Finding(entry, false, Double.NaN);
    }

    /** Longest single step back, in decimetres, to confirm an answer. */
    private static final int MOST_BACK = 16;

    /**
     * Least distance, m, to the edge of the track that the car keeps with what must be in hand given away: late on the
     * brake, late off it, or too hard; negative infinity if it then does not make the corner, infinite if nothing must
     * be in hand.
     */
    public double leftWithNothingInHand(BrakePlan plan) {
        double left = Double.POSITIVE_INFINITY;
        if (allowance.inHand() > 0) {
            for (Slip slip : Slip.values()) {
                Trial trial = slip.trial(simulator, plan, allowance.inHand());
                if (!trial.met()) {
                    return Double.NEGATIVE_INFINITY;
                }
                left = Math.min(left, -trial.excess().edge());
            }
        }
        return left;
    }

    /** Metres in hand of a plan: see {@link InHand}. */
    public double inHand(BrakePlan plan) {
        return InHand.of(simulator, plan);
    }

    private static int decimetre(double station) {
        return (int) Math.floor(station * 10 + 1e-6);
    }

    /** Last brake point, in decimetres: the foot comes down before the brake is off. */
    private static int last(Braking braking) {
        return decimetre(braking.release().end());
    }

    /** One search along the brake points of one release, for the last that answers one question well. */
    private final class Walk {
        private final Braking braking;
        private final Function<BrakePlan, Trial> question;
        private final int earliest;
        private final Map<Integer, Trial> tried = new HashMap<>();
        private double latestMade = Double.NEGATIVE_INFINITY;

        Walk(Braking braking, Function<BrakePlan, Trial> question) {
            this.braking = braking;
            this.question = question;
            this.earliest = decimetre(simulator.corner().path().start()) + 1;
        }

        Trial at(int point) {
            Trial trial = tried.computeIfAbsent(point, here -> question.apply(braking.from(here / 10.0)));
            if (trial.made()) {
                latestMade = Math.max(latestMade, point / 10.0);
            }
            return trial;
        }

        Trial latest(int guess, int last) {
            int start = Math.max(earliest, Math.min(last, guess));
            Trial first = at(start);
            if (first.met()) {
                return later(first, start, last);
            }
            Trial found = earlier(first, start);
            return found.met() || !first.made() && !first.stopped() ? found : fromTooEarly(found, start, last);
        }

        /**
         * The guess may be too early, as of a car that crawls round: later and later, as long as the corner is made.
         */
        private Trial fromTooEarly(Trial best, int start, int last) {
            Trial closest = best;
            int at = start;
            for (double step = FIRST_EARLIER; at < last; step = Math.min(LONGEST_STEP, step * EARLIER_GROWS)) {
                at = Math.min(last, at + (int) (10 * step));
                Trial trial = at(at);
                if (trial.met()) {
                    return later(trial, at, last);
                }
                if (trial.excess().largest() > closest.excess().largest()) {
                    return closest;
                }
                closest = trial;
            }
            return closest;
        }

        /** The guess keeps the margin: later and later until one fails, or the brake is no longer used. */
        private Trial later(Trial first, int start, int last) {
            Trial low = first;
            int at = start;
            double step = FIRST_LATER;
            while (at < last) {
                double there = Math.min(LONGEST_STEP, -low.excess().largest() * METRES_PER_EXCESS * BEYOND);
                int next = Math.min(last, at + Math.max(1, (int) (10 * Math.max(step / 4, Math.min(2 * step, there)))));
                Trial trial = at(next);
                if (!trial.met()) {
                    return solid(narrowed(low, at, trial, next));
                }
                low = trial;
                at = next;
                step = Math.min(LONGEST_STEP, 2 * step);
            }
            return low;
        }

        /** The guess fails: earlier and earlier until one keeps the margin, or nothing says that one will. */
        private Trial earlier(Trial first, int start) {
            Trial closest = first;
            Trial high = first;
            int at = start;
            int idle = 0;
            int locked = first.lockedStraight() ? 1 : 0;
            double step = FIRST_EARLIER;
            while (locked < HOPELESS && idle < MOST_IDLE && !high.stopped() && at > earliest) {
                double there = high.made()
                        ? Math.max(
                                step / 3, Math.min(LONGEST_STEP, high.excess().largest() * METRES_PER_EXCESS * BEYOND))
                        : step;
                int next = Math.max(earliest, at - (int) Math.ceil(10 * there));
                if (start - next > 10 * FARTHEST) {
                    break;
                }
                Trial trial = at(next);
                if (trial.met()) {
                    Trial found = solid(narrowed(trial, next, high, at));
                    if (found.met()) {
                        return found;
                    }
                    trial = found; // Luck: who is a little early fails.
                }
                if (trial.excess().largest() < closest.excess().largest()) {
                    closest = trial;
                    idle = 0;
                } else if (trial.made()) {
                    idle++;
                }
                locked = trial.lockedStraight() ? locked + 1 : 0;
                high = trial;
                at = next;
                step = Math.min(LONGEST_STEP, step * EARLIER_GROWS);
            }
            return closest;
        }

        /** Earlier and earlier as long as that is quicker, then to the decimetre. */
        private Trial quickest(Trial latest) {
            int high = decimetre(latest.point());
            int middle = high;
            Trial best = latest;
            int step = FIRST_QUICKER;
            int low = Math.max(earliest, middle - step);
            while (low < middle && quicker(at(low), best)) {
                high = middle;
                middle = low;
                best = at(low);
                step *= 2;
                low = Math.max(earliest, middle - step);
            }
            if (best == latest) {
                return latest;
            }
            // The quickest lies between low and high: thirds of what is left, on the longer side.
            while (high - low > 2) {
                boolean later = high - middle > middle - low;
                int next = later ? middle + Math.max(1, (high - middle) / 3) : middle - Math.max(1, (middle - low) / 3);
                Trial trial = at(next);
                if (quicker(trial, best)) {
                    low = later ? middle : low;
                    high = later ? high : middle;
                    middle = next;
                    best = trial;
                } else {
                    high = later ? next : high;
                    low = later ? low : next;
                }
            }
            return best;
        }

        private static boolean quicker(Trial trial, Trial than) {
            return trial.met() && trial.entry().time() < than.entry().time() - QUICKER;
        }

        /** Closes in on the change from keeping the margin to failing it. */
        private Trial narrowed(Trial met, int metAt, Trial failed, int failedAt) {
            Trial low = met;
            Trial high = failed;
            int from = metAt;
            int to = failedAt;
            boolean halve = false;
            while (to - from > 1) {
                int gap = to - from;
                double share = low.excess().shareTo(high.excess());
                if (gap <= LINEAR && share * gap < SURE) {
                    return low;
                }
                int inside = (int) ((halve || Double.isNaN(share) ? 0.5 : share) * gap);
                int next = from + Math.max(1, Math.min(gap - 1, inside));
                Trial trial = at(next);
                if (trial.met()) {
                    low = trial;
                    from = next;
                } else {
                    high = trial;
                    to = next;
                }
                halve = to - from > gap / 2;
            }
            return low;
        }

        /** The trial itself if the margin is kept a little earlier too, or else the one from there, which fails. */
        private Trial solid(Trial found) {
            int point = decimetre(found.point());
            int before = Math.max(earliest, point - decimetre(SOLID));
            if (before == point) {
                return found;
            }
            Trial trial = at(before);
            return trial.met() ? found : trial;
        }
    }
}
