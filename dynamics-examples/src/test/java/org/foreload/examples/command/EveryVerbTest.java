package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine.Command;

/**
 * Each verb, with options that keep it short where it would take long: what people read fits on their screen, and
 * speaks the project's words ({@link Run} holds both for every run of the tests).
 */
class EveryVerbTest {

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
                "risk --quiet --corner short.json --tolerance 1e-4 --given --samples 2",
                "steps --quiet --corner short.json --tolerance 1e-4 --restarts 0 --evaluations 20 --samples 2 --steps 2",
                "handling",
                "stability",
                "smoothness --quiet --corner short.json --tolerance 1e-4 --frequencies 2",
                "pedal --quiet --corner short.json --tolerance 1e-4 --attempts 2",
                "validate --check 2.4"
            })
    void whatItPrintsFitsAndSpeaksOurWords(String words) throws IOException {
        Run run = Run.of(words.replace("short.json", ShortCorner.in(directory).toString())
                .split(" "));
        assertEquals(0, run.status(), run.err());
        assertTrue(run.out().lines().count() > 3, run.out());
    }

    /** By its name alone, so that a run loads no other verb. */
    @Test
    void aVerbIsFoundByItsName() {
        for (Class<?> verb : Foreload.class.getAnnotation(Command.class).subcommands()) {
            assertEquals(
                    Optional.of(verb),
                    Foreload.verb(verb.getAnnotation(Command.class).name()));
        }
        for (String none : List.of("", "Explore", "EXPLORE", "exploreverb", "report", "sub/explore", "--help", "ß")) {
            assertEquals(Optional.empty(), Foreload.verb(none), none);
        }
    }

    /** Verbs that take seconds however little they are asked: other tests read the same answer. */
    static List<String> longest() throws IOException {
        return List.of(
                SENSITIVITY + ShortCorner.file(),
                BEST + ShortCorner.file(),
                CIRCUIT + ShortCorner.ring(),
                BalanceAndPedalTest.BALANCE + " " + ShortCorner.file() + " --values 2",
                "recording",
                "compare --quiet");
    }

    /** As few entries in each search as there may be. */
    static final String SENSITIVITY =
            "sensitivity --quiet --demo-car road --tolerance 1e-4 --restarts 0 --evaluations 20 --corner ";

    /** One search without a second start. */
    static final String BEST = "best --quiet --tolerance 1e-4 --restarts 0 --evaluations 60 --corner ";

    /** The same in each of two corners. */
    static final String CIRCUIT = "circuit --quiet --tolerance 1e-4 --restarts 0 --evaluations 60 --circuit ";

    @ParameterizedTest
    @MethodSource("longest")
    void whatTheLongestPrintFitsAndSpeaksOurWords(String words) {
        String text = Reports.of(words.split(" ")).table().out();
        assertTrue(text.lines().count() > 3, text);
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
    void noVerbIsLeftOut() throws NoSuchMethodException, IOException {
        // What sheet prints is read where its file is.
        Set<String> run = new TreeSet<>(Set.of("join", "batch", "sheet"));
        for (String words : EveryVerbTest.class
                .getDeclaredMethod("whatItPrintsFitsAndSpeaksOurWords", String.class)
                .getAnnotation(ValueSource.class)
                .strings()) {
            run.add(words.split(" ")[0]);
        }
        longest().forEach(words -> run.add(words.split(" ")[0]));
        PrintWriter nowhere = new PrintWriter(new StringWriter());
        assertEquals(
                new TreeSet<>(
                        Foreload.commandLine(nowhere, nowhere).getSubcommands().keySet()),
                run);
    }
}
