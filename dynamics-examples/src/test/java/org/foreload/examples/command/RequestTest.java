package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.foreload.examples.demo.Demos;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

/** What the program says to a request, right or wrong. */
class RequestTest {

    static Set<String> verbs() {
        return commandLine().getSubcommands().keySet();
    }

    private static CommandLine commandLine() {
        return Foreload.commandLine(new PrintWriter(new StringWriter()), new PrintWriter(new StringWriter()));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            gripp                          | gripp: unknown verb; did you mean grip?
            grip --sped 3                  | --sped: unknown option; did you mean --speed?
            entry --xyz                    | --xyz: unknown option; the nearest are --all, --car, --help, --line, --units; 'foreload entry --help' has them all
            grip --speed 1e308             | --speed: 1.0E308: must be a number from 0 to 1000 in m/s
            loads --speed 1e308            | --speed: 1.0E308: must be a number from 0 to 1000 in m/s
            loads --deceleration -1e308    | --deceleration: -1.0E308: must be a number from -1000 to 1000 in m/s²
            loads --lateral 1e9            | --lateral: 1.0E9: must be a number from -1000 to 1000 in m/s²
            handling --speed 1e308         | --speed: 1.0E308: must be a number from 0 to 1000 in m/s
            handling --lateral 1e308       | --lateral: 1.0E308: must be a number from -1000 to 1000 in m/s²
            grip --speed                   | --speed: must have a value: a finite number in m/s
            grip --speed abc               | --speed: abc: must be a finite number in m/s
            grip --speed NaN               | --speed: NaN: must be a finite number in m/s
            grip --speed Infinity          | --speed: Infinity: must be a finite number in m/s
            grip --speed 1e999             | --speed: 1e999: must be a finite number in m/s
            grip --speed 0x10              | --speed: 0x10: must be a finite number in m/s
            grip --speed 3,5               | --speed: 3,5: must be a finite number in m/s
            grip --speed -3                | --speed: -3: must be a number above 0 in m/s
            grip --speed 3 --speed 4       | --speed: must be given only once
            grip fast                      | fast: does not belong here; values follow an option, as in --format json
            grip --format xml              | --format: xml: must be one of table, json, csv
            grip --format JSON             | --format: JSON: must be one of table, json, csv
            grip --step 1e-9               | --step: 1.0E-9: must not ask for more than 10000 rows
            loads --deceleration abc       | --deceleration: abc: must be a finite number in m/s²
            loads --car nowhere/car.json   | nowhere/car.json: no such file
            loads --demo-car rod           | --demo-car: rod: must be one of road, light, downforce; did you mean road?
            loads --demo-car road --car x  | --demo-car: road: must not be given together with --car
            """)
    void aWrongRequestIsAnsweredInOneLine(String request, String line) {
        Run.of(request.split(" ")).refusedWith(line);
    }

    /** An option that would change nothing is refused, so that nobody takes the answer for one that heeds it. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            risk --brake-point -100                     | --brake-point: has no effect without --given
            risk --release-shape smooth                 | --release-shape: has no effect without --given
            risk --pick-up 60                           | --pick-up: has no effect without --given
            risk --given --restarts 2                   | --restarts: has no effect with --given: nothing is searched for
            entry --no-margin --in-hand 3               | --in-hand: has no effect with --no-margin
            explore --no-margin --edge-margin 1         | --edge-margin: has no effect with --no-margin
            stability --brake-point -90 --earlier 4     | --earlier: has no effect with --brake-point
            smoothness --duration 1                     | --duration: has no effect with --kind ripple
            smoothness --kind hesitation --frequency 2  | --frequency: has no effect with --kind hesitation
            sheet --columns speed=v                     | --columns: has no effect without --recording
            recording --columns speed=v                 | --columns: has no effect without a file
            compare --columns speed=v                   | --columns: has no effect without files
            compare --no-advice --car x.json            | --car: has no effect with --no-advice
            explore --peaks 1 --starts 0 --ends 1 --resolution 2 | --resolution: has no effect with --peaks, --starts and --ends
            explore --shard 1/3 --format csv            | --format: csv: must be json with --shard: a part is lines of JSON
            explore --shard 1/3 --picture x.png         | --picture: x.png: must be left out with --shard: a part is lines of JSON
            """)
    void whatWouldChangeNothingIsRefused(String request, String line) {
        Run.of(request.split(" ")).refusedWith(line);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            entry --line quick         | --line: quick: must be one of given, near, quickest
            entry --tolerance 1e-2     | --tolerance: 0.01: must be a number from 1.0E-13 to 0.0001
            entry --units xx           | --units: xx: must be one of kmh, mph, si
            entry --release-end 5000   | --release-end: 5000: must be on the line, from -300.00 to 334.70 in m
            entry --release-start -301 | --release-start: -301: must be on the line, from -300.00 to 334.70 in m
            """)
    void whatIsAllowedIsSaidInFull(String request, String line) {
        Run.of(request.split(" ")).refusedWith(line);
    }

    /** Nobody has to find out which verbs show progress. */
    @ParameterizedTest
    @MethodSource("verbs")
    void everyVerbCanBeQuiet(String verb) {
        assertTrue(Run.of(verb, "--help").out().contains("--quiet "), verb);
    }

    @Test
    void aQuietVerbShowsNoProgressOfTheSearchForItsLine() throws IOException {
        String ideal = "ideal --format json --line near --corner " + ShortCorner.file();
        assertFalse(Run.of(ideal.split(" ")).err().isBlank());
        assertEquals("", Run.of((ideal + " --quiet").split(" ")).err());
    }

    @Test
    void anErrorIsJsonOnStandardOutputToo() {
        Run run = Run.of("loads", "--format", "json", "--deceleration", "abc");
        assertEquals(2, run.status());
        JsonNode error = run.json().get("error");
        assertTrue(error.get("file").isNull());
        assertEquals("--deceleration", error.get("field").textValue());
        assertEquals("abc", error.get("value").textValue());
        assertEquals("must be a finite number in m/s²", error.get("message").textValue());
        assertEquals("--deceleration: abc: must be a finite number in m/s²" + System.lineSeparator(), run.err());
    }

    @Test
    void theFormatCountsEvenIfTheRestCannotBeParsed() {
        assertTrue(Run.of("gripp", "--format=json").json().has("error"));
        assertTrue(Run.of("grip", "--sped", "3", "--format", "json").json().has("error"));
    }

    @Test
    void onlyDebuggingShowsAStackTrace() {
        assertFalse(Run.of("loads", "--demo-car", "x").err().contains("\tat "));
        assertTrue(Run.of("loads", "--demo-car", "x", "--debug").err().contains("\tat "));
    }

    @Test
    void withoutAVerbTheProgramExplainsItself() {
        Run bare = Run.of();
        assertEquals(0, bare.status());
        assertEquals(Run.of("--help").out(), bare.out());
        verbs().forEach(verb -> assertTrue(bare.out().contains("  " + verb + " "), verb));
    }

    private static final List<String> SLOW_VERBS = List.of(
            "limit",
            "explore",
            "best",
            "sensitivity",
            "risk",
            "steps",
            "circuit",
            "balance",
            "smoothness",
            "pedal",
            "recording",
            "compare",
            "sheet",
            "validate",
            "join",
            "batch");

    /** Verbs whose bare run takes many seconds, or that need a file, have tests of their own. */
    static List<String> quickVerbs() {
        return verbs().stream().filter(verb -> !SLOW_VERBS.contains(verb)).toList();
    }

    @ParameterizedTest
    @MethodSource("quickVerbs")
    void everyVerbRunsBareInEveryFormat(String verb) {
        Map<String, Run> runs = new HashMap<>();
        for (String format : new String[] {"table", "json", "csv"}) {
            Run run = Run.of(verb, "--format", format);
            assertEquals("", run.err());
            assertEquals(0, run.status());
            assertTrue(run.out().endsWith("\n"));
            runs.put(format, run);
        }
        assertEquals(runs.get("table"), Run.of(verb));
        assertTrue(runs.get("json").json().isObject());
    }

    /** They take no car and no corner. */
    private static final Set<String> PLACELESS = Set.of("validate", "recording", "compare", "join");

    private static final Set<String> CORNERING = Set.of("ideal", "entry", "explore");

    @ParameterizedTest
    @MethodSource("verbs")
    void everyHelpIsForANewcomer(String verb) {
        Run run = Run.of(verb, "--help");
        assertEquals(0, run.status());
        assertEquals("", run.err());
        String text = run.out().replaceAll("\\s+", " ");
        assertTrue(text.contains("Example: foreload " + verb), text);
        assertTrue(text.contains("qualified instructor come first"), text);
        Stream.of(CORNERING.contains(verb) ? Demos.CORNERS : Demos.CARS)
                .filter(names -> !PLACELESS.contains(verb))
                .flatMap(names -> names.stream())
                .forEach(name -> assertTrue(text.contains(name), name));
        commandLine().getSubcommands().get(verb).getCommandSpec().options().forEach(option -> {
            String label = option.paramLabel();
            if (label.startsWith("<m")) {
                String unit = label.substring(1, label.length() - 1).split("\\|")[0];
                assertTrue(String.join("", option.description()).contains(unit), option.longestName());
            }
        });
    }

    @Test
    void aReaderThatGoesAwayIsNoFailure() {
        assertEquals(0, statusWhenWritingFailsWith("Broken pipe"));
    }

    @Test
    void aFullDiskIsOne() {
        assertEquals(1, statusWhenWritingFailsWith("No space left on device"));
    }

    private static int statusWhenWritingFailsWith(String message) {
        OutputStream failing = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException(message);
            }
        };
        return Foreload.run(new String[] {"grip"}, failing, OutputStream.nullOutputStream());
    }
}
