package org.foreload.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The script that starts the packaged program: the same program, only sooner. */
@DisabledOnOs(OS.WINDOWS)
class LauncherIT {

    private static final Path SCRIPT = Path.of("foreload").toAbsolutePath();
    private static final Path JAR = Path.of("target", "foreload.jar").toAbsolutePath();
    private static final Path ARCHIVE = Path.of("target", "foreload.jsa").toAbsolutePath();
    private static final Path JAVA = Path.of(System.getProperty("java.home"), "bin", "java");

    @TempDir
    private Path directory;

    /** The script as somebody puts it on the path: a link to it, from a folder whose name needs quotes. */
    private Path link;

    private record Call(int status, String out, String err) {}

    @BeforeEach
    void link() throws IOException {
        Path folder = Files.createDirectory(directory.resolve("my programs"));
        link = Files.createSymbolicLink(folder.resolve("foreload"), SCRIPT);
    }

    private Call call(Map<String, String> environment, List<String> command) throws IOException, InterruptedException {
        Path out = directory.resolve("out");
        Path err = directory.resolve("err");
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(directory.toFile())
                .redirectOutput(out.toFile())
                .redirectError(err.toFile());
        builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
        builder.environment().putAll(environment);
        int status = builder.start().waitFor();
        return new Call(
                status, Files.readString(out, StandardCharsets.UTF_8), Files.readString(err, StandardCharsets.UTF_8));
    }

    private Call script(String... words) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(link.toString()));
        command.addAll(List.of(words));
        return call(Map.of(), command);
    }

    private Call jar(String... words) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(JAVA.toString(), "-jar", JAR.toString()));
        command.addAll(List.of(words));
        return call(Map.of(), command);
    }

    @Test
    void itAnswersAsTheJarDoes() throws IOException, InterruptedException {
        for (String[] words : new String[][] {
            {"loads", "--format", "json"},
            {"loads", "--car", "no such car.json"},
        }) {
            assertEquals(jar(words), script(words));
        }
    }

    /** The virtual machine says where it takes each class from. */
    @Test
    void theArchiveHoldsTheClassesOfTheProgramAndOfLibraries() throws IOException, InterruptedException {
        assumeFalse(JAR.toString().contains(" "), "Java 17 archives no class of a path with a space");
        String taken = call(
                        Map.of(),
                        List.of(
                                JAVA.toString(),
                                "-XX:SharedArchiveFile=" + ARCHIVE,
                                "-Xlog:class+load",
                                "-jar",
                                JAR.toString(),
                                "loads"))
                .out();
        for (String name : List.of(
                "org.foreload.examples.Main", "org.foreload.vehicle.Car", "com.fasterxml.jackson.databind.JsonNode")) {
            assertTrue(taken.contains(name + " source: shared objects file (top)"), name);
        }
    }

    @Test
    void itLeavesTheSecondCompilerToWhatCanTakeLong() throws IOException, InterruptedException {
        for (String[] words :
                new String[][] {{"explore"}, {"explore", "--shapes", "linear"}, {"best", "--peaks"}, {}}) {
            assertTrue(given(words).contains(FIRST_ONLY), List.of(words)::toString);
        }
        for (String[] words : new String[][] {
            {"batch"}, {"join", "a.jsonl"}, {"explore", "--quiet", "--resolution", "2"}, {"explore", "--peaks=0.7,0.8"}
        }) {
            assertFalse(given(words).contains(FIRST_ONLY), List.of(words)::toString);
        }
    }

    @Test
    void wordsArriveAsTheyWereTyped() throws IOException, InterruptedException {
        List<String> given = given("loads", "--car", "a car.json", "", "*", "$HOME");
        int jar = given.indexOf("-jar");
        assertEquals(JAR.toString(), given.get(jar + 1));
        assertEquals(List.of("loads", "--car", "a car.json", "", "*", "$HOME"), given.subList(jar + 2, given.size()));
        assertTrue(given.subList(0, jar).contains("-XX:SharedArchiveFile=" + ARCHIVE), given.toString());
    }

    private static final String FIRST_ONLY = "-XX:TieredStopAtLevel=1";

    /** What a Java is given that only prints it. */
    private List<String> given(String... words) throws IOException, InterruptedException {
        Path java = Files.createDirectories(directory.resolve("bin")).resolve("java");
        Files.writeString(java, "#!/bin/sh\nprintf '%s\\n' \"$@\"\nexit 7\n");
        assertTrue(java.toFile().setExecutable(true));
        List<String> command = new ArrayList<>(List.of(link.toString()));
        command.addAll(List.of(words));
        Call call = call(Map.of("JAVA_HOME", directory.toString()), command);
        assertEquals(7, call.status(), call.err());
        return call.out().lines().toList();
    }

    @Test
    void withoutTheJarItSaysWhatMakesIt() throws IOException, InterruptedException {
        Path alone = Files.copy(SCRIPT, directory.resolve("foreload"));
        assertTrue(alone.toFile().setExecutable(true));
        Call call = call(Map.of(), List.of(alone.toString(), "loads"));
        assertEquals(2, call.status());
        assertEquals("", call.out());
        assertEquals(1, call.err().lines().count(), call.err());
        assertTrue(call.err().contains("mvn -q -B -DskipTests package"), call.err());
    }
}
