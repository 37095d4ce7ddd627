package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.foreload.examples.demo.Demos;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The verbs {@code balance}, {@code stability}, {@code smoothness} and {@code pedal} on the demo cars. */
class BalanceAndPedalTest {

    /** The demo cars. */
    static final List<String> CARS = Demos.CARS;

    /** In the short corner: the balance is the car's. */
    private static Reports balance(String... more) throws IOException {
        List<String> words = new ArrayList<>(List.of(BALANCE.split(" ")));
        words.add(ShortCorner.file());
        words.addAll(List.of(more));
        return Reports.of(words.toArray(String[]::new));
    }

    static final String BALANCE = "balance --quiet --tolerance 1e-4 --corner";

    /** An optimum inside the sweep, or a plain word why there is none. */
    @ParameterizedTest
    @FieldSource("CARS")
    void theBalanceOfEachDemoCarHasAnOptimumOrSaysWhyNot(String car) throws IOException {
        JsonNode balance = balance("--values", "3", "--demo-car", car).json();
        JsonNode rows = balance.get("rows");
        assertEquals(4, rows.size(), "three, and the car's own");
        double own = balance.get("own_front_brake_share").doubleValue();
        assertTrue(StreamSupport.stream(rows.spliterator(), false)
                .anyMatch(row -> row.get("front_brake_share").doubleValue() == own));
        JsonNode recommendation = balance.get("recommendation").get(0);
        double share = balance.get("recommended_share").doubleValue();
        assertEquals(share, recommendation.get("front_brake_share").doubleValue());
        String reason = recommendation.get("reason").textValue();
        boolean interior = recommendation.get("interior_optimum").booleanValue();
        assertTrue(!interior
                || share > rows.get(0).get("front_brake_share").doubleValue()
                        && share < rows.get(3).get("front_brake_share").doubleValue());
        assertTrue(interior || reason.contains("no optimum inside"), reason);
        // From little brake in front to much the first axle to lock changes from the rear one to the front one.
        assertEquals("rear", rows.get(0).get("first_to_lock").textValue());
        assertEquals("front", rows.get(3).get("first_to_lock").textValue());
        for (JsonNode row : rows) {
            List.of("time_s", "outcome_if_harder", "outcome_if_later").forEach(name -> assertTrue(row.has(name), name));
        }
        assertEquals(20, balance.get("adhesion").size());
    }

    /**
     * The light car's friction on a wheel without load, 1.2 · 1.08, of which anti-lock brakes use 0.95 (decision 0040),
     * m/s².
     */
    private static final double MOST_HELD = 0.95 * 1.2 * 1.08 * 9.81;

    /** Anti-lock brakes lock no wheel (decision 0040): no sentence may say that one locks. */
    @Test
    void ofACarWhoseWheelsNeverLockNoneIsSaidToLock(@TempDir Path directory) throws IOException {
        String held = new String(
                        Demos.class.getResourceAsStream("car-light.json").readAllBytes(), StandardCharsets.UTF_8)
                .replaceFirst("\\{", "{\"anti_lock\": true,");
        String car = Files.writeString(directory.resolve("car.json"), held).toString();
        Reports balance = balance("--values", "2", "--car", car);
        for (JsonNode row : balance.json().get("rows")) {
            assertTrue(row.get("first_to_lock").isNull(), row.toString());
            double most = row.get("most_on_road_mps2").doubleValue();
            assertTrue(most > 7 && most < MOST_HELD, row.toString());
            assertTrue(most < row.get("peak_deceleration_mps2").doubleValue() + 1e-6, row.toString());
        }
        String table = balance.table().out().replaceAll("\\s+", " ");
        assertFalse(table.contains("locks the front axle first"), table);
        assertFalse(table.contains("the rear locks first above"), table);
        assertTrue(table.contains("With anti-lock brakes no wheel locks"), table);
    }

    /** A deceleration says whose it is, and a rate its unit; the glossary's words for both. */
    @Test
    void decelerationsAreToldApart() throws IOException {
        Reports balance = balance("--values", "2");
        String table = balance.table().out().replaceAll("\\s+", " ");
        assertTrue(table.contains("Peak deceleration: what the foot asks of the brakes alone."), table);
        assertTrue(table.contains("Locks at: deceleration of the whole car, drag included"), table);
        assertTrue(table.contains("against braking rate in g"), table);
    }

    @Test
    void otherAxesAreSweptTheSameWay() throws IOException {
        JsonNode balance = balance("--values", "2", "--axis", "cg-height", "--from", "0.4", "--to", "0.5")
                .json();
        assertEquals(0.45, balance.get("own_cg_height_m").doubleValue());
        assertEquals(0.45, balance.get("rows").get(1).get("cg_height_m").doubleValue());
        assertEquals(0.5, balance.get("rows").get(2).get("cg_height_m").doubleValue());
        assertTrue(balance.has("recommended_cg_height_m"));
    }

    @Test
    void aRequestThatMakesNoSenseIsRefused() {
        Run.of("balance", "--axis", "colour")
                .refusedWith("--axis: colour: must be one of brake-share, roll-stiffness, cg-height, downforce");
        Run.of("balance", "--axis", "downforce")
                .refusedWith("--axis: downforce: cannot be swept: the car has no downforce");
        Run.of("balance", "--from", "0.8", "--to", "0.7").refusedWith("--to: 0.7: must be above --from");
        Run.of("balance", "--from", "-1").refusedWith("--from: -1: must be a number from 0 to 1");
        Run.of("balance", "--to", "3").refusedWith("--to: 3: must be a number from 0 to 1");
        Run.of("balance", "--values", "1").refusedWith("--values: 1: must be a number from 2 to 200");
        Run.of("smoothness", "--kind", "jerk").refusedWith("--kind: jerk: must be one of ripple, hesitation");
        Run.of("smoothness", "--size", "2").refusedWith("--size: 2: must be a number from 0 to 1");
        Run.of("pedal", "--attempts", "1").refusedWith("--attempts: 1: must be a number from 2 to 100000");
        Run.of("stability", "--release-start", "10", "--release-end", "5")
                .refusedWith("--release-end: 5: must be at or after the release point, 10 m");
    }

    /** The demo car's pitch data, 1.8 Hz and 0.4: resonance at 1.8·√(1 − 2·0.16), ringing at 1.8·√(1 − 0.16). */
    @Test
    void theResonanceIsThatOfTheCarsPitchData() {
        JsonNode smoothness = Run.json("smoothness", "--frequencies", "2", "--quiet", "--format", "json");
        double resonance = 1.8 * Math.sqrt(1 - 2 * 0.16);
        assertEquals(resonance, smoothness.get("pitch_resonance_hz").doubleValue(), 1e-9);
        assertEquals(resonance, smoothness.get("measured_resonance_hz").doubleValue(), 0.03 * resonance);
        assertEquals(
                1.8 * Math.sqrt(1 - 0.16),
                smoothness.get("damped_pitch_frequency_hz").doubleValue(),
                1e-9);
        assertEquals(2, smoothness.get("rows").size());
    }

    /** The light demo car with too much brake behind, trailed far into the corner: the rear goes. */
    @Test
    void aSpinIsAnnouncedByTheEigenvalue(@TempDir Path directory) throws IOException {
        String loose = new String(
                        Demos.class.getResourceAsStream("car-light.json").readAllBytes(), StandardCharsets.UTF_8)
                .replaceAll("\"front_brake_share\": [0-9.]+", "\"front_brake_share\": 0.6");
        String car = Files.writeString(directory.resolve("car.json"), loose).toString();
        JsonNode stability = Run.json(
                "stability",
                "--car",
                car,
                "--brake-point",
                "-121.4",
                "--peak-deceleration",
                "8.97",
                "--release-shape",
                "held",
                "--release-start",
                "27",
                "--release-end",
                "60.6",
                "--format",
                "json");
        assertEquals("spun", stability.get("outcome").textValue());
        JsonNode events = stability.get("events");
        assertEquals("turns unstable", events.get(1).get("event").textValue());
        JsonNode last = stability.get("profile").get(stability.get("profile").size() - 1);
        assertTrue(events.get(1).get("s_m").doubleValue() < last.get("s_m").doubleValue());
        assertTrue(last.get("growth_rate_per_s").doubleValue() > 0);
    }

    @Test
    void theSameSeedGivesTheSameAnswer() {
        String[] request = {"pedal", "--attempts", "3", "--seed", "5", "--quiet", "--format", "csv"};
        assertEquals(Run.of(request), Run.of(request));
    }

    /** What {@code entry} says of the same plan, the three verbs say too, and which option asks for less. */
    @ParameterizedTest
    @ValueSource(strings = {"stability", "smoothness", "pedal"})
    void aPlanWithoutABrakePointIsRefusedWithWhatItLacks(String verb) {
        List<String> plan = List.of("--quiet", "--demo-car", "road", "--demo-corner", "hairpin", "--in-hand", "10");
        String lacking = Pattern.compile("not with the margin asked for: [^;.]*\\d\\.\\d+ m in hand, 10.00 m asked for")
                .matcher(run("entry", plan).out().replaceAll("\\s+", " "))
                .results()
                .findFirst()
                .orElseThrow()
                .group();
        Run refused = run(verb, plan);
        assertEquals(1, refused.status(), refused.out());
        assertEquals(1, refused.err().lines().count(), refused.err());
        assertTrue(refused.err().contains("the closest attempt made it; " + lacking), refused.err());
        assertTrue(refused.err().contains("ask for less with --in-hand, or try another"), refused.err());
        assertTrue(refused.err().strip().endsWith("or give a --brake-point"), refused.err());
    }

    private static Run run(String verb, List<String> options) {
        return Run.of(Stream.concat(Stream.of(verb), options.stream()).toArray(String[]::new));
    }
}
