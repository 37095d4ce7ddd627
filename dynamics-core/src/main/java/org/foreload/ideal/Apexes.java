package org.foreload.ideal;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.foreload.path.Corner;

/** The apexes of the bends that a car slows for. */
public final class Apexes {

    /**
     * Share by which the fastest entry slows for a bend, and speeds up again before the next: with less, two bends are
     * one to a driver, whose speed is some hundredths below it in any case.
     */
    private static final double MARKED = 0.05;

    private Apexes() {}

    /**
     * Stations of the apexes, m, in the order of the road, up to the bend in which the fastest entry is slowest; one at
     * least. A bend reaches from where that entry is fastest before it to where it is fastest after it, or to the end
     * of the line, and its apex is the {@linkplain Corner#apex line's} there.
     *
     * @param bound the fastest entry
     * @param corner what it enters
     */
    public static List<Double> of(IdealProfile bound, Corner corner) {
        Objects.requireNonNull(bound, "bound");
        Objects.requireNonNull(corner, "corner");
        List<Double> fastest = new ArrayList<>(); // Stations before each bend.
        List<Double> speeds = new ArrayList<>(); // Least in each bend.
        boolean slows = false;
        int extreme = 0; // While the car slows, where it is slowest; else where it is fastest.
        for (int i = 0; i < bound.size(); i++) {
            double share = bound.speed(i) / bound.speed(extreme);
            if (slows && share > 1 + MARKED) {
                slows = false;
                speeds.add(bound.speed(extreme));
                extreme = i;
            } else if (!slows && share < 1 / (1 + MARKED)) {
                slows = true;
                fastest.add(bound.station(extreme));
                extreme = i;
            } else if (slows == share < 1) {
                extreme = i;
            }
        }
        int slowest = 0;
        for (int i = 1; i < speeds.size(); i++) {
            slowest = speeds.get(i) < speeds.get(slowest) ? i : slowest;
        }
        List<Double> apexes = new ArrayList<>();
        for (int i = 0; i <= slowest; i++) {
            double from = i == 0 ? corner.path().start() : fastest.get(i);
            double to =
                    i + 1 < fastest.size() ? fastest.get(i + 1) : corner.path().end();
            apexes.add(corner.apex(from, to));
        }
        return List.copyOf(apexes);
    }
}
