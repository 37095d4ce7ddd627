package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A car that is lost on a banked straight, before there is any corner. */
class BankedStraightTest {

    @TempDir
    private Path directory;

    private String said(int bank, String... more) throws IOException {
        Path file = directory.resolve("banked.json");
        Files.writeString(file, """
                {"name": "banked", "approach_speed_mps": 42, "approach_length_m": 220, "exit_length_m": 150,
                 "half_width_m": 5, "banking_deg": %d,
                 "segments": [{"type": "spiral", "length_m": 25, "end_radius_m": 45, "turn": "left"},
                              {"type": "arc", "length_m": 50, "radius_m": 45, "turn": "left"},
                              {"type": "spiral", "length_m": 25, "start_radius_m": 45, "turn": "left"}]}
                """.formatted(bank));
        List<String> words = new ArrayList<>(List.of(more));
        words.addAll(List.of("--corner", file.toString()));
        Run run = Run.of(words.toArray(String[]::new));
        assertEquals(more[0].equals("best") ? 1 : 0, run.status());
        return (run.out() + run.err()).replaceAll("\\s+", " ");
    }

    /** The weight along a road that is banked by 30° is g sin 30° = 4.90 m/s², half of g (ISO 80000-3). */
    @Test
    void whatTheBankTakesIsNamed() throws IOException {
        for (int bank : new int[] {30, -30}) {
            String out = said(bank, "entry", "--brake-point=-80");
            assertTrue(
                    out.contains("a straight that is banked by 30.0°: to stay on it the tyres must hold 4.90 m/s² "
                            + "(0.50 g) across"),
                    out);
        }
        assertTrue(said(30, "entry").contains("banked by 30.0°"));
        String nothing = said(30, "best", "--restarts", "0", "--quiet");
        assertTrue(nothing.contains("margin asked for. The trouble begins on a straight"), nothing);
    }

    /** Whoever fails in the bend, or on a level straight, fails for another cause. */
    @Test
    void anotherCauseIsNotBlamedOnTheBank() throws IOException {
        String inTheBend = said(-10, "entry", "--brake-point=-100");
        assertTrue(inTheBend.contains("ran wide"), inTheBend);
        assertFalse(inTheBend.contains("banked by"), inTheBend);
        String level = said(0, "entry", "--brake-point=-100", "--peak-deceleration", "14", "--as-told");
        assertTrue(level.contains("locks"), level);
        assertFalse(level.contains("banked by"), level);
    }
}
