package org.foreload.recording;

/**
 * When a foot came down: the rise of the brake, fitted by half a cosine between rest and peak, followed back to its
 * start. A threshold alone would be late by the time that the foot takes to reach it.
 */
final class BrakeOnset {

    /** Shares of the peak between which the rise is read. */
    private static final double LOW = 0.1;

    private static final double HIGH = 0.7;

    /** Share of a half-cosine rise that has passed at those levels: acos(1 − 2q)/π. */
    private static final double LOW_PHASE = Math.acos(1 - 2 * LOW) / Math.PI;

    private static final double HIGH_PHASE = Math.acos(1 - 2 * HIGH) / Math.PI;

    /** Rounds of Gauss and Newton; each gains about a digit. */
    private static final int ROUNDS = 8;

    private BrakeOnset() {}

    /**
     * Time at which the brake leaves rest, s.
     *
     * @param time of each row
     * @param brake at each row, zero at rest
     * @param rest last row that is clearly at rest before the rise
     * @param peak row of the peak
     * @param level brake at the peak
     */
    static double find(double[] time, double[] brake, int rest, int peak, double level) {
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
