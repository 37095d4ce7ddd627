package org.foreload.examples.recording;

import org.foreload.recording.Channel;
import org.foreload.recording.Recording;

/**
 * How long a lap is, and how long it took, from its rows as they are: enough to find the quickest of a file, without
 * cleaning those that are not wanted.
 *
 * @param length m
 * @param time s
 */
record LapPace(double length, double time) {

    static LapPace of(Recording lap) {
        boolean timed = lap.has(Channel.TIME);
        double[] axis = lap.column(timed ? Channel.TIME : Channel.DISTANCE);
        double span = axis[axis.length - 1] - axis[0];
        if (!timed) {
            return new LapPace(span, integral(axis, lap.column(Channel.SPEED), true));
        }
        if (lap.has(Channel.DISTANCE)) {
            return new LapPace(span(lap.column(Channel.DISTANCE)), span);
        }
        double length = lap.has(Channel.SPEED)
                ? integral(axis, lap.column(Channel.SPEED), false)
                : course(lap.column(Channel.X), lap.column(Channel.Y));
        return new LapPace(length, span);
    }

    /** From the first number to the last. */
    private static double span(double[] values) {
        double first = Double.NaN;
        double last = Double.NaN;
        for (double value : values) {
            first = Double.isNaN(first) ? value : first;
            last = Double.isNaN(value) ? last : value;
        }
        return last - first;
    }

    /** Speed over an axis, or the axis over speed, by the trapezoidal rule; rows without speed are bridged. */
    private static double integral(double[] axis, double[] speed, boolean over) {
        double sum = 0;
        int last = -1;
        for (int i = 0; i < axis.length; i++) {
            if (!Double.isNaN(speed[i])) {
                double mean = last < 0 ? speed[i] : (speed[i] + speed[last]) / 2;
                double step = axis[i] - axis[Math.max(0, last)];
                double part = over ? step / mean : step * mean;
                sum += Double.isFinite(part) ? part : 0;
                last = i;
            }
        }
        return sum;
    }

    private static double course(double[] x, double[] y) {
        double sum = 0;
        int last = -1;
        for (int i = 0; i < x.length; i++) {
            if (!Double.isNaN(x[i]) && !Double.isNaN(y[i])) {
                sum += last < 0 ? 0 : Math.hypot(x[i] - x[last], y[i] - y[last]);
                last = i;
            }
        }
        return sum;
    }
}
