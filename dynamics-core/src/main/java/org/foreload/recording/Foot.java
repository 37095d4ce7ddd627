package org.foreload.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/** What a foot does to a pedal, whatever its unit: when it came down, and what it cannot have done. */
final class Foot {

    /** Shares of the peak between which the rise is read. */
    private static final double LOW = 0.1;

    private static final double HIGH = 0.7;

    /** Share of a half-cosine rise that has passed at those levels: acos(1 − 2q)/π. */
    private static final double LOW_PHASE = Math.acos(1 - 2 * LOW) / Math.PI;

    private static final double HIGH_PHASE = Math.acos(1 - 2 * HIGH) / Math.PI;

    /** Rounds of Gauss and Newton; each gains about a digit. */
    private static final int ROUNDS = 8;

    private Foot() {}

    /**
     * Time at which the brake leaves rest, s: its rise, fitted by half a cosine between rest and peak, followed back to
     * its start. A threshold alone would be late by the time that the foot takes to reach it.
     *
     * @param time of each row
     * @param brake at each row, zero at rest
     * @param rest last row that is clearly at rest before the rise
     * @param peak row of the peak
     * @param level brake at the peak
     */
    static double onset(double[] time, double[] brake, int rest, int peak, double level) {
        double low = crossing(time, brake, rest, peak, LOW * level);
        double high = Math.max(low, crossing(time, brake, rest, peak, HIGH * level));
        double length = (high - low) / (HIGH_PHASE - LOW_PHASE);
        double start = low - LOW_PHASE * length;
        int last = rest;
        while (last < peak && time[last] <= high) {
            last++;
        }
        int first = rest;
        while (first > 0 && time[first] > start - length) {
            first--;
        }
        if (last - first < 4 || !(length > time[last] - time[last - 1])) {
            return start;
        }
        return refined(time, brake, first, last, level, start, length);
    }

    private static double refined(
            double[] time, double[] brake, int first, int last, double level, double start, double length) {
        double t0 = start;
        double span = length;
        for (int round = 0; round < ROUNDS; round++) {
            double a11 = 0;
            double a12 = 0;
            double a22 = 0;
            double b1 = 0;
            double b2 = 0;
            for (int i = first; i <= last; i++) {
                double u = (time[i] - t0) / span;
                double inside = Math.max(0, Math.min(1, u));
                double slope = u > 0 && u < 1 ? 0.5 * Math.PI * Math.sin(Math.PI * u) * level / span : 0;
                double left = brake[i] - level * 0.5 * (1 - Math.cos(Math.PI * inside));
                double j1 = -slope;
                double j2 = -slope * u;
                a11 += j1 * j1;
                a12 += j1 * j2;
                a22 += j2 * j2;
                b1 += j1 * left;
                b2 += j2 * left;
            }
            double determinant = a11 * a22 - a12 * a12;
            if (!(determinant > 1e-12 * a11 * a22)) {
                return start;
            }
            t0 += (a22 * b1 - a12 * b2) / determinant;
            span += (a11 * b2 - a12 * b1) / determinant;
            if (!(Math.abs(t0 - start) <= length && span > length / 3 && span < 3 * length)) {
                return start;
            }
        }
        return t0;
    }

    /** A rise is read for this long, s, and up to this share of what it reaches by then, as the brake's is. */
    private static final double PICKED_UP = 0.5;

    private static final double PICKED_UP_SHARE = 0.4;

    /** Rest, s, that is read with a rise, and starts that are tried for one. */
    private static final double RESTED = 0.1;

    private static final int STARTS = 100;

    /** Powers of time with which a foot may leave rest: at once, or as half a cosine does. */
    private static final int[] POWERS = {1, 2};

    /** Misfits apart by less than this share are the same. */
    private static final double SAME_MISFIT = 1e-6;

    /**
     * Time at which the throttle leaves rest, s: its rise, fitted by the first or the second power of time, whichever
     * is nearer, followed back to its start. A threshold alone would be late by the time that the foot takes to reach
     * it.
     *
     * @param time of each row
     * @param throttle at each row
     * @param asked first row in which it is clearly asked for
     */
    static double pickUp(double[] time, double[] throttle, int asked) {
        int first = Math.max(0, asked - 1);
        double shut = throttle[first];
        double most = throttle[asked];
        for (int i = asked; i < time.length && time[i] <= time[asked] + PICKED_UP; i++) {
            most = Math.max(most, throttle[i]);
        }
        int last = asked;
        while (throttle[last] - shut < PICKED_UP_SHARE * (most - shut)) {
            last++;
        }
        double earliest = 2 * time[first] - time[last] - RESTED;
        while (first > 0 && time[first] > earliest) {
            first--;
        }
        double from = time[first];
        double step = (time[last] - from) / STARTS;
        double[] misfits = new double[STARTS];
        double best = Double.NaN;
        double least = Double.POSITIVE_INFINITY;
        for (int power : POWERS) {
            for (int k = 0; k < STARTS; k++) {
                misfits[k] = misfit(time, throttle, first, last, from + k * step, power);
            }
            int lowest = Series.lowest(misfits, 0, STARTS - 1);
            if (misfits[lowest] < least * (1 - SAME_MISFIT)) {
                least = misfits[lowest];
                // Where rows are few, a stretch of starts may fit as well: its middle.
                int end = lowest;
                while (end + 1 < STARTS && misfits[end + 1] <= least * (1 + SAME_MISFIT)) {
                    end++;
                }
                best = from + step * (lowest + end) / 2;
            }
        }
        return best;
    }

    /** Sum of squares left by the best rise with this start and this power of time, from the best rest. */
    private static double misfit(double[] time, double[] throttle, int first, int last, double start, int power) {
        double n = last - first + 1;
        double sf = 0;
        double sy = 0;
        double ff = 0;
        double fy = 0;
        double yy = 0;
        for (int i = first; i <= last; i++) {
            double f = Math.pow(Math.max(0, time[i] - start), power);
            double y = throttle[i] - throttle[first];
            sf += f;
            sy += y;
            ff += f * f;
            fy += f * y;
            yy += y * y;
        }
        double spread = ff - sf * sf / n;
        double rise = fy - sf * sy / n;
        return yy - sy * sy / n - (spread > 0 ? rise * rise / spread : 0);
    }

    /** Last time before the peak at which the brake rises through a level. */
    private static double crossing(double[] time, double[] brake, int rest, int peak, double level) {
        int i = peak;
        while (i > rest && brake[i - 1] >= level) {
            i--;
        }
        if (i == rest || !(brake[i] > brake[i - 1])) {
            return time[i];
        }
        double share = (level - brake[i - 1]) / (brake[i] - brake[i - 1]);
        return time[i - 1] + Math.max(0, Math.min(1, share)) * (time[i] - time[i - 1]);
    }

    /**
     * Rows in which no foot can have put the pedal, see {@link Recording#impossibleBrakes}.
     *
     * @param time of each row, s
     * @param values at each row, NaN where none was measured
     */
    static int[] impossible(double[] time, double[] values) {
        return new Pedal(time, values).impossible();
    }

    /** A pedal over time. */
    private record Pedal(double[] time, double[] values) {

        /** A foot keeps up what it does for at least this long, s, and this many rows. Common practice, no source. */
        private static final double KEPT_UP = 0.1;

        private static final int FEWEST_KEPT_UP = 3;

        /** No foot goes half the way and back within this, s; the quickest comes down in a tenth of a second. */
        private static final double TWITCH = 0.05;

        private static final double TWITCH_SHARE = 0.5;

        /** Noise never reaches this far: standard deviations. */
        private static final double NOISE = 10;

        /** Ranges beyond all else from which a number that is kept up may be an error code. */
        private static final double CODE = 5;

        /**
         * Error codes that one recording has at most: farther in, numbers are the foot's. Common practice, no source.
         */
        private static final int MOST_CODES = 8;

        /** Usual steps in time that are a hole: as in {@link Run#holes}. */
        private static final double HOLE = 2.5;

        /** Times are rounded by no more than this, s. */
        private static final double ROUNDING = 1e-6;

        int[] impossible() {
            int[] known = Series.measured(values);
            int[] rows = withoutCodes(known);
            if (rows.length < FEWEST_KEPT_UP) {
                return new int[0];
            }
            Range range = range(rows);
            BitSet wrong = new BitSet();
            IntStream.of(known).forEach(wrong::set);
            int[] inside =
                    IntStream.of(rows).filter(i -> range.holds(values[i])).toArray();
            IntStream.of(inside).forEach(wrong::clear);
            twitches(inside, range.used() ? TWITCH_SHARE * range.width() : NOISE * Series.noise(pressed(rows)), wrong);
            return wrong.stream().toArray();
        }

        private double[] pressed(int[] rows) {
            return IntStream.of(rows).mapToDouble(i -> values[i]).toArray();
        }

        /** What the foot keeps up in some rows: the least of it, and how much more the greatest is. */
        private Range range(int[] rows) {
            double rest = leastKeptUp(rows, 1);
            double width = -leastKeptUp(rows, -1) - rest;
            return new Range(rest, width, width > NOISE / TWITCH_SHARE * Series.white(pressed(rows)));
        }

        /**
         * The rows without those that hold error codes: numbers that stand there to the last digit, together in no more
         * than half of the rows, each far beyond all that is kept up else; and whenever the pedal is seen to come to
         * them, or to go from them, it is quicker than any foot. Taken together, since one may follow another. As many
         * as fit, of those farthest out.
         */
        private int[] withoutCodes(int[] rows) {
            int[] left = rows;
            Set<Double> codes = new HashSet<>();
            for (double code : farthestOut(rows)) {
                codes.add(code);
                int[] others = IntStream.of(rows)
                        .filter(i -> !codes.contains(values[i]))
                        .toArray();
                if (others.length < FEWEST_KEPT_UP || 2 * others.length < rows.length) {
                    return left;
                }
                Range range = range(others);
                boolean far = codes.stream().allMatch(one -> range.beyond(one) > CODE * range.width());
                if (range.used() && far && sudden(rows, codes, range)) {
                    left = others;
                }
            }
            return left;
        }

        /** Numbers that recur, and so may be error codes: the one farthest from the middle of all first. */
        private List<Double> farthestOut(int[] rows) {
            if (rows.length == 0) {
                return List.of();
            }
            double[] sorted = pressed(rows);
            Arrays.sort(sorted);
            double middle = sorted[sorted.length / 2];
            List<Double> recurring = new ArrayList<>();
            for (int i = 0; i + FEWEST_KEPT_UP <= sorted.length; i++) {
                boolean first = i == 0 || sorted[i - 1] != sorted[i];
                if (first && sorted[i + FEWEST_KEPT_UP - 1] == sorted[i]) {
                    recurring.add(sorted[i]);
                }
            }
            recurring.sort(Comparator.comparingDouble(one -> -Math.abs(one - middle)));
            return recurring.subList(0, Math.min(MOST_CODES, recurring.size()));
        }

        /**
         * Whether the pedal comes to some numbers, and goes from them, quicker than any foot, wherever it is seen to,
         * and is seen to at all: what happens in a hole is not seen.
         */
        private boolean sudden(int[] rows, Set<Double> codes, Range range) {
            double hole = HOLE * usualStep(rows);
            boolean seen = false;
            boolean holed = false;
            int last = -1;
            for (int i = 0; i < rows.length; i++) {
                holed |= i > 0 && time[rows[i]] - time[rows[i - 1]] > Math.max(hole, TWITCH + ROUNDING);
                boolean there = codes.contains(values[rows[i]]);
                if (!there && !range.holds(values[rows[i]])) {
                    continue;
                }
                if (last >= 0 && !holed && there != codes.contains(values[rows[last]])) {
                    if (time[rows[i]] - time[rows[last]] > TWITCH + ROUNDING) {
                        return false;
                    }
                    seen = true;
                }
                holed = false;
                last = i;
            }
            return seen;
        }

        private double usualStep(int[] rows) {
            double[] steps = IntStream.range(1, rows.length)
                    .mapToDouble(i -> time[rows[i]] - time[rows[i - 1]])
                    .sorted()
                    .toArray();
            return steps[steps.length / 2];
        }

        /** The least that the pedal, times a sign, stays at or below for as long as a foot keeps up what it does. */
        private double leastKeptUp(int[] rows, int sign) {
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i + FEWEST_KEPT_UP <= rows.length; i++) {
                double most = Double.NEGATIVE_INFINITY;
                int k = i;
                while (k < rows.length && (k < i + FEWEST_KEPT_UP || time[rows[k]] <= time[rows[i]] + KEPT_UP)) {
                    most = Math.max(most, sign * values[rows[k++]]);
                }
                least = Math.min(least, most);
            }
            return least;
        }

        /** Adds rows that leave the level on both sides, to one side of it, and are back too soon for a foot. */
        private void twitches(int[] rows, double step, BitSet wrong) {
            for (int i = 1; i < rows.length; i++) {
                double before = values[rows[i - 1]];
                double sign = Math.signum(values[rows[i]] - before);
                int back = i;
                double nearest = Double.POSITIVE_INFINITY;
                while (back < rows.length && sign * (values[rows[back]] - before) > step) {
                    nearest = Math.min(nearest, sign * values[rows[back++]]);
                }
                if (back > i
                        && back < rows.length
                        && time[rows[back]] - time[rows[i - 1]] <= TWITCH
                        && nearest - sign * values[rows[back]] > step) {
                    wrong.set(rows[i], rows[back]);
                    i = back;
                }
            }
        }
    }
    /**
     * What a foot keeps up.
     *
     * @param rest the least
     * @param width how much more the greatest is
     * @param used whether that is more than noise
     */
    private record Range(double rest, double width, boolean used) {

        /** Widths above it, or below it, beyond which a value is none: a vacuum in a brake line is a few bar. */
        private static final double ABOVE = 1;

        private static final double BELOW = 0.25;

        /** Whether a foot can have put the pedal there. */
        boolean holds(double value) {
            return !used || value >= rest - BELOW * width && value <= rest + (1 + ABOVE) * width;
        }

        /** How far a value lies above it, or below it. */
        double beyond(double value) {
            return Math.max(value - rest - width, rest - value);
        }
    }
}
