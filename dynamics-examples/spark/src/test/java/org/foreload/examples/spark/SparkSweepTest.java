package org.foreload.examples.spark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.foreload.examples.command.Foreload;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A sweep over Spark in local mode answers as one run does, and refuses what is wrong in one line. */
class SparkSweepTest {

    private static final List<String> SWEEP = List.of(
            "--demo-car",
            "road",
            "--demo-corner",
            "hairpin",
            "--shapes",
            "linear,smooth",
            "--peaks",
            "0.6,0.75",
            "--starts",
            "-0.1",
            "--ends",
            "0.35,0.7");

    @TempDir
    private Path folder;

    /** What a program answered, and what it said beside. */
    private record Ran(int status, String answer, String said) {}

    private static Ran overSpark(List<String> sweep, String... own) {
        List<String> words = new ArrayList<>(List.of("--master", "local[2]"));
        words.addAll(List.of(own));
        words.addAll(sweep);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = SparkSweep.run(words.toArray(String[]::new), out, err);
        return new Ran(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    private static Ran plain(String verb, List<String> options, String... more) {
        List<String> words = new ArrayList<>(List.of(verb));
        words.addAll(options);
        words.addAll(List.of(more));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Foreload.run(words.toArray(String[]::new), out, err);
        return new Ran(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    @Test
    void theAnswerIsThatOfOneRun() {
        Ran shared = overSpark(SWEEP, "--parts", "3", "--format", "json");
        Ran one = plain("explore", SWEEP, "--format", "json");
        assertEquals(Foreload.DONE, shared.status(), shared.said());
        assertTrue(one.answer().contains("\"time_s\""), one.answer());
        assertEquals(one.answer(), shared.answer());
        assertTrue(shared.said().contains("3 of 3 parts\n"), shared.said());
    }

    /** More parts than releases: some are empty. Of the parts that are kept, 'join' makes the same answer again. */
    @Test
    void keptPartsAreThoseOfTheProgram() throws IOException {
        List<String> small = List.of("--shapes", "linear", "--peaks", "0.7", "--starts", "0", "--ends", "0.5");
        Path keep = folder.resolve("parts");
        Ran shared = overSpark(small, "--parts", "4", "--format", "csv", "--keep", keep.toString(), "--quiet");
        assertEquals(new Ran(Foreload.DONE, shared.answer(), ""), shared);
        List<String> files;
        try (Stream<Path> kept = Files.list(keep)) {
            files = kept.map(Path::toString).sorted().toList();
        }
        assertEquals(4, files.size());
        for (int i = 1; i <= 4; i++) {
            String part = plain("explore", small, "--shard", i + "/4").answer();
            assertEquals(part, Files.readString(Path.of(files.get(i - 1))));
        }
        assertEquals(shared.answer(), plain("join", files, "--format", "csv").answer());
        assertEquals(shared.answer(), plain("explore", small, "--format", "csv").answer());
    }

    private static void refused(String start, Ran ran) {
        assertEquals(Foreload.WRONG, ran.status(), ran.said());
        assertEquals("", ran.answer());
        assertEquals(1, ran.said().lines().count(), ran.said());
        assertTrue(ran.said().startsWith(start), ran.said());
    }

    @Test
    void whatIsWrongInTheSweepIsOneLine() {
        refused("--peaks: hard: must be", overSpark(List.of("--peaks", "hard")));
        refused("--paeks: unknown option", overSpark(List.of("--paeks", "0.5")));
        refused("no-such-car.json: ", overSpark(List.of("--car", "no-such-car.json")));
        refused("--format: xml: must be", overSpark(SWEEP, "--format", "xml"));
    }

    /** As of a file that this machine has and another has not: the first part that fails says why. */
    @Test
    void whatIsWrongOnAnExecutorIsSaid() {
        PartOfSweep.Answer part = new PartOfSweep(List.of("--car", "no-such-car.json"), 2).call(1);
        assertEquals(Foreload.WRONG, part.status());
        assertEquals("", part.text());
        assertTrue(part.said().startsWith("no-such-car.json: "), part.said());
    }

    @Test
    void whatIsWrongInTheSharingOutIsOneLine() throws IOException {
        Files.writeString(folder.resolve("part-9.jsonl"), "of another sweep");
        refused("--parts: 0: must be from 1", overSpark(SWEEP, "--parts", "0"));
        refused("Invalid value for option '--parts'", overSpark(SWEEP, "--parts", "many"));
        refused("--shard: ", overSpark(SWEEP, "--shard=1/2"));
        refused("--checkpoint: ", overSpark(SWEEP, "--checkpoint", "sweep.checkpoint"));
        refused("--keep: " + folder, overSpark(SWEEP, "--keep", folder.toString()));
    }

    @Test
    void aMasterThatIsNoneIsOneLine() {
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = SparkSweep.run(new String[] {"--master", "nowhere"}, new ByteArrayOutputStream(), err);
        String said = err.toString(StandardCharsets.UTF_8);
        assertEquals(Foreload.FAILED, status, said);
        assertEquals(1, said.lines().count(), said);
        assertTrue(said.contains("nowhere"), said);
    }

    /** The command that docs/scripting.md shows. */
    @Test
    void thePageShowsWhatRuns() throws IOException {
        String page = Files.readString(Path.of("../../docs/scripting.md"));
        String shown = Pattern.compile("java -jar dynamics-examples/spark/target/foreload-spark\\.jar (.*)")
                .matcher(page.replace("\\\n", " "))
                .results()
                .map(found -> found.group(1).split(" > ")[0].strip())
                .findFirst()
                .orElseThrow();
        Ran ran = overSpark(List.of(shown.split(" +")), "--quiet");
        assertEquals(Foreload.DONE, ran.status(), ran.said());
        assertTrue(ran.answer().contains("\"time_s\""), ran.answer());
    }
}
