package org.foreload.comparison;

import java.util.Arrays;
import org.foreload.recording.Run;

/** Lays two runs on each other by the nearest points of their courses. */
final class PositionAlignment {

    /** Distance between the places at which positions are compared, m. */
    private static final double GRID = 5;

    /** Half the width over which shifts by position are smoothed, m. */
    private static final double SMOOTHED = 25;

    private PositionAlignment() {}

    /** The same by position, searched for near another; that one itself if the courses are nowhere near each other. */
    static Alignment of(Alignment near, Run first, Run second) {
        double start = Math.max(near.placeOfFirst(first.first()), near.placeOfSecond(second.first()));
        double end = Math.min(near.placeOfFirst(first.last()), near.placeOfSecond(second.last()));
        int count = (int) ((end - start) / GRID) + 1;
        if (!(end - start > 2 * SMOOTHED)) {
            return near;
        }
        Run.Course one = first.course();
        Run.Course two = second.course();
        double[] along = new double[count];
        double[] raw = new double[count];
        int size = 0;
        for (int i = 0; i < count; i++) {
            double place = start + i * GRID;
            // Once from either run, so that exchanging them turns the sign and no more.
            double guess = near.shiftAt(place);
            double forth = Nearest.station(one, near.first(place), two, near.second(place)) - near.first(place);
            double back = near.second(place) - Nearest.station(two, near.second(place), one, near.first(place));
            boolean found = Double.isFinite(forth) && Double.isFinite(back);
            if (found && Math.abs((forth + back) / 2 - guess) < Alignment.SEARCH) {
                along[size] = place;
                raw[size++] = (forth + back) / 2;
            }
        }
        if (size < count / 2 || size < 2) {
            return near;
        }
        double[] at = Arrays.copyOf(along, size);
        double[] smooth = new double[size];
        for (int i = 0; i < size; i++) {
            smooth[i] = mean(at, raw, i);
        }
        return new Alignment(at, smooth, Alignment.Basis.POSITION, Alignment.Basis.POSITION.error(), near.pairs());
    }

    /** Value of the straight line through the neighbours within the smoothing width, the nearer ones weighing more. */
    private static double mean(double[] at, double[] raw, int i) {
        double n = 0;
        double sx = 0;
        double sy = 0;
        double sxx = 0;
        double sxy = 0;
        int reach = (int) (SMOOTHED / GRID);
        for (int k = Math.max(0, i - reach); k < Math.min(at.length, i + reach + 1); k++) {
            double x = (at[k] - at[i]) / SMOOTHED;
            double weight = Math.max(0, 1 - x * x);
            n += weight;
            sx += weight * x;
            sy += weight * raw[k];
            sxx += weight * x * x;
            sxy += weight * x * raw[k];
        }
        double spread = n * sxx - sx * sx;
        return spread > 1e-9 * n * n ? (sxx * sy - sx * sxy) / spread : sy / n;
    }
}
