package org.foreload.envelope;

import java.util.ArrayList;
import java.util.List;
import org.foreload.recording.Channel;
import org.foreload.recording.Run;
import org.foreload.trace.Trace;

/**
 * Means of speed and accelerations over short spans of a lap, so that a sample's noise does not count, and neighbours
 * hardly share it.
 *
 * @param speed m/s
 * @param along m/s², positive when slowing
 * @param across m/s²
 */
record Moments(double[] speed, double[] along, double[] across) {

    /** Length of a span, s: a car is held at its limit for longer. */
    private static final double SPAN = 0.3;

    /** Stations at which a run is read, m. */
    private static final double STEP = 1;

    /** Speed, m/s, below which a car does not corner at its limit for long. */
    private static final double SLOWEST = 5;

    /** Acceleration, m/s², from which the engine has a say. */
    private static final double DRIVEN = 1;

    /** Combined acceleration, m/s², below which the car is not being worked. */
    private static final double WORKED = 2;

    /** The worked moments of a run without much drive. */
    static Moments of(Run run) {
        Trace rows = run.resampled(STEP);
        Trace.Column time = rows.column(Channel.TIME.field());
        Trace.Column[] read = {
            rows.column(Channel.SPEED.field()),
            rows.column(Channel.LONGITUDINAL.field()),
            rows.column(Channel.LATERAL.field())
        };
        List<double[]> moments = new ArrayList<>();
        double[] sum = new double[read.length];
        int count = 0;
        double from = time.at(0);
        for (int i = 0; i < rows.rows(); i++) {
            for (int c = 0; c < sum.length; c++) {
                sum[c] += read[c].at(i);
            }
            count++;
            if (time.at(i) - from >= SPAN) {
                add(moments, sum[0] / count, -sum[1] / count, Math.abs(sum[2] / count));
                sum = new double[read.length];
                count = 0;
                from = time.at(i);
            }
        }
        return of(moments);
    }

    private static void add(List<double[]> moments, double speed, double along, double across) {
        if (speed > SLOWEST && along > -DRIVEN && Math.hypot(along, across) > WORKED) {
            moments.add(new double[] {speed, Math.max(0, along), across});
        }
    }

    private static Moments of(List<double[]> rows) {
        double[][] columns = new double[3][rows.size()];
        for (int i = 0; i < rows.size(); i++) {
            for (int c = 0; c < columns.length; c++) {
                columns[c][i] = rows.get(i)[c];
            }
        }
        return new Moments(columns[0], columns[1], columns[2]);
    }

    int size() {
        return speed.length;
    }

    /** All moments of several laps. */
    static Moments joined(List<Moments> laps) {
        List<double[]> rows = new ArrayList<>();
        for (Moments lap : laps) {
            for (int i = 0; i < lap.size(); i++) {
                rows.add(new double[] {lap.speed[i], lap.along[i], lap.across[i]});
            }
        }
        return of(rows);
    }

    /** Those that use at least a share of a limit. */
    Moments worked(Ellipse ellipse, double share) {
        List<double[]> rows = new ArrayList<>();
        for (int i = 0; i < size(); i++) {
            if (ellipse.usedSquare(speed[i], along[i], across[i]) > share * share) {
                rows.add(new double[] {speed[i], along[i], across[i]});
            }
        }
        return of(rows);
    }

    /** A part of them. */
    Moments part(int from, int to) {
        return new Moments(
                java.util.Arrays.copyOfRange(speed, from, to),
                java.util.Arrays.copyOfRange(along, from, to),
                java.util.Arrays.copyOfRange(across, from, to));
    }
}
