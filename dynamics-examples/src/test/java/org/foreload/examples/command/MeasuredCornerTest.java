package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Answers about a line that was measured: brake points can be found on its map. */
class MeasuredCornerTest {

    /** Length of the straight up to turn-in, m. */
    private static final double STRAIGHT = 150;

    private static final String SENTENCE = "from the first point of the centre line";

    @TempDir
    private Path directory;

    private String corner;

    /** Due north from (1000, 2000), then round to the left by a right angle on a radius of 60 m, then due west. */
    @BeforeEach
    void writeCorner() throws IOException {
        double radius = 60;
        double arc = radius * Math.PI / 2;
        StringBuilder points = new StringBuilder("x_m,y_m\n");
        for (int s = 0; s <= STRAIGHT + arc + 150; s += 3) {
            double angle = Math.max(0, Math.min(arc, s - STRAIGHT)) / radius;
            double x = 1000 - radius * (1 - Math.cos(angle)) - Math.max(0, s - STRAIGHT - arc);
            double y = 2000 + Math.min(s, STRAIGHT) + radius * Math.sin(angle);
            points.append(String.format(Locale.ROOT, "%.4f,%.4f%n", x, y));
        }
        Files.writeString(directory.resolve("line.csv"), points);
        corner = Files.writeString(
                        directory.resolve("corner.json"),
                        "{\"name\": \"measured\", \"approach_speed_mps\": 40, \"half_width_m\": 5,"
                                + " \"centre_line_csv\": \"line.csv\"}")
                .toString();
    }

    private Run ask(String words) {
        List<String> all = new ArrayList<>(Arrays.asList(words.split(" ")));
        all.addAll(List.of("--corner", corner));
        return Run.of(all.toArray(String[]::new));
    }

    /** The jump of curvature where the arc begins comes out rounded: turn-in within some metres of it. */
    private static void assertTurnIn(JsonNode turnIn) {
        double along = turnIn.get("from_first_point_m").doubleValue();
        assertEquals(STRAIGHT, along, 6);
        assertEquals(1000, turnIn.get("x_m").doubleValue(), 0.2);
        assertEquals(2000 + along, turnIn.get("y_m").doubleValue(), 0.2);
    }

    @Test
    void whereTurnInLiesIsSaidOnceAndIsAField() {
        for (String verb : List.of("entry --brake-point -110", "ideal", "stability --brake-point -110")) {
            assertTurnIn(ask(verb + " --format json").json().get("turn_in"));
            String said = ask(verb).out().replaceAll("\\s+", " ");
            assertEquals(2, said.split(SENTENCE, -1).length, said);
        }
        assertFalse(Run.json("ideal", "--format", "json").has("turn_in"));
        assertFalse(Run.of("ideal").out().contains(SENTENCE));
    }

    @Test
    void aBatchSaysItToo() {
        Run run =
                Run.asked("{\"brake_point_m\": -110}\n{\"verb\": \"ideal\"}\n", "batch", "--quiet", "--corner", corner);
        assertEquals(2, run.out().lines().count());
        for (String line : run.out().lines().toList()) {
            assertTurnIn(new Run(0, line, "").json().get("turn_in"));
        }
    }

    /**
     * Another line has a turn-in of its own, which is said on the same map: one that takes the bend wide begins to bend
     * before the road does. The road car's is quick to find.
     */
    @Test
    void anotherLineHasItsOwnTurnInOnTheSameMap() {
        JsonNode own = ask("ideal --line quickest --demo-car road --format json")
                .json()
                .get("turn_in");
        double along = own.get("from_first_point_m").doubleValue();
        assertTrue(along > 0 && along < STRAIGHT - 10, own.toString());
        // North of the first point on the straight, and on the road.
        assertEquals(1000, own.get("x_m").doubleValue(), 5);
        assertEquals(2000 + along, own.get("y_m").doubleValue(), 2);
    }
}
