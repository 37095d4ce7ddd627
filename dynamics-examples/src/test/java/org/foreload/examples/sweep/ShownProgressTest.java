package org.foreload.examples.sweep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ShownProgressTest {

    private final List<String> lines = new ArrayList<>();

    private final ShownProgress progress = ShownProgress.lines(lines::add, new Stop(), "entries");

    private void part(int total) {
        for (int i = 1; i <= total; i++) {
            progress.update(i, total);
        }
    }

    @Test
    void tellsEachTenthOnceAndWhatItCounts() {
        part(200);
        assertEquals(10, lines.size());
        assertEquals("20 of 200 entries", lines.get(0));
        assertEquals("200 of 200 entries", lines.get(9));
    }

    @Test
    void beginsAnewForTheNextPartAlsoWhereItIsAsLong() {
        part(5);
        part(5);
        part(4);
        assertEquals(14, lines.size());
        assertEquals(lines.subList(0, 5), lines.subList(5, 10));
    }

    @Test
    void threadsThatTellLateAreNoNextPart() {
        part(100);
        progress.update(99, 100);
        assertEquals(10, lines.size());
    }

    /** However many sweeps a stage runs. */
    @Test
    void aStageIsOneLine() {
        progress.stage("1 of 2: releases");
        part(200);
        part(5);
        progress.stage("2 of 2: steps");
        part(5);
        assertEquals(List.of("1 of 2: releases", "2 of 2: steps"), lines);
    }

    @Test
    void theBarSaysWhatItCounts() {
        ByteArrayOutputStream terminal = new ByteArrayOutputStream();
        try (ShownProgress bar = ShownProgress.bar(terminal, new Stop(), "pedals")) {
            bar.update(3, 12);
        }
        String drawn = terminal.toString(StandardCharsets.UTF_8);
        assertTrue(drawn.contains("pedals") && drawn.contains("3/12"), drawn);
    }
}
