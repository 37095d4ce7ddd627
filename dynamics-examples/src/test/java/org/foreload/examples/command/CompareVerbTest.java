package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.foreload.examples.demo.Demos;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The verb {@code compare} on the files of the demo pair. */
class CompareVerbTest {

    @TempDir
    private Path directory;

    private final Path trailing = RecordedPair.trailing();
    private final Path straight = RecordedPair.straight();

    /** The pair, without advice. */
    private Reports pair() {
        return Reports.of("compare", straight.toString(), trailing.toString(), "--no-advice");
    }

    /** A lap and itself. */
    private Reports alike() {
        return Reports.of("compare", trailing.toString(), trailing.toString(), "--no-advice");
    }

    /** Bare, it compares the demo pair. */
    @Test
    void aComparisonTellsGapCornersAndPhases() {
        JsonNode json = Reports.of("compare", "--quiet").json();
        assertEquals(3, json.get("corners").size());
        assertTrue(json.get("gap_s").asDouble() > 0, "braking in a straight line is slower");
        double sum = 0;
        int items = 0;
        for (JsonNode corner : json.get("corners")) {
            JsonNode phases = corner.get("phases");
            double parts = phases.get("to_turn_in_s").asDouble()
                    + phases.get("to_apex_s").asDouble()
                    + phases.get("to_exit_s").asDouble();
            assertEquals(corner.get("gap_s").asDouble(), parts, 1e-9);
            sum += parts;
            assertTrue(corner.get("first").get("measures").has("brake_on_m"));
            assertTrue(corner.get("second").get("measures").has("brake_on_m"));
            // Five laps: the chi-squared law reaches 0.65 times down and 2.4 times up, measuring errors aside.
            JsonNode scatter = corner.get("scatter");
            for (String field : List.of("brake_point_m", "peak_share", "release_m")) {
                double deviation = scatter.get(field).asDouble();
                assertTrue(scatter.get(field + "_low").asDouble() < deviation, field);
                assertTrue(scatter.get(field + "_high").asDouble() > 1.5 * deviation, field);
            }
            boolean withheld = !corner.get("advice_withheld").isNull();
            // This driver's quickest lap waits for the car at its limit in one corner.
            assertTrue(
                    !withheld || corner.get("advice_withheld").asText().contains("at its limit already"),
                    corner.get("advice_withheld").asText());
            if (withheld) {
                continue;
            }
            assertTrue(corner.get("speed_error_mps").asDouble() < 0.8);
            for (JsonNode item : corner.get("advice")) {
                items++;
                for (String field : List.of("change", "amount", "unit")) {
                    assertTrue(item.has(field), field);
                }
                double gain = item.get("predicted_gain_s").asDouble();
                assertTrue(item.get("low_s").asDouble() < gain
                        && gain < item.get("high_s").asDouble());
                assertTrue(item.get("failure_probability").asDouble() <= 0.05);
                assertTrue(item.get("sentence").asText().endsWith(" s quicker."));
            }
        }
        assertTrue(json.get("limits").size() >= 3);
        for (JsonNode limit : json.get("limits")) {
            double speed = limit.get("speed_mps").asDouble();
            assertTrue(speed > 10 && speed < 70, "speed " + speed);
            double lateral = limit.get("lateral_mps2").asDouble();
            assertTrue(limit.get("lateral_mps2_low").asDouble() < lateral);
            assertTrue(limit.get("braking_mps2_high").asDouble()
                    > limit.get("braking_mps2").asDouble());
        }
        assertTrue(items > 0, "an early straight-line braker has something to gain");
        assertEquals(json.get("gap_s").asDouble(), sum, 1e-9);
        JsonNode last = json.get("gap").get(json.get("gap").size() - 1);
        assertEquals(json.get("gap_s").asDouble(), last.get("gap_s").asDouble(), 1e-9);
    }

    @Test
    void aFileAgainstItselfHasNoGap() {
        JsonNode json = alike().json();
        for (JsonNode corner : json.get("corners")) {
            assertEquals(0, corner.get("advice").size());
            assertFalse(corner.get("advice_withheld").asText().isBlank());
        }
        assertEquals(0, json.get("gap_s").asDouble(), 1e-9);
    }

    /** A lap compared with itself is called that, and nobody is called slower. */
    @Test
    void aLapAgainstItselfClaimsNoDifference() {
        String people = alike().table().out();
        assertTrue(people.contains("Both are the same lap, so there is no gap."), people);
        assertFalse(people.contains("slower"), people);
        assertFalse(people.contains("reference"), people);
    }

    /** What was guessed and what could not be used is shown, in a comparison too. */
    @Test
    void aComparisonShowsWhatWasGuessedAndLeftOut() throws IOException {
        List<String> lines = new ArrayList<>(Files.readAllLines(straight));
        String[] cells = lines.get(200).split(",");
        cells[List.of(lines.get(0).split(",")).indexOf("speed_mps")] = "fast";
        lines.set(200, String.join(",", cells));
        Path spoiled = Files.write(directory.resolve("spoiled.csv"), lines);
        Reports compared = Reports.of("compare", spoiled.toString(), trailing.toString(), "--no-advice");
        String out = compared.table().out().replaceAll("\\s+", " ");
        assertTrue(out.contains("as guessed from names and units: time is time_s, speed is speed_mps in m/s"), out);
        assertTrue(out.contains("not used: line 201, speed that is no number, \"fast\" in column speed_mps."), out);
        JsonNode json = compared.json();
        assertEquals(
                201,
                json.get("first_file")
                        .get("rows_left_out")
                        .get(0)
                        .get("first_line")
                        .asLong());
        JsonNode cell = json.get("first_file").get("rows_left_out").get(0);
        assertEquals("fast", cell.get("text").asText());
        assertEquals("speed_mps", cell.get("column").asText());
        assertTrue(json.get("second_file").get("channels").size() > 5);
    }

    /** A brake that never moves is refused where it is needed, and named where it is not. */
    @Test
    void aBrakeThatNeverMovesIsRefusedWhereItIsNeeded() throws IOException {
        List<String> lines = new ArrayList<>(Files.readAllLines(straight));
        int brake = List.of(lines.get(0).split(",")).indexOf("brake");
        for (int i = 1; i < lines.size(); i++) {
            String[] cells = lines.get(i).split(",");
            cells[brake] = "0.0";
            lines.set(i, String.join(",", cells));
        }
        Path dead = Files.write(directory.resolve("dead.csv"), lines);
        Run.of("recording", dead.toString()).refusedNaming("brake: 0: column brake never changes");
        Run.of("compare", dead.toString(), trailing.toString()).refusedNaming("brake: 0: column brake never changes");
        Run people = Run.of("compare", dead.toString(), trailing.toString(), "--no-advice");
        assertEquals(0, people.status(), people.err());
        String out = people.out().replaceAll("\\s+", " ");
        assertTrue(out.contains("brake: column brake never changes: it is 0 in all"), out);
        JsonNode json = Run.json("compare", trailing.toString(), dead.toString(), "--no-advice", "--format", "json");
        assertEquals(
                "brake",
                json.get("second_file")
                        .get("columns_ignored")
                        .get(0)
                        .get("name")
                        .asText());
        Run without = Run.of("recording", dead.toString(), "--columns", "brake=", "--lap", "1");
        assertEquals(0, without.status(), without.err());
    }

    /** One mistake, one line: a unit that the positions belie, and a lap of the reference that is not there. */
    @Test
    void aMistakeIsOneClearLine() throws IOException {
        Path wrong = directory.resolve("wrong.csv");
        Files.writeString(wrong, Files.readString(straight).replaceFirst("speed_mps", "speed_kph"));
        Run.of("compare", wrong.toString(), trailing.toString())
                .refusedWith(
                        wrong + ": lap 1, speed_mps: 0.26 times what the positions say: must be within a quarter of "
                                + "that: look at the units of speed and time");
        Run.of("compare", straight.toString(), trailing.toString(), "--reference-lap", "9")
                .refusedWith(trailing + ": --reference-lap: 9: no such lap; there are 1 to 5");
    }

    /** Who asks for no advice need not be told so for each corner. */
    @Test
    void adviceThatNobodyAskedForIsNotMissed() {
        String people = alike().table().out();
        assertFalse(people.contains("no advice"), people);
    }

    /**
     * The road's share multiplies what the file says: a car on tyres of twice the friction, on a road of half of it, is
     * the car that was driven (both factors are exact in binary), and gets the same advice; on a dry road it does not.
     */
    @Test
    void theRoadsFrictionScalesTheGivenCar() throws IOException {
        ObjectMapper mapper = new ObjectMapper();
        JsonNode car = mapper.readTree(Demos.class.getResourceAsStream("car-light.json"));
        Path plain = Files.writeString(directory.resolve("plain.json"), car.toString());
        for (String tyre : List.of("front_tyre", "rear_tyre")) {
            for (String peak : List.of("peak_friction_x", "peak_friction_y")) {
                ObjectNode fields = (ObjectNode) car.get(tyre);
                fields.put(peak, 2 * fields.get(peak).asDouble());
            }
        }
        Path doubled = Files.writeString(directory.resolve("doubled.json"), car.toString());
        JsonNode expected = advice(plain, "1");
        assertEquals(expected, advice(doubled, "0.5"));
        assertNotEquals(expected, advice(plain, "0.5"));
    }

    private JsonNode advice(Path car, String friction) {
        return Run.of(
                        "compare",
                        straight.toString(),
                        trailing.toString(),
                        "--to=1000",
                        "--quiet",
                        "--car=" + car,
                        "--road-friction=" + friction,
                        "--format=json")
                .json()
                .get("corners");
    }

    /** Where no car of a file is driven the option would change nothing. */
    @Test
    void theRoadsFrictionIsRefusedWhereItWouldChangeNothing() {
        String file = trailing.toString();
        Run.of("compare", file, file, "--road-friction", "0.6")
                .refusedWith("--road-friction: has no effect without --car: the fitted car has the friction that the "
                        + "laps show");
        Run.of("compare", file, file, "--no-advice", "--road-friction", "0.6")
                .refusedWith("--road-friction: has no effect with --no-advice");
        Run.of("compare", file, file, "--car", "car.json", "--road-friction", "0")
                .refusedNaming("--road-friction: 0: must be");
    }

    /** Without lateral acceleration, yaw rate and position there is a gap, and no corner. */
    @Test
    void timeAndSpeedAloneAreCompared() throws IOException {
        Path mine = speedOnly(straight);
        Path theirs = speedOnly(trailing);
        JsonNode whole = pair().json();
        JsonNode answer = Run.json("compare", mine.toString(), theirs.toString(), "--format", "json");
        assertEquals("speed", answer.get("aligned_by").asText());
        assertEquals(0, answer.get("corners").size());
        double half = answer.get("gap_s_high").asDouble() - answer.get("gap_s").asDouble();
        assertEquals(whole.get("gap_s").asDouble(), answer.get("gap_s").asDouble(), 1.5 * half);
        Run people = Run.of("compare", mine.toString(), theirs.toString());
        assertTrue(people.out().contains("shape of speed"), people.out());
        Run.of("recording", mine.toString())
                .refusedWith(mine
                        + ": lateral: missing: without lateral acceleration, yaw rate or position no corner is found: "
                        + "name one by --columns; the columns are lap, time_s, speed_mps");
    }

    private Path speedOnly(Path file) throws IOException {
        List<String> lines = Files.readAllLines(file);
        List<String> headers = List.of(lines.get(0).split(","));
        int[] kept = {headers.indexOf("lap"), headers.indexOf("time_s"), headers.indexOf("speed_mps")};
        StringBuilder text = new StringBuilder();
        for (String line : lines) {
            String[] cells = line.split(",");
            text.append(cells[kept[0]] + "," + cells[kept[1]] + "," + cells[kept[2]] + "\n");
        }
        return Files.writeString(directory.resolve("speed-" + file.getFileName()), text);
    }

    @Test
    void everyFormatIsWritten() {
        String table = pair().table().out();
        assertTrue(
                table.replaceAll("\\s+", " ").contains(" s slower than the reference; most is lost in corner"), table);
        assertTrue(pair().csv().lines().count() > 3, pair().csv());
    }

    @Test
    void aPictureIsDrawn() throws IOException {
        Path picture = directory.resolve("compare.svg");
        Run run = Run.of(
                "compare", straight.toString(), trailing.toString(), "--no-advice", "--picture", picture.toString());
        assertEquals(0, run.status(), run.err());
        assertTrue(Files.readString(picture).contains("turn-in"));
    }

    /** Either lap may be named, and is the one that is compared. */
    @Test
    void theLapsThatAreNamedAreCompared() {
        String[] words = {
            "compare", straight.toString(), trailing.toString(), "--no-advice", "--lap", "2", "--reference-lap", "4"
        };
        String text = Run.of(words).out().replaceAll("\\s+", " ");
        assertTrue(text.contains(straight + ", lap 2, against " + trailing + ", lap 4"), text);
    }

    @Test
    void oneFileIsRefused() {
        Run.of("compare", trailing.toString()).refusedNaming("must be two files");
    }
}
