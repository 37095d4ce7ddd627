package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.foreload.examples.demo.Demos;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The verb {@code ideal} from files to answer. */
class IdealTest {

    @TempDir
    private Path directory;

    private String file(String name, String text) throws IOException {
        return Files.writeString(directory.resolve(name), text).toString();
    }

    /**
     * Common practice, no source: in a hairpin after a heavy braking zone about a fifth of the slowing is done while
     * turning, in a fast long corner most of it.
     */
    @Test
    void theDemoCornersSplitTheSlowingAsCommonPracticeDoes() {
        for (String car : Demos.CARS) {
            double hairpin = trailShare(car, "hairpin");
            double fast = trailShare(car, "fast");
            assertTrue(hairpin > 0.1 && hairpin < 0.3, car + " " + hairpin);
            assertTrue(fast >= 0.6, car + " " + fast);
        }
    }

    private static double trailShare(String car, String corner) {
        JsonNode ideal = Run.json("ideal", "--demo-car", car, "--demo-corner", corner, "--format", "json");
        double turnIn = ideal.get("turn_in_speed_mps").doubleValue();
        double lowest = ideal.get("minimum_speed_mps").doubleValue();
        double share = ideal.get("trail_share").doubleValue();
        assertEquals("made it", ideal.get("outcome").textValue());
        assertTrue(turnIn > lowest);
        return share;
    }

    /** Speed limit √(μ·g·R) of a point mass on a circle: at zero CG height and inertia level 1 is the point mass. */
    @Test
    void aPointMassGetsAsSlowAsTheCircleAllows() throws IOException {
        String car = file("car.json", """
                {"name": "point mass", "mass_kg": 1000, "wheelbase_m": 2.5, "cg_to_front_axle_m": 1.25, "cg_height_m": 0,
                 "yaw_inertia_kg_m2": 0, "front_track_m": 1.5, "front_roll_stiffness_share": 0.5,
                 "front_brake_share": 0.5, "power_w": 200000, "driven_axle": "all",
                 "front_tyre": {"model": "linear", "peak_friction_x": 1.1, "peak_friction_y": 1.1,
                   "reference_load_n": 2500, "cornering_stiffness_per_rad": 15, "slip_stiffness": 15},
                 "rear_tyre": {"model": "linear", "peak_friction_x": 1.1, "peak_friction_y": 1.1,
                   "reference_load_n": 2500, "cornering_stiffness_per_rad": 15, "slip_stiffness": 15}}
                """);
        String corner = file("corner.json", """
                {"name": "arc", "approach_speed_mps": 40, "approach_length_m": 200, "exit_length_m": 100, "half_width_m": 5,
                 "segments": [{"type": "spiral", "length_m": 20, "end_radius_m": 50, "turn": "left"},
                   {"type": "arc", "length_m": 60, "radius_m": 50, "turn": "left"},
                   {"type": "spiral", "length_m": 20, "start_radius_m": 50, "turn": "left"}]}
                """);
        JsonNode ideal = Run.json("ideal", "--car", car, "--corner", corner, "--step", "0.1", "--format", "json");
        assertEquals(Math.sqrt(1.1 * 9.81 * 50), ideal.get("minimum_speed_mps").doubleValue(), 1e-3);
        assertEquals(20, ideal.get("release_end_m").doubleValue(), 0.2);
        JsonNode profile = ideal.get("profile");
        assertEquals(-200, profile.get(0).get("s_m").doubleValue());
        assertEquals(40, profile.get(0).get("speed_mps").doubleValue());
        JsonNode last = profile.get(profile.size() - 1);
        assertEquals(200, last.get("s_m").doubleValue(), 1e-9);
        assertEquals(ideal.get("time_s").doubleValue(), last.get("time_s").doubleValue());
    }

    @Test
    void anApproachTooFastForTheCornerIsRefusedInTheNameOfItsFile() throws IOException {
        String corner = file("short.json", """
                {"name": "no room", "approach_speed_mps": 60, "approach_length_m": 10, "exit_length_m": 10,
                 "half_width_m": 5, "segments": [{"type": "spiral", "length_m": 10, "end_radius_m": 20, "turn": "left"},
                   {"type": "spiral", "length_m": 10, "start_radius_m": 20, "turn": "left"}]}
                """);
        Run.of("ideal", "--corner", corner).refusedNaming(corner + ": approach_speed_mps: 60: must be at most ");
    }

    @Test
    void aCornerThatNeedsNoBrakeHasNoBrakePoint() throws IOException {
        String corner = file("gentle.json", """
                {"name": "gentle", "approach_speed_mps": 20, "approach_length_m": 10, "exit_length_m": 10,
                 "half_width_m": 5, "segments": [{"type": "arc", "length_m": 20, "radius_m": 500, "turn": "left"}]}
                """);
        JsonNode ideal = Run.json("ideal", "--corner", corner, "--format", "json");
        assertTrue(ideal.get("brake_point_m").isNull());
        assertTrue(ideal.get("release_end_m").isNull());
        assertTrue(Run.of("ideal", "--corner", corner).out().contains("This corner needs no brake."));
    }

    @Test
    void longTablesAreThinnedForPeopleOnly() {
        Run table = Run.of("ideal");
        Run csv = Run.of("ideal", "--format", "csv");
        int rows = Run.json("ideal", "--format", "json").get("profile").size();
        assertEquals(rows + 1, csv.out().lines().count());
        assertTrue(table.out().lines().count() < 70, table.out());
        assertTrue(table.out().contains(" of " + rows + "; --format json"), table.out());
        String head = csv.out().lines().findFirst().orElseThrow();
        assertTrue(
                head.startsWith(
                        "s_m,time_s,speed_mps,deceleration_mps2,front_utilisation,rear_utilisation,roll_over_utilisation,brake_point_m,"),
                head);
    }
}
