package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.LeftFoot;
import org.foreload.driver.Reaction;
import org.foreload.entry.EntrySimulator;
import org.foreload.examples.demo.Demos;
import org.foreload.strategy.CornerStudy;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The verb {@code entry} from options to answer. */
class EntryTest {

    /** The fields that scripts rely on. */
    static final List<String> FIELDS = List.of(
            "brake_point_m",
            "release_end_m",
            "turn_in_speed_mps",
            "minimum_speed_mps",
            "minimum_speed_at_m",
            "top_speed_mps",
            "time_s",
            "trail_share",
            "outcome",
            "cause",
            "margins",
            "limited_by",
            "bound_time_s",
            "above_bound",
            "events",
            "profile");

    private static final List<String> PROFILE = List.of(
            "s_m",
            "time_s",
            "speed_mps",
            "deceleration_mps2",
            "front_utilisation",
            "rear_utilisation",
            "offset_m",
            "sideslip_deg",
            "front_axle_load_n",
            "rear_axle_load_n");

    @TempDir
    private Path directory;

    private String file(String name, String text) throws IOException {
        return Files.writeString(directory.resolve(name), text).toString();
    }

    static String demo(String name) throws IOException {
        try (InputStream in = Demos.class.getResourceAsStream(name + ".json")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static JsonNode entry(String... options) {
        return Run.json(Stream.concat(Stream.of("entry", "--format", "json"), Stream.of(options))
                .toArray(String[]::new));
    }

    static Stream<Arguments> pairs() {
        return Demos.CARS.stream().flatMap(car -> Demos.CORNERS.stream().map(corner -> Arguments.of(car, corner)));
    }

    static void hasTheFields(JsonNode entry) {
        FIELDS.forEach(field -> assertTrue(entry.has(field), field));
        List.of("front", "rear", "edge_m")
                .forEach(field -> assertTrue(entry.get("margins").has(field), field));
        JsonNode row = entry.get("profile").get(0);
        PROFILE.forEach(field -> assertTrue(row.get(field).isNumber(), field));
        JsonNode event = entry.get("events").get(0);
        List.of("event", "s_m", "time_s").forEach(field -> assertTrue(event.has(field), field));
    }

    /**
     * In an S of 50 and 45 m the default release ends at 0.7 of the way to the apex of the first bend, at 33 m: the
     * brake is for that one. Common practice, no source.
     */
    @Test
    void theDefaultReleaseInAnSIsForItsFirstBend() throws IOException {
        String bend = """
                {"type": "spiral", "length_m": 20, "end_radius_m": %1$d, "turn": "%2$s"},
                {"type": "arc", "length_m": 26, "radius_m": %1$d, "turn": "%2$s"},
                {"type": "spiral", "length_m": 20, "start_radius_m": %1$d, "turn": "%2$s"}""";
        String corner = file(
                "s.json",
                """
                {"name": "an S", "approach_speed_mps": 50, "approach_length_m": 300, "exit_length_m": 100,
                 "half_width_m": 5, "segments": [""" + String.format(bend, 50, "left")
                        + ", {\"type\": \"straight\", \"length_m\": 15}, " + String.format(bend, 45, "right") + "]}");
        JsonNode entry = entry("--demo-car", "road", "--corner", corner);
        assertEquals("made it", entry.get("outcome").textValue());
        assertEquals(0.7 * 33, entry.get("release").get("end_m").doubleValue(), 0.5);
    }

    /** With its margin the default release makes a demo corner, or the answer says that no brake point does. */
    @ParameterizedTest
    @MethodSource("pairs")
    void theDefaultReleaseKeepsItsMarginOrIsSaidNotTo(String car, String corner) {
        JsonNode entry = entry("--demo-car", car, "--demo-corner", corner);
        hasTheFields(entry);
        boolean found = entry.get("brake_point_found").booleanValue();
        assertEquals(found, entry.get("keeps_margin").booleanValue());
        assertEquals(found, !entry.get("in_hand_m").isNull());
        if (found) {
            assertEquals("made it", entry.get("outcome").textValue());
            assertTrue(entry.get("in_hand_m").doubleValue() >= 2);
        }
    }

    /** The default release is nobody's best, but a plausible one: within 12 % of the bound, and never below it. */
    @ParameterizedTest
    @MethodSource("pairs")
    void theDefaultReleaseMakesEveryDemoCorner(String car, String corner) {
        JsonNode entry = entry("--demo-car", car, "--demo-corner", corner, "--no-margin");
        hasTheFields(entry);
        assertEquals("made it", entry.get("outcome").textValue());
        assertTrue(entry.get("brake_point_found").booleanValue());
        double above = entry.get("above_bound").doubleValue();
        assertTrue(above > 0 && above < 0.12, "above the bound: " + above);
        double time = entry.get("time_s").doubleValue();
        assertEquals(time / entry.get("bound_time_s").doubleValue() - 1, above, 1e-12);
        JsonNode profile = entry.get("profile");
        assertEquals(time, profile.get(profile.size() - 1).get("time_s").doubleValue());
        double brake = entry.get("brake_point_m").doubleValue();
        double top = entry.get("top_speed_mps").doubleValue();
        double lowest = entry.get("minimum_speed_mps").doubleValue();
        double turnIn = entry.get("turn_in_speed_mps").doubleValue();
        if (brake < 0) {
            assertEquals(
                    (turnIn - lowest) / (top - lowest), entry.get("trail_share").doubleValue(), 1e-9);
        }
    }

    /**
     * What a plan prints drives the same entry when it is given back, to half a millisecond: common practice, no
     * source.
     */
    @ParameterizedTest
    @MethodSource("pairs")
    void aPlanGivenBackDrivesTheSameEntry(String car, String corner) {
        JsonNode entry = entry("--demo-car", car, "--demo-corner", corner);
        JsonNode release = entry.get("release");
        JsonNode again = entry(
                "--demo-car",
                car,
                "--demo-corner",
                corner,
                "--brake-point=" + entry.get("brake_point_m"),
                "--peak-deceleration=" + release.get("peak_deceleration_mps2"),
                "--release-shape=" + release.get("shape").textValue(),
                "--release-start=" + release.get("start_m"),
                "--release-end=" + release.get("end_m"),
                "--pick-up=" + entry.get("pick_up_m"));
        assertEquals(entry.get("time_s").doubleValue(), again.get("time_s").doubleValue(), 5e-4);
        assertEquals(
                entry.get("farthest_offset_m").doubleValue(),
                again.get("farthest_offset_m").doubleValue(),
                1e-2);
    }

    @Test
    void brakingLaterThanTheLatestFailsAndSaysWhy() {
        double latest = entry("--demo-corner", "hairpin").get("brake_point_m").doubleValue();
        JsonNode entry = entry("--demo-corner", "hairpin", "--brake-point", Double.toString(latest + 30));
        assertFalse(entry.get("outcome").textValue().equals("made it"));
        assertTrue(
                entry.get("cause").textValue().contains(" m"),
                entry.get("cause").textValue());
        assertTrue(entry.get("time_s").isNull());
        assertTrue(entry.get("above_bound").isNull());
        assertEquals(latest + 30, entry.get("brake_point_m").doubleValue());
        assertFalse(entry.get("keeps_margin").booleanValue());
    }

    @Test
    void aReleaseThatNoBrakePointMakesIsAnAnswer() {
        String[] request = {"entry", "--peak-deceleration", "30"};
        Run run = Run.of(request);
        assertEquals(0, run.status());
        assertTrue(run.out().contains("No brake point makes the corner"), run.out());
        JsonNode entry = entry("--peak-deceleration", "30");
        assertFalse(entry.get("brake_point_found").booleanValue());
        assertTrue(entry.get("in_hand_m").isNull());
        assertTrue(entry.get("brake_point_m").isNumber());
        assertTrue(run.out()
                .contains(entry.get("outcome").textValue() + "; "
                        + entry.get("cause").textValue()));
    }

    @Test
    void aTableOfAStraightLineIsTheLinearRelease() throws IOException {
        String table = file("line.csv", "released,remaining\n0,1\n1,0\n");
        JsonNode drawn = entry("--brake-point", "-140", "--release-shape", "table:" + table);
        JsonNode linear = entry("--brake-point", "-140");
        assertEquals("table:" + table, drawn.get("release").get("shape").textValue());
        assertEquals(linear.get("time_s").doubleValue(), drawn.get("time_s").doubleValue(), 1e-9);
    }

    @Test
    void theMirroredCornerIsTheMirroredRun() throws IOException {
        String text = demo("corner-hairpin");
        String mirrored = file("mirrored.json", text.replace("\"right\"", "\"left\""));
        JsonNode right = entry("--demo-corner", "hairpin", "--brake-point", "-150");
        JsonNode left = entry("--corner", mirrored, "--brake-point", "-150");
        assertEquals(right.get("time_s").doubleValue(), left.get("time_s").doubleValue(), 1e-6);
        int row = right.get("profile").size() / 2;
        double offset = right.get("profile").get(row).get("offset_m").doubleValue();
        assertEquals(-offset, left.get("profile").get(row).get("offset_m").doubleValue(), 1e-6);
    }

    /** The promise of the design: the default lies within a millisecond of a far finer run. */
    @Test
    void theDefaultToleranceIsFineEnough() {
        JsonNode usual = entry("--brake-point", "-140");
        JsonNode fine = entry("--brake-point", "-140", "--tolerance", "1e-10");
        assertEquals(fine.get("time_s").doubleValue(), usual.get("time_s").doubleValue(), 1e-3);
    }

    @Test
    void peopleSeeAFewRowsUnlessTheyAskForAll() {
        String table = Run.of("entry", "--brake-point", "-140").out();
        String all = Run.of("entry", "--brake-point", "-140", "--all").out();
        assertTrue(table.lines().count() < 100, table);
        assertTrue(all.lines().count() > 500);
        assertTrue(table.contains("Trail share: "), table);
        assertTrue(table.lines().allMatch(line -> line.length() <= 250), table);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            --brake-point NaN             | --brake-point: NaN: must be a finite number in m
            --brake-point -301            | --brake-point: -301: must be from -300 (where the approach begins) to below
            --brake-point 60              | --brake-point: 60: must be from -300
            --peak-deceleration 0         | --peak-deceleration: 0: must be a number above 0 in m/s²
            --release-shape lineer        | --release-shape: lineer: must be one of linear, progressive, held, circle
            --release-shape table:        | --release-shape: table:: must name a file after table:
            --release-shape table:no.csv  | no.csv: no such file
            --release-end -5 --release-start 2 | --release-end: -5: must be at or after the release point, 2 m
            --release-start 90            | --release-start: 90: must be at or before brake off, 47.13 m
            --tolerance 1                 | --tolerance: 1: must be a number from 1.0E-13 to 0.0001
            --drift 0                     | --drift: 0: must be a number above 0 in m
            --edge-margin -1              | --edge-margin: -1: must be a number of 0 or more in m
            --front-margin 2              | --front-margin: 2: must be a number from 0 to 1
            --rear-margin Infinity        | --rear-margin: Infinity: must be a finite number
            --build-up-time -1            | --build-up-time: -1: must be a number from 0 to 10 in s
            """)
    void wrongOptionsAreRefused(String options, String text) {
        Run.of(("entry " + options).split(" ")).refusedNaming(text);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            released,left;0,1;1,0               | column left: unknown column
            released;0;1                        | column remaining: missing: must be given
            released,remaining;0,1;0.5,x;1,0    | remaining, row 2: x: must be a finite number
            released,remaining;0,1;1,0.1        | remaining, row 2: 0.1: must be 0 in the last row
            released,remaining;0,1;0.5;1,0      | row 2: 1 value: must have 2, as the head line; row 1 is the line below it
            released,remaining;0,1;0.5,1.2;1,0  | remaining, row 2: 1.2: must be from 0 to 1
            released,remaining;0.1,1;1,0        | released, row 1: 0.1: must be 0 in the first row
            """)
    void wrongTablesAreRefused(String lines, String text) throws IOException {
        String table = file("shape.csv", lines.replace(';', '\n'));
        Run.of("entry", "--release-shape", "table:" + table).refusedNaming(table + ": " + text);
    }

    @Test
    void aPointMassIsSimulatedWithALittleYawInertia() throws IOException {
        String car =
                file("car.json", demo("car-light").replace("\"yaw_inertia_kg_m2\": 980", "\"yaw_inertia_kg_m2\": 0"));
        assertEquals(
                "made it",
                Run.json("entry", "--car", car, "--format", "json")
                        .get("outcome")
                        .asText());
    }

    @Test
    void aCornerThatNeedsNoBrakeIsSaidToNeedNone() throws IOException {
        String corner = file("corner.json", """
                {"name": "bend", "approach_speed_mps": 12, "approach_length_m": 20, "exit_length_m": 20, "half_width_m": 5,
                 "segments": [{"type": "arc", "length_m": 80, "radius_m": 200, "turn": "right"}]}
                """);
        var entry = Run.json("entry", "--corner", corner, "--format", "json");
        assertEquals("made it", entry.get("outcome").asText());
        assertTrue(entry.get("brake_point_m").isNull());
        assertTrue(Run.of("entry", "--corner", corner).out().contains("No braking at all: made it"));
    }

    private static final String[] PLAN = {
        "entry",
        "--brake-point=-116.4",
        "--peak-deceleration=9.2",
        "--release-shape=smooth",
        "--release-start=-1.5",
        "--release-end=31.7"
    };

    private static JsonNode planned(String... more) {
        return Run.json(Stream.of(Stream.of(PLAN), Stream.of(more), Stream.of("--format=json"))
                .flatMap(words -> words)
                .toArray(String[]::new));
    }

    /**
     * Whoever presses half as hard again by mistake expects the plan, not what comes of the mistake: the same is driven
     * here with the simulator alone, whose driver comes off the brake below 0.4 of the speed of the pick-up.
     */
    @Test
    void whoMakesAMistakeExpectsThePlan() {
        EntrySimulator asPlanned = CornerStudy.of(
                        Demos.car("", Demos.DEFAULT_CAR).value(),
                        Demos.corner("", Demos.DEFAULT_CORNER).value())
                .simulator();
        LeftFoot foot = asPlanned.driver().leftFoot();
        EntrySimulator reacting = asPlanned.with(
                asPlanned.driver().with(foot.withSlowestBraking(0.4).with(Reaction.practised())));
        BrakePlan plan = Braking.of(9.2, 0.25, new Release(ReleaseShapes.SMOOTH, -1.5, 31.7))
                .from(-116.4);
        BrakePlan harder = plan.withPeakDeceleration(13.8);
        JsonNode answer = planned("--mistake", "harder:50");
        double time = reacting.run(harder, reacting.expected(plan)).time();
        assertEquals(time, answer.get("time_s").asDouble(), 1e-6);
        assertEquals(
                time - asPlanned.run(plan).time(),
                answer.get("slower_than_planned_s").asDouble(),
                1e-6);
        String[] other = Stream.concat(Stream.of(PLAN), Stream.of("--format=json"))
                .map(word -> word.replace("=9.2", "=13.8"))
                .toArray(String[]::new);
        double expectingIt = Run.json(other).get("time_s").asDouble();
        assertTrue(expectingIt > time + 0.05, "who plans that peak keeps to it: " + expectingIt);
        assertEquals(
                asPlanned.run(plan.withBrakePoint(-106.4)).cause(),
                planned("--mistake=later:10", "--as-told").get("cause").asText());
    }

    /** No mistake is none, and one that leaves nothing of the plan is refused. */
    @Test
    void aMistakeIsOneOfFourAndLeavesAPlan() {
        assertEquals(
                planned().get("time_s").asDouble(),
                planned("--mistake=deeper:0").get("time_s").asDouble(),
                1e-6);
        refused("later:148", "must be at most 147 m with this plan");
        refused("harder:301", "must be at most 300 % with this plan");
        for (String wrong : List.of("harder", "louder:3", "later:", "later:-1", "later:NaN", ":")) {
            refused(wrong, "must be one of later, harder, sooner, deeper, a colon, and a number of 0 or more");
        }
    }

    private static void refused(String mistake, String why) {
        String[] words = Stream.concat(Stream.of(PLAN), Stream.of("--mistake=" + mistake))
                .toArray(String[]::new);
        Run.of(words).refusedNaming("--mistake: " + mistake + ": " + why);
    }
}
