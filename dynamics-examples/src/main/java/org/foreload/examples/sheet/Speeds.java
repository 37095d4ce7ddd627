package org.foreload.examples.sheet;

import java.util.Arrays;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.Handover;
import org.foreload.examples.answer.Units;

/** Speeds and brake along an entry. */
final class Speeds {

    private final EntryResult entry;
    private final Units units;

    Speeds(EntryResult entry, Units units) {
        this.entry = entry;
        this.units = units;
    }

    /** {@code , at 134 km/h}; empty where the car did not get to. */
    String at(double station) {
        double speed = Handover.speedAt(entry, station);
        return Double.isNaN(speed) ? "" : ", at " + units.speedAlone(speed) + " " + units.speedUnit();
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

    /** The most that the foot asks of the brakes alone in an entry, m/s². */
    static double hardest(EntryResult entry) {
        return most(entry, "brake_mps2");
    }

    /** The most by which the car slows in an entry, m/s², drag included. */
    static double greatest(EntryResult entry) {
        return most(entry, "deceleration_mps2");
    }

    private static double most(EntryResult entry, String column) {
        return Arrays.stream(entry.profile().orElseThrow().column(column).values())
                .max()
                .orElse(0);
    }
}
