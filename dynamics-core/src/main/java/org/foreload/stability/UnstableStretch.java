package org.foreload.stability;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.function.IntFunction;

/**
 * A part of an entry in which a small disturbance grows while the steering is held fixed. Between rows the growth rate
 * is taken for a straight line.
 *
 * @param from station at which the growth rate rises through zero, or the first one of the run, m
 * @param to station at which it falls through zero, or the last one of the run, m
 * @param duration s
 * @param doublings how often a disturbance doubles from one end to the other: the growth rate, summed over the time,
 *     over ln 2. Source: the first approximation for a linear system that changes slowly (WKB; C. M. Bender, S. A.
 *     Orszag, Advanced Mathematical Methods, ch. 10, from memory)
 * @param worst the row with the highest growth rate
 * @param cause what did most to it there, in words
 */
public record UnstableStretch(
        double from, double to, double duration, double doublings, StabilityRow worst, String cause) {

    /** Refuses null. */
    public UnstableStretch {
        Objects.requireNonNull(worst, "worst");
        Objects.requireNonNull(cause, "cause");
    }

    /**
     * Those of a run, the one with the highest growth rate first: there the driver has the least time.
     *
     * @param cause of the growth rate of a row, by its number
     */
    static List<UnstableStretch> all(List<StabilityRow> rows, IntFunction<String> cause) {
        List<UnstableStretch> all = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            if (!rows.get(i).stable()) {
                int last = i;
                while (last + 1 < rows.size() && !rows.get(last + 1).stable()) {
                    last++;
                }
                all.add(of(rows, i, last, cause));
                i = last;
            }
        }
        all.sort(Comparator.comparingDouble((UnstableStretch one) -> one.worst().growthRate())
                .reversed());
        return List.copyOf(all);
    }

    private static UnstableStretch of(List<StabilityRow> rows, int first, int last, IntFunction<String> cause) {
        StabilityRow from = first == 0 ? rows.get(first) : crossing(rows.get(first), rows.get(first - 1));
        StabilityRow to = last == rows.size() - 1 ? rows.get(last) : crossing(rows.get(last), rows.get(last + 1));
        double growth = growth(from, rows.get(first)) + growth(rows.get(last), to);
        int worst = first;
        for (int i = first + 1; i <= last; i++) {
            growth += growth(rows.get(i - 1), rows.get(i));
            worst = rows.get(i).growthRate() > rows.get(worst).growthRate() ? i : worst;
        }
        return new UnstableStretch(
                from.station(),
                to.station(),
                to.time() - from.time(),
                growth / Math.log(2),
                rows.get(worst),
                cause.apply(worst));
    }

    /** Where between two rows the growth rate is zero. */
    private static StabilityRow crossing(StabilityRow unstable, StabilityRow stable) {
        double share = unstable.growthRate() / (unstable.growthRate() - stable.growthRate());
        return new StabilityRow(
                unstable.station() + share * (stable.station() - unstable.station()),
                unstable.time() + share * (stable.time() - unstable.time()),
                0,
                unstable.frontMargin(),
                unstable.rearMargin());
    }

    private static double growth(StabilityRow from, StabilityRow to) {
        return (from.growthRate() + to.growthRate()) / 2 * (to.time() - from.time());
    }

    /** The place in words: {@code from 105.3 m to 114.2 m}. */
    public String place() {
        return "from " + Tenths.of(from) + " m to " + Tenths.of(to) + " m";
    }
}
