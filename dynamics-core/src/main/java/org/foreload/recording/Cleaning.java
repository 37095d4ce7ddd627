package org.foreload.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.foreload.conventions.Checks;

/**
 * How a recording is cleaned, and how its uncertainties are found.
 *
 * <p>All filters are straight lines fitted to the samples within half a width before and behind: their delay is zero,
 * since they look as far ahead as back. At the ends of a run they look to one side.
 *
 * @param halfWidth half the width of the filters, s; at least one sample to either side is used
 * @param speedScaleError standard deviation of a speed sensor's scale, a plain number: how much distance made from
 *     speed can be off where no position corrects it
 * @param coverage share of all intervals that shall hold the true value, 0.5 to 0.999
 * @param resamples how often the run is measured again with its own noise added
 * @param seed of that noise
 */
public record Cleaning(double halfWidth, double speedScaleError, double coverage, int resamples, long seed) {

    /**
     * Filters of a tenth of a second to either side (common practice, no source: a foot moves slower); wheel speeds to
     * half a per cent (a tyre's radius grows and wears by about that; common practice, no source), intervals that hold
     * nine times in ten, from 40 resamples.
     */
    public static final Cleaning STANDARD = new Cleaning(0.1, 0.005, Estimate.USUAL_COVERAGE, 40, 1);

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public Cleaning {
        Checks.within("half_width_s", halfWidth, 0, 10);
        Checks.within("speed_scale_error", speedScaleError, 0, 0.5);
        Checks.within("coverage", coverage, 0.5, 0.999);
        Checks.within("resamples", resamples, 0, 10_000);
    }

    /** The same without intervals: for the laps of which only the scatter counts. */
    public Cleaning withoutResamples() {
        return new Cleaning(halfWidth, speedScaleError, coverage, 0, seed);
    }

    /** The same with another seed. */
    public Cleaning withSeed(long other) {
        return new Cleaning(halfWidth, speedScaleError, coverage, resamples, other);
    }

    /** Changes of a channel from which a rate can be read, and the share of them, or of steps, that is all but all. */
    private static final int FEWEST_CHANGES = 20;

    private static final double ALL_BUT_ALL = 0.9;

    /**
     * Rows that only repeat the number before, because the channel is slower than the table: its changes are two rows
     * apart or more, and equally far but for one row. What stands still for longer is kept as often as it is measured.
     * None where most changes are by the finest step: then the steps are too coarse for the course, not the rate.
     */
    static int[] repeats(double[] values) {
        int[] changes = IntStream.range(1, values.length)
                .filter(i -> Math.abs(values[i] - values[i - 1]) > 0)
                .toArray();
        if (changes.length < FEWEST_CHANGES) {
            return new int[0];
        }
        double[] apart = new double[changes.length - 1];
        Arrays.setAll(apart, i -> changes[i + 1] - changes[i]);
        double least = Series.quantile(apart, 1 - ALL_BUT_ALL);
        double[] usual = Series.kept(apart, rows -> rows <= 2 * least);
        double middle = Series.median(usual);
        double[] sizes = IntStream.of(changes)
                .mapToDouble(i -> Math.abs(values[i] - values[i - 1]))
                .toArray();
        double finest = Arrays.stream(sizes).min().orElseThrow();
        boolean regular = Series.kept(usual, rows -> Math.abs(rows - middle) <= 1).length >= ALL_BUT_ALL * usual.length;
        boolean coarse = Series.kept(sizes, size -> size < 1.5 * finest).length >= ALL_BUT_ALL * sizes.length;
        if (!(least >= 2 && regular) || coarse) {
            return new int[0];
        }
        double every = Series.quantile(usual, ALL_BUT_ALL);
        int[] last = {0};
        return IntStream.range(1, values.length)
                .filter(i -> {
                    boolean measured = values[i] != values[i - 1] || i - last[0] >= every;
                    last[0] = measured ? i : last[0];
                    return !measured && values[i] == values[i - 1];
                })
                .toArray();
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
