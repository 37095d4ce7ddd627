package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The verbs {@code loads} and {@code grip} from file to answer. */
class LoadsAndGripTest {

    /** Constant friction, one tyre per axle, no air: the case of the closed forms. */
    private static String car(
            double mass, double wheelbase, double a, double h, double share, double friction, double track) {
        String tyre = "{\"model\": \"linear\", \"peak_friction_x\": " + friction + ", \"peak_friction_y\": " + friction
                + ", \"reference_load_n\": 3000, \"cornering_stiffness_per_rad\": 15, \"slip_stiffness\": 15}";
        return "{\"name\": \"t\", \"mass_kg\": " + mass + ", \"wheelbase_m\": " + wheelbase
                + ", \"cg_to_front_axle_m\": " + a
                + ", \"cg_height_m\": " + h + ", \"yaw_inertia_kg_m2\": 1500, \"front_track_m\": " + track
                + ", \"front_roll_stiffness_share\": 0.6, \"front_brake_share\": " + share
                + ", \"power_w\": 100000, \"driven_axle\": \"rear\", \"front_tyre\": " + tyre + ", \"rear_tyre\": "
                + tyre + "}";
    }

    @TempDir
    private Path directory;

    private String file(String json) throws IOException {
        return Files.writeString(directory.resolve("car.json"), json).toString();
    }

    /**
     * Load transfer m·d·h/L. Static axle loads of R. N. Jazar, Vehicle Dynamics: Theory and Application, ch. 2, Example
     * 1 (m = 890 kg, a1 = 0.78 m, L = 2.35 m): 2916.5 N and 1449 N a wheel.
     */
    @Test
    void loadsAreThoseOfThePublishedExample() throws IOException {
        String car = file(car(890, 2.35, 0.78, 0.5, 0.7, 1, 1.55));
        JsonNode still = Run.json(
                "loads", "--car", car, "--deceleration", "0", "--lateral", "0", "--speed", "0", "--format", "json");
        assertEquals(2916.5, still.get("front_left_load_n").doubleValue(), 0.05);
        assertEquals(2916.5, still.get("front_right_load_n").doubleValue(), 0.05);
        assertEquals(1449, still.get("rear_left_load_n").doubleValue(), 0.05);
        assertEquals(0, still.get("longitudinal_load_transfer_n").doubleValue(), 1e-9);
        JsonNode braking = Run.json(
                "loads", "--car", car, "--deceleration", "6", "--lateral", "0", "--speed", "0", "--format", "json");
        double transfer = 890 * 6 * 0.5 / 2.35;
        assertEquals(transfer, braking.get("longitudinal_load_transfer_n").doubleValue(), 1e-9);
        assertEquals(
                still.get("front_axle_load_n").doubleValue() + transfer,
                braking.get("front_axle_load_n").doubleValue(),
                1e-9);
    }

    /**
     * Why a turn is not possible: at g·t/(2h) = 6.13 m/s² the inner wheels leave the road, with grip to spare (moments
     * about the outer wheels); and an axle whose inner wheel has left the road drives no more, as its two wheels get
     * equal shares of the drive (open differential).
     */
    @Test
    void whatIsNotPossibleIsSaidAsItIs() throws IOException {
        String tall = file(car(1000, 2.5, 1.25, 1.2, 0.6, 1, 1.5));
        String tips = said("loads", "--car", tall, "--deceleration", "0", "--lateral", "7.5", "--speed", "20");
        assertTrue(tips.contains("the car would roll over, as its inner wheels leave the road from 6.13 m/s²"), tips);
        String stiff = file(car(1000, 2.5, 1.25, 0.5, 0.6, 2, 1.5)
                .replace("\"front_roll_stiffness_share\": 0.6", "\"front_roll_stiffness_share\": 0.05"));
        String lifts = said("loads", "--car", stiff, "--deceleration", "-1", "--lateral", "8.5", "--speed", "20");
        assertTrue(
                lifts.contains("Not possible: the rear axle has a wheel off the road, which can neither drive nor "
                        + "brake. Off the road: rear left."),
                lifts);
    }

    /** Adhesion utilisation is force over friction times load: on half the friction, twice as much. */
    @Test
    void onARoadOfHalfTheFrictionTwiceAsMuchOfItIsUsed() throws IOException {
        String car = file(car(1000, 2.5, 1.25, 0.5, 0.6, 1, 1.5));
        String[] request = {"loads", "--car", car, "--deceleration", "3", "--lateral", "2", "--format", "json"};
        JsonNode dry = Run.json(request);
        String[] onWet = Arrays.copyOf(request, request.length + 2);
        onWet[request.length] = "--road-friction";
        onWet[request.length + 1] = "0.5";
        JsonNode wet = Run.json(onWet);
        for (String axle : new String[] {"front_utilisation", "rear_utilisation"}) {
            assertEquals(2 * dry.get(axle).doubleValue(), wet.get(axle).doubleValue(), 1e-9, axle);
        }
        onWet[request.length + 1] = "0";
        assertEquals(2, Run.of(onWet).status());
    }

    /** The whole answer in one line. */
    private static String said(String... args) {
        return Run.of(args).out().replaceAll("\\s+", " ");
    }

    /**
     * Adhesion utilisation at a braking rate of 0.8 g with a = 1.20 m, b = 1.50 m, h = 0.55 m and 70 % of the brake
     * force in front: 0.779381 in front, 0.852632 behind, by the formulas of UN Regulation 13-H, Annex 5 (from memory).
     */
    @Test
    void adhesionUtilisationIsTheRegulations() throws IOException {
        String car = file(car(1500, 2.7, 1.2, 0.55, 0.7, 1, 1.55));
        JsonNode loads = Run.json(
                "loads",
                "--car",
                car,
                "--deceleration",
                "7.848",
                "--lateral",
                "0",
                "--speed",
                "20",
                "--format",
                "json");
        assertEquals(0.779381, loads.get("front_adhesion_utilisation").doubleValue(), 1e-6);
        assertEquals(0.852632, loads.get("rear_adhesion_utilisation").doubleValue(), 1e-6);
        assertEquals(0.779381, loads.get("front_utilisation").doubleValue(), 1e-6);
        assertEquals("rear", loads.get("limiting_axle").textValue());
    }

    /**
     * d* = μ²·g·(b/L)(h/L)/(β² − μ²(h/L)²) for constant friction and one tyre per axle: 3.8245 m/s² and 6.43 % at μ
     * 1.25, L 2.6, a 1.22, h 0.47, β 0.66, g 9.81. A track of a million metres makes one tyre of two: no load moves
     * across it.
     */
    @Test
    void theBestDecelerationIsThatOfTheClosedForm() throws IOException {
        Run run = Run.of("grip", "--car", file(car(1100, 2.6, 1.22, 0.47, 0.66, 1.25, 1e6)), "--format", "json");
        assertEquals(0, run.status());
        assertEquals(2, run.err().lines().count(), "a warning for each track: " + run.err());
        JsonNode grip = run.json();
        assertEquals(3.8245, grip.get("best_deceleration_mps2").doubleValue(), 1e-4);
        assertEquals(0.0643, grip.get("best_front_gain").doubleValue(), 5e-5);
        JsonNode first = grip.get("rows").get(0);
        assertEquals(0, first.get("deceleration_mps2").doubleValue());
        assertEquals(
                1.25 * 1100 * 9.81 * 1.38 / 2.6,
                first.get("front_lateral_capacity_n").doubleValue(),
                1e-3);
        assertEquals(
                1.25 * 1100 * 9.81 * 1.22 / 2.6,
                first.get("rear_lateral_capacity_n").doubleValue(),
                1e-3);
    }

    @Test
    void rowsKeepTheStepAndStopAtTheHardestBraking() {
        JsonNode grip = Run.json("grip", "--step", "0.25", "--format", "json");
        JsonNode rows = grip.get("rows");
        double hardest = grip.get("hardest_deceleration_mps2").doubleValue();
        assertEquals((int) Math.floor(hardest / 0.25) + 1, rows.size());
        assertEquals(0.25 * 7, rows.get(7).get("deceleration_mps2").doubleValue());
        long lines = Run.of("grip", "--step", "0.25", "--format", "csv")
                .out()
                .lines()
                .count();
        assertEquals(rows.size() + 1, lines);
    }

    @Test
    void theDiagramRunsFromDrivingToBraking() {
        JsonNode gg = Run.json("grip", "--format", "json").get("gg");
        JsonNode last = gg.get(gg.size() - 1);
        assertTrue(gg.get(0).get("longitudinal_mps2").doubleValue() > 0, "driving first");
        assertTrue(last.get("longitudinal_mps2").doubleValue() < 0, "braking last: x points forward");
        assertEquals(0, last.get("lateral_mps2").doubleValue(), 1e-2);
    }
}
