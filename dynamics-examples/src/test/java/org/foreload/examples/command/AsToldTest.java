package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The option {@code --as-told}: a foot that carries out its plan whatever comes of it. */
class AsToldTest {

    private static final String[] TOO_HARD = {
        "entry", "--format", "json", "--brake-point=-112", "--peak-deceleration", "13", "--release-end", "30"
    };

    private static String[] with(String... more) {
        return Stream.concat(Stream.of(TOO_HARD), Stream.of(more)).toArray(String[]::new);
    }

    /** Longest time, s, for which the first wheel that stops on the straight stands. */
    private static double stands(JsonNode entry) {
        double stops = Double.NaN;
        for (JsonNode event : entry.get("events")) {
            String kind = event.get("event").asText();
            if (Double.isNaN(stops) && kind.equals("front wheel locks")) {
                stops = event.get("time_s").asDouble();
            } else if (!Double.isNaN(stops) && kind.equals("wheel turns again")) {
                return event.get("time_s").asDouble() - stops;
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    @Test
    void entryEasesAStoppedWheelUnlessAsTold() {
        JsonNode reacting = Run.json(TOO_HARD);
        assertTrue(stands(reacting) < 0.6, "for " + stands(reacting));
        assertEquals("made it", reacting.get("outcome").asText());
        JsonNode told = Run.json(with("--as-told"));
        assertTrue(stands(told) > 2, "for " + stands(told));
        assertEquals("locked up", told.get("outcome").asText());
    }

    @Test
    void riskIsHigherAsTold() {
        List<String> risk = List.of(
                "risk",
                "--format",
                "json",
                "--quiet",
                "--given",
                "--brake-point=-113",
                "--samples",
                "16",
                "--threads",
                "1");
        JsonNode reacting = Run.json(risk.toArray(String[]::new));
        JsonNode told =
                Run.json(Stream.concat(risk.stream(), Stream.of("--as-told")).toArray(String[]::new));
        assertTrue(told.get("failure_probability").asDouble()
                > reacting.get("failure_probability").asDouble());
    }
}
