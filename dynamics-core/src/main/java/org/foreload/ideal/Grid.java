package org.foreload.ideal;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.foreload.grip.GripLimits;
import org.foreload.grip.LocalGrip;
import org.foreload.path.Path;

/**
 * Stations along a line and the limits in the middle of each step between them. The stations are the ends of the line,
 * its kinks, turn-in, and equal steps between these.
 */
final class Grid {

    /**
     * Longest step as a share of the smallest radius of a piece of line. Along a circle speed changes over lengths of
     * the order of its radius; a fiftieth of it keeps the error of the midpoint rule below one in ten thousand.
     */
    private static final double STEP_PER_RADIUS = 0.02;

    /** Pieces shorter than this, m, are merged: kinks that rounding has split. */
    private static final double SHORTEST = 1e-9;

    /** Distance from a kink, m, at which its two sides are read. */
    private static final double BESIDE = 1e-7;

    private static final LocalGrip[] NO_KINK = {};

    private final double[] stations;
    private final LocalGrip[] limits;
    private final Map<Integer, LocalGrip[]> kinks;

    private Grid(double[] stations, LocalGrip[] limits, Map<Integer, LocalGrip[]> kinks) {
        this.stations = stations;
        this.limits = limits;
        this.kinks = kinks;
    }

    static Grid of(Path path, GripLimits grip, double longestStep) {
        double[] stations = stations(path, longestStep);
        LocalGrip[] limits = new LocalGrip[stations.length - 1];
        double[] last = new double[0];
        for (int i = 0; i < limits.length; i++) {
            double[] place = place(path, (stations[i] + stations[i + 1]) / 2);
            limits[i] = Arrays.equals(place, last) ? limits[i - 1] : at(grip, place);
            last = place;
        }
        Map<Integer, LocalGrip[]> kinks = new HashMap<>();
        for (double kink : ends(path)) {
            kinks.put(Arrays.binarySearch(stations, kink), new LocalGrip[] {
                at(grip, place(path, kink - BESIDE)), at(grip, place(path, kink + BESIDE))
            });
        }
        return new Grid(stations, limits, kinks);
    }

    private static double[] place(Path path, double s) {
        return new double[] {
            finite("curvature", s, path.curvature(s)),
            finite("change of curvature", s, path.curvatureGradient(s)),
            finite("grade", s, path.grade(s)),
            finite("banking", s, path.banking(s))
        };
    }

    /** A line that is no line gives no bound: every comparison with NaN is false, and the search would go through. */
    private static double finite(String what, double s, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalStateException(
                    String.format(Locale.ROOT, "%s of the line at %.3f m is %s, which is not finite", what, s, value));
        }
        return value;
    }

    private static LocalGrip at(GripLimits grip, double[] place) {
        return grip.at(place[0], place[1], place[2], place[3]);
    }

    private static double[] stations(Path path, double longestStep) {
        double[] ends = ends(path);
        double[] stations = new double[64];
        int count = 0;
        stations[count++] = ends[0];
        for (int i = 1; i < ends.length; i++) {
            double from = ends[i - 1];
            double length = ends[i] - from;
            int steps = (int) Math.ceil(length / stepFor(path, from, length, longestStep) - SHORTEST);
            for (int k = 1; k <= steps; k++) {
                if (count == stations.length) {
                    stations = Arrays.copyOf(stations, 2 * count);
                }
                stations[count++] = k == steps ? ends[i] : from + length * k / steps;
            }
        }
        return Arrays.copyOf(stations, count);
    }

    private static double[] ends(Path path) {
        double[] kinks = path.kinks();
        double[] all = Arrays.copyOf(kinks, kinks.length + 3);
        all[kinks.length] = path.start();
        all[kinks.length + 1] = path.end();
        all[kinks.length + 2] = Math.max(path.start(), Math.min(path.end(), 0));
        Arrays.sort(all);
        int count = 1;
        for (double station : all) {
            if (station - all[count - 1] > SHORTEST) {
                all[count++] = station;
            }
        }
        return Arrays.copyOf(all, count);
    }

    private static double stepFor(Path path, double from, double length, double longestStep) {
        double sharpest = 0;
        // Just inside both ends, since curvature may jump at them.
        for (double share : new double[] {1e-6, 0.25, 0.5, 0.75, 1 - 1e-6}) {
            double s = from + share * length;
            sharpest = Math.max(sharpest, Math.abs(finite("curvature", s, path.curvature(s))));
        }
        return Math.min(longestStep, STEP_PER_RADIUS / sharpest);
    }

    /** Number of steps. */
    int steps() {
        return limits.length;
    }

    /** Station at the start of step {@code i}, m; {@code i} equal to the number of steps is the end of the line. */
    double station(int i) {
        return stations[i];
    }

    /** Length of step {@code i}, m. */
    double length(int i) {
        return stations[i + 1] - stations[i];
    }

    /** Limits just before and just after station {@code i} if that is a kink of the line; empty otherwise. */
    LocalGrip[] kink(int i) {
        return kinks.getOrDefault(i, NO_KINK);
    }

    /** Limits in the middle of step {@code i}. */
    LocalGrip limits(int i) {
        return limits[i];
    }
}
