package org.foreload.examples.output;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * A table that is made to fit. Step by step, until it does: headings are broken into lines; columns of sentences are
 * taken out and their sentences stand below, each under the first cell of its row; the columns that are left are set
 * below each other, each part with the first column, which is a number or a name.
 *
 * @param headings one for each column
 * @param rows the cells
 * @param right which columns are aligned to the right
 */
record WideTable(List<String> headings, List<List<String>> rows, List<Boolean> right) {

    /** Longest text, in characters, that still is a word or two in a cell and no sentence. */
    static final int SENTENCE = 40;

    private static final int GAP = 2;

    WideTable {
        headings = List.copyOf(headings);
        rows = List.copyOf(rows);
        right = List.copyOf(right);
    }

    /** Head and rows as lines of cells; the head takes several lines where it had to be broken. */
    List<List<String>> lines() {
        List<List<String>> lines = new ArrayList<>();
        List<List<String>> heads = new ArrayList<>();
        int deepest = 1;
        int most = headingWidth();
        for (int i = 0; i < headings.size(); i++) {
            List<String> head = Prose.lines(headings.get(i), "", "", columnWidth(i, most));
            heads.add(head);
            deepest = Math.max(deepest, head.size());
        }
        for (int line = 0; line < deepest; line++) {
            List<String> cells = new ArrayList<>();
            for (List<String> head : heads) {
                int at = line - (deepest - head.size());
                cells.add(at < 0 ? "" : head.get(at));
            }
            lines.add(cells);
        }
        lines.addAll(rows);
        return lines;
    }

    /** Tables that fit, without the columns whose sentences stand below. */
    List<WideTable> parts() {
        List<WideTable> parts = new ArrayList<>();
        List<Integer> part = new ArrayList<>();
        for (int column : shown()) {
            part.add(column);
            if (part.size() > 2 && !only(part).fits(1)) {
                part.remove(part.size() - 1);
                parts.add(only(part));
                part = new ArrayList<>(List.of(0, column));
            }
        }
        parts.add(only(part));
        return parts;
    }

    /** The sentences that found no place in the table: for each column its heading, then a line for each row. */
    List<String> reasons() {
        Set<Integer> shown = shown();
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < headings.size(); i++) {
            if (!shown.contains(i)) {
                lines.add(headings.get(i) + ":");
                for (List<String> row : rows) {
                    lines.addAll(Prose.lines(row.get(0) + ": " + row.get(i), "  ", "    ", Prose.WIDTH));
                }
            }
        }
        return lines;
    }

    private Set<Integer> shown() {
        Set<Integer> shown = new LinkedHashSet<>();
        for (int i = 0; i < headings.size(); i++) {
            shown.add(i);
        }
        while (!only(List.copyOf(shown)).fits(1)) {
            int widest = shown.stream()
                    .skip(1)
                    .max((a, b) -> cellWidth(a) - cellWidth(b))
                    .orElse(0);
            if (cellWidth(widest) <= SENTENCE) {
                break;
            }
            shown.remove(widest);
        }
        return shown;
    }

    private WideTable only(List<Integer> columns) {
        return new WideTable(
                columns.stream().map(headings::get).toList(),
                rows.stream()
                        .map(row -> columns.stream().map(row::get).toList())
                        .toList(),
                columns.stream().map(right::get).toList());
    }

    /**
     * The widest that a heading may be, in characters, where its column does not need more: no narrower than need be.
     */
    private int headingWidth() {
        int most = Prose.WIDTH;
        while (most > 1 && !fits(most)) {
            most--;
        }
        return most;
    }

    private boolean fits(int heading) {
        int width = -GAP;
        for (int i = 0; i < headings.size(); i++) {
            width += GAP + columnWidth(i, heading);
        }
        return width <= Prose.WIDTH;
    }

    private int columnWidth(int column, int heading) {
        int own = Math.min(heading, Prose.width(headings.get(column)));
        return Math.max(cellWidth(column), Math.max(longestWord(column), own));
    }

    private int cellWidth(int column) {
        return rows.stream().mapToInt(row -> Prose.width(row.get(column))).max().orElse(0);
    }

    private int longestWord(int column) {
        int longest = 0;
        for (String word : headings.get(column).split(" ")) {
            longest = Math.max(longest, Prose.width(word));
        }
        return longest;
    }
}
