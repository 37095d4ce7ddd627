package org.foreload.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.foreload.examples.command.Foreload;
import org.foreload.examples.program.FirstStudy;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the README shows is what is there. */
class ReadmeTest {

    private static final Path ROOT = Path.of("..");

    @TempDir
    private Path directory;

    private static List<String> blocks(String language) throws IOException {
        String readme = Files.readString(ROOT.resolve("README.md"));
        return Pattern.compile("```" + language + "\n(.*?)```", Pattern.DOTALL)
                .matcher(readme)
                .results()
                .map(block -> block.group(1))
                .toList();
    }

    private Path file(String name, String text) throws IOException {
        return Files.writeString(directory.resolve(name), text);
    }

    @Test
    void itsCarAndCornerRun() throws IOException {
        Path car = file("car.json", blocks("json").get(0));
        Path corner = file("corner.json", blocks("json").get(1));
        for (String verb :
                new String[] {"entry", "explore --quiet --shapes smooth --peaks 0.75 --starts 0 --ends 0.7"}) {
            String request = verb + " --car " + car + " --corner " + corner;
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            ByteArrayOutputStream err = new ByteArrayOutputStream();
            assertEquals(0, Foreload.run(request.split(" "), out, err));
            assertEquals("", err.toString(StandardCharsets.UTF_8));
            String text = out.toString(StandardCharsets.UTF_8);
            assertTrue(text.startsWith("my car in my corner"), text);
            assertTrue(text.contains("made it"), text);
        }
        String gain = FirstStudy.gain(car, corner);
        assertTrue(gain.matches("trailing gains 0\\.\\d\\d s"), gain);
    }

    @Test
    void itsJavaIsCompiled() throws IOException {
        String source = Files.readString(Path.of("src/main/java/org/foreload/examples/program/FirstStudy.java"));
        MatchResult body = Pattern.compile("// README: begin\n(.*?) *// README: end", Pattern.DOTALL)
                .matcher(source)
                .results()
                .findFirst()
                .orElseThrow();
        assertEquals(body.group(1).replaceAll("(?m)^ {8}", ""), blocks("java").get(0));
    }

    @Test
    void itsOptionsAndFilesExist() throws IOException {
        String readme = Files.readString(ROOT.resolve("README.md"));
        Stream<String> links =
                Pattern.compile("\\]\\(([^)]*)\\)").matcher(readme).results().map(link -> link.group(1));
        links.forEach(link -> assertTrue(Files.exists(ROOT.resolve(link)), link));
        StringBuilder help = new StringBuilder();
        for (String verb : new String[] {"entry", "explore", "sheet"}) {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            Foreload.run(new String[] {verb, "--help"}, out, OutputStream.nullOutputStream());
            help.append(out.toString(StandardCharsets.UTF_8));
        }
        Pattern.compile("--[a-z][a-z-]+")
                .matcher(readme)
                .results()
                .forEach(option -> assertTrue(help.indexOf(option.group()) >= 0, option.group()));
    }
}
