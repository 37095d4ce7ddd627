package org.foreload.examples.study;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.foreload.examples.Main;
import org.foreload.examples.recording.DemoRuns;
import org.foreload.examples.recording.MadeRun;
import org.foreload.examples.recording.RecordedFile;
import org.foreload.examples.recording.RunTable;
import org.foreload.examples.recording.Sensors;
import org.foreload.recording.Recording;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Two files of ten laps at 100 Hz, compared in a Java of its own, with advice and without: the bytes of the answer do
 * not depend on the number of threads. How long each took stands in the log; a machine that does other work takes
 * longer.
 */
@Tag("long")
class CompareTimeStudyTest {

    private static final int LAPS = 10;

    private static final double RATE = 100;

    @TempDir
    private Path directory;

    @Test
    void tenLapsAtAHundredHertz() throws IOException, InterruptedException {
        DemoRuns demo = new DemoRuns();
        for (DemoRuns.Driver driver : DemoRuns.Driver.values()) {
            List<MadeRun.Stage> plan = demo.plan(driver);
            List<RecordedFile.Lap> laps = new ArrayList<>();
            for (int lap = 1; lap <= LAPS; lap++) {
                long seed = 50L * driver.ordinal() + lap;
                laps.add(new RecordedFile.Lap(
                        lap, Recording.of(Sensors.usual(RATE).record(DemoRuns.lap(plan, 1, seed), seed))));
            }
            Files.writeString(directory.resolve(driver + ".csv"), RunTable.csv(laps));
        }
        byte[] two = compared("two", "--threads", "2");
        assertArrayEquals(two, compared("one", "--threads", "1"));
        compared("plain", "--no-advice");
    }

    private byte[] compared(String name, String... more) throws IOException, InterruptedException {
        Path answer = directory.resolve(name + ".json");
        List<String> command = new ArrayList<>(List.of(
                System.getProperty("java.home") + "/bin/java",
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName(),
                "compare",
                directory.resolve(DemoRuns.Driver.STRAIGHT + ".csv").toString(),
                directory.resolve(DemoRuns.Driver.TRAILING + ".csv").toString(),
                "--quiet",
                "--format",
                "json"));
        command.addAll(List.of(more));
        long start = System.nanoTime();
        Process java = new ProcessBuilder(command)
                .redirectOutput(answer.toFile())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        assertEquals(0, java.waitFor());
        StudyLog.line(
                "compare, ten laps at 100 Hz, %s: %.1f s; load of the machine %.1f on %d processors",
                String.join(" ", more),
                (System.nanoTime() - start) * 1e-9,
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage(),
                Runtime.getRuntime().availableProcessors());
        return Files.readAllBytes(answer);
    }
}
