package org.foreload.examples.sheet;

import java.util.Arrays;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.Handover;
import org.foreload.examples.output.Numbers;

/** Speeds and brake along an entry. */
final class Speeds {

    private static final double KMH = 3.6;

    private final EntryResult entry;

    Speeds(EntryResult entry) {
        this.entry = entry;
    }

    /** {@code , at 134 km/h}; empty where the car did not get to. */
    String at(double station) {
        double speed = Handover.speedAt(entry, station);
        return Double.isNaN(speed) ? "" : ", at " + kmh(speed) + " km/h";
    }

    /** Time, s, at a station, between the rows of a profile. */
    static double between(double[] stations, double[] clock, double station) {
        int i = 1;
        while (i < stations.length - 1 && stations[i] < station) {
            i++;
        }
        double share = (station - stations[i - 1]) / (stations[i] - stations[i - 1]);
        return clock[i - 1] * (1 - share) + clock[i] * share;
    }

    /** The most that the brakes give in an entry, m/s². */
    static double hardest(EntryResult entry) {
        return Arrays.stream(entry.profile().orElseThrow().column("brake_mps2").values())
                .max()
                .orElse(0);
    }

    /** Speed without its unit, from m/s to whole km/h; a dash for NaN. */
    static String kmh(double speed) {
        return Numbers.rounded(KMH * speed, 0);
    }
}
