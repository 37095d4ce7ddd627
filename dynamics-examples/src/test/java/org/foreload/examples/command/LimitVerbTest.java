package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;

/** The verb {@code limit} from words to answer. */
class LimitVerbTest {

    /**
     * Source: an independent solution by a general nonlinear-programming library, 16.050 s with a peak of 10.150 m/s²;
     * a coarser mesh is given two in a thousand.
     */
    @Test
    void itAnswersAProgram() {
        JsonNode limit =
                Run.json("limit", "--quiet", "--intervals", "100", "--peak-deceleration", "10.15", "--format", "json");
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

    @Test
    void aBandThatIsNoneIsRefused() {
        Run.of("limit", "--band", "wide").refusedWith("--band: wide: must be a number from 0.05 to 100 in m, or track");
    }
}
