package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.foreload.examples.demo.Demos;
import org.foreload.file.CarFile;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The verb {@code limit} from words to answer. */
class LimitVerbTest {

    /**
     * Source: an independent solution by a general nonlinear-programming library, 16.050 s with a peak of 10.150 m/s²;
     * a coarser mesh is given two in a thousand.
     */
    @Test
    void itAnswersAProgram() {
        JsonNode limit =
                Run.json("limit", "--quiet", "--intervals", "60", "--peak-deceleration", "10.15", "--format", "json");
        assertTrue(limit.get("converged").booleanValue());
        assertEquals("made it", limit.get("outcome").textValue());
        assertEquals(0.15, limit.get("band_m").doubleValue());
        assertEquals(16.050, limit.get("time_s").doubleValue(), 0.032);
        assertTrue(limit.get("lost_to_lags_s").doubleValue() > 0);
        assertTrue(limit.get("optimality").doubleValue() <= 1e-5);
        for (JsonNode row : limit.get("profile")) {
            assertTrue(Math.abs(row.get("offset_m").doubleValue()) <= 0.15 + 1e-4, row.toString());
            for (String name :
                    new String[] {"s_m", "speed_mps", "brake_mps2", "drive_mps2", "steer_deg", "x_m", "y_m"}) {
                assertTrue(row.get(name).isNumber(), name);
            }
        }
    }

    /** Common practice, no source: what limits a car is said; this one rolls over at g·1.3 m/(2·0.95 m). */
    @Test
    void itSaysWhereACarComesToRollingOver(@TempDir Path folder) throws IOException {
        Path car = Files.writeString(
                folder.resolve("tall.json"),
                CarFile.write(Demos.car("--demo-car", "road").value())
                        .replaceAll("\"cg_height_m\" *: *[0-9.]+", "\"cg_height_m\": 0.95")
                        .replaceAll("_track_m\" *: *[0-9.]+", "_track_m\": 1.3"));
        Run tall = Run.of("limit", "--quiet", "--intervals", "60", "--car", car.toString());
        assertTrue(tall.out().contains("m it comes to the edge of rolling over."), tall.out());
        Run low = Run.of("limit", "--quiet", "--intervals", "60", "--demo-car", "road");
        assertFalse(low.out().contains("rolling over"), low.out());
    }

    @Test
    void aBandThatIsNoneIsRefused() {
        Run.of("limit", "--band", "wide").refusedWith("--band: wide: must be a number from 0.05 to 100 in m, or track");
    }

    /** The driven line is a corner that every other verb can be asked about; the bound on it is below the limit. */
    @Test
    void theDrivenLineIsACorner(@TempDir Path folder) throws IOException {
        Path line = folder.resolve("own line.json");
        JsonNode limit = Run.json("limit", "--quiet", "--line-out", line.toString(), "--format", "json");
        assertTrue(Files.readString(folder.resolve("own line.csv")).startsWith("x_m,y_m,width_left_m,width_right_m"));
        JsonNode ideal = Run.json("ideal", "--corner", line.toString(), "--format", "json");
        double time = limit.get("time_s").doubleValue();
        double bound = ideal.get("time_s").doubleValue();
        assertTrue(bound < time && bound > 0.98 * time, bound + " and " + time);
        assertEquals(time - limit.get("lost_to_lags_s").doubleValue(), bound, 0.01);
    }

    /** In memory and in a file it is the same line: what is asked on it has the same answer, to the file's digits. */
    @Tag("long")
    @Test
    void everyVerbCanDriveTheQuickestLine(@TempDir Path folder) throws IOException {
        Path road = Files.writeString(folder.resolve("road.json"), """
                {"name": "short", "approach_speed_mps": 30, "approach_length_m": 90, "exit_length_m": 40, "half_width_m": 5,
                 "segments": [{"type": "spiral", "length_m": 20, "end_radius_m": 35, "turn": "left"},
                              {"type": "arc", "length_m": 40, "radius_m": 35, "turn": "left"},
                              {"type": "spiral", "length_m": 20, "start_radius_m": 35, "turn": "left"}]}
                """);
        Path line = folder.resolve("line.json");
        String corner = road.toString();
        JsonNode free = Run.json(
                ("limit --quiet --band track --format json --line-out " + line + " --corner " + corner).split(" "));
        JsonNode given = Run.json(("ideal --format json --corner " + corner).split(" "));
        Run quickest = Run.of(("ideal --line quickest --format json --corner " + corner).split(" "));
        double time = quickest.json().get("time_s").doubleValue();
        assertTrue(quickest.err().contains("steps"), quickest.err());
        assertTrue(time < given.get("time_s").doubleValue() - 0.1, time + " and " + given.get("time_s"));
        assertTrue(time < free.get("time_s").doubleValue(), time + " and " + free.get("time_s"));
        JsonNode filed = Run.json(("ideal --format json --corner " + line).split(" "));
        assertEquals(filed.get("time_s").doubleValue(), time, 0.005);
    }

    @Test
    void aLineThatIsNoneIsRefused() {
        Run.of("ideal", "--line", "middle").refusedNaming("--line: middle: must be one of given, near, quickest");
    }

    @Test
    void aLineFileOfAnotherKindIsRefused() {
        Run.of("limit", "--line-out", "line.txt").refusedWith("--line-out: line.txt: must end with .json");
    }
}
