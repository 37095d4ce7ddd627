package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import org.foreload.recording.Measure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The verb {@code recording} on a file of the demo pair, and what it refuses. */
class RecordingVerbTest {

    @TempDir
    private Path directory;

    private final Path trailing = RecordedPair.trailing();

    @Test
    void aRecordingTellsItsChannelsAndCorners() {
        JsonNode json = Run.json("recording", trailing.toString(), "--lap", "2", "--format", "json");
        assertEquals(3, json.get("corners").size());
        assertEquals(50, json.get("rate_hz").asDouble(), 0.1);
        assertEquals(RecordedPair.made().rows(), json.get("rows_read").asLong());
        assertEquals(0, json.get("rows_left_out").size());
        JsonNode channel = json.get("channels").get(0);
        for (String field : new String[] {"name", "column", "unit", "guessed"}) {
            assertTrue(channel.has(field), field);
        }
        for (JsonNode corner : json.get("corners")) {
            assertEquals(2, corner.get("lap").asLong());
            JsonNode measures = corner.get("measures");
            for (Measure measure : Measure.values()) {
                double value = measures.get(measure.field()).asDouble(Double.NaN);
                assertTrue(measures.get(measure.field() + "_low").asDouble() <= value, measure.field());
                assertTrue(measures.get(measure.field() + "_high").asDouble() >= value, measure.field());
            }
            assertEquals("linear", measures.get("shape").asText());
        }
    }

    /** A simulated entry is written out and read back as a recording. */
    @Test
    void aSimulatedEntryIsARecordingToo() throws IOException {
        JsonNode entry = Run.json("entry", "--format", "json");
        Path file = Files.writeString(
                directory.resolve("entry.csv"),
                Run.of("entry", "--format", "csv").out());
        JsonNode measures = Run.json("recording", file.toString(), "--format", "json")
                .get("corners")
                .get(0)
                .get("measures");
        // The table holds the brake force, which follows the foot with a lag of some hundredths of a second.
        assertEquals(
                entry.get("brake_point_m").asDouble(),
                measures.get("brake_on_m").asDouble(),
                4);
        assertEquals(
                entry.get("release_end_m").asDouble(),
                measures.get("release_end_m").asDouble(),
                4);
        assertEquals(0, measures.get("turn_in_m").asDouble(), 2);
        assertEquals(
                entry.get("trail_share").asDouble(), measures.get("trail_share").asDouble(), 0.03);
        assertEquals(
                entry.get("minimum_speed_mps").asDouble(),
                measures.get("minimum_speed_mps").asDouble(),
                0.1);
    }

    @Test
    void everyFormatIsWritten() {
        Reports recording = Reports.of("recording", trailing.toString());
        assertTrue(recording.table().out().contains("linear"), "table");
        assertTrue(recording.csv().contains("linear"), "csv");
    }

    @Test
    void aPictureIsDrawn() throws IOException {
        Path picture = directory.resolve("recording.svg");
        Run run = Run.of("recording", trailing.toString(), "--picture", picture.toString());
        assertEquals(0, run.status(), run.err());
        String drawn = Files.readString(picture);
        assertTrue(drawn.contains("turn-in"));
        assertTrue(drawn.contains("release point"));
        assertTrue(drawn.contains("The first of 5 laps is drawn"));
    }

    /** Distances to the metre repeat all over a file: that stands once, with how often. */
    @Test
    void aReasonThatRecursStandsOnce() throws IOException {
        StringBuilder text = new StringBuilder("distance_m,speed_mps,lateral_acceleration_mps2\n");
        int repeated = 0;
        for (int i = 0; i < 400; i++) {
            boolean again = i % 20 == 19;
            repeated += again ? 1 : 0;
            double across = i > 200 && i < 300 ? 6 * Math.sin(Math.PI * (i - 200) / 100) : 0;
            text.append(String.format(Locale.ROOT, "%d,%.3f,%.4f%n", again ? i - 1 : i, 20 + 0.001 * i, across));
        }
        Path file = Files.writeString(directory.resolve("metres.csv"), text);
        String out = Run.of("recording", file.toString()).out();
        assertEquals(2, out.split("same distance as the row before", -1).length, out);
        assertTrue(out.contains(repeated + " of these lines"), out);
    }

    @Test
    void itRunsBare() {
        JsonNode recording = Reports.of("recording").json();
        Set<Long> laps = new TreeSet<>();
        recording.get("corners").forEach(corner -> laps.add(corner.get("lap").asLong()));
        assertEquals(Set.of(1L, 2L, 3L, 4L, 5L), laps);
        assertEquals(3 * laps.size(), recording.get("corners").size());
    }

    @Test
    void wrongRequestsAreRefusedInOneLine() throws IOException {
        String file = trailing.toString();
        Run.of("recording", "nowhere.csv").refusedWith("nowhere.csv: no such file");
        Run.of("recording", file, "--from", "5", "--to", "3").refusedWith("--to: 3.0: must be more than --from (5.0)");
        Run.of("recording", file, "--lap", "99").refusedNaming("--lap: 99: no such lap; there are 1 to 5");
        Run.of("recording", "--lap", "99").refusedNaming("no such lap; there are 1, 2, 3, 4, 5");
        Path text = Files.writeString(directory.resolve("poem.txt"), "no\nnumbers\nhere\n");
        Run.of("recording", text.toString()).refusedNaming("no line of column names with numbers below it");
        Path flat = Files.writeString(directory.resolve("flat.csv"), "time_s,speed_mps\n0,1\n1,1\n2,1\n");
        Run.of("recording", flat.toString()).refusedNaming("without lateral acceleration, yaw rate or position");
    }
}
