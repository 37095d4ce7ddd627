package org.foreload.balance;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
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
 * @param complete whether every value was tried, and compared with its neighbours; false after a stop or an interrupt
 *     that left something out
 * @param recommended the value to drive with; empty if no value makes the corner, or if not all were tried
 * @param interior whether values on both sides of it were slower or worse, so that it is an optimum and not the end of
 *     the sweep
 * @param reason why, or why there is none, in words
 */
public record Balance(
        BalanceAxis axis,
        double own,
        List<BalanceRow> rows,
        boolean complete,
        Optional<BalanceRow> recommended,
        boolean interior,
        String reason) {

    /**
     * Difference of times, s, up to which two values are equally quick as far as the search behind each shows. From a
     * sweep of 1 722 releases in place of the standard one, 24 rows (eight brake shares each of three cars, each in
     * another corner) come out 0.014 s quicker in the mean, 0.085 s at most, and up to 0.019 s slower.
     */
    public static final double ACCURACY = 0.1;

    /** Copies the rows. */
    public Balance {
        Objects.requireNonNull(axis, "axis");
        Objects.requireNonNull(recommended, "recommended");
        Objects.requireNonNull(reason, "reason");
        rows = List.copyOf(Objects.requireNonNull(rows, "rows"));
    }

    /**
     * Recommends the quickest row of the first kind that there is, or the car's own value where that is of the same
     * kind and no slower than {@link #ACCURACY} shows: the front axle locks first and no more entries fail with a small
     * scatter than accepted; no more fail than accepted; fewest fail. What a harder or a later foot does is reported,
     * and does not decide: a single trial that just makes it or just fails says nothing about its neighbours. Where a
     * stop left something out it recommends none.
     */
    static Balance of(BalanceAxis axis, double own, List<BalanceRow> rows, boolean complete) {
        int values = axis.values().size();
        if (!complete) {
            String stopped = rows.size() < values
                    ? "Stopped after " + rows.size() + " of " + values + " values: none is recommended."
                    : "Stopped before all values were compared with their neighbours: none is recommended.";
            return new Balance(axis, own, rows, false, Optional.empty(), false, stopped);
        }
        Optional<BalanceRow> quickest = quickest(rows, row -> true);
        if (quickest.isEmpty()) {
            return new Balance(
                    axis, own, rows, true, quickest, false, "No value makes the corner with the margin asked for.");
        }
        double fewest =
                rows.stream().mapToDouble(BalanceRow::failureShare).min().orElse(1);
        BalanceRow chosen = quickest(rows, row -> row.failureShare() <= fewest).orElse(quickest.get());
        String why = "the one that fails least often with a small scatter, though more often than accepted";
        for (Kind kind : Kind.values()) {
            Optional<BalanceRow> found = preferred(rows, own, kind.wanted);
            if (found.isPresent()) {
                chosen = found.get();
                why = kind.words(chosen, chosen == quickest(rows, kind.wanted).orElseThrow());
                break;
            }
        }
        StringBuilder reason = new StringBuilder(String.format(
                Locale.ROOT,
                "A %s of %s is %s (%d of %d fail)",
                name(axis),
                value(axis, own, chosen.value()),
                why,
                chosen.failed().map(Proportion::count).orElse(0),
                chosen.failed().map(Proportion::of).orElse(0)));
        if (chosen.time() - quickest.get().time() > ACCURACY) {
            reason.append(String.format(
                    Locale.ROOT,
                    "; %s would be %.1f s quicker, but %s",
                    value(axis, own, quickest.get().value()),
                    chosen.time() - quickest.get().time(),
                    flaw(quickest.get())));
        }
        reason.append(hardlySlower(axis, own, rows, chosen));
        chosen.later()
                .ifPresent(outcome -> reason.append("; braked 10 m later it ").append(ends(outcome)));
        int index = rows.indexOf(chosen);
        boolean interior = worse(rows.subList(0, index), chosen) && worse(rows.subList(index + 1, rows.size()), chosen);
        if (interior) {
            reason.append('.');
        } else if (index > 0 && index < rows.size() - 1) {
            reason.append(
                    ". Towards an end of the sweep none is worse, as far as the search shows: it shows no optimum inside.");
        } else {
            reason.append(edge(axis, own, rows, chosen));
        }
        return new Balance(axis, own, rows, true, Optional.of(chosen), interior, kept(own, chosen) + reason);
    }

    /**
     * What is wanted of a row, most first; the car's own value of a kind is recommended before a quicker one of that
     * kind, as long as the difference is no more than the search shows.
     */
    private static Optional<BalanceRow> preferred(List<BalanceRow> rows, double own, Predicate<BalanceRow> wanted) {
        Optional<BalanceRow> quickest = quickest(rows, wanted);
        return quickest(rows, row -> row.value() == own && wanted.test(row))
                .filter(row -> row.time() - quickest.orElseThrow().time() <= ACCURACY)
                .or(() -> quickest);
    }

    /**
     * Whether one of some rows is of a less wanted kind than the chosen one, or slower by more than the search shows.
     */
    private static boolean worse(List<BalanceRow> some, BalanceRow chosen) {
        return some.stream()
                .anyMatch(row -> !row.made() || lessWanted(row, chosen) || row.time() - chosen.time() > ACCURACY);
    }

    /** Says so where what the car has is slower by little more than the search shows: a small change may turn that. */
    private static String hardlySlower(BalanceAxis axis, double own, List<BalanceRow> rows, BalanceRow chosen) {
        return quickest(rows, row -> row.value() == own && !lessWanted(row, chosen))
                .map(row -> row.time() - chosen.time())
                .filter(gain -> gain > 0 && gain <= HARDLY * ACCURACY)
                .map(gain -> String.format(
                        Locale.ROOT,
                        "; the %s that you have is %.2f s slower, hardly more than the search shows: they nearly tie",
                        value(axis, own, own),
                        gain))
                .orElse("");
    }

    /** Times what the search shows up to which a difference hardly counts: two times may be off by that. */
    private static final double HARDLY = 2;

    private static String kept(double own, BalanceRow chosen) {
        return chosen.value() == own ? "Keep what you have. " : "";
    }

    /** Kinds of rows, the most wanted first. */
    private enum Kind {
        STEADY(row -> row.steady() && !row.rearLocksFirst(), "locks the front axle first and ", ""),
        LOOSE(BalanceRow::steady, "", ", though the rear axle locks first");

        private final Predicate<BalanceRow> wanted;
        private final String before;
        private final String after;

        Kind(Predicate<BalanceRow> wanted, String before, String after) {
            this.wanted = wanted;
            this.before = before;
            this.after = after;
        }

        /** A row without a wheel that locks has none that locks first. */
        private String words(BalanceRow row, boolean quickest) {
            String locks = row.firstToLock().isPresent() ? before : "";
            return (quickest ? "the quickest" : "as quick, as far as the search shows, as any") + " that " + locks
                    + "fails at most one time in ten with a small scatter" + after;
        }
    }

    /** How many other values make the corner as quickly as the recommended one, as far as the search shows. */
    public int equallyQuick() {
        return (int) recommended.stream()
                .flatMap(chosen -> rows.stream()
                        .filter(row -> row != chosen && row.made() && Math.abs(row.time() - chosen.time()) <= ACCURACY))
                .count();
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

    /** Says what the rows show of a value at the end of the sweep. */
    private static String edge(BalanceAxis axis, double own, List<BalanceRow> rows, BalanceRow chosen) {
        String edge = ". It is the " + (rows.get(0) == chosen ? "lower" : "upper") + " end of the sweep";
        String nothing = edge + ", which shows no optimum inside";
        Optional<BalanceRow> quicker = quickest(rows, row -> row.time() < chosen.time());
        if (quicker.isEmpty()) {
            return nothing + ": none there is quicker.";
        }
        BalanceRow row = quicker.get();
        double gain = chosen.time() - row.time();
        return gain > ACCURACY
                ? nothing + "."
                : String.format(
                        Locale.ROOT,
                        "%s; %s is %.3f s quicker, less than the search shows%s, so that an optimum inside stays open.",
                        edge,
                        value(axis, own, row.value()),
                        gain,
                        lessWanted(row, chosen) ? ", and " + flaw(row) : "");
    }

    private static boolean lessWanted(BalanceRow row, BalanceRow chosen) {
        return chosen.steady() && !row.steady() || !chosen.rearLocksFirst() && row.rearLocksFirst();
    }

    /** {@code front brake share}, {@code CG height}. */
    private static String name(BalanceAxis axis) {
        String unit = axis.parameter().unit();
        String name = axis.parameter().name().replaceAll(unit.isEmpty() ? "" : "_" + unit + "$", "");
        return name.replaceAll("^cg_", "CG_").replace('_', ' ');
    }

    /** In hundredths, which is as fine as a sweep shows; the car's own value as it is. */
    private static String value(BalanceAxis axis, double own, double value) {
        String digits = value == own ? "%.3f %s" : "%.2f %s";
        return String.format(Locale.ROOT, digits, value, axis.parameter().unit())
                .strip();
    }

    private static Optional<BalanceRow> quickest(List<BalanceRow> rows, Predicate<BalanceRow> wanted) {
        return rows.stream()
                .filter(row -> row.made() && wanted.test(row))
                .min(Comparator.comparingDouble(BalanceRow::time));
    }
}
