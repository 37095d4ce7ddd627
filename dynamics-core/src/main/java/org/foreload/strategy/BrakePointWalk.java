package org.foreload.strategy;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;

/** One search along the brake points of one release, for the last that answers one question well. */
final class BrakePointWalk {

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

    /** Within so many decimetres the excess is as good as linear, and the last step need not be tried. */
    private static final int LINEAR = 3;

    /** Part of a decimetre within which the change must then be. */
    private static final double SURE = 0.5;

    /** Time, s, by which an earlier brake point must be quicker to be preferred. */
    private static final double QUICKER = 5e-4;

    /** First step earlier, in decimetres, from the latest brake point to a quicker one; each further one is longer. */
    private static final int FIRST_QUICKER = 3;

    private final Braking braking;
    private final Function<BrakePlan, Trial> question;
    private final int earliest;
    private final Map<Integer, Trial> tried = new HashMap<>();
    private double latestMade = Double.NEGATIVE_INFINITY;

    /**
     * @param braking the release
     * @param start where the approach begins, m
     * @param question one plan held against what is asked
     */
    BrakePointWalk(Braking braking, double start, Function<BrakePlan, Trial> question) {
        this.braking = braking;
        this.question = question;
        this.earliest = decimetre(start) + 1;
    }

    /** The latest point tried so far, m, from which the car makes the corner; negative infinity for none. */
    double latestMade() {
        return latestMade;
    }

    /** The trial from a point, in decimetres; each is driven once. */
    Trial at(int point) {
        Trial trial = tried.computeIfAbsent(point, here -> question.apply(braking.from(here / 10.0)));
        if (trial.made()) {
            latestMade = Math.max(latestMade, point / 10.0);
        }
        return trial;
    }

    /** The last that keeps it, in decimetres, looked for from a guess up to a last one. */
    Trial latest(int guess, int last) {
        int start = Math.max(earliest, Math.min(last, guess));
        Trial first = at(start);
        if (first.met()) {
            return later(first, start, last);
        }
        Trial found = earlier(first, start);
        return found.met() || !first.made() && !first.stopped() ? found : fromTooEarly(found, start, last);
    }

    /** The guess may be too early, as of a car that crawls round: later and later, as long as the corner is made. */
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
                    ? Math.max(step / 3, Math.min(LONGEST_STEP, high.excess().largest() * METRES_PER_EXCESS * BEYOND))
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
    Trial quickest(Trial latest) {
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

    /** A station in decimetres, no later than it is. */
    static int decimetre(double station) {
        return (int) Math.floor(station * 10 + 1e-6);
    }
}
