package org.foreload.recording;

/**
 * How far one channel is behind another that shows the same: the shift at which the two correlate best, to a part of a
 * step by the parabola through the best and its neighbours.
 */
final class Delays {

    /** Longest delay that is looked for, s. */
    private static final double LONGEST = 0.6;

    /**
     * Shorter delays of the speed than this, s, are those of the filters of one logger, or noise: they are left alone.
     */
    private static final double LEAST = 0.04;

    /** Steps in which a delay is looked for, s, and half the width over which both sides are smoothed, s. */
    private static final double STEP = 0.02;

    private static final double HALF_WIDTH = 0.15;

    /** Correlation from which two channels show the same. */
    private static final double SAME = 0.9;

    /** Moments at most that are compared: an hour at 50 Hz. */
    private static final int MOST_MOMENTS = 180_000;

    private Delays() {}

    /**
     * How far the speed lags behind the accelerations, s, as the speed of a satellite receiver does: its slope against
     * the acceleration along the car. Zero where either was not recorded, where they are never alike, and for less than
     * {@value #LEAST} s.
     */
    static double ofSpeed(Signals signals) {
        Recording recording = signals.recording();
        if (!recording.has(Channel.SPEED) || !recording.has(Channel.LONGITUDINAL)) {
            return 0;
        }
        double[] time = signals.time();
        double[] slope = Series.slope(time, signals.filled(Channel.SPEED), HALF_WIDTH);
        double[] along = Series.smooth(time, signals.filled(Channel.LONGITUDINAL), HALF_WIDTH);
        double delay = behind(time, slope, along);
        return Math.abs(delay) >= LEAST ? delay : 0;
    }

    /**
     * How far the deceleration follows the brake, s; NaN where that cannot be seen. Both are smoothed alike.
     *
     * @param time of each row, s
     * @param brake at each row, zero at rest
     * @param along acceleration at each row, m/s²
     */
    static double ofDeceleration(double[] time, double[] brake, double[] along) {
        double[] slowing = new double[along.length];
        for (int i = 0; i < slowing.length; i++) {
            slowing[i] = Math.max(0, -along[i]);
        }
        return behind(time, Series.smooth(time, slowing, HALF_WIDTH), Series.smooth(time, brake, HALF_WIDTH));
    }

    /** How far the first is behind the second, s; NaN where that cannot be seen. */
    private static double behind(double[] time, double[] first, double[] second) {
        double span = time[time.length - 1] - time[0];
        int moments = (int) (span / STEP);
        int reach = (int) Math.round(LONGEST / STEP);
        if (moments < 10 * reach || moments > MOST_MOMENTS) {
            return Double.NaN;
        }
        double[] a = new double[moments];
        double[] b = new double[moments];
        for (int i = 0; i < moments; i++) {
            a[i] = Series.at(time, first, time[0] + i * STEP);
            b[i] = Series.at(time, second, time[0] + i * STEP);
        }
        double[] alike = new double[2 * reach + 1];
        int best = 0;
        for (int k = 0; k < alike.length; k++) {
            alike[k] = alike(a, b, k - reach, reach);
            best = alike[k] > alike[best] ? k : best;
        }
        if (!(alike[best] > SAME) || best == 0 || best == alike.length - 1) {
            return Double.NaN;
        }
        double bend = alike[best - 1] - 2 * alike[best] + alike[best + 1];
        double part = bend < 0 ? (alike[best - 1] - alike[best + 1]) / (2 * bend) : 0;
        return (best - reach + part) * STEP;
    }

    /** Correlation of one channel so many steps later with another. */
    private static double alike(double[] a, double[] b, int later, int margin) {
        double n = 0;
        double sa = 0;
        double sb = 0;
        double saa = 0;
        double sbb = 0;
        double sab = 0;
        for (int i = margin; i < a.length - margin; i++) {
            double x = a[i + later];
            double y = b[i];
            n++;
            sa += x;
            sb += y;
            saa += x * x;
            sbb += y * y;
            sab += x * y;
        }
        double spread = (n * saa - sa * sa) * (n * sbb - sb * sb);
        return spread > 0 ? (n * sab - sa * sb) / Math.sqrt(spread) : 0;
    }
}
