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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The verbs that begin with a search: their fields, and what they refuse before they begin. */
class BeyondTheSweepTest {

    /** A short corner, quick to simulate. */
    private static final String CORNER = """
            {"name": "short", "approach_speed_mps": 30, "approach_length_m": 90, "exit_length_m": 40, "half_width_m": 5,
             "segments": [{"type": "spiral", "length_m": 20, "end_radius_m": 35, "turn": "left"},
                          {"type": "arc", "length_m": 40, "radius_m": 35, "turn": "left"},
                          {"type": "spiral", "length_m": 20, "start_radius_m": 35, "turn": "left"}]}
            """;

    @TempDir
    private Path directory;

    private String file(String name, String text) throws IOException {
        return Files.writeString(directory.resolve(name), text).toString();
    }

    @ParameterizedTest
    @ValueSource(strings = {"best", "sensitivity", "risk", "steps", "circuit"})
    void everyVerbExplainsItself(String verb) {
        Run run = Run.of(verb, "--help");
        assertEquals(0, run.status());
        assertTrue(run.out().contains("Example:  foreload " + verb), run.out());
    }

    @ParameterizedTest
    @CsvSource({
        "best, --restarts, -1",
        "best, --evaluations, 3",
        "best, --threads, 0",
        "sensitivity, --drift, 0",
        "risk, --samples, 0",
        "risk, --driver, hero",
        "risk, --pedal-ripple, 2",
        "risk, --accept, 1.5",
        "risk, --failure-cost, -1",
        "steps, --steps, 0",
        "circuit, --circuit, nowhere.json"
    })
    void refusesWhatCannotBeBeforeItBegins(String verb, String option, String value) {
        Run run = Run.of(verb, option, value);
        assertEquals(2, run.status());
        assertEquals("", run.out());
        assertEquals(1, run.err().lines().count(), run.err());
        assertTrue(run.err().contains(value), run.err());
    }

    @Test
    void bestHasTheFieldsThatScriptsRead() throws IOException {
        String words = EveryVerbTest.BEST + ShortCorner.file();
        JsonNode best = Reports.of(words.split(" ")).json();
        assertFalse(best.has("above_bound_parts"), "causes cost half a minute, and are named when asked for");
        for (String field : new String[] {"brake_point_m", "time_s", "bound_time_s", "above_bound", "trail_share"}) {
            assertTrue(best.get(field).isNumber(), field);
        }
        assertEquals("made it", best.get("outcome").asText());
        assertTrue(best.get("margins").get("edge_m").asDouble() > 0);
        assertTrue(best.get("release").get("peak_deceleration_mps2").asDouble() > 0);
        assertEquals(
                best.get("time_s").asDouble() / best.get("bound_time_s").asDouble() - 1,
                best.get("above_bound").asDouble(),
                1e-9);
        assertTrue(best.get("limit_converged").booleanValue());
        JsonNode lost = best.get("lost_to_limit");
        double parts = lost.get("to_turn_in_s").asDouble()
                + lost.get("to_apex_s").asDouble()
                + lost.get("to_exit_s").asDouble();
        assertEquals(best.get("time_s").asDouble() - best.get("limit_time_s").asDouble(), parts, 1e-9);
        assertEquals(
                best.get("time_s").asDouble() / best.get("limit_time_s").asDouble() - 1,
                best.get("above_limit").asDouble(),
                1e-9);
        assertTrue(parts > 0, "quicker than perfect hands and feet by " + -parts);
        JsonNode against = best.get("against_straight_line");
        assertEquals(
                against.get("gain_s").asDouble(),
                against.get("by_braking_s").asDouble()
                        + against.get("turn_in_to_apex_s").asDouble()
                        + against.get("exit_s").asDouble(),
                1e-9);
    }

    @Test
    void riskHasTheFieldsThatScriptsRead() throws IOException {
        JsonNode risk = Run.json(
                "risk",
                "--corner",
                file("corner.json", CORNER),
                "--given",
                "--samples",
                "16",
                "--quiet",
                "--tolerance",
                "1e-4",
                "--format",
                "json",
                "--driver",
                "novice");
        double sum = risk.get("ran_wide").asDouble()
                + risk.get("spun").asDouble()
                + risk.get("locked_up").asDouble();
        assertEquals(risk.get("failure_probability").asDouble(), sum, 1e-12);
        assertTrue(risk.get("low").asDouble() <= risk.get("high").asDouble());
        assertTrue(risk.get("mean_time_s").isNumber()
                && risk.get("time_deviation_s").isNumber());
    }

    @Test
    void aMistakeInACircuitNamesTheCorner() throws IOException {
        String wrong = "{\"name\": \"ring\", \"corners\": [" + CORNER + ", "
                + CORNER.replace("\"radius_m\": 35", "\"radius_m\": -35") + "]}";
        Run.of("circuit", "--circuit", file("ring.json", wrong)).refusedNaming("corner 2: segments[1].radius_m: -35");
        Run.of("circuit", "--circuit", file("none.json", "{\"name\": \"none\", \"corners\": []}"))
                .refusedNaming("corners");
    }
}
