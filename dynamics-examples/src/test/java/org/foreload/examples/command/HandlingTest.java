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

/** The verb {@code handling} from file to answer. */
class HandlingTest {

    @TempDir
    private Path directory;

    /**
     * The set of R. Rajamani, Vehicle Dynamics and Control (from memory): m 1573, Iz 2873, a 1.10, b 1.58, 160 kN/rad
     * an axle. As the file gives stiffness per newton of wheel load, that is 160000 over the static axle loads.
     */
    private String car(double rearStiffness) throws IOException {
        double weight = 1573 * 9.81;
        String tyre =
                "{\"model\": \"linear\", \"peak_friction_x\": 1, \"peak_friction_y\": 1, \"reference_load_n\": 4000,"
                        + " \"slip_stiffness\": 20, \"cornering_stiffness_per_rad\": ";
        String json = "{\"name\": \"t\", \"mass_kg\": 1573, \"wheelbase_m\": 2.68, \"cg_to_front_axle_m\": 1.10,"
                + " \"cg_height_m\": 0, \"yaw_inertia_kg_m2\": 2873, \"front_track_m\": 1.5,"
                + " \"front_roll_stiffness_share\": 0.5, \"front_brake_share\": 0.6, \"power_w\": 100000,"
                + " \"driven_axle\": \"rear\", \"front_tyre\": " + tyre + 160000 / (weight * 1.58 / 2.68) + "},"
                + " \"rear_tyre\": " + tyre + rearStiffness / (weight * 1.10 / 2.68) + "}}";
        return Files.writeString(directory.resolve("car.json"), json).toString();
    }

    private JsonNode straight(double rearStiffness) throws IOException {
        Run run = Run.of(
                "handling",
                "--car",
                car(rearStiffness),
                "--speed",
                "30",
                "--lateral",
                "0",
                "--deceleration",
                "0",
                "--format",
                "json");
        assertEquals(0, run.status(), run.err());
        return run.json();
    }

    /** Closed forms evaluated for that set at 30 m/s, as in the published state matrix of the single-track model. */
    @Test
    void theTextbookCarHasTheTextbookNumbers() throws IOException {
        JsonNode handling = straight(160_000);
        assertEquals(
                1.7608209e-3, handling.get("understeer_gradient_rad_per_mps2").doubleValue(), 2e-9);
        assertEquals(39.0130, handling.get("characteristic_speed_mps").doubleValue(), 5e-5);
        assertTrue(handling.get("critical_speed_mps").isNull());
        assertEquals(7.034428, handling.get("yaw_rate_gain_per_s").doubleValue(), 1e-6);
        assertEquals(8.481647, handling.get("natural_frequency_rad_per_s").doubleValue(), 1e-6);
        assertEquals(0.805358, handling.get("damping_ratio").doubleValue(), 1e-6);
        JsonNode eigenvalues = handling.get("eigenvalues");
        assertEquals(2, eigenvalues.size());
        assertEquals(-6.83076, eigenvalues.get(0).get("real").doubleValue(), 1e-5);
        assertEquals(5.02782, eigenvalues.get(0).get("imaginary").doubleValue(), 1e-5);
        assertEquals(-5.02782, eigenvalues.get(1).get("imaginary").doubleValue(), 1e-5);
    }

    /** Neutral where a·C_f = b·C_r. */
    @Test
    void aNeutralCarHasNeitherSpeed() throws IOException {
        JsonNode handling = straight(160_000 * 1.10 / 1.58);
        assertTrue(handling.get("characteristic_speed_mps").isNull());
        assertTrue(handling.get("critical_speed_mps").isNull());
    }

    /** v_crit = √(L/−K), K = (m/L)(b/C_f − a/C_r); above it there is no natural frequency. */
    @Test
    void anOversteeringCarHasACriticalSpeed() throws IOException {
        double gradient = 1573 / 2.68 * (1.58 / 160_000 - 1.10 / 80_000);
        JsonNode handling = straight(80_000);
        assertEquals(
                Math.sqrt(2.68 / -gradient), handling.get("critical_speed_mps").doubleValue(), 1e-3);
        assertTrue(handling.get("characteristic_speed_mps").isNull());
        assertTrue(handling.get("decay_rate_per_s").doubleValue() > 0);
    }

    @Test
    void aTurnBeyondTheGripIsAComputationWithoutAnAnswer() {
        Run run = Run.of("handling", "--lateral", "30");
        assertEquals(1, run.status());
        assertEquals(1, run.err().lines().count(), run.err());
        assertTrue(run.err().contains("an axle lacks the grip"), run.err());
    }

    /** Power is force times speed; common practice, no source. The answer itself stays. */
    @Test
    void aMotionThatTheEngineCannotKeepUpIsWarnedOf() {
        Run fast = Run.of("handling", "--speed", "100", "--deceleration", "0", "--lateral", "3", "--format", "json");
        assertEquals(0, fast.status());
        double kilowatts = 0.1 * fast.json().get("drive_force_n").doubleValue();
        assertTrue(kilowatts > 130);
        assertEquals(1, fast.err().lines().count(), fast.err());
        assertTrue(fast.err().contains(String.format(java.util.Locale.ROOT, "takes %.1f kW", kilowatts)), fast.err());
        assertTrue(fast.err().contains("gives 130.0 kW"), fast.err());
        Run pushed = Run.of("loads", "--speed", "60", "--deceleration", "-4", "--lateral", "5");
        assertEquals(0, pushed.status());
        assertTrue(pushed.err().contains("the engine gives 130.0 kW"), pushed.err());
        assertEquals("", Run.of("loads").err());
        assertEquals("", Run.of("handling", "--deceleration", "0").err());
    }

    /** A bad value is said with its file; common practice, no source. */
    @Test
    void aCarWithoutInertiaIsRefusedWithItsFile() throws IOException {
        String file = car(160_000);
        Path edited = Path.of(file);
        Files.writeString(
                edited, Files.readString(edited).replace("\"yaw_inertia_kg_m2\": 2873", "\"yaw_inertia_kg_m2\": 0"));
        Run run = Run.of("handling", "--car", file);
        assertEquals(2, run.status());
        String last = run.err().lines().reduce("", (before, line) -> line);
        assertTrue(last.startsWith(file + ": yaw_inertia_kg_m2: 0: must be"), run.err());
    }

    /** A heavy car whose inner wheels its anti-lock brakes hold back at 7.2 m/s², where gradient and margin part. */
    private String heavy() throws IOException {
        String tyre = "{\"model\": \"magic-formula\", \"peak_friction_x\": 1.05, \"reference_load_n\": 5000,"
                + " \"load_sensitivity\": 0.1, \"relaxation_length_m\": 0.5, \"shape_factor\": 1.4,"
                + " \"curvature_factor\": 0.2, ";
        String json = "{\"name\": \"heavy\", \"mass_kg\": 2050, \"wheelbase_m\": 2.98, \"cg_to_front_axle_m\": 1.45,"
                + " \"cg_height_m\": 0.56, \"yaw_inertia_kg_m2\": 3700, \"front_track_m\": 1.61, \"rear_track_m\": 1.6,"
                + " \"front_roll_stiffness_share\": 0.6, \"front_roll_center_height_m\": 0.05,"
                + " \"rear_roll_center_height_m\": 0.1, \"front_brake_share\": 0.68, \"drag_area_m2\": 0.65,"
                + " \"front_downforce_area_m2\": -0.05, \"rear_downforce_area_m2\": -0.1, \"air_density_kg_m3\": 1.2,"
                + " \"drag_height_m\": 0.6, \"power_w\": 280000, \"driven_axle\": \"rear\", \"anti_lock\": true,"
                + " \"pitch_frequency_hz\": 1.4, \"pitch_damping_ratio\": 0.35,"
                + " \"front_tyre\": " + tyre
                + "\"peak_friction_y\": 1.0, \"cornering_stiffness_per_rad\": 16, \"slip_stiffness\": 20},"
                + " \"rear_tyre\": " + tyre
                + "\"peak_friction_y\": 1.03, \"cornering_stiffness_per_rad\": 19, \"slip_stiffness\": 22}}";
        return Files.writeString(directory.resolve("heavy.json"), json).toString();
    }

    /** A positive gradient is understeer by its definition: each sign is said by its own name, and why it jumped. */
    @Test
    void whatAntiLockHoldsBackIsSaid() throws IOException {
        String file = heavy();
        Run held = Run.of("handling", "--car", file, "--deceleration", "7.2");
        assertEquals(0, held.status(), held.err());
        String words = held.out().replaceAll("\\s+", " ");
        assertTrue(
                words.contains("Here the car understeers at this deceleration (understeer gradient 1.64°/g)"), words);
        assertTrue(words.contains(" but oversteers with the pedals held; with"), words);
        assertTrue(words.contains("Anti-lock brakes hold back: front left, rear left."), words);
        Run mirrored = Run.of("handling", "--car", file, "--deceleration", "7.2", "--lateral", "-4");
        assertTrue(
                mirrored.out().replaceAll("\\s+", " ").contains("hold back: front right, rear right."), mirrored.out());
        Run gentle = Run.of("handling", "--car", file, "--deceleration", "6");
        assertTrue(gentle.out().contains("Here the car oversteers (understeer gradient -"), gentle.out());
        assertFalse(gentle.out().contains("Anti-lock"), gentle.out());
    }

    /** A creeping car is stiff: its motions die out in milliseconds. Common practice, no source. */
    @Test
    void aTimeTooShortToNoticeIsNotZero() {
        Run run = Run.of("handling", "--speed", "0.5", "--lateral", "0.01", "--deceleration", "0");
        assertEquals(0, run.status(), run.err());
        assertTrue(run.out().replaceAll("\\s+", " ").contains("halves in less than 0.01 s"), run.out());
    }
}
