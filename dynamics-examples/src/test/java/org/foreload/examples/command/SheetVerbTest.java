package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.recording.DemoRuns;
import org.foreload.examples.recording.MadeDrivers;
import org.foreload.examples.recording.MadeRun;
import org.foreload.examples.sweep.Stop;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SheetVerbTest {

    /** One release and the straight-line braking beside it. */
    private static final String SMALL =
            "--quiet --shapes progressive --peaks 0.7 --starts=-0.1 --ends 0.7 --samples 4 --steps 1 --driver expert --accept 0.5";

    @TempDir
    private Path directory;

    private Path corner;

    @BeforeEach
    void writeCorner(@TempDir Path folder) throws IOException {
        corner = ShortCorner.in(folder);
    }

    /** In the short corner. */
    private String[] request(Path file, String more) {
        return ("sheet --out " + file + " --corner " + corner + " " + SMALL + more).split(" ");
    }

    private List<Path> files() throws IOException {
        try (Stream<Path> files = Files.list(directory)) {
            return files.toList();
        }
    }

    @Test
    void writesTheSameBytesTwiceAndTellsThePlan() throws IOException {
        Path one = directory.resolve("one.html");
        Path two = directory.resolve("two.html");
        Reports report = Reports.of(request(one, ""));
        assertTrue(report.table().out().lines().count() > 3);
        JsonNode answer = report.json();
        Run.json(request(two, " --threads 1 --format json"));
        assertArrayEquals(Files.readAllBytes(one), Files.readAllBytes(two));
        assertEquals(2, files().size());
        assertEquals(one.toString(), answer.get("file").asText());
        // A plan is driven as told; a foot that reacts has two states more, and other steps.
        JsonNode entry = Run.json(
                "entry",
                "--as-told",
                "--corner",
                corner.toString(),
                "--format",
                "json",
                "--release-shape",
                "progressive",
                "--brake-point=" + answer.get("brake_point_m").asText(),
                "--peak-deceleration",
                answer.get("release").get("peak_deceleration_mps2").asText(),
                "--release-start="
                        + answer.get("release").get("release_start_m").asText(),
                "--release-end=" + answer.get("release").get("release_end_m").asText());
        assertEquals(entry.get("time_s").asDouble(), answer.get("time_s").asDouble(), 1e-9);
        String page = Files.readString(one);
        assertTrue(page.contains(Cautions.FIRST), "cautions");
        // Two sliders, each pair of places with its own charts: still small enough to be mailed.
        assertTrue(page.length() < 4_500_000, "as long as " + page.length());
    }

    @TempDir
    private static Path shared;

    private static Path page() {
        return shared.resolve("own.html");
    }

    /** A page in miles an hour about a car with anti-lock brakes, with a made driver's own release. */
    private static Reports own() throws IOException {
        String held = new String(
                        Demos.class.getResourceAsStream("car-light.json").readAllBytes(), StandardCharsets.UTF_8)
                .replaceFirst("\\{", "{\"anti_lock\": true,");
        Path car = Files.writeString(shared.resolve("car.json"), held);
        String words = "sheet --out " + page() + " --demo-corner medium " + SMALL + " --demo-recording --units mph";
        return Reports.of((words + " --car " + car).split(" "));
    }

    /**
     * A made driver's own release beside the plan: its brake point and brake off as the driver meant them, but for its
     * scatter of 1 and 2.5 m, on the corner's axis.
     */
    @Test
    void theDriversOwnReleaseStandsBesideThePlan() throws IOException {
        JsonNode own = own().json().get("own");
        assertEquals(1, own.get("corner").asInt());
        assertTrue(own.get("unlike_share").asDouble() < 0.1, own.toString());
        MadeRun.Stage meant = MadeDrivers.plan(DemoRuns.Driver.STRAIGHT).get(0);
        assertEquals(meant.plan().brakePoint(), row(own, "brake_on_m"), 4);
        assertEquals(meant.plan().release().end(), row(own, "release_end_m"), 8);
        String text = Files.readString(page()).replace('\u00a0', ' ');
        assertTrue(text.contains("Your own release beside the plan"), "section");
        assertTrue(text.contains("Compared with the plan, you brake "), "sentence");
    }

    /**
     * The units asked for, on the whole page; and no wheel that locks, on a car whose brakes let none (decision 0040).
     */
    @Test
    void thePageSpeaksInTheUnitsAskedForAndOfNoLockThatCannotBe() throws IOException {
        own().json();
        String text = Files.readString(page()).replace('\u00a0', ' ');
        assertTrue(text.contains(" mph) at turn-in"), "sentence");
        assertTrue(text.contains(">turn-in, mph (m/s)<"), "row");
        assertTrue(text.contains("speed, mph"), "axis");
        assertTrue(text.contains("lowest speed, mph"), "the driver's own");
        assertFalse(text.contains("km/h"), "another unit");
        assertTrue(text.contains("the anti-lock brakes hold all wheels back"), "press");
        assertFalse(text.contains("wheel locks"), "a lock");
    }

    private static double row(JsonNode own, String measure) {
        for (JsonNode row : own.get("rows")) {
            if (row.get("measure").asText().equals(measure)) {
                return row.get("own").asDouble();
            }
        }
        return Double.NaN;
    }

    @Test
    void aRecordingThatCannotBeTheCornersIsRefusedBeforeTheWork() {
        Path page = directory.resolve("sheet.html");
        Run.of(request(page, " --demo-recording --recorded-corner 7"))
                .refusedWith(
                        "demo run, straight-line braking: --recorded-corner: 7: must be a corner of the lap: 1 to 3");
        Run.of(request(page, " --recorded-corner 1"))
                .refusedWith("--recorded-corner: has no effect without --recording");
        Run.of(request(page, " --recording " + directory.resolve("none.csv")))
                .refusedWith(directory.resolve("none.csv") + ": no such file");
    }

    @Test
    void aPlaceThatCannotBeWrittenToIsRefusedBeforeTheWork() {
        Path txt = directory.resolve("sheet.txt");
        Run.of(request(txt, "")).refusedWith("--out: " + txt + ": must end with .html");
        Path lost = directory.resolve("lost").resolve("sheet.html");
        Run.of(request(lost, "")).refusedWith("--out: " + lost + ": must be in a folder that is there");
    }

    @Test
    void aStopLeavesNoFile() throws IOException {
        Stop stop = new Stop();
        stop.request(0);
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Foreload.run(
                request(directory.resolve("sheet.html"), ""),
                OutputStream.nullOutputStream(),
                new Console(err, () -> false, stop));
        assertEquals(Foreload.FAILED, status);
        assertEquals(
                "stopped before the end; nothing was written" + System.lineSeparator(),
                err.toString(StandardCharsets.UTF_8));
        assertEquals(List.of(), files());
    }
}
