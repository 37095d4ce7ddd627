package org.foreload.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packaged program as a process of its own: what the tests inside the JVM cannot see. */
class JarIT {

    @TempDir
    private Path directory;

    private final Map<String, String> environment = new HashMap<>();

    private record Call(int status, String out, String err) {}

    /** For what the virtual machine does not decide: it starts with less work so. */
    private static final List<String> QUICK = List.of(
            "-XX:TieredStopAtLevel=1",
            "-XX:SharedArchiveFile=" + Path.of("target", "foreload.jsa").toAbsolutePath());

    private Call call(String... args) throws IOException, InterruptedException {
        return call(QUICK, args);
    }

    private static List<String> command(List<String> machine, String... args) {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(machine);
        // A locale and an encoding that would show in numbers and signs if they mattered.
        command.add("-Duser.language=de");
        command.add("-Dfile.encoding=US-ASCII");
        command.add("-jar");
        command.add(Path.of("target", "foreload.jar").toAbsolutePath().toString());
        command.addAll(List.of(args));
        return command;
    }

    private Call call(List<String> machine, String... args) throws IOException, InterruptedException {
        Path out = directory.resolve("out");
        Path err = directory.resolve("err");
        ProcessBuilder builder = new ProcessBuilder(command(machine, args))
                .redirectOutput(out.toFile())
                .redirectError(err.toFile());
        builder.environment().putAll(environment);
        Process process = builder.start();
        int status = process.waitFor();
        return new Call(
                status, Files.readString(out, StandardCharsets.UTF_8), Files.readString(err, StandardCharsets.UTF_8));
    }

    @Test
    void itRunsBareAndAnswersInUtf8() throws IOException, InterruptedException {
        Call call = call(List.of(), "grip");
        assertEquals("", call.err());
        assertEquals(0, call.status());
        assertTrue(call.out().contains("deceleration m/s²"), call.out());
    }

    /** The virtual machine prints what it leaves out. */
    @Test
    void onlyARunThatDrivesForSecondsLeavesTheSecondCompilerOut() throws IOException, InterruptedException {
        environment.put("JDK_JAVA_OPTIONS", "-XX:+PrintCompilation");
        assertTrue(call(List.of(), "pedal").out().contains("### Excluding compile: "), "nothing is left out");
        assertFalse(call(List.of(), "grip").out().contains("### Excluding compile: "), "something is left out");
    }

    @Test
    void itDrawsInBothFormats() throws IOException, InterruptedException {
        for (String name : List.of("picture.svg", "picture.png")) {
            Path file = directory.resolve(name);
            Call call = call("loads", "--picture", file.toString());
            assertEquals("", call.err());
            assertEquals(0, call.status());
            assertTrue(Files.size(file) > 10_000, name);
        }
        assertTrue(Files.readString(directory.resolve("picture.svg")).contains("deceleration, m/s²"));
    }

    /** A machine whose font configuration knows no font, and where Java has kept none of an earlier one. */
    @Test
    void withoutAnyFontItDrawsTheSameSvgAndRefusesPngInOneLine() throws IOException, InterruptedException {
        Path with = directory.resolve("with.svg");
        call("grip", "--picture", with.toString());
        Path none = Files.writeString(directory.resolve("fonts.conf"), "<fontconfig></fontconfig>");
        environment.put("FONTCONFIG_FILE", none.toString());
        environment.put("JAVA_TOOL_OPTIONS", "-Duser.home=" + directory);
        Path without = directory.resolve("without.svg");
        Call call = call("grip", "--picture", without.toString());
        assertEquals(0, call.status(), call.err());
        assertEquals(-1, Files.mismatch(with, without));
        Call png = call("grip", "--picture", directory.resolve("without.png").toString());
        assumeTrue(png.status() != 0, "this system does not ask for fonts in the way that this test takes away");
        assertEquals(2, png.status(), png.err());
        assertTrue(png.err().contains("PNG needs a font on this machine"), png.err());
        assertFalse(png.err().contains("\tat "), png.err());
    }

    @Test
    void itKnowsItsVersion() throws IOException, InterruptedException {
        assertTrue(call("--version").out().matches("foreload \\d.*\\R"));
    }

    @Test
    void aWrongFileIsOneLineAndStatusTwo() throws IOException, InterruptedException {
        Path car = Files.writeString(directory.resolve("car.json"), "{\"name\": \"x\", \"mass\": 1}");
        Call call = call("loads", "--car", car.toString());
        assertEquals("", call.out());
        assertEquals(car + ": mass: 1: unknown field; did you mean mass_kg?" + System.lineSeparator(), call.err());
        assertEquals(2, call.status());
    }

    /** What Ctrl-C does, by the signal that a program can send: the answer so far, marked so, and no stack trace. */
    @Test
    void aSweepThatIsToldToStopAnswersWithWhatItHas() throws IOException, InterruptedException {
        Path out = directory.resolve("out");
        Path err = directory.resolve("err");
        Path checkpoint = directory.resolve("sweep.jsonl");
        List<String> command = command(
                QUICK, "explore", "--shapes", "linear", "--resolution", "3", "--checkpoint", checkpoint.toString());
        Process process = new ProcessBuilder(command)
                .redirectOutput(out.toFile())
                .redirectError(err.toFile())
                .start();
        while (process.isAlive() && !Files.readString(err).contains(" releases")) {
            Thread.sleep(50);
        }
        assertTrue(process.isAlive(), Files.readString(err));
        process.destroy();
        process.waitFor();
        String text = Files.readString(out);
        assertTrue(text.contains("Incomplete: stopped after "), text);
        assertFalse(text.contains("gains nothing"), text);
        assertTrue(text.endsWith("releases.\n"), text);
        assertTrue(Files.readString(err).lines().allMatch(line -> line.endsWith(" releases")), Files.readString(err));
        assertTrue(Files.readString(checkpoint).endsWith("}\n"));
    }
}
