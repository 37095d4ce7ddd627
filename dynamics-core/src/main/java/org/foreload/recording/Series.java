package org.foreload.recording;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoublePredicate;
import java.util.stream.IntStream;
import org.hipparchus.util.KthSelector;

/** Work on columns of numbers over a rising axis. */
final class Series {

    /** Median absolute deviation of a normal law, in standard deviations. */
    private static final double MAD = 0.674489750196;

    private static final KthSelector SELECTOR = new KthSelector();

    private Series() {}

    /** Largest index whose axis value is at most {@code at}; 0 before the start. */
    static int index(double[] axis, double at) {
        int found = Arrays.binarySearch(axis, at);
        return Math.max(0, found >= 0 ? found : -found - 2);
    }

    /** Straight line between rows; the nearest end outside, NaN at NaN. */
    static double at(double[] axis, double[] values, double at) {
        int last = axis.length - 1;
        if (!(at > axis[0] && at < axis[last])) {
            return Double.isNaN(at) ? at : values[at > axis[0] ? last : 0];
        }
        int i = index(axis, at);
        double share = (at - axis[i]) / (axis[i + 1] - axis[i]);
        return values[i] * (1 - share) + values[i + 1] * share;
    }

    /**
     * Where many places lie on an axis: looked up once for all columns.
     *
     * @param rows row before each place
     * @param shares of the way to the next row
     */
    record Places(int[] rows, double[] shares) {

        /** What {@link Series#at} gives for each place. */
        double[] read(double[] values) {
            double[] read = new double[rows.length];
            for (int k = 0; k < read.length; k++) {
                int i = rows[k];
                double share = shares[k];
                read[k] = share == 0 ? values[i] : values[i] * (1 - share) + values[i + 1] * share;
            }
            return read;
        }
    }

    /** Where places that rise lie on an axis. */
    static Places places(double[] axis, double[] rising) {
        int last = axis.length - 1;
        int[] rows = new int[rising.length];
        double[] shares = new double[rising.length];
        int i = 0;
        for (int k = 0; k < rising.length; k++) {
            double at = rising[k];
            while (i < last && axis[i + 1] <= at) {
                i++;
            }
            rows[k] = i;
            shares[k] = i < last && at > axis[i] ? (at - axis[i]) / (axis[i + 1] - axis[i]) : 0;
        }
        return new Places(rows, shares);
    }

    /** First index of the greatest value in a stretch, both ends included. */
    static int highest(double[] values, int from, int to) {
        int highest = from;
        for (int i = from; i <= to; i++) {
            highest = values[i] > values[highest] ? i : highest;
        }
        return highest;
    }

    /** First index of the least value in a stretch, both ends included; the start where the stretch is empty. */
    static int lowest(double[] values, int from, int to) {
        int lowest = from;
        for (int i = from; i <= to; i++) {
            lowest = values[i] < values[lowest] ? i : lowest;
        }
        return lowest;
    }

    /**
     * The samples around each row of an axis through which a straight line is fitted. They and their sums over the axis
     * are the same for every column, so they are looked up once.
     *
     * @param axis rising
     * @param from first sample around each row
     * @param to last one
     * @param sum of the distances from the row
     * @param spread count times the sum of their squares less the square of their sum
     */
    record Windows(double[] axis, int[] from, int[] to, double[] sum, double[] spread) {

        /**
         * A window is wider by this share, so that a sample on its very edge is inside whatever the clock started at.
         */
        private static final double EDGE = 1e-6;

        /**
         * Samples to either side at most: a tenth of a second at 5 kHz. More of them would cost time and add nothing.
         */
        private static final int MOST_SAMPLES = 500;

        /**
         * Windows on an axis.
         *
         * @param halfWidth of each; at least one sample to either side is in it
         */
        static Windows of(double[] axis, double halfWidth) {
            double half = halfWidth * (1 + EDGE);
            int n = axis.length;
            Windows windows = new Windows(axis, new int[n], new int[n], new double[n], new double[n]);
            int low = 0;
            int high = 0;
            for (int i = 0; i < n; i++) {
                while (axis[low] < axis[i] - half) {
                    low++;
                }
                high = Math.max(high, i);
                while (high + 1 < n && axis[high + 1] <= axis[i] + half) {
                    high++;
                }
                int first = Math.max(i - MOST_SAMPLES, Math.min(low, Math.max(0, i - 1)));
                int last = Math.min(i + MOST_SAMPLES, Math.max(high, Math.min(n - 1, i + 1)));
                double sx = 0;
                double sxx = 0;
                for (int k = first; k <= last; k++) {
                    double x = axis[k] - axis[i];
                    sx += x;
                    sxx += x * x;
                }
                windows.from[i] = first;
                windows.to[i] = last;
                windows.sum[i] = sx;
                windows.spread[i] = (last - first + 1) * sxx - sx * sx;
            }
            return windows;
        }

        /** Value at each row of the straight line that fits the samples around it best. */
        double[] smooth(double[] values) {
            return fitted(values, false);
        }

        /** Slope at each row of that line. */
        double[] slope(double[] values) {
            return fitted(values, true);
        }

        /** Rows, or widths of the window, after which the sums are made anew, so that rounding does not add up. */
        private static final int FRESH = 64;

        /** The sums over a window are those of the one before, with what has come and without what has gone. */
        private double[] fitted(double[] values, boolean slope) {
            double[] fitted = new double[values.length];
            double origin = 0;
            double sy = 0;
            double sxy = 0;
            int first = 0;
            int next = 0;
            for (int i = 0; i < fitted.length; i++) {
                boolean far = axis[i] - origin > FRESH * (axis[to[i]] - axis[from[i]]);
                if (i % FRESH == 0 || far) {
                    origin = axis[i];
                    sy = 0;
                    sxy = 0;
                    first = from[i];
                    next = first;
                }
                for (; next <= to[i]; next++) {
                    sy += values[next];
                    sxy += (axis[next] - origin) * values[next];
                }
                for (; first < from[i]; first++) {
                    sy -= values[first];
                    sxy -= (axis[first] - origin) * values[first];
                }
                int count = next - first;
                double about = sxy - (axis[i] - origin) * sy;
                double rise = spread[i] > 0 ? (count * about - sum[i] * sy) / spread[i] : 0;
                fitted[i] = slope ? rise : (sy - rise * sum[i]) / count;
            }
            return fitted;
        }
    }

    /** Value at each row of the straight line that fits the samples around it best. */
    static double[] smooth(double[] axis, double[] values, double half) {
        return Windows.of(axis, half).smooth(values);
    }

    /** Slope at each row of the straight line that fits the samples around it best. */
    static double[] slope(double[] axis, double[] values, double half) {
        return Windows.of(axis, half).slope(values);
    }

    /**
     * Standard deviation of the noise that is white from sample to sample: from second differences, in which a smooth
     * course all but vanishes, by their median, which edges do not move. At least the error of rounding to the finest
     * step that occurs.
     */
    static double noise(double[] values) {
        double white = white(values);
        double finest = Double.POSITIVE_INFINITY;
        for (int i = 0; white == 0 && i < values.length - 2; i++) {
            double step = Math.abs(values[i + 1] - values[i]);
            finest = step > 0 ? Math.min(finest, step) : finest;
        }
        return finest < Double.POSITIVE_INFINITY ? finest / Math.sqrt(12) : white;
    }

    /** The same without the error of rounding: zero where most samples are as those beside them. */
    static double white(double[] values) {
        return over(values, 1);
    }

    /** The same from second differences over so many samples, in which noise that is slower shows as well. */
    static double over(double[] values, int samples) {
        double[] differences = new double[Math.max(0, values.length - 2 * samples)];
        for (int i = 0; i < differences.length; i++) {
            differences[i] = Math.abs(values[i] - 2 * values[i + samples] + values[i + 2 * samples]);
        }
        return differences.length == 0 ? 0 : median(differences) / (MAD * Math.sqrt(6));
    }

    /** The middle one of the numbers; NaN if there are none. */
    static double median(double[] values) {
        return quantile(values, 0.5);
    }

    /** The number below which this share of all lies; NaN if there are none. */
    static double quantile(double[] values, double share) {
        if (values.length == 0) {
            return Double.NaN;
        }
        double[] work = values.clone();
        double place = share * (work.length - 1);
        int i = (int) place;
        // Selection puts nothing smaller behind the one that it finds, which is all that is needed, and spares sorting.
        double low = SELECTOR.select(work, null, i);
        if (place == i) {
            return low;
        }
        double high = Double.POSITIVE_INFINITY;
        for (int k = i + 1; k < work.length; k++) {
            high = Math.min(high, work[k]);
        }
        return low + (place - i) * (high - low);
    }

    /**
     * Missing numbers replaced by the straight line between their neighbours, at the ends by the nearest number; all
     * zero if there is no number at all. Values of which none is missing are given back as they are, not copied.
     */
    static double[] filled(double[] axis, double[] values) {
        if (complete(values)) {
            return values;
        }
        double[] full = values.clone();
        int last = -1;
        for (int i = 0; i <= full.length; i++) {
            if (i == full.length || Double.isFinite(full[i])) {
                bridge(axis, full, last, i);
                last = i;
            }
        }
        return full;
    }

    /** Where one of two was measured, and each either there or both before and behind. */
    static boolean[] either(double[] x, double[] y) {
        int[] knownX = measured(x);
        int[] knownY = measured(y);
        boolean[] either = new boolean[x.length];
        if (knownX.length > 0 && knownY.length > 0) {
            int begin = Math.max(knownX[0], knownY[0]);
            int end = Math.min(knownX[knownX.length - 1], knownY[knownY.length - 1]);
            for (int i = begin; i <= end; i++) {
                either[i] = Double.isFinite(x[i]) || Double.isFinite(y[i]);
            }
        }
        return either;
    }

    /** The rows in which a number was measured. */
    static int[] measured(double[] values) {
        return IntStream.range(0, values.length)
                .filter(i -> Double.isFinite(values[i]))
                .toArray();
    }

    private static boolean complete(double[] values) {
        for (double value : values) {
            if (!Double.isFinite(value)) {
                return false;
            }
        }
        return true;
    }

    private static void bridge(double[] axis, double[] full, int before, int after) {
        for (int k = before + 1; k < after; k++) {
            if (before >= 0 && after < full.length) {
                double share = (axis[k] - axis[before]) / (axis[after] - axis[before]);
                full[k] = full[before] * (1 - share) + full[after] * share;
            } else if (before >= 0) {
                full[k] = full[before];
            } else {
                full[k] = after < full.length ? full[after] : 0;
            }
        }
    }

    /** The numbers that were measured; not copied where that is all of them. */
    static double[] known(double[] values) {
        return complete(values) ? values : kept(values, Double::isFinite);
    }

    /** Steps longer than this many of the longest usual ones are none of the rate. */
    private static final double MISSED_STEPS = 2.5;

    /** Share of all steps that is usual. */
    private static final double USUAL = 0.9;

    /**
     * Rows, two by two, between which numbers are missing for longer than the rate of those that are known warrants.
     *
     * @param least length of a hole, in units of the axis
     */
    static List<int[]> holes(double[] axis, double[] values, double least) {
        int[] known = IntStream.range(0, values.length)
                .filter(i -> i == 0 || i == values.length - 1 || Double.isFinite(values[i]))
                .toArray();
        double[] steps = new double[known.length - 1];
        Arrays.setAll(steps, i -> axis[known[i + 1]] - axis[known[i]]);
        double longest = Math.max(least, MISSED_STEPS * quantile(steps, USUAL));
        return IntStream.range(0, steps.length)
                .filter(i -> steps[i] > longest || steps.length == 1)
                .mapToObj(i -> new int[] {known[i], known[i + 1]})
                .toList();
    }

    /** Those of the numbers that are wanted. */
    static double[] kept(double[] values, DoublePredicate wanted) {
        double[] kept = new double[values.length];
        int count = 0;
        for (double value : values) {
            if (wanted.test(value)) {
                kept[count++] = value;
            }
        }
        return Arrays.copyOf(kept, count);
    }

    /**
     * The resting level of some values: the median of those within this share of the range to both sides of the median
     * of its lower half. To one side alone, that of the least, would be the noise's lower end.
     */
    static double resting(double[] values, double share) {
        double most = Double.NEGATIVE_INFINITY;
        double least = Double.POSITIVE_INFINITY;
        for (double value : values) {
            most = Math.max(most, value);
            least = Math.min(least, value);
        }
        double middle = (least + most) / 2;
        double near = median(kept(values, value -> value <= middle));
        double reach = share * (most - least);
        return median(kept(values, value -> Math.abs(value - near) <= reach));
    }

    /** Values less a level. */
    static double[] less(double[] values, double level) {
        double[] moved = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            moved[i] = values[i] - level;
        }
        return moved;
    }
}
