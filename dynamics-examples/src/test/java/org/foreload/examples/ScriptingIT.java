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
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Runs each block of docs/scripting.md, and compares what it answers where the page shows it. */
class ScriptingIT {

    private static final Path ROOT = Path.of("..").toAbsolutePath().normalize();

    /** Starts a line that tells which block's answer follows. */
    private static final String MARK = "@@ block ";

    @TempDir
    private Path directory;

    /** A block: what it is written in, and itself. */
    private record Block(String language, String text) {}

    /** A folder that looks like the project's, and takes what the blocks write. */
    @BeforeEach
    void project() throws IOException {
        Path target = Files.createDirectories(directory.resolve("dynamics-examples/target"));
        Files.copy(ROOT.resolve("dynamics-examples/target/foreload.jar"), target.resolve("foreload.jar"));
        Files.createSymbolicLink(
                directory.resolve("dynamics-examples/foreload"), ROOT.resolve("dynamics-examples/foreload"));
        Path scripts = Files.createDirectories(directory.resolve("docs/scripting"));
        try (Stream<Path> files = Files.list(ROOT.resolve("docs/scripting"))) {
            for (Path file : files.toList()) {
                Files.copy(file, scripts.resolve(file.getFileName()));
            }
        }
    }

    private static List<Block> blocks() throws IOException {
        return Pattern.compile("(?ms)^```(\\w*)\n(.*?)^```$")
                .matcher(Files.readString(ROOT.resolve("docs/scripting.md")))
                .results()
                .map(block -> new Block(block.group(1), block.group(2)))
                .toList();
    }

    private static void need(String... tools) {
        for (String tool : tools) {
            boolean there = Stream.of(System.getenv("PATH").split(":"))
                    .anyMatch(folder -> Files.isExecutable(Path.of(folder, tool)));
            assumeTrue(there, "this machine has no " + tool + ", which the page's shell blocks need");
        }
    }

    /**
     * The page's words stay as they are, but each of the some twenty Javas that they start runs for a second or two:
     * without the second compiler that is a third less work.
     */
    private static final String SHORT_RUNS = "-XX:TieredStopAtLevel=1 -XX:+UseSerialGC";

    private String bash(String script) throws IOException, InterruptedException {
        Path file = Files.writeString(directory.resolve("script.sh"), script);
        Path out = directory.resolve("out.txt");
        Path err = directory.resolve("err.txt");
        ProcessBuilder builder = new ProcessBuilder("bash", file.toString())
                .directory(directory.toFile())
                .redirectOutput(out.toFile())
                .redirectError(err.toFile());
        String tools = Path.of(System.getProperty("java.home"), "bin").toString();
        builder.environment().merge("PATH", tools, (old, more) -> more + ":" + old);
        builder.environment().put("JDK_JAVA_OPTIONS", SHORT_RUNS);
        int status = builder.start().waitFor();
        String errors = Files.readString(err, StandardCharsets.UTF_8);
        String answer = Files.readString(out, StandardCharsets.UTF_8);
        assertEquals(0, status, () -> errors + answer);
        return answer;
    }

    /** Runs the blocks of a language in one go; compares each answer with the text block behind it. */
    private void compare(String language, String answer) throws IOException {
        List<Block> blocks = blocks();
        int compared = 0;
        for (int i = 0; i + 1 < blocks.size(); i++) {
            if (blocks.get(i).language().equals(language)
                    && blocks.get(i + 1).language().equals("text")) {
                String from = MARK + i + "\n";
                assertTrue(answer.contains(from), answer);
                String rest = answer.substring(answer.indexOf(from) + from.length());
                String own = rest.contains(MARK) ? rest.substring(0, rest.indexOf(MARK)) : rest;
                assertSame(blocks.get(i + 1).text(), own, blocks.get(i).text());
                compared++;
            }
        }
        assertTrue(compared > 0, "nothing was compared");
    }

    /**
     * Units of the last shown digit by which a number may differ: another Java's mathematics may round it otherwise.
     */
    private static final double LAST_DIGIT = 1.01;

    private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?");

    /** The same words, and the same numbers but for their last digit. */
    private static void assertSame(String shown, String own, String what) {
        assertEquals(NUMBER.matcher(shown).replaceAll("#"), NUMBER.matcher(own).replaceAll("#"), what);
        List<String> expected = numbers(shown);
        List<String> computed = numbers(own);
        for (int i = 0; i < expected.size(); i++) {
            int dot = expected.get(i).indexOf('.');
            int digits = dot < 0 ? 0 : expected.get(i).length() - dot - 1;
            double difference = Math.abs(Double.parseDouble(expected.get(i)) - Double.parseDouble(computed.get(i)));
            assertTrue(difference <= LAST_DIGIT * Math.pow(10, -digits), own);
        }
    }

    private static List<String> numbers(String text) {
        return NUMBER.matcher(text).results().map(number -> number.group()).toList();
    }

    @Test
    void thereIsNoBlockThatIsNotRun() throws IOException {
        // What is marked "sh" is run by a test of the profile "spark".
        Set<String> run = Set.of("bash", "jshell", "text", "sh", "");
        blocks().forEach(block -> assertTrue(run.contains(block.language()), block.language()));
        assertEquals(
                1, blocks().stream().filter(block -> block.language().isEmpty()).count());
    }

    @Test
    void itsShellBlocksRun() throws IOException, InterruptedException {
        need("bash", "awk", "sort", "head", "tr", "cut", "cmp", "python3");
        StringBuilder script = new StringBuilder("set -euo pipefail\nexport LC_ALL=C\n");
        List<Block> blocks = blocks();
        for (int i = 0; i < blocks.size(); i++) {
            if (blocks.get(i).language().equals("bash")) {
                script.append("echo '").append(MARK).append(i).append("'\n");
                script.append(blocks.get(i).text());
            }
        }
        String answer = bash(script.toString());
        compare("bash", answer);
        assertTrue(answer.contains("status 2\n"), answer);
        assertTrue(Files.size(directory.resolve("sweep.csv")) > 0);
    }

    /** With the command that the page shows. */
    @Test
    void itsJShellBlocksRun() throws IOException, InterruptedException {
        need("bash");
        assumeTrue(
                Files.isExecutable(Path.of(System.getProperty("java.home"), "bin", "jshell")),
                "this Java has no jshell");
        List<Block> blocks = blocks();
        List<String> lines = new ArrayList<>();
        String command = "";
        for (int i = 0; i < blocks.size(); i++) {
            if (blocks.get(i).language().equals("jshell")) {
                lines.add("say(\"" + MARK + i + "\")");
                lines.add(blocks.get(i).text().stripTrailing());
            } else if (blocks.get(i).language().isEmpty()) {
                command = blocks.get(i).text().strip();
            }
        }
        lines.add("/exit 0");
        Files.write(directory.resolve("lines.jsh"), lines);
        String utf8 = " -R-Dfile.encoding=UTF-8 -R-Dstdout.encoding=UTF-8 -J-Dfile.encoding=UTF-8"
                + " -R-XX:TieredStopAtLevel=1 -J-XX:TieredStopAtLevel=1";
        String answer = bash(command + utf8 + " -s lines.jsh 2>&1");
        assertFalse(answer.contains("Error:") || answer.contains("Exception"), answer);
        compare("jshell", answer);
    }

    /** Asks bash for what it would complete: of a verb, of an option, of an option's value. */
    @Test
    void bashCompletesVerbsOptionsAndValues() throws IOException, InterruptedException {
        need("bash");
        String script = """
                set -eu
                java -cp dynamics-examples/target/foreload.jar org.foreload.examples.command.Completion > c.bash
                source c.bash
                ask() {
                  COMP_WORDS=("$@")
                  COMP_CWORD=$(($# - 1))
                  COMP_LINE="$*"
                  COMP_POINT=${#COMP_LINE}
                  COMPREPLY=()
                  "$(complete -p foreload | sed 's/.*-F \\([^ ]*\\) .*/\\1/')" foreload "${COMP_WORDS[COMP_CWORD]}" "$1" || true
                  echo "${COMPREPLY[*]}"
                }
                set +eu
                ask foreload ex
                ask foreload explore --pe
                ask foreload entry --format j
                ask foreload grip --demo-car ''
                ask foreload entry --release-shape two
                """;
        assertEquals(
                List.of("explore", "--peaks", "json", "road light downforce", "two-stage"),
                bash(script).lines().map(String::strip).toList());
    }
}
