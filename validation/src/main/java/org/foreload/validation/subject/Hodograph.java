package org.foreload.validation.subject;

import org.foreload.entry.EntryResult;
import org.foreload.path.Path;
import org.foreload.trace.Trace;

/**
 * The law behind the free optimum: no car changes its velocity vector by more than the greatest acceleration times the
 * time. It holds for every driver on every line, so also for a simulated one.
 */
public final class Hodograph {

    /**
     * Shortest time, s, over which the change is judged: the course is read off a sampled offset, to 1e-4 rad or so.
     */
    private static final double SHORTEST = 0.5;

    private Hodograph() {}

    /**
     * Largest change of the velocity vector over time and limit, between any two rows of a run.
     *
     * @param entry a run with its profile
     * @param path the line it was driven on
     * @param limit greatest acceleration that the tyres can give, m/s²
     */
    public static double largestShare(EntryResult entry, Path path, double limit) {
        Trace trace = entry.profile().orElseThrow();
        double[] s = trace.column("s_m").values();
        double[] time = trace.column("time_s").values();
        double[] speed = trace.column("speed_mps").values();
        double[] offset = trace.column("offset_m").values();
        int rows = s.length - 2;
        double[] vx = new double[rows];
        double[] vy = new double[rows];
        for (int i = 0; i < rows; i++) {
            int row = i + 1;
            double drift = slope(s, offset, row) / (1 - offset[row] * path.curvature(s[row]));
            double course = path.heading(s[row]) + Math.atan(drift);
            vx[i] = speed[row] * Math.cos(course);
            vy[i] = speed[row] * Math.sin(course);
        }
        double largest = 0;
        for (int i = 0; i < rows; i++) {
            for (int j = i + 1; j < rows; j++) {
                double duration = time[j + 1] - time[i + 1];
                if (duration >= SHORTEST) {
                    largest = Math.max(largest, Math.hypot(vx[j] - vx[i], vy[j] - vy[i]) / (duration * limit));
                }
            }
        }
        return largest;
    }

    /** Slope of the parabola through three rows, in the middle one. */
    private static double slope(double[] x, double[] y, int i) {
        double before = x[i] - x[i - 1];
        double after = x[i + 1] - x[i];
        double left = (y[i] - y[i - 1]) / before;
        double right = (y[i + 1] - y[i]) / after;
        return (left * after + right * before) / (before + after);
    }
}
