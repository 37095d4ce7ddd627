package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.foreload.examples.recording.DemoRuns;
import org.foreload.examples.recording.RecordedFile;
import org.foreload.examples.recording.RunTable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The verbs {@code recording} and {@code compare} on laps of which a part is missing. */
class PartsOfLapsTest {

    @TempDir
    private static Path directory;

    private static Path trailing;
    private static RecordedFile made;

    @BeforeAll
    static void write() throws IOException {
        made = new DemoRuns().file(DemoRuns.Driver.TRAILING);
        trailing = Files.writeString(directory.resolve("trailing.csv"), RunTable.csv(made.laps()));
    }

    /** Cut while it is read, a lap measures as it does whole, but for what is cut off. */
    @Test
    void aCutLapMeasuresAsTheWholeOne() {
        String file = trailing.toString();
        JsonNode whole = Run.json("recording", file, "--lap", "1", "--format", "json");
        JsonNode part = Run.json("recording", file, "--lap", "1", "--from", "900", "--to", "1500", "--format", "json");
        assertEquals(1, part.get("corners").size());
        JsonNode second = whole.get("corners").get(1).get("measures");
        JsonNode only = part.get("corners").get(0).get("measures");
        for (String field : List.of("brake_on_m", "release_end_m", "turn_in_m", "trail_share", "minimum_speed_mps")) {
            // Where the part begins is counted by speed alone, which its interval knows.
            double low = only.get(field + "_low").asDouble();
            double high = only.get(field + "_high").asDouble();
            double before = second.get(field).asDouble();
            assertTrue(low <= before && before <= high, field + ": " + before + " not in " + low + " to " + high);
        }
    }

    /**
     * Two seconds without rows over a release: named by both verbs, and no place of the brake is read from the bridge.
     */
    @Test
    void aHoleIsNamedAndNoReleaseIsReadAcrossIt() throws IOException {
        JsonNode whole = Run.json("recording", trailing.toString(), "--lap", "1", "--format", "json");
        double off =
                whole.get("corners").get(0).get("measures").get("release_end_m").asDouble();
        List<String> lines = new ArrayList<>(Files.readAllLines(trailing));
        org.foreload.recording.Run first = org.foreload.recording.Run.of(
                made.laps().get(0).recording(), org.foreload.recording.Cleaning.STANDARD.withoutResamples());
        int row = 1 + (int) (50 * (first.timeAt(off) - first.timeAt(first.first())));
        lines.subList(row - 50, row + 50).clear();
        Path holed = Files.write(directory.resolve("holed.csv"), lines);
        JsonNode json = Run.json("recording", holed.toString(), "--lap", "1", "--format", "json");
        JsonNode hole = json.get("holes").get(0);
        assertEquals(1, json.get("holes").size());
        assertEquals("whole rows", hole.get("missing").asText());
        assertEquals(2, hole.get("lasts_s").asDouble(), 0.05);
        assertTrue(hole.get("from_m").asDouble() < off && hole.get("to_m").asDouble() > off);
        JsonNode measures = json.get("corners").get(0).get("measures");
        assertTrue(
                measures.get("release_end_m").isNull() && measures.get("shape").isNull());
        assertFalse(
                json.get("corners").get(1).get("measures").get("release_end_m").isNull());
        String people = Run.of("compare", holed.toString(), trailing.toString(), "--lap", "1", "--no-advice")
                .out();
        assertTrue(people.replaceAll("\\s+", " ").contains("holed.csv, lap 1, has a hole of 2.0 s from"), people);
    }

    /** A program reads which corner a lap begins in, as people do. Common practice, no source. */
    @Test
    void aCornerCutIsAField() {
        JsonNode whole = Run.json("recording", trailing.toString(), "--lap", "2", "--format", "json");
        assertEquals(0, whole.get("corners_cut").size());
        String apex = String.format(
                Locale.ROOT,
                "%.0f",
                whole.get("corners").get(0).get("measures").get("apex_m").asDouble());
        JsonNode begun = Run.json("recording", trailing.toString(), "--lap", "2", "--from", apex, "--format", "json");
        assertCutAtStart(begun.get("corners_cut"));
        JsonNode compared = Run.json(
                "compare",
                trailing.toString(),
                trailing.toString(),
                "--lap",
                "2",
                "--reference-lap",
                "2",
                "--from",
                apex,
                "--no-advice",
                "--format",
                "json");
        assertCutAtStart(compared.get("first_file").get("corners_cut"));
        assertCutAtStart(compared.get("second_file").get("corners_cut"));
        assertEquals(whole.get("corners").size() - 1, begun.get("corners").size());
    }

    private static void assertCutAtStart(JsonNode cut) {
        assertEquals(1, cut.size());
        assertEquals(2, cut.get(0).get("lap").asLong());
        assertEquals("start", cut.get(0).get("border").asText());
        assertTrue(cut.get(0).get("from_m").asDouble() < cut.get(0).get("to_m").asDouble());
    }
}
