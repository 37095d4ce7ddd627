package org.foreload.examples.program;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.foreload.balance.BalanceRow;
import org.foreload.examples.Vocabulary;
import org.foreload.examples.demo.Demos;
import org.foreload.grip.BrakingGrip;
import org.foreload.ideal.IdealEntry;
import org.foreload.strategy.CornerStudy;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.ResourceLock;
import org.junit.jupiter.api.parallel.Resources;

/** Each program runs, says the numbers that are computed here by another way, and leaves its picture. */
@ResourceLock(Resources.SYSTEM_OUT)
@ResourceLock(Resources.SYSTEM_ERR)
class ProgramsRunTest {

    private static final Map<String, Consumer<String[]>> QUICK = Map.of(
            "FrictionCircle", FrictionCircle::main,
            "GentleBrake", GentleBrake::main,
            "HairpinAndFastCorner", HairpinAndFastCorner::main,
            "PerfectRelease", PerfectRelease::main,
            "YourOwnTyre", YourOwnTyre::main);

    @TempDir
    private Path directory;

    private String told(Consumer<String[]> program) throws IOException {
        Path picture = directory.resolve("picture.svg");
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        PrintStream before = System.out;
        PrintStream errors = System.err;
        try (PrintStream out = new PrintStream(bytes, true, StandardCharsets.UTF_8)) {
            System.setOut(out);
            System.setErr(out);
            program.accept(new String[] {picture.toString()});
        } finally {
            System.setOut(before);
            System.setErr(errors);
        }
        String svg = Files.readString(picture);
        assertTrue(svg.contains("<svg") && svg.contains("<desc"), svg);
        String told = bytes.toString(StandardCharsets.UTF_8);
        told.lines()
                .filter(line -> !line.startsWith("{"))
                .forEach(line -> assertTrue(line.codePointCount(0, line.length()) <= 110, "too long: " + line));
        assertEquals(List.of(), Vocabulary.broken(told));
        return told;
    }

    private static String number(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }

    private static void says(String told, String wanted) {
        // A paragraph may be broken anywhere.
        String flowing = told.replaceAll("\\s+", " ");
        assertTrue(told.contains(wanted) || flowing.contains(wanted), () -> "'" + wanted + "' is not in: " + told);
    }

    /** The tests run in the folder of the module, which is part of the checkout. */
    @Test
    void noPictureIsDrawnUnasked() throws IOException {
        Set<Path> before = files();
        PrintStream out = System.out;
        try (PrintStream quiet = new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8)) {
            System.setOut(quiet);
            QUICK.values().forEach(program -> program.accept(new String[0]));
        } finally {
            System.setOut(out);
        }
        assertEquals(before, files());
    }

    private static Set<Path> files() throws IOException {
        try (Stream<Path> files = Files.list(Path.of(""))) {
            return files.collect(Collectors.toSet());
        }
    }

    @Test
    void nothingIsLeftOpen() throws IOException {
        for (var program : QUICK.entrySet()) {
            String told = told(program.getValue());
            assertFalse(told.contains("NaN") || told.contains("Infinity"), told);
        }
    }

    /** The largest capacity at the limit is the grip study's own answer; the axles' limits add to the whole car's. */
    @Test
    void gentleBrakeTellsTheLibrarysBestDeceleration() throws IOException {
        String told = told(GentleBrake::main);
        Car car = Demos.car("car", "road").value();
        BrakingGrip grip = BrakingGrip.of(car, GentleBrake.SPEED);
        double best = grip.bestDeceleration();
        says(told, number("braking %.2f: front alone", best));
        says(told, number("so the car %.2f", grip.lateralAcceleration(0)));
        says(told, number("so the car %.2f", grip.lateralAcceleration(best)));
    }

    @Test
    void hairpinAndFastCornerTellTheIdealShares() throws IOException {
        String told = told(HairpinAndFastCorner::main);
        Car car = Demos.car("car", "light").value();
        for (String corner : Demos.CORNERS) {
            double share = IdealEntry.solve(car, Demos.corner("corner", corner).value())
                    .trailShare();
            says(told, number("%.0f %%\n", 100 * share).replace("\n", System.lineSeparator()));
        }
    }

    /** 2·v·sin(φ/2)/A for 90° at 30 m/s with a friction of 1.1: the change of velocity over the grip. */
    @Test
    void perfectReleaseTellsTheShortestTime() throws IOException {
        String time = number("%.3f s", Math.sqrt(2) * 30 / (1.1 * 9.81));
        String told = told(PerfectRelease::main);
        says(told, "Time: " + time);
        says(told, "finds " + time);
    }

    @Test
    void tooMuchTellsHowTheEntriesEnd() throws IOException {
        String told = told(TooMuch::main);
        TooMuch.Entries entries = TooMuch.entries();
        says(
                told,
                entries.right().outcome().words()
                        + number(" in %.2f s", entries.right().time()));
        says(told, entries.held().cause());
        says(told, entries.heldRearward().cause());
    }

    @Test
    void whyTheRearGoesTellsOfTheSpin() throws IOException {
        String told = told(WhyTheRearGoes::main);
        says(told, "eased off in time: made it");
        says(told, "held for too long: spun");
    }

    @Test
    void brakeBalanceTellsEachTime() throws IOException {
        String told = told(BrakeBalance::main);
        for (BalanceRow row : ProgramsTest.balance().rows()) {
            says(told, number("%11.2f  ", row.value()));
            says(told, number("  %12.2f  ", row.time()));
        }
    }

    /** Transmissibility of a spring and a damper at its resonance: 1/(2ζ√(1 − ζ²)), den Hartog's text, ζ of the car. */
    @Test
    void smoothFootTellsTheResonance() throws IOException {
        double damping = SmoothFoot.car().suspension().pitch().dampingRatio();
        double gain = 1 / (2 * damping * Math.sqrt(1 - damping * damping));
        String told = told(SmoothFoot::main);
        says(told, number("moves %.2f times", gain).replace("moves", "").strip());
        says(told, "locked up");
        says(told, "made it");
    }

    /** What the bound means, and straight-line braking: the best is never slower than that. */
    @Test
    void embedItTellsOfItsProgressAndAnswersInJson() throws IOException {
        String told = told(EmbedIt::main);
        says(told, "138 of 138");
        var json = new com.fasterxml.jackson.databind.ObjectMapper().readTree(told.substring(told.indexOf('{')));
        assertTrue(json.get("complete").asBoolean());
        assertTrue(json.get("gain_s").asDouble() > 0);
        double bound = CornerStudy.of(EmbedIt.car(), EmbedIt.corner()).bound().time();
        assertTrue(json.at("/best/time_s").asDouble() > bound, "no entry beats the bound");
    }
}
