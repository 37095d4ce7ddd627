package org.foreload.examples.command;

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
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.foreload.examples.sweep.Stop;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The verb {@code explore} from options to answer, with few releases. */
class ExploreTest {

    /** Five releases: too short, near the best and too long, of one shape, and the baseline. */
    private static final String FEW =
            "explore --quiet --shapes linear --peaks 0.75 --starts -0.1 --ends 0,0.35,0.7,1.4";

    /**
     * The grid alone, with one straight-line braking: where peaks and places are given, nothing is tried between them.
     */
    private static final int TRIED = 5;

    @TempDir
    private static Path shared;

    @TempDir
    private Path directory;

    private static String car;

    /** Answers that several tests read, each computed once. */
    private static final Map<String, Run> ONCE = new HashMap<>();

    /** The light demo car on brush tyres, which are quick to compute. */
    @BeforeAll
    static void writeCar() throws IOException {
        String light = EntryTest.demo("car-light")
                .replace("magic-formula", "brush")
                .replaceAll("\"slip_stiffness\": 21,[^}]*", "\"slip_stiffness\": 21");
        car = Files.writeString(shared.resolve("car.json"), light).toString();
    }

    private static String[] words(String more) {
        return (FEW + " --car " + car + " " + more).trim().split(" ");
    }

    private static Run few(String more) {
        return Run.of(words(more));
    }

    /** For what writes no file. */
    private static Run once(String more) {
        return ONCE.computeIfAbsent(more, ExploreTest::few);
    }

    private static JsonNode fewAsJson(String more) {
        Run run = more.isEmpty() ? once("--format json") : few("--format json " + more);
        assertEquals("", run.err());
        assertEquals(0, run.status());
        return run.json();
    }

    /** A soft trailed release, the only one tried, is slower than hard braking in a straight line, which is said. */
    @Test
    void whereStraightLineBrakingIsQuickerItSaysSo() {
        Run run = Run.of(
                ("explore --quiet --shapes linear --peaks 0.4 --starts -0.1 --ends 0.7 --car " + car).split(" "));
        assertEquals(0, run.status());
        String text = run.out().replaceAll("\\s+", " ");
        assertTrue(text.contains("The best release is straight-line braking: trailing the brake gains nothing."), text);
    }

    @ParameterizedTest
    @MethodSource("org.foreload.examples.command.EntryTest#pairs")
    void theDemosTellTheWholeStory(String car, String corner) {
        // A long corner takes a softer and longer release than a tight one.
        String grid = corner.equals("fast") ? "--peaks 0.5,0.7 --ends 0.7,0.9" : "--peaks 0.7,0.87 --ends 0.35,0.7";
        String options = "--format json --quiet --shapes progressive,smooth --starts -0.1 " + grid + " --demo-car "
                + car + " --demo-corner " + corner;
        Run run = Run.of(("explore " + options).split(" "));
        assertEquals(0, run.status());
        JsonNode answer = run.json();
        JsonNode best = answer.get("best");
        EntryTest.hasTheFields(best);
        EntryTest.hasTheFields(answer.get("straight_line_baseline"));
        if (best.get("brake_point_m").isNull()) {
            // The drag slows it enough: no brake is the quickest, with a release or without.
            assertEquals("downforce fast", car + " " + corner);
            assertEquals(0, answer.get("gain_s").doubleValue());
            return;
        }
        assertTrue(answer.get("gain_s").doubleValue() > 0, "gain " + answer.get("gain_s"));
        double above = best.get("above_bound").doubleValue();
        assertTrue(above > 0 && above < MOST_ABOVE_BOUND, "above the bound: " + above);
        // Common practice, no source: a fifth of the slowing in a hairpin, most of it in a fast long corner.
        double share = best.get("trail_share").doubleValue();
        if (corner.equals("hairpin")) {
            assertTrue(share >= 0.10 && share <= 0.30, "trail share " + share);
        } else if (corner.equals("fast")) {
            assertTrue(share >= FAST_SHARE, "trail share " + share);
        }
    }

    private static final double MOST_ABOVE_BOUND = 0.06;
    private static final double FAST_SHARE = 0.6;

    @Test
    void theAnswerHasTheFieldsThatScriptsReadSortedByTime() {
        JsonNode answer = fewAsJson("");
        List.of("best", "straight_line_baseline", "gain_s", "bound_time_s", "complete", "entries")
                .forEach(field -> assertTrue(answer.has(field), field));
        JsonNode entries = answer.get("entries");
        assertEquals(TRIED, entries.size());
        assertEquals(answer.get("releases_tried").intValue(), entries.size());
        List.of("shape", "peak_deceleration_mps2", "start_m", "end_m", "build_up_time_s")
                .forEach(field -> assertTrue(entries.get(0).get("release").has(field), field));
        List.of(
                        "brake_point_m",
                        "outcome",
                        "cause",
                        "limited_by",
                        "time_s",
                        "trail_share",
                        "margins",
                        "in_hand_m",
                        "pareto")
                .forEach(field -> assertTrue(entries.get(0).has(field), field));
        double last = 0;
        for (JsonNode entry : entries) {
            double time = entry.get("time_s").isNull()
                    ? Double.POSITIVE_INFINITY
                    : entry.get("time_s").doubleValue();
            assertTrue(time >= last);
            last = time;
        }
        JsonNode best = answer.get("best");
        assertEquals(best.get("time_s"), entries.get(0).get("time_s"));
        assertEquals(best.get("release"), entries.get(0).get("release"));
        double straight = answer.get("straight_line_baseline").get("time_s").doubleValue();
        assertEquals(
                straight - best.get("time_s").doubleValue(),
                answer.get("gain_s").doubleValue(),
                1e-12);
    }

    /** The straight-line braking of the table is that of the headline, which has its own best peak. */
    @Test
    void theTableHoldsTheBaseline() {
        JsonNode baseline = fewAsJson("").get("straight_line_baseline");
        String time = String.format(Locale.ROOT, "%.3f", baseline.get("time_s").doubleValue());
        List<String> rows = once("").out()
                .lines()
                .filter(line -> line.startsWith("abrupt "))
                .toList();
        assertTrue(rows.get(0).contains(" " + time + " "), rows.toString());
    }

    @Test
    void peopleReadTheAnswerFirst() {
        String text = once("").out().replace("\n  ", " ");
        List<String> lines = text.lines().toList();
        assertTrue(lines.get(2).startsWith("Best of " + TRIED + " releases: brake "), text);
        assertTrue(lines.get(3).contains("than straight-line braking"), text);
        assertTrue(lines.get(4).contains("longer than the ideal bound"), text);
        assertTrue(text.contains("\ntoo short "), text);
        assertTrue(text.contains("\ntoo long "), text);
        assertTrue(text.contains("In hand: "), text);
        assertFalse(text.contains("All releases"), text);
        String all = few("--all").out();
        assertTrue(all.contains("All releases"), all);
        assertEquals(1 + TRIED, few("--format csv").out().lines().count());
    }

    @Test
    void theLimitIsSolvedForWhereItIsAskedFor() {
        JsonNode plain = fewAsJson("");
        assertFalse(plain.has("limit_converged"));
        JsonNode answer = fewAsJson("--limit");
        assertTrue(answer.get("limit_converged").booleanValue());
        double time = answer.get("best").get("time_s").doubleValue();
        double limit = answer.get("limit_time_s").doubleValue();
        assertTrue(time > limit, time + " is quicker than perfect hands and feet, " + limit);
        JsonNode lost = answer.get("lost_to_limit");
        assertEquals(
                time - limit,
                lost.get("to_turn_in_s").doubleValue()
                        + lost.get("to_apex_s").doubleValue()
                        + lost.get("to_exit_s").doubleValue(),
                1e-9);
        assertEquals(plain.get("best"), answer.get("best"));
    }

    @Test
    void theNumberOfThreadsChangesNothing() {
        assertEquals(
                few("--format json --threads 1").out(),
                few("--format json --threads 3").out());
    }

    @Test
    void aReleaseThatNothingMakesIsAnAnswer() {
        Run run = Run.of("explore --quiet --shapes linear --peaks 2 --starts 0 --ends 0.5".split(" "));
        assertEquals(0, run.status());
        assertTrue(run.out().contains("None of the 2 releases tried makes the corner"), run.out());
        JsonNode answer =
                Run.json("explore --format json --quiet --shapes linear --peaks 2 --starts 0 --ends 0.5".split(" "));
        assertTrue(answer.get("best").isNull());
        assertTrue(answer.get("gain_s").isNull());
        assertEquals(2, answer.get("entries").size());
    }

    @Test
    void progressIsPlainLinesWhereThereIsNoTerminal() {
        Run run = Run.of(String.join(" ", words("")).replace(" --quiet", "").split(" "));
        assertEquals(
                "5 of 5 releases",
                run.err().lines().reduce((first, last) -> last).orElseThrow());
        assertEquals(once("").out(), run.out());
    }

    @Test
    void aTerminalIsShownABar() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        String[] words = String.join(" ", words("")).replace(" --quiet", "").split(" ");
        assertEquals(0, Foreload.run(words, out, new Console(err, () -> true, new Stop())));
        String bar = err.toString(StandardCharsets.UTF_8);
        assertTrue(bar.contains("releases 100% ["), bar);
        assertTrue(bar.contains("\r"), bar);
    }

    @Test
    void aStopShowsWhatWasFoundSoFar() {
        Stop stop = new Stop();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        OutputStream stopping = new OutputStream() {
            @Override
            public void write(int b) {
                new Thread(() -> stop.request(0)).start();
                while (!stop.requested()) {
                    Thread.onSpinWait();
                }
            }
        };
        String[] words = String.join(" ", words("--threads 1 --format json"))
                .replace(" --quiet", "")
                .split(" ");
        assertEquals(0, Foreload.run(words, out, new Console(stopping, () -> false, stop)));
        JsonNode answer = new Run(0, out.toString(StandardCharsets.UTF_8), "").json();
        assertFalse(answer.get("complete").booleanValue());
        // One was driven, and the straight-line braking that is quicker.
        assertEquals(6, answer.get("releases_planned").intValue());
        assertEquals(2, answer.get("entries").size());
    }

    @Test
    void aCheckpointGoesOnWhereItWasTornToTheSameAnswer() throws IOException {
        Path file = directory.resolve("sweep.jsonl");
        String whole = once("--format json").out();
        assertEquals(whole, few("--format json --checkpoint " + file).out());
        String text = Files.readString(file);
        List<String> lines = text.lines().toList();
        assertEquals(6, lines.size());
        // Killed while it wrote the fourth line.
        String torn =
                String.join("\n", lines.subList(0, 3)) + "\n" + lines.get(3).substring(0, 40);
        Files.writeString(file, torn);
        assertEquals(whole, few("--format json --checkpoint " + file).out());
        List<String> again = new ArrayList<>(Files.readString(file).lines().toList());
        assertEquals(lines.subList(0, 3), again.subList(0, 3));
        assertEquals(lines.stream().sorted().toList(), again.stream().sorted().toList());
        // Killed while it wrote the first line.
        Files.writeString(file, lines.get(0).substring(0, 30));
        assertEquals(whole, few("--format json --checkpoint " + file).out());
    }

    @Test
    void whatIsInTheCheckpointIsNotSearchedAgain() throws IOException {
        Path file = directory.resolve("sweep.jsonl");
        few("--checkpoint " + file);
        String moved = Files.readString(file).replaceAll("\"brake_point_m\":-[0-9.]+", "\"brake_point_m\":-170.0");
        Files.writeString(file, moved);
        int read = 0;
        for (JsonNode entry : fewAsJson("--checkpoint " + file).get("entries")) {
            read += entry.get("brake_point_m").doubleValue() == -170 ? 1 : 0;
        }
        // All of the grid; what is refined after it is searched anew.
        assertTrue(read >= TRIED - 1, "read " + read);
    }

    /** Of the first request below, which is the same for all. */
    private static String checkpoint;

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            --demo-car road                   | : car:
            --demo-corner fast                | : corner:
            --drift 0.4                       | : settings: differ from those that it was begun with: drift was 0.5 and is 0.4
            --tolerance 1e-7 --in-hand 3      | : settings: differ from those that it was begun with: in-hand was 4 and is 3; tolerance was 1.0E-6 and is 1.0E-7
            --no-margin                       | : settings: differ from those that it was begun with: no-margin is new
            --peaks 0.7                       | : settings: differ from those that it was begun with: peaks was [0.75] and is [0.75, 0.7]
            --shapes held                     | : settings: differ from those that it was begun with: held is new
            """)
    void anotherRequestIsRefusedByTheCheckpoint(String change, String field) throws IOException {
        Path file = directory.resolve("sweep.jsonl");
        String few = "explore --quiet --shapes linear --peaks 0.75 --starts 0 --ends 0.5 --checkpoint " + file;
        String other = change.startsWith("--demo-car ") ? change : "--car " + car + " " + change;
        if (checkpoint == null) {
            assertEquals(0, Run.of((few + " --car " + car).split(" ")).status());
            checkpoint = Files.readString(file);
        }
        String before = checkpoint;
        Files.writeString(file, before);
        Run.of((few + " " + other).split(" ")).refusedNaming(file + field);
        assertEquals(before, Files.readString(file));
    }

    @Test
    void whatIsNoCheckpointIsRefusedAndLeftAlone() throws IOException {
        for (String text :
                new String[] {"precious", "precious\n", "\n", "\n\nx", "{}\n", "{\"foreload_checkpoint\": 9}\n"}) {
            Path file = Files.writeString(directory.resolve("other.txt"), text);
            few("--checkpoint " + file).refusedNaming(file + ": ");
            assertEquals(text, Files.readString(file));
        }
        few("--checkpoint " + directory.resolve("no/file"))
                .refusedWith(directory.resolve("no/file") + ": cannot be used as a checkpoint: the folder "
                        + directory.resolve("no") + " does not exist");
        few("--checkpoint " + directory).refusedNaming("cannot be used as a checkpoint");
    }

    @Test
    void aDamagedLineIsRefusedByItsNumber() throws IOException {
        Path file = directory.resolve("sweep.jsonl");
        few("--checkpoint " + file);
        List<String> lines = Files.readString(file).lines().toList();
        for (String bad : new String[] {
            "",
            "x",
            "[]",
            lines.get(2).replaceFirst("\"shape\"", "\"form\""),
            lines.get(2).replaceAll("\"brake_point_m\":[^,]*", "\"brake_point_m\":\"NaN\"")
        }) {
            Files.writeString(file, lines.get(0) + "\n" + lines.get(1) + "\n" + bad + "\n");
            few("--checkpoint " + file).refusedNaming(file + ": line 3");
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            --resolution 0        | --resolution: 0: must be a number from 1 to 10
            --resolution 1.5      | --resolution: 1.5: must be a whole number
            --all=yes             | --all: yes: must be given without a value
            --threads 0           | --threads: 0: must be a number from 1 to 1024
            --shapes lineer       | --shapes: lineer: must be one of linear, progressive
            --shapes linear,linear | --shapes: linear: must be given only once
            --shapes abrupt       | --shapes: abrupt: is the straight-line braking that is always tried; name others
            --peaks NaN           | --peaks: NaN: must be
            --peaks 3             | --peaks: 3: must be a number from 0.01 to 2
            --ends x              | --ends: x: must be
            --checkpoint          | --checkpoint: must have a value
            """)
    void wrongOptionsAreRefused(String options, String text) {
        Run.of(("explore " + options).split(" ")).refusedNaming(text);
    }
}
