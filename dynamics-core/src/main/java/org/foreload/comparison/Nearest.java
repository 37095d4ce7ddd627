package org.foreload.comparison;

import org.foreload.path.Path;
import org.foreload.recording.Run;

/** Finds where one run passes another's place. */
final class Nearest {

    /** How far along the other run is looked, m, and in which steps. */
    private static final double REACH = 40;

    private static final double STEP = 4;

    /** Courses farther apart than this, m, are not on one road. */
    private static final double ROAD = 25;

    private Nearest() {}

    /**
     * Station of {@code other} nearest to a station of {@code run}, near a guess; NaN if there is none.
     *
     * @param s station of the run, m
     * @param guess station of the other, m
     */
    static double station(Run.Course run, double s, Run.Course other, double guess) {
        Path.Point place = run.at(s);
        double best = Double.NaN;
        double least = ROAD;
        double low = Math.max(other.first(), guess - REACH);
        double high = Math.min(other.last(), guess + REACH);
        int pieces = (int) Math.ceil((high - low) / STEP);
        for (int i = 0; i < pieces; i++) {
            double from = low + i * STEP;
            double to = Math.min(high, from + STEP);
            Path.Point a = other.at(from);
            Path.Point b = other.at(to);
            double dx = b.x() - a.x();
            double dy = b.y() - a.y();
            double length = dx * dx + dy * dy;
            double share = length > 0 ? ((place.x() - a.x()) * dx + (place.y() - a.y()) * dy) / length : 0;
            double inside = Math.max(0, Math.min(1, share));
            double distance = Math.hypot(a.x() + inside * dx - place.x(), a.y() + inside * dy - place.y());
            if (distance < least) {
                least = distance;
                best = from + inside * (to - from);
            }
        }
        return best;
    }
}
