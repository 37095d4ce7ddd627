package org.foreload.strategy;

import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import java.util.function.Predicate;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;

/** One search along the brake points of one release, for the last or the quickest that answers one question well. */
final class BrakePointWalk {

    /**
     * Distance, m, by which a driver may be early and must still keep the margin: less is a fluke and does not count.
     */
    static final double SOLID = 1;

    /** Metres by which an entry brakes later for one more of excess, roughly: only the first step needs it. */
    private static final double METRES_PER_EXCESS = 4;

    /** First step earlier, m, where the excess says nothing. */
    private static final double FIRST_EARLIER = 2;

    /** First step later, m: the second knows how fast the limits come nearer. */
    private static final double FIRST_LATER = 1;

    /** Each further step is at most so many times as long as the one before. */
    private static final double GROWS = 1.7;

    /** Longest step, m: shorter than most windows of brake points that make a corner. */
    private static final double LONGEST_STEP = 8;

    /** A step aims this much beyond the change, so that it comes to lie on the other side of it. */
    private static final double BEYOND = 1.15;

    /** Trials in a row that make the corner and come no nearer to the margin after which the search ends. */
    private static final int MOST_IDLE = 3;

    /** Within so many decimetres the excess is as good as linear, and the last step need not be tried. */
    private static final int LINEAR = 3;

    /**
     * Decimetres: a release that loses the car from its guess, and from so much earlier or less, is given up. Over so
     * short a way braking earlier only makes the corner easier.
     */
    private static final int NOT_FAR = 150;

    /** Part of a decimetre within which the change must then be. */
    private static final double SURE = 0.5;

    /** Trials in a row that close in by less than half after which the next one halves. */
    private static final int MOST_SLOW = 2;

    /** Time, s, by which an earlier brake point must be quicker to be preferred. */
    private static final double QUICKER = 5e-4;

    /** Trials after which the quickest brake point is known well enough. */
    private static final int MOST_BETWEEN = 10;

    private final Braking braking;
    private final Function<BrakePlan, Trial> question;
    private final int earliest;
    private final int last;
    private final int farthest;
    private final double earlierCosts;
    private final Map<Integer, Trial> tried = new HashMap<>();

    /**
     * @param braking the release
     * @param earliest first brake point that is tried, dm
     * @param last last one, dm
     * @param farthest how far before its guess an answer may lie, m
     * @param earlierCosts time that braking earlier costs by itself, s/m
     * @param question one plan held against what is asked
     */
    BrakePointWalk(
            Braking braking,
            int earliest,
            int last,
            double farthest,
            double earlierCosts,
            Function<BrakePlan, Trial> question) {
        this.braking = braking;
        this.earliest = earliest;
        this.last = last;
        this.farthest = (int) (10 * farthest);
        this.earlierCosts = earlierCosts;
        this.question = question;
    }

    /** A plan, unless nobody waits for its trial any longer. */
    static BrakePlan uninterrupted(BrakePlan plan) {
        if (Thread.currentThread().isInterrupted()) {
            throw new CancellationException("interrupted before the latest brake point was found");
        }
        return plan;
    }

    /** The trial from a point, in decimetres; each is driven once. */
    Trial at(int point) {
        return tried.computeIfAbsent(point, here -> question.apply(braking.from(here / 10.0)));
    }

    /** The latest point tried so far, m, from which the car makes the corner; negative infinity for none. */
    double latestMade() {
        return latest(Trial::made);
    }

    /** The same with the margin. */
    double latestMet() {
        return latest(Trial::met);
    }

    private double latest(Predicate<Trial> which) {
        return tried.values().stream()
                .filter(which)
                .mapToDouble(Trial::point)
                .max()
                .orElse(Double.NEGATIVE_INFINITY);
    }

    /** The trial from the point nearest to a guess that may be tried. */
    Trial first(int guess) {
        return at(Math.max(earliest, Math.min(last, guess)));
    }

    /** The last that keeps the margin, looked for from a guess, in decimetres. */
    Trial latest(int guess) {
        return found(guess);
    }

    /** The quickest that keeps the margin: the last, or an earlier one where that is quicker. */
    Trial quickest(int guess) {
        Trial found = found(guess);
        return found.met() ? quickestFrom(found) : found;
    }

    private Trial found(int guess) {
        Trial first = first(guess);
        if (first.met()) {
            Trial found = later(first);
            return found.met() ? found : earlier(found, MOST_IDLE); // The guess was luck.
        }
        if (!first.made() && !first.stopped()) {
            return earlier(first, MOST_IDLE);
        }
        Trial found = earlier(first, 1);
        if (!found.met()) {
            found = fromTooEarly(found, first);
        }
        return found.met() ? found : earlier(first, MOST_IDLE);
    }

    /** The guess may be too early, as of a car that crawls round: later and later, as long as the corner is made. */
    private Trial fromTooEarly(Trial best, Trial first) {
        Trial closest = best;
        int at = decimetre(first.point());
        for (double step = FIRST_EARLIER; at < last; step = Math.min(LONGEST_STEP, GROWS * step)) {
            at = Math.min(last, at + (int) (10 * step));
            Trial trial = at(at);
            if (trial.met()) {
                return later(trial);
            }
            if (trial.excess().largest() > closest.excess().largest()) {
                return closest;
            }
            closest = trial;
        }
        return closest;
    }

    /** The guess keeps the margin: later and later until one fails. */
    private Trial later(Trial first) {
        Trial before = first;
        Trial low = first;
        while (decimetre(low.point()) < last) {
            Trial trial = at(Math.min(last, decimetre(low.point()) + stepLater(before, low)));
            if (!trial.met()) {
                return solid(narrowed(before, low, trial));
            }
            before = low;
            low = trial;
        }
        return low;
    }

    /** How many decimetres later the first limit is reached, and a little more. */
    private static int stepLater(Trial before, Trial low) {
        double made = low.point() - before.point();
        double there = FIRST_LATER;
        if (made > 0) {
            double reached = BEYOND * low.excess().stepsToGo(before.excess()) * made;
            there = Math.max(0.1, Math.min(Math.min(LONGEST_STEP, 2 * GROWS * made), reached));
        }
        return (int) Math.ceil(10 * there - 1e-6);
    }

    /** The guess fails: earlier and earlier until one keeps the margin, or nothing says that one will. */
    private Trial earlier(Trial first, int mostIdle) {
        Trial closest = first;
        Trial beyond = first;
        Trial high = first;
        int start = decimetre(first.point());
        int end = Math.max(earliest, start - farthest);
        int idle = 0;
        double step = FIRST_EARLIER;
        if (start - end <= NOT_FAR && lost(first) && lost(at(end))) {
            return first;
        }
        while (!high.lockedStraight() && idle < mostIdle && !high.stopped() && decimetre(high.point()) > end) {
            Trial trial = at(Math.max(end, decimetre(high.point()) - stepEarlier(beyond, high, step)));
            if (trial.met()) {
                Trial found = solid(narrowed(trial, trial, high));
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
            beyond = high;
            high = trial;
            step = Math.min(LONGEST_STEP, GROWS * step);
        }
        return closest;
    }

    /** Whether the car goes off, and not because it has braked too early. */
    private static boolean lost(Trial trial) {
        return !trial.made() && !trial.stopped();
    }

    /** How many decimetres earlier the last limit is kept again, and a little more. */
    private static int stepEarlier(Trial beyond, Trial high, double step) {
        double there = step;
        if (high.made()) {
            double made = beyond.point() - high.point();
            double back = made > 0 && beyond.made()
                    ? high.excess().stepsBack(beyond.excess()) * made
                    : high.excess().largest() * METRES_PER_EXCESS;
            there = back > 0 ? Math.min(step, BEYOND * back) : step;
        }
        return (int) Math.ceil(10 * there);
    }

    /** Closes in on the change from keeping the margin to failing it. */
    private Trial narrowed(Trial before, Trial met, Trial failed) {
        Trial inner = before;
        Trial low = met;
        Trial high = failed;
        int slow = 0;
        while (true) {
            int from = decimetre(low.point());
            int gap = decimetre(high.point()) - from;
            double share = low.excess().shareTo(high.excess());
            if (Double.isNaN(share) && inner != low) {
                double made = low.point() - inner.point();
                share = low.excess().stepsToGo(inner.excess()) * made * 10 / gap;
            }
            boolean known = share < 1;
            if (gap <= 1 || gap <= LINEAR && share * gap < SURE) {
                return low;
            }
            int inside = (int) ((slow >= MOST_SLOW || !known ? 0.5 : share) * gap);
            Trial trial = at(from + Math.max(1, Math.min(gap - 1, inside)));
            if (trial.met()) {
                inner = low;
                low = trial;
            } else {
                high = trial;
            }
            slow = decimetre(high.point()) - decimetre(low.point()) > gap / 2 ? slow + 1 : 0;
        }
    }

    /** The trial itself if the margin is kept a little earlier too, or else the one from there, which fails. */
    private Trial solid(Trial found) {
        Trial trial = at(Math.max(earliest, decimetre(found.point()) - decimetre(SOLID)));
        return trial.met() ? found : trial;
    }

    /** Whether the margin is kept from a point, in decimetres, and from a metre before it. */
    boolean isSolid(int point) {
        return at(point).met() && solid(at(point)).met();
    }

    /** First brake point that is tried, dm. */
    int earliest() {
        return earliest;
    }

    /** Earlier and earlier as long as that is quicker, then between the neighbours of the quickest. */
    private Trial quickestFrom(Trial found) {
        Trial best = found;
        Trial high = tried.values().stream()
                .filter(trial -> trial.made() && trial.point() > found.point())
                .min(Comparator.comparingDouble(Trial::point))
                .orElse(found);
        int step = decimetre(SOLID);
        Trial low = at(Math.max(earliest, decimetre(best.point()) - step));
        while (low != best && quicker(low, best)) {
            high = best;
            best = low;
            step *= 2;
            low = at(Math.max(earliest, decimetre(best.point()) - step));
        }
        for (int i = 0; i < MOST_BETWEEN && low.met(); i++) {
            int next = quickestBetween(low, best, high);
            if (next == decimetre(best.point())) {
                break;
            }
            Trial trial = at(next);
            boolean later = trial.point() > best.point();
            if (later
                    && trial.made()
                    && !trial.met()
                    && trial.entry().time() < best.entry().time()) {
                Trial edge = solid(narrowed(low, best, trial)); // The margin decides, and not time.
                return quicker(edge, best) ? edge : best;
            }
            if (quicker(trial, best)) {
                low = later ? best : low;
                high = later ? high : best;
                best = trial;
            } else {
                high = later ? trial : high;
                low = later ? low : trial;
            }
        }
        return best;
    }

    /**
     * Where the parabola of time through three brake points is lowest, in decimetres; the middle one where that
     * promises nothing. Where nothing later makes the corner it is between the first two, unless braking earlier costs
     * what it must.
     */
    private int quickestBetween(Trial low, Trial best, Trial high) {
        int middle = decimetre(best.point());
        double before = best.point() - low.point();
        double after = high.point() - best.point();
        if (!(before > 0.15)) {
            return middle;
        }
        double down = (low.entry().time() - best.entry().time()) / before;
        if (!(after > 0)) {
            return down > FALLING * earlierCosts ? middle : middle - (int) (5 * before);
        }
        double up = (high.entry().time() - best.entry().time()) / after;
        double curvature = (up + down) / (before + after);
        double slope = up - curvature * after;
        if (!(up > 0)) {
            return middle;
        }
        int vertex = decimetre(best.point() - slope / (2 * curvature) + 0.05);
        if (slope * slope > 4 * curvature * QUICKER && vertex != middle) {
            return vertex;
        }
        // Time is convex: no further below its extended chords than this.
        double gainLater = down * after;
        double gainEarlier = up * before;
        if (Math.max(gainLater, gainEarlier) < CREASE) {
            return middle;
        }
        return middle + (int) (10 * (gainLater > gainEarlier ? after : -before) / 3);
    }

    /** Time, s, that a crease between three brake points may hide. */
    private static final double CREASE = 1e-3;

    /**
     * Share of what braking a metre earlier must cost at which the latest brake point is as good as sure the quickest.
     */
    private static final double FALLING = 0.8;

    private static boolean quicker(Trial trial, Trial than) {
        return trial.met() && trial.entry().time() < than.entry().time() - QUICKER;
    }

    /** A station in decimetres, no later than it is. */
    static int decimetre(double station) {
        return (int) Math.floor(station * 10 + 1e-6);
    }
}
