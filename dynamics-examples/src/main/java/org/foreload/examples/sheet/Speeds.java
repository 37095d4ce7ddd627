package org.foreload.examples.sheet;

import java.util.Arrays;
import org.foreload.entry.EntryResult;
import org.foreload.examples.output.Numbers;
import org.foreload.trace.Trace;

/** Speeds and brake along an entry. */
final class Speeds {

    private static final double KMH = 3.6;

    private final Trace profile;

    Speeds(EntryResult entry) {
        this.profile = entry.profile().orElseThrow();
    }

    /** {@code , at 134 km/h}; empty where the car did not get to. */
    String at(double station) {
        Trace.Column s = profile.column("s_m");
        Trace.Column speed = profile.column("speed_mps");
        int last = s.size() - 1;
        if (last < 1 || !(station >= s.at(0) && station <= s.at(last))) {
            return "";
        }
        int i = 1;
        while (i < last && s.at(i) < station) {
            i++;
        }
        double share = (station - s.at(i - 1)) / (s.at(i) - s.at(i - 1));
        return ", at " + kmh(speed.at(i - 1) + share * (speed.at(i) - speed.at(i - 1))) + " km/h";
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
