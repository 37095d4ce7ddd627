package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A corner whose approach is too short to brake on. What is said to be long enough is driven by itself. */
class ShortApproachTest {

    @TempDir
    private Path directory;

    private String corner(int approach) throws IOException {
        Path file = directory.resolve("corner-" + approach + ".json");
        return Files.writeString(file, """
                        {"name": "fast arrival", "approach_speed_mps": 60, "approach_length_m": %d, "exit_length_m": 150,
                         "half_width_m": 5,
                         "segments": [{"type": "spiral", "length_m": 25, "end_radius_m": 45, "turn": "left"},
                                      {"type": "arc", "length_m": 50, "radius_m": 45, "turn": "left"},
                                      {"type": "spiral", "length_m": 25, "start_radius_m": 45, "turn": "left"}]}
                        """.formatted(approach)).toString();
    }

    private static final String SAYS =
            "The approach, 140 m (approach_length_m), is too short to brake on: from 60 m/s it takes 170 m.";

    private static String said(Run run) {
        return (run.out() + run.err()).replaceAll("\\s+", " ");
    }

    @Test
    void aPlanWithoutABrakePointNamesTheApproachThatDoes() throws IOException {
        String out = said(Run.of("entry", "--corner", corner(140)));
        assertTrue(out.contains("No brake point makes the corner"), out);
        assertTrue(out.contains(SAYS), out);
        assertEquals(false, found(160));
        assertEquals(true, found(170));
    }

    private boolean found(int approach) throws IOException {
        JsonNode answer = Run.json("entry", "--corner", corner(approach), "--format", "json");
        return answer.get("brake_point_found").asBoolean();
    }

    @Test
    void soDoesASearchThatFindsNothing() throws IOException {
        Run best = Run.of("best", "--restarts", "0", "--quiet", "--corner", corner(140));
        assertEquals(1, best.status());
        assertTrue(
                said(best).contains("no release that was tried makes this corner with the margin asked for. " + SAYS));
    }

    /** Where no braking at all would do, the refusal of the speed names what would. */
    @Test
    void aSpeedThatIsTooHighNamesTheApproachToo() throws IOException {
        String line = said(Run.of("ideal", "--corner", corner(60)));
        assertTrue(line.contains("; or the approach (approach_length_m), 60 m, at least 120 m long"), line);
        assertEquals(2, Run.of("ideal", "--corner", corner(110)).status());
        assertEquals(0, Run.of("ideal", "--corner", corner(120)).status());
    }

    /** With a margin that nobody keeps a longer approach does not help, and is not named. */
    @Test
    void anotherCauseIsNotBlamedOnTheApproach() throws IOException {
        String out = said(Run.of("entry", "--front-margin", "0.9", "--corner", corner(140)));
        assertTrue(out.contains("No brake point makes the corner"), out);
        assertFalse(out.contains("too short"), out);
    }
}
