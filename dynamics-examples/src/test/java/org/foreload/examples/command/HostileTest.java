package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files and places that mean no good: refused in one line, and nothing hangs. */
class HostileTest {

    @TempDir
    private Path directory;

    private static String road() throws IOException {
        try (var in = HostileTest.class.getResourceAsStream("/org/foreload/examples/demo/car-road.json")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"with space", "-leading", "quote'\"", "ünïcødé", "semi;colon$(x)", "*?[a]", "line\nbreak"})
    void filesMayHaveOddNames(String name) throws IOException {
        Path car = Files.writeString(directory.resolve(name), road());
        assertEquals("", Run.of("loads", "--car=" + car).err());
        Path wrong = Files.writeString(directory.resolve(name + "2"), "{}");
        Run.of("loads", "--car=" + wrong).refusedNaming("name");
    }

    @Test
    void aLinkThatLeadsToItselfIsNoFile() throws IOException {
        Path link = directory.resolve("loop.json");
        Files.createSymbolicLink(link, link);
        Run.of("loads", "--car", link.toString()).refusedWith(link + ": no such file");
    }

    @Test
    void aLinkToAFolderIsNoFile() throws IOException {
        Path link = Files.createSymbolicLink(directory.resolve("folder.json"), directory);
        Run.of("loads", "--car", link.toString()).refusedWith(link + ": must be a file, but is a directory");
    }

    @Test
    void aLinkToAFileIsThatFile() throws IOException {
        Path car = Files.writeString(directory.resolve("car.json"), road());
        Path link = Files.createSymbolicLink(directory.resolve("link.json"), car);
        assertEquals(0, Run.of("loads", "--car", link.toString()).status());
    }

    /** A file without end must be given up, not read. */
    @Test
    void aFileWithoutEndIsTooLarge() {
        Path zero = Path.of("/dev/zero");
        assumeTrue(Files.exists(zero));
        Run.of("loads", "--car", zero.toString()).refusedWith(zero + ": is larger than 16 MB");
    }

    /** The timeout only keeps a hang from stopping the build; each call takes milliseconds. */
    @Timeout(value = 300, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    @ParameterizedTest
    @ValueSource(strings = {"1e308", "-1e308", "4.9e-324", "123456789012345678901234567890", "1e-400"})
    void numbersAtTheEndsOfTheirRangeAreTakenOrRefused(String number) throws IOException {
        for (String field : new String[] {"mass_kg", "wheelbase_m", "yaw_inertia_kg_m2", "power_w", "front_track_m"}) {
            String text = road().replaceFirst("\"" + field + "\": [0-9.]+", "\"" + field + "\": " + number);
            Path car = Files.writeString(directory.resolve("car.json"), text);
            for (String verb : new String[] {"loads", "grip", "ideal"}) {
                List<String> words = new ArrayList<>(List.of(verb, "--car", car.toString()));
                if (verb.equals("ideal")) {
                    // It is the numbers that are tried: coarse steps take and refuse the same.
                    words.addAll(List.of("--step", "4"));
                }
                Run run = Run.of(words.toArray(String[]::new));
                assertTrue(run.status() >= 0 && run.status() <= 2, verb);
                assertTrue(!run.err().contains("\tat "), run.err());
                assertTrue(run.status() == 0 || !run.err().isBlank(), verb + " " + field + " says why");
                assertTrue(run.status() != 1, () -> verb + " " + field + " " + number + ": " + run.err());
            }
        }
    }

    /** An exponent that no number type holds is still only a number that is too large. */
    @Test
    void aNumberWithAnEndlessExponentIsRefusedByItsField() throws IOException {
        String number = "4e" + "9".repeat(40);
        Path car = Files.writeString(
                directory.resolve("car.json"), road().replaceFirst("\"mass_kg\": [0-9.]+", "\"mass_kg\": " + number));
        Run.of("loads", "--car", car.toString())
                .refusedWith(car + ": mass_kg: " + number + ": must be a finite number");
    }

    /** So heavy to turn that no speed above a standstill takes the bend; the search for one must end. */
    @Timeout(value = 300, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    @ParameterizedTest
    @ValueSource(strings = {"1.2e14", "1.2e20", "1.2e29", "1.7e308"})
    void aCarThatCannotBeTurnedMakesNoCorner(String inertia) throws IOException {
        String text = road().replaceFirst("\"yaw_inertia_kg_m2\": [0-9.]+", "\"yaw_inertia_kg_m2\": " + inertia);
        Path car = Files.writeString(directory.resolve("car.json"), text);
        Run run = Run.of("ideal", "--car", car.toString());
        assertEquals(2, run.status());
        assertTrue(run.err().contains("it would have to stand still"), run.err());
    }

    @Test
    void aFullDiskIsAFailureInOneLine() throws IOException {
        Path full = Path.of("/dev/full");
        assumeTrue(Files.exists(full));
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        try (OutputStream out = Files.newOutputStream(full)) {
            assertEquals(1, Foreload.run(new String[] {"grip"}, out, err));
        }
        String said = err.toString(StandardCharsets.UTF_8);
        assertEquals(1, said.lines().count(), said);
        assertTrue(said.contains("cannot be written"), said);
    }

    /**
     * Sixty kilowatts lift 1000 kg, straight up, by 6 m each second: a climb of 45° and more lets no such car through.
     */
    @Test
    void aCarThatCannotClimbDoesNotMakeTheCorner() throws IOException {
        StringBuilder line = new StringBuilder("x_m,y_m,grade_percent\n");
        for (int i = 0; i <= 40; i++) {
            line.append(10 * i)
                    .append(',')
                    .append(i < 20 ? 0 : 0.1 * (i - 20) * (i - 20))
                    .append(",300\n");
        }
        Files.writeString(directory.resolve("line.csv"), line);
        Path corner = Files.writeString(
                directory.resolve("corner.json"),
                "{\"name\": \"wall\", \"approach_speed_mps\": 30, \"half_width_m\": 5, \"centre_line_csv\": \"line.csv\"}");
        Run run = Run.of("ideal", "--corner", corner.toString());
        assertEquals(0, run.status(), run.err());
        assertTrue(run.out().contains("The car cannot climb this line: it comes to a standstill"), run.out());
        assertTrue(run.out().contains("stopped") && !run.out().contains("made it"), run.out());
        assertTrue(!run.out().contains("Infinity"), run.out());
    }

    /** A body of no inertia turns at once, which no step is short enough for: a failure, in words for the user. */
    @Test
    void aMotionThatCannotBeFollowedIsSaidWithoutTheProgramsOwnNames() throws IOException {
        String text = road().replaceFirst("\"yaw_inertia_kg_m2\": [0-9.]+", "\"yaw_inertia_kg_m2\": 1e-300");
        Path car = Files.writeString(directory.resolve("car.json"), text);
        Run run = Run.of("entry", "--brake-point", "-150", "--car", car.toString());
        assertEquals(1, run.status());
        String said = run.err().lines().reduce((first, last) -> last).orElseThrow();
        assertTrue(said.startsWith("the entry cannot be followed beyond"), said);
        assertTrue(said.contains("use a larger tolerance") && !said.contains("Exception"), said);
    }
}
