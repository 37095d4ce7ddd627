package org.foreload.examples;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A sweep that is killed again and again (SIGKILL, as by a power cut) and whose checkpoint is torn besides ends with
 * the bytes of one that ran through, and searches no finished release twice. {@code -Dkill.kills} and
 * {@code -Dkill.sweep} make it heavier; what was done is written to {@code target/kill.txt}.
 */
class KilledSweepIT {

    /** Draws when to kill and where to tear; named in the report, so that a run can be repeated roughly. */
    private static final long SEED = Long.getLong("kill.seed", 20);

    private static final int KILLS = Integer.getInteger("kill.kills");

    private static final String SWEEP = System.getProperty("kill.sweep");

    /** Milliseconds between two looks at the file. */
    private static final long LOOK = 2;

    /** Milliseconds after the last look, at most: less than a release takes, so that kills fall inside one. */
    private static final int WITHIN = 150;

    @TempDir
    private Path directory;

    private Process start(String out, String... more) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        // Quicker to start, and the answer is the same.
        command.add("-XX:TieredStopAtLevel=1");
        command.add("-XX:SharedArchiveFile=" + Path.of("target", "foreload.jsa").toAbsolutePath());
        command.addAll(List.of(
                "-jar", Path.of("target", "foreload.jar").toAbsolutePath().toString(), "explore", "--quiet"));
        command.addAll(List.of("--format", "json", "--threads", "2"));
        command.addAll(List.of(SWEEP.split(" ")));
        command.addAll(List.of(more));
        return new ProcessBuilder(command)
                .redirectOutput(directory.resolve(out).toFile())
                .redirectError(directory.resolve("err").toFile())
                .start();
    }

    private byte[] finish(Process process, String out) throws IOException, InterruptedException {
        assertEquals(0, process.waitFor(), Files.readString(directory.resolve("err")));
        return Files.readAllBytes(directory.resolve(out));
    }

    /** The finished lines of the checkpoint, without the head and without one that is torn. */
    private static List<String> finished(Path checkpoint) throws IOException {
        if (!Files.exists(checkpoint)) {
            return List.of();
        }
        String text = Files.readString(checkpoint, StandardCharsets.UTF_8);
        List<String> lines =
                text.substring(0, text.lastIndexOf('\n') + 1).lines().toList();
        return lines.isEmpty() ? lines : lines.subList(1, lines.size());
    }

    /** What makes a release, without what was found for it. */
    private static String release(String line) {
        return line.substring(0, line.indexOf("\"brake_point_m\""));
    }

    /** Cuts the file somewhere in its last line, as a kill in the middle of a write would; tells whether it could. */
    private static boolean tear(Path checkpoint, Random random) throws IOException {
        byte[] bytes = Files.exists(checkpoint) ? Files.readAllBytes(checkpoint) : new byte[0];
        int from = bytes.length - 1;
        while (from > 0 && bytes[from - 1] != '\n') {
            from--;
        }
        if (from <= 0) {
            return false;
        }
        try (FileChannel file = FileChannel.open(checkpoint, StandardOpenOption.WRITE)) {
            file.truncate(from + random.nextInt(bytes.length - from));
        }
        return true;
    }

    @Test
    void endsAsIfItHadNotBeenKilled() throws IOException, InterruptedException {
        byte[] whole = finish(start("whole"), "whole");
        Path checkpoint = directory.resolve("sweep.jsonl");
        Random random = new Random(SEED);
        int releases = countOf(whole);
        int kills = 0;
        int torn = 0;
        int inTheMiddle = 0;
        List<String> before = List.of();
        while (kills < KILLS) {
            Process process = start("killed", "--checkpoint", checkpoint.toString());
            int wanted = before.size() + random.nextInt(2 * releases / KILLS + 1);
            while (process.isAlive() && finished(checkpoint).size() < Math.min(wanted, releases - 1)) {
                Thread.sleep(LOOK);
            }
            Thread.sleep(random.nextInt(WITHIN));
            inTheMiddle += process.isAlive() ? 1 : 0;
            process.destroyForcibly().waitFor();
            kills++;
            List<String> kept = finished(checkpoint);
            assertEquals(before, kept.subList(0, before.size()), "what was finished stays");
            torn += kills % 2 == 0 && tear(checkpoint, random) ? 1 : 0;
            before = finished(checkpoint);
        }
        assertTrue(inTheMiddle > 0, "no kill came before the end");
        int recalled = before.size();
        byte[] resumed = finish(start("resumed", "--checkpoint", checkpoint.toString()), "resumed");
        assertArrayEquals(whole, resumed);
        List<String> after = finished(checkpoint);
        assertEquals(before, after.subList(0, before.size()), "what was finished stays");
        Set<String> once = new HashSet<>();
        after.forEach(line -> assertTrue(once.add(release(line)), () -> "searched twice: " + line));
        assertEquals(releases, after.size());
        // A sweep that is finished has nothing left to search.
        assertArrayEquals(whole, finish(start("again", "--checkpoint", checkpoint.toString()), "again"));
        assertEquals(after, finished(checkpoint));
        Files.writeString(
                Path.of("target", "kill.txt"),
                String.format(
                        Locale.ROOT,
                        "seed: %d%nkills: %d%nbefore the end: %d%nlast line torn besides: %d%nreleases: %d%n"
                                + "in the checkpoint before the last run: %d%nbytes of the answer, all equal: %d%n",
                        SEED,
                        kills,
                        inTheMiddle,
                        torn,
                        releases,
                        recalled,
                        resumed.length));
    }

    private static int countOf(byte[] answer) {
        String text = new String(answer, StandardCharsets.UTF_8);
        String field = "\"releases_planned\"";
        int at = text.indexOf(field) + field.length();
        String number = text.substring(at).replaceFirst("(?s)\\D*(\\d+).*", "$1");
        return Integer.parseInt(number);
    }
}
