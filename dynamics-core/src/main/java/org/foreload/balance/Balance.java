package org.foreload.balance;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import org.foreload.entry.Outcome;

/**
 * What a balance sweep found.
 *
 * @param axis what was changed
 * @param own value that the car has
 * @param rows one per value, in their order
 * @param recommended the value to drive with; empty if no value makes the corner
 * @param interior whether values on both sides of it were slower or worse, so that it is an optimum and not the end of
 *     the sweep
 * @param reason why, in words
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

    /**
     * Recommends the quickest row of the first kind that there is: the front axle locks first and a harder foot makes
     * the corner, too; the front axle locks first and a harder foot does not spin the car; a harder foot does not spin
     * it; any. What a later foot does is told, and does not decide: past the latest brake point there is trouble with
     * any balance.
     */
    static Balance of(BalanceAxis axis, double own, List<BalanceRow> rows) {
        Optional<BalanceRow> quickest = quickest(rows, row -> true);
        if (quickest.isEmpty()) {
            return new Balance(
                    axis, own, rows, quickest, false, "No value makes the corner with the margin asked for.");
        }
        BalanceRow chosen = quickest.get();
        String why = "the quickest, though a foot 5 % harder spins it, as it does at every value";
        for (Kind kind : Kind.values()) {
            Optional<BalanceRow> found = quickest(rows, kind.wanted);
            if (found.isPresent()) {
                chosen = found.get();
                why = kind.words;
                break;
            }
        }
        StringBuilder reason =
                new StringBuilder(String.format(Locale.ROOT, "%s is %s", value(axis, chosen.value()), why));
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
        FORGIVING(
                row -> row.forgivesHarder() && !row.rearLocksFirst(),
                "the quickest whose front axle locks first and that still makes the corner with a foot 5 % harder"),
        CALM(
                row -> !row.spinsIfHarder() && !row.rearLocksFirst(),
                "the quickest whose front axle locks first and that a foot 5 % harder does not spin"),
        LOOSE(
                row -> !row.spinsIfHarder(),
                "the quickest that a foot 5 % harder does not spin, though its rear axle locks first");

        private final Predicate<BalanceRow> wanted;
        private final String words;

        Kind(Predicate<BalanceRow> wanted, String words) {
            this.wanted = wanted;
            this.words = words;
        }
    }

    private static String flaw(BalanceRow row) {
        if (row.rearLocksFirst()) {
            return "its rear axle locks first";
        }
        return row.spinsIfHarder() ? "a foot 5 % harder spins it" : "a foot 5 % harder does not make the corner";
    }

    private static String ends(Outcome outcome) {
        return switch (outcome) {
            case MADE_IT -> "makes the corner, too";
            case RAN_WIDE -> "runs wide";
            case SPUN -> "spins";
            case LOCKED_UP -> "locks up";
        };
    }

    /** Says why a value at the end of a sweep is best. */
    private static String edge(BalanceRow chosen, boolean low) {
        String limit = chosen.best().limit().words();
        return String.format(
                Locale.ROOT,
                ". It is the %s end of the sweep, so there is no optimum inside: the %s limits this entry, and each step "
                        + "towards that end still relieves it or changes nothing.",
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
