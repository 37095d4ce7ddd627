package org.foreload.limit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.foreload.ideal.IdealProfile;
import org.foreload.path.Path;

/**
 * Where the intervals lie: short in time from a little before the brake to a little after the last bend, long on the
 * straights before and after; kinks of the line, and places where what hands and feet may do changes, are ends of
 * intervals. Were they not, the change would come at the next point, and two meshes would solve two problems.
 */
final class MeshMaker {

    /** How much longer, in time, intervals are where the car goes straight and flat out. */
    private static final double STRAIGHT_FACTOR = 4;

    /** How much shorter they are where the car swings into its turn: from where the wheel is let go to turn-in. */
    private static final double SWING_FACTOR = 2;

    /** Stretch before the quasi-steady brake point, and after the last bend, that counts as busy, s. */
    private static final double BEFORE = 1.0;

    private static final double AFTER = 1.0;

    private static final double SHORTEST = 1e-6;

    private MeshMaker() {}

    /**
     * Ends of intervals, m, rising.
     *
     * @param letGo station, m, before turn-in from which on the wheel may be turned; 0 for one that is never held
     * @param changes other stations, m, where the rules change; those off the path are left out
     */
    static double[] ends(Path path, IdealProfile profile, int intervals, double letGo, double... changes) {
        double[] busy = busy(path, profile);
        double[] kinks = kinks(path, busy, letGo, changes);
        double total = 0;
        double[] work = new double[kinks.length - 1];
        for (int i = 0; i + 1 < kinks.length; i++) {
            double seconds = profile.timeAt(kinks[i + 1]) - profile.timeAt(kinks[i]);
            boolean straight = kinks[i + 1] <= busy[0] + SHORTEST || kinks[i] >= busy[1] - SHORTEST;
            boolean swing = kinks[i] >= letGo - SHORTEST && kinks[i + 1] <= SHORTEST;
            work[i] = straight ? seconds / STRAIGHT_FACTOR : swing ? seconds * SWING_FACTOR : seconds;
            total += work[i];
        }
        List<Double> ends = new ArrayList<>();
        ends.add(kinks[0]);
        for (int i = 0; i + 1 < kinks.length; i++) {
            int pieces = (int) Math.max(1, Math.round(intervals * work[i] / total));
            double from = profile.timeAt(kinks[i]);
            double to = profile.timeAt(kinks[i + 1]);
            for (int k = 1; k < pieces; k++) {
                ends.add(station(profile, kinks[i], kinks[i + 1], from + (to - from) * k / pieces));
            }
            ends.add(kinks[i + 1]);
        }
        return ends.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static double[] busy(Path path, IdealProfile profile) {
        double brake = profile.brakePoint().orElse(0);
        double from = path.start();
        double last = 0;
        for (double kink : path.kinks()) {
            last = Math.max(last, kink);
        }
        double start = Math.min(0, brake);
        double first = station(profile, from, start, profile.timeAt(start) - BEFORE);
        double end = station(profile, last, path.end(), profile.timeAt(last) + AFTER);
        return new double[] {first, end};
    }

    private static double[] kinks(Path path, double[] busy, double letGo, double[] changes) {
        List<Double> all = new ArrayList<>();
        all.add(path.start());
        all.add(busy[0]);
        all.add(letGo);
        all.add(0.0);
        for (double kink : path.kinks()) {
            all.add(kink);
        }
        for (double change : changes) {
            all.add(change);
        }
        all.add(busy[1]);
        all.add(path.end());
        double[] sorted = all.stream()
                .mapToDouble(Double::doubleValue)
                .filter(s -> s >= path.start() && s <= path.end())
                .sorted()
                .toArray();
        int count = 1;
        for (double s : sorted) {
            if (s - sorted[count - 1] > SHORTEST) {
                sorted[count++] = s;
            }
        }
        return Arrays.copyOf(sorted, count);
    }

    /** Station between two others that is reached at a time. */
    private static double station(IdealProfile profile, double from, double to, double time) {
        double low = from;
        double high = to;
        for (int i = 0; i < 50; i++) {
            double middle = (low + high) / 2;
            if (profile.timeAt(middle) < time) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
