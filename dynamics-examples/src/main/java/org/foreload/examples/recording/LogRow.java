package org.foreload.examples.recording;

import java.util.Arrays;
import java.util.List;

/**
 * One line of a table after the other, taken apart into cells. A line without quotation marks is split where its
 * separators are, and its numbers are read where they stand, without a text for each; one with quotation marks goes
 * through {@link Layout#cells}, which is what the first is tested against. A line never goes on in the next: see
 * {@link LineReader}.
 */
final class LogRow {

    private static final int FIRST = 64;

    private final Layout layout;
    private final char separator;
    private final boolean spaces;
    private char[] line = {};
    private List<String> quoted = List.of();
    private int[] ends = new int[FIRST];
    private int size;

    LogRow(Layout layout) {
        this.layout = layout;
        this.separator = layout.format().getDelimiterString().charAt(0);
        this.spaces = layout.format().getIgnoreSurroundingSpaces();
    }

    /** Goes on to the line at which a reader stands. */
    void read(LineReader lines) {
        if (lines.quoted()) {
            read(lines.text());
        } else {
            split(lines.line(), lines.length());
        }
    }

    /** Goes on to a line. */
    void read(String next) {
        if (next.indexOf('"') >= 0) {
            quoted = layout.cells(next);
            size = quoted.size();
        } else {
            split(next.toCharArray(), next.length());
        }
    }

    private void split(char[] next, int length) {
        quoted = List.of();
        line = next;
        size = 0;
        for (int at = 0; at < length; at++) {
            if (next[at] == separator) {
                end(at);
            }
        }
        end(length);
    }

    private void end(int at) {
        if (size == ends.length) {
            ends = Arrays.copyOf(ends, 2 * size);
        }
        ends[size++] = at;
    }

    /** Number of cells. */
    int size() {
        return size;
    }

    /** Whether there is nothing in a cell. */
    boolean blank(int cell) {
        if (!quoted.isEmpty()) {
            return quoted.get(cell).isBlank();
        }
        for (int i = from(cell); i < ends[cell]; i++) {
            if (!Character.isWhitespace(line[i])) {
                return false;
            }
        }
        return true;
    }

    private int from(int cell) {
        return cell == 0 ? 0 : ends[cell - 1] + 1;
    }

    /** What stands in a cell. */
    String text(int cell) {
        if (!quoted.isEmpty()) {
            return quoted.get(cell);
        }
        String text = new String(line, from(cell), ends[cell] - from(cell));
        return spaces ? text.trim() : text;
    }

    /** The number in a cell; NaN if there is none. */
    double number(int cell) {
        if (quoted.isEmpty()) {
            double quick = ShortDecimal.parse(line, from(cell), ends[cell], layout.decimalComma() ? ',' : '.');
            return Double.isNaN(quick) ? layout.longNumber(line, from(cell), ends[cell]) : quick;
        }
        return layout.number(text(cell));
    }
}
