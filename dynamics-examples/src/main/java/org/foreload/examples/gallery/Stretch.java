package org.foreload.examples.gallery;

import java.util.stream.IntStream;
import org.foreload.entry.EntryResult;
import org.foreload.trace.Trace;

/**
 * The part of a run that is worth looking at.
 *
 * @param trace the run
 * @param from first station, m
 * @param to last station, m
 */
record Stretch(Trace trace, double from, double to) {

    /** Metres before the brake point. */
    private static final double BEFORE = 15;

    /** Metres after the last of release, apex and minimum of speed, and the same as a share of the way there. */
    private static final double AFTER = 15;

    private static final double AFTER_SHARE = 0.4;

    /** From shortly before the brake point to shortly after the slowest place, or as far as the car got. */
    static Stretch of(EntryResult entry, double apex) {
        Trace trace = entry.profile().orElseThrow(() -> new IllegalArgumentException("the entry has no profile"));
        double last = Math.max(apex, entry.braked() ? entry.plan().release().end() : 0);
        if (Double.isFinite(entry.minimumSpeedAt()) && entry.made()) {
            last = Math.max(last, entry.minimumSpeedAt());
        }
        double first = entry.braked() ? Math.min(0, entry.plan().brakePoint()) : 0;
        return new Stretch(trace, first - BEFORE, last + AFTER + AFTER_SHARE * last);
    }

    /** The same stations of another run. */
    Stretch of(Trace other) {
        return new Stretch(other, from, to);
    }

    /** A column, of the rows inside only. */
    double[] column(String name) {
        double[] stations = trace.column("s_m").values();
        double[] values = trace.column(name).values();
        return IntStream.range(0, stations.length)
                .filter(i -> stations[i] >= from && stations[i] <= to)
                .mapToDouble(i -> values[i])
                .toArray();
    }

    double[] stations() {
        return column("s_m");
    }
}
