package org.foreload.examples.recording;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Lines that could not be used, as ranges with a reason; neighbours with the same reason are one. */
final class LeftOut {

    /** Most ranges that are kept; what comes later widens a last one. */
    private static final int MOST = 200;

    private static final String MORE = "various reasons, as above";

    /** Ranges that may grow side by side: one for each column that can be read. */
    private static final int ABREAST = Quantity.values().length;

    /** Longest text that is shown, characters: enough to find it. */
    private static final int LONGEST = 40;

    private final List<Range> ranges = new ArrayList<>();

    /**
     * Some lines.
     *
     * @param first counted from 1
     * @param last counted from 1
     * @param column header of the column whose cell could not be used; empty for whole lines
     * @param text what stood there
     * @param reason why they could not be used
     */
    record Range(long first, long last, String column, String text, String reason) {

        private boolean like(Range other) {
            return column.equals(other.column) && text.equals(other.text) && reason.equals(other.reason);
        }
    }

    void add(long line, String reason) {
        add(line, line, reason);
    }

    void add(long first, long last, String reason) {
        add(new Range(first, last, "", "", reason));
    }

    /** A cell. */
    void add(long line, String column, String text, String reason) {
        add(new Range(line, line, shown(column), shown(text), reason));
    }

    private void add(Range range) {
        int size = ranges.size();
        for (int i = size - 1; i >= Math.max(0, size - ABREAST); i--) {
            Range before = ranges.get(i);
            if (before.like(range) && range.first() <= before.last() + 1) {
                ranges.set(
                        i,
                        new Range(
                                before.first(),
                                Math.max(before.last(), range.last()),
                                range.column(),
                                range.text(),
                                range.reason()));
                return;
            }
        }
        if (size < MOST) {
            ranges.add(range);
        } else {
            long begin = ranges.get(MOST - 1).first();
            ranges.set(MOST - 1, new Range(begin, range.last(), "", "", MORE));
        }
    }

    /** Foreign text as part of one line. */
    private static String shown(String text) {
        String plain = text.strip().replaceAll("[\\p{Cntrl}\u2028\u2029]+", " ");
        return plain.length() > LONGEST ? plain.substring(0, LONGEST) + "…" : plain;
    }

    /** The first lines with the reason that most lines have; nothing where all could be used. */
    Optional<Range> commonest() {
        Map<String, Long> lines = new HashMap<>();
        for (Range range : ranges) {
            lines.merge(range.reason(), range.last() - range.first() + 1, Long::sum);
        }
        Range best = null;
        for (Range range : ranges) {
            best = best == null || lines.get(range.reason()) > lines.get(best.reason()) ? range : best;
        }
        return Optional.ofNullable(best);
    }

    List<Range> ranges() {
        return List.copyOf(ranges);
    }
}
