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

    private final List<Range> ranges = new ArrayList<>();

    /**
     * Some lines.
     *
     * @param first counted from 1
     * @param last counted from 1
     * @param reason why they could not be used
     */
    record Range(long first, long last, String reason) {}

    void add(long line, String reason) {
        add(line, line, reason);
    }

    void add(long first, long last, String reason) {
        int size = ranges.size();
        for (int i = size - 1; i >= Math.max(0, size - 3); i--) {
            Range before = ranges.get(i);
            if (before.reason().equals(reason) && first <= before.last() + 1) {
                ranges.set(i, new Range(before.first(), Math.max(before.last(), last), reason));
                return;
            }
        }
        if (size < MOST) {
            ranges.add(new Range(first, last, reason));
        } else {
            long begin = ranges.get(MOST - 1).first();
            ranges.set(MOST - 1, new Range(begin, last, MORE));
        }
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
