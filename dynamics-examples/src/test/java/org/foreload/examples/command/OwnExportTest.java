package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An entry that the program drove is a recording without noise, whose turn-in, speeds and shares it knows. */
class OwnExportTest {

    /** A bend of two radii: the first is less than half as tight as the second. */
    private static final String TIGHTENING = "{\"name\": \"tightening bend\", \"approach_speed_mps\": 50,"
            + " \"approach_length_m\": 250, \"exit_length_m\": 150, \"half_width_m\": 5, \"segments\": ["
            + "{\"type\": \"spiral\", \"length_m\": 20, \"end_radius_m\": 90, \"turn\": \"right\"},"
            + "{\"type\": \"arc\", \"length_m\": 55, \"radius_m\": 90, \"turn\": \"right\"},"
            + "{\"type\": \"spiral\", \"length_m\": 25, \"start_radius_m\": 90, \"end_radius_m\": 40, \"turn\": \"right\"},"
            + "{\"type\": \"arc\", \"length_m\": 31, \"radius_m\": 40, \"turn\": \"right\"},"
            + "{\"type\": \"spiral\", \"length_m\": 20, \"start_radius_m\": 40, \"turn\": \"right\"}]}";

    @TempDir
    private Path directory;

    /**
     * A straight-line braker is shown as one: turn-in, the speed there and the share that is trailed are the entry's.
     */
    @Test
    void aStraightLineBrakerInATighteningBendIsNoTrailBraker() throws IOException {
        Path corner = Files.writeString(directory.resolve("corner.json"), TIGHTENING);
        String[] entry = {
            "entry",
            "--corner",
            corner.toString(),
            "--peak-deceleration",
            "7.5",
            "--release-shape",
            "abrupt",
            "--release-start",
            "0",
            "--release-end",
            "0",
            "--format"
        };
        JsonNode driven = Run.json(with(entry, "json"));
        assertEquals("made it", driven.get("outcome").asText());
        Path file = Files.writeString(
                directory.resolve("entry.csv"), Run.of(with(entry, "csv")).out());
        JsonNode recorded = Run.json("recording", file.toString(), "--format", "json");
        assertEquals(1, recorded.get("corners").size());
        JsonNode measures = recorded.get("corners").get(0).get("measures");
        assertHeld(0, measures, "turn_in_m");
        assertHeld(driven.get("turn_in_speed_mps").asDouble(), measures, "turn_in_speed_mps");
        assertHeld(driven.get("trail_share").asDouble(), measures, "trail_share");
        assertEquals(0, measures.get("turn_in_m").asDouble(), 1);
        assertFalse(Run.of("recording", file.toString()).out().contains("delayed"));
    }

    private static String[] with(String[] words, String last) {
        String[] all = Arrays.copyOf(words, words.length + 1);
        all[words.length] = last;
        return all;
    }

    private static void assertHeld(double truth, JsonNode measures, String name) {
        double low = measures.get(name + "_low").asDouble();
        double high = measures.get(name + "_high").asDouble();
        assertTrue(low <= truth && truth <= high, name + ": " + truth + " in " + low + " to " + high);
    }
}
