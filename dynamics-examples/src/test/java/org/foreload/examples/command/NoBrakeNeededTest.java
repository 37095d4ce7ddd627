package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A car of 25 kW comes to a sweeper at 44 m/s that takes it round at 40 m/s: the throttle that goes is enough. A brake
 * that hardly slows it is none, and the foot that holds the car at its limit leaves little of its grip.
 */
class NoBrakeNeededTest {

    private static final String CAR = """
            {
             "name": "a light car of little power",
             "mass_kg": 250,
             "wheelbase_m": 1.25,
             "cg_to_front_axle_m": 0.7,
             "cg_height_m": 0.25,
             "yaw_inertia_kg_m2": 40,
             "front_track_m": 1.1,
             "rear_track_m": 1.2,
             "front_roll_stiffness_share": 0.5,
             "front_brake_share": 0.55,
             "drag_area_m2": 0.5,
             "power_w": 25000,
             "driven_axle": "rear",
             "pitch_frequency_hz": "rigid",
             "front_tyre": {
              "model": "magic-formula",
              "peak_friction_x": 1.5,
              "peak_friction_y": 1.5,
              "load_sensitivity": 0.05,
              "reference_load_n": 600,
              "relaxation_length_m": 0.15,
              "cornering_stiffness_per_rad": 25,
              "slip_stiffness": 20,
              "shape_factor": 1.4,
              "curvature_factor": -0.4
             },
             "rear_tyre": {
              "model": "magic-formula",
              "peak_friction_x": 1.5,
              "peak_friction_y": 1.6,
              "load_sensitivity": 0.05,
              "reference_load_n": 650,
              "relaxation_length_m": 0.15,
              "cornering_stiffness_per_rad": 28,
              "slip_stiffness": 20,
              "shape_factor": 1.4,
              "curvature_factor": -0.4
             },
             "air_density_kg_m3": 1.2
            }
            """;

    private static final String CORNER = """
            {
             "name": "fast sweeper",
             "approach_speed_mps": 45,
             "approach_length_m": 300,
             "exit_length_m": 200,
             "half_width_m": 6,
             "segments": [
              {
               "type": "spiral",
               "length_m": 80,
               "end_radius_m": 120,
               "turn": "right"
              },
              {
               "type": "arc",
               "angle_deg": 40,
               "radius_m": 120,
               "turn": "right"
              },
              {
               "type": "spiral",
               "length_m": 80,
               "start_radius_m": 120,
               "turn": "right"
              }
             ]
            }
            """;

    @TempDir
    private Path directory;

    private String file(String name, String text) throws IOException {
        return Files.writeString(directory.resolve(name), text).toString();
    }

    private String said(String... words) throws IOException {
        String[] all = new String[words.length + 4];
        System.arraycopy(words, 0, all, 0, words.length);
        all[words.length] = "--car";
        all[words.length + 1] = file("car.json", CAR);
        all[words.length + 2] = "--corner";
        all[words.length + 3] = file("corner.json", CORNER);
        return Run.of(all).out().replaceAll("\\s+", " ");
    }

    @Test
    void aDabOfTheBrakeIsNotSoldForARelease() throws IOException {
        String said = said("explore", "--quiet", "--shapes", "linear");
        assertTrue(said.contains("quicker than not braking ("), said);
        assertTrue(said.contains("This corner needs no brake: the best hardly slows with it"), said);
    }

    @Test
    void aDabDoesNotLeaveAllOfTheGrip() throws IOException {
        String said = said(
                "entry",
                "--brake-point",
                "35.4",
                "--peak-deceleration",
                "8.82",
                "--release-start",
                "-12.2",
                "--release-end",
                "42.7");
        assertTrue(said.contains("made it"), said);
        assertFalse(said.contains("100.0 % of the front axle's grip"), said);
    }
}
