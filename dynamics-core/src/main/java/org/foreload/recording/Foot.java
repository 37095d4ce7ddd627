package org.foreload.recording;

/** What a foot does to a pedal, whatever its unit: when it came down. */
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
     * @param noise standard deviation of the brake's noise
     */
    static double onset(double[] time, double[] brake, int rest, int peak, double level, double noise) {
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
        if (rising(brake, rest, peak, level) < FEWEST_RISING) {
            return likeliest(time, brake, rest, peak, level, noise);
        }
        return refined(time, brake, first, last, level, start, length);
    }

    /** Rows that are to lie on a rise so that its start and its length can be fitted. */
    private static final int FEWEST_RISING = 2;

    /** Rows that lie clearly between rest and peak. */
    private static int rising(double[] brake, int rest, int peak, double level) {
        int count = 0;
        for (int i = rest; i < peak; i++) {
            count += brake[i] > LOW * level && brake[i] < (1 - LOW) * level ? 1 : 0;
        }
        return count;
    }

    /** Time in which a foot comes down, s: the middle, and the factor that is a standard deviation. Common practice. */
    private static final double USUAL_RISE = 0.2;

    private static final double RISE_FACTOR = 1.5;

    /** Standard deviation of a rise about half a cosine, as a share of its height; common practice, no source. */
    private static final double UNLIKE = 0.03;

    /** Starts, and times of a rise to either side of the usual one, that are weighed, and how far those reach. */
    private static final int WEIGHED = 80;

    private static final int RISES = 6;

    private static final double DEVIATIONS = 2;

    /**
     * The start of a rise of which rows show too little to fit it: the mean of all starts, weighed by how likely the
     * rows are with them, whatever time a foot takes, by how usual that is. A straight line from the last row at rest
     * to the next would begin at the row, up to a period early.
     */
    private static double likeliest(double[] time, double[] brake, int rest, int peak, double level, double noise) {
        double error = Math.hypot(noise, UNLIKE * level);
        double from = time[rest] - USUAL_RISE / 2;
        double step = (time[peak] - from) / WEIGHED;
        double weights = 0;
        double moment = 0;
        for (int k = -RISES; k <= RISES; k++) {
            double deviations = DEVIATIONS * k / RISES;
            double lasts = USUAL_RISE * Math.pow(RISE_FACTOR, deviations);
            for (int i = 0; i < WEIGHED; i++) {
                double start = (i + 0.5) * step;
                double squares = deviations * deviations;
                for (int row = Math.max(0, rest - 1); row <= peak; row++) {
                    double u = Math.max(0, Math.min(1, (time[row] - from - start) / lasts));
                    double left = (brake[row] - level * 0.5 * (1 - Math.cos(Math.PI * u))) / error;
                    squares += left * left;
                }
                double weight = Math.exp(-squares / 2);
                weights += weight;
                moment += weight * start;
            }
        }
        return weights > 0 ? from + moment / weights : time[rest];
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
}
