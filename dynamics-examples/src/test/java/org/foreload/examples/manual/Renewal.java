package org.foreload.examples.manual;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Brings what a page shows of an answer up to date. Lines that are left out stay left out: each run of shown lines is
 * looked for in what is printed now, by its words and by where its numbers stand, not by their values.
 */
final class Renewal {

    static final String LEFT_OUT = "…";

    /** By so many lines a run may have grown or shrunk: sentences are broken anew where a number has a digit more. */
    private static final int STRETCH = 2;

    /** What a line costs that has no partner, in units of a line that fits. */
    private static final double LEFT_OVER = 0.3;

    private final List<String> printed;
    private final List<String> renewed = new ArrayList<>();
    private int at;

    private Renewal(List<String> printed) {
        this.printed = printed;
    }

    /**
     * What a page should show in the place of what it shows.
     *
     * @param shown lines that the page shows of an answer, a line {@code …} for lines left out
     * @param printed all lines of the answer as it is now
     */
    static List<String> of(List<String> shown, List<String> printed) {
        Renewal renewal = new Renewal(printed);
        List<String> run = new ArrayList<>();
        boolean gap = false;
        for (String line : shown) {
            if (line.equals(LEFT_OUT)) {
                renewal.take(run, gap, false);
                renewal.renewed.add(line);
                run.clear();
                gap = true;
            } else {
                run.add(line);
            }
        }
        renewal.take(run, gap, true);
        return renewal.renewed;
    }

    /** Takes the lines that a run of shown ones has become; with no gap before it, it begins where the last ended. */
    private void take(List<String> run, boolean gap, boolean last) {
        if (run.isEmpty()) {
            return;
        }
        double best = Double.NEGATIVE_INFINITY;
        int from = at;
        int to = at;
        for (int start = at; start <= (gap ? printed.size() : at); start++) {
            for (int size = Math.max(1, run.size() - STRETCH); size <= run.size() + STRETCH; size++) {
                int end = last ? printed.size() : start + size;
                if (end <= printed.size()) {
                    double score = likeness(run, printed.subList(start, end));
                    if (score > best) {
                        best = score;
                        from = start;
                        to = end;
                    }
                }
            }
        }
        renewed.addAll(printed.subList(from, to));
        at = to;
    }

    /**
     * How well lines stand for others in their order, some of either left over: S. B. Needleman, C. D. Wunsch, J. Mol.
     * Biol. 48 (1970) 443-453 (from memory).
     */
    private static double likeness(List<String> run, List<String> lines) {
        double[] before = new double[lines.size() + 1];
        for (int j = 0; j < before.length; j++) {
            before[j] = -LEFT_OVER * j;
        }
        for (int i = 0; i < run.size(); i++) {
            double[] row = new double[before.length];
            row[0] = before[0] - LEFT_OVER;
            for (int j = 0; j < lines.size(); j++) {
                double paired = before[j] + likeness(run.get(i), lines.get(j));
                row[j + 1] = Math.max(paired, Math.max(before[j + 1], row[j]) - LEFT_OVER);
            }
            before = row;
        }
        return before[lines.size()];
    }

    /** One for the same words with other numbers, less for some of them. */
    private static double likeness(String one, String other) {
        if (one.equals(other)) {
            return 1.01;
        }
        Set<String> mine = words(one);
        Set<String> its = words(other);
        if (mine.equals(its)) {
            return 1;
        }
        Set<String> common = new HashSet<>(mine);
        common.retainAll(its);
        Set<String> all = new HashSet<>(mine);
        all.addAll(its);
        return (double) common.size() / all.size();
    }

    private static Set<String> words(String line) {
        return Set.copyOf(
                List.of(line.strip().replaceAll("[-−]?\\d+(\\.\\d+)?", "0").split("\\s+")));
    }
}
