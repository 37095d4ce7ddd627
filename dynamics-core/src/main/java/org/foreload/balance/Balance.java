package org.foreload.balance;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import org.foreload.entry.Outcome;
import org.foreload.study.Proportion;

/**
 * What a balance sweep found.
 *
 * @param axis what was changed
 * @param own value that the car has
 * @param rows one per value, in their order; fewer after a stop or an interrupt
 * @param recommended the value to drive with; empty if no value makes the corner, or if not all were tried
 * @param interior whether values on both sides of it were slower or worse, so that it is an optimum and not the end of
 *     the sweep
 * @param reason why, or why there is none, in words
 */
public record Balance(
        BalanceAxis axis,
        double own,
        List<BalanceRow> rows,
        Optional<BalanceRow> recommended,
        boolean interior,
        String reason) {

    /** Copies the rows. */
    public Balance {
        rows = List.copyOf(rows);
    }

    /** Whether every value was tried; false after a stop or an interrupt that left one out. */
    public boolean complete() {
        return rows.size() == axis.values().size();
    }

    /**
     * Recommends the quickest row of the first kind that there is: the front axle locks first and no more entries fail
     * with a small scatter than accepted; no more fail than accepted; fewest fail. What a harder or a later foot does
     * is reported, and does not decide: a single trial that just makes it or just fails says nothing about its
     * neighbours. Where not all values were tried it recommends none.
     */
    static Balance of(BalanceAxis axis, double own, List<BalanceRow> rows) {
        int values = axis.values().size();
        if (rows.size() < values) {
            String stopped = "Stopped after " + rows.size() + " of " + values + " values: none is recommended.";
            return new Balance(axis, own, rows, Optional.empty(), false, stopped);
        }
        Optional<BalanceRow> quickest = quickest(rows, row -> true);
        if (quickest.isEmpty()) {
            return new Balance(
                    axis, own, rows, quickest, false, "No value makes the corner with the margin asked for.");
        }
        double fewest =
                rows.stream().mapToDouble(BalanceRow::failureShare).min().orElse(1);
        BalanceRow chosen = quickest(rows, row -> row.failureShare() <= fewest).orElse(quickest.get());
        String why = "the one that fails least often with a small scatter, though more often than accepted";
        for (Kind kind : Kind.values()) {
            Optional<BalanceRow> found = quickest(rows, kind.wanted);
            if (found.isPresent()) {
                chosen = found.get();
                why = kind.words;
                break;
            }
        }
        StringBuilder reason = new StringBuilder(String.format(
                Locale.ROOT,
                "%s is %s (%d of %d fail)",
                value(axis, chosen.value()),
                why,
                chosen.failed().map(Proportion::count).orElse(0),
                chosen.failed().map(Proportion::of).orElse(0)));
        if (chosen != quickest.get()) {
            reason.append(String.format(
                    Locale.ROOT,
                    "; %.3f would be %.3f s quicker, but %s",
                    quickest.get().value(),
                    chosen.time() - quickest.get().time(),
                    flaw(quickest.get())));
        }
        chosen.later()
                .ifPresent(outcome -> reason.append("; braked 10 m later it ").append(ends(outcome)));
        int index = rows.indexOf(chosen);
        boolean interior = index > 0 && index < rows.size() - 1;
        reason.append(interior ? "." : edge(chosen, index == 0));
        return new Balance(axis, own, rows, Optional.of(chosen), interior, reason.toString());
    }

    /** Kinds of rows, the most wanted first. */
    private enum Kind {
        STEADY(
                row -> row.steady() && !row.rearLocksFirst(),
                "the quickest that locks the front axle first and fails at most one time in ten with a small scatter"),
        LOOSE(
                BalanceRow::steady,
                "the quickest that fails at most one time in ten with a small scatter, though the rear axle locks first");

        private final Predicate<BalanceRow> wanted;
        private final String words;

        Kind(Predicate<BalanceRow> wanted, String words) {
            this.wanted = wanted;
            this.words = words;
        }
    }

    private static String flaw(BalanceRow row) {
        return row.rearLocksFirst()
                ? "its rear axle locks first"
                : String.format(Locale.ROOT, "%.0f %% fail with a small scatter", 100 * row.failureShare());
    }

    private static String ends(Outcome outcome) {
        return switch (outcome) {
            case MADE_IT -> "makes the corner, too";
            case RAN_WIDE -> "runs wide";
            case SPUN -> "spins";
            case LOCKED_UP -> "locks up";
            case STOPPED -> "stops before the corner";
            case ROLLED_OVER -> "rolls over";
        };
    }

    /** Says why a value at the end of a sweep is best. */
    private static String edge(BalanceRow chosen, boolean low) {
        String limit = chosen.best().limit().words();
        return String.format(
                Locale.ROOT,
                ". It is the %s end of the sweep, so there is no optimum inside it: the %s limits this entry, and each step "
                        + "towards that end relieves it or changes nothing.",
                low ? "lower" : "upper",
                limit);
    }

    private static String value(BalanceAxis axis, double value) {
        return String.format(
                Locale.ROOT,
                "A %s of %.3f",
                axis.parameter().name().replace("_m", " m").replace('_', ' '),
                value);
    }

    private static Optional<BalanceRow> quickest(List<BalanceRow> rows, Predicate<BalanceRow> wanted) {
        return rows.stream()
                .filter(row -> row.made() && wanted.test(row))
                .min(Comparator.comparingDouble(BalanceRow::time));
    }
}
