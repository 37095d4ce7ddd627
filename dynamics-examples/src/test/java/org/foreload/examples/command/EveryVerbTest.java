package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Each verb, with options that keep it short where it would take long: what people read fits on their screen, and
 * speaks the project's words ({@link Run} holds both for every run of the tests).
 */
class EveryVerbTest {

    private static final String ONE_CORNER = """
            {"name": "one", "corners": [{"name": "bend", "approach_speed_mps": 40, "approach_length_m": 200,
             "exit_length_m": 100, "half_width_m": 5,
             "segments": [{"type": "arc", "length_m": 60, "radius_m": 40, "turn": "left"}]}]}
            """;

    @TempDir
    private Path directory;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "loads",
                "grip",
                "ideal",
                "limit --intervals 50 --quiet",
                "entry",
                "entry --brake-point -118 --release-start 20 --release-end 75 --peak-deceleration 8",
                "explore --quiet --shapes linear --peaks 0.75 --starts -0.1 --ends 0,0.7,1.4 --all",
                "best --quiet --corner short.json --tolerance 1e-4 --restarts 0 --evaluations 20 --no-why",
                "sensitivity --quiet --corner short.json --tolerance 1e-4 --restarts 0 --evaluations 20",
                "risk --quiet --corner short.json --tolerance 1e-4 --given --samples 2",
                "steps --quiet --corner short.json --tolerance 1e-4 --restarts 0 --evaluations 20 --samples 2 --steps 2",
                "circuit --quiet --restarts 0 --evaluations 20 --circuit one.json",
                "recording",
                "compare",
                "handling",
                "stability",
                "balance --quiet --corner short.json --tolerance 1e-4 --values 2",
                "smoothness --quiet --corner short.json --tolerance 1e-4 --frequencies 2",
                "pedal --quiet --corner short.json --tolerance 1e-4 --attempts 2",
                "sheet --quiet --corner short.json --tolerance 1e-4 --shapes linear --peaks 0.75 --starts -0.1 --ends 0.7 --samples 2 --steps 1 --out sheet.html",
                "validate --check 2.4"
            })
    void whatItPrintsFitsAndSpeaksOurWords(String words) throws IOException {
        Files.writeString(directory.resolve("one.json"), ONE_CORNER);
        Run run = Run.of(words.replace("one.json", directory.resolve("one.json").toString())
                .replace("short.json", ShortCorner.in(directory).toString())
                .replace("sheet.html", directory.resolve("sheet.html").toString())
                .split(" "));
        assertEquals(0, run.status(), run.err());
        assertTrue(run.out().lines().count() > 3, run.out());
    }

    @Test
    void partsPutTogetherDoSo() throws IOException {
        Path part = directory.resolve("part.jsonl");
        Run whole = Run.of(
                ("explore --quiet --format json --shapes linear --peaks 0.75 --starts -0.1 --ends 0.7 --shard 1/1")
                        .split(" "));
        assertEquals(0, whole.status(), whole.err());
        Files.writeString(part, whole.out());
        assertEquals(0, Run.of("join", "--quiet", part.toString()).status());
    }

    @Test
    void noVerbIsLeftOut() throws NoSuchMethodException {
        Set<String> run = new TreeSet<>(Set.of("join", "batch"));
        for (String words : EveryVerbTest.class
                .getDeclaredMethod("whatItPrintsFitsAndSpeaksOurWords", String.class)
                .getAnnotation(ValueSource.class)
                .strings()) {
            run.add(words.split(" ")[0]);
        }
        PrintWriter nowhere = new PrintWriter(new StringWriter());
        assertEquals(
                new TreeSet<>(
                        Foreload.commandLine(nowhere, nowhere).getSubcommands().keySet()),
                run);
    }
}
