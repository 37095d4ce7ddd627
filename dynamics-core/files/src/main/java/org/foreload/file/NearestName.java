package org.foreload.file;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Finds the known name that a mistyped one was probably meant to be. */
public final class NearestName {

    private NearestName() {}

    /**
     * The known name nearest to {@code name}, if one is near: a name that begins like it ({@code mass} for
     * {@code mass_kg}), or at most a third of its letters away.
     */
    public static Optional<String> of(String name, Collection<String> known) {
        String wanted = name.toLowerCase(Locale.ROOT);
        Comparator<String> byDistance = Comparator.comparingInt(k -> distance(wanted, k.toLowerCase(Locale.ROOT)));
        Optional<String> nearest = known.stream().min(byDistance);
        Optional<String> beginning = known.stream()
                .filter(k -> isBeginning(wanted, k.toLowerCase(Locale.ROOT)))
                .min(byDistance);
        return beginning.or(() ->
                nearest.filter(k -> distance(wanted, k.toLowerCase(Locale.ROOT)) <= Math.max(1, k.length() / 3)));
    }

    /** The known names that are most like {@code name}, the most like first, however far away. */
    public static List<String> several(String name, Collection<String> known, int count) {
        String wanted = name.toLowerCase(Locale.ROOT);
        return known.stream()
                .sorted(Comparator.comparingDouble(k -> unlikeness(wanted, k.toLowerCase(Locale.ROOT))))
                .limit(count)
                .toList();
    }

    /** Distance as a share of the longer word, so that short names are not most like everything. */
    private static double unlikeness(String a, String b) {
        return (double) distance(a, b) / Math.max(a.length(), b.length());
    }

    /** Whole words at the front, as in a name without its unit, or three letters. */
    private static boolean isBeginning(String wanted, String name) {
        return !wanted.isEmpty() && name.startsWith(wanted + "_") || wanted.length() >= 3 && name.startsWith(wanted);
    }

    /** Levenshtein distance: insertions, deletions and replacements that turn one word into the other. */
    private static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int replaced = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(replaced, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
