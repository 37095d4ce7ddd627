package org.foreload.examples.manual;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.foreload.examples.command.Foreload;

/**
 * Runs what a page shows, as somebody would who copies it from top to bottom into an empty directory.
 *
 * <p>A block {@code sh} holds commands. A block {@code console} holds commands after {@code $} and what they print; a
 * line {@code …} stands for lines left out. A block {@code json NAME} or {@code csv NAME} is a file. The word
 * {@code long} after the language says that the commands take too long for a build: then only their words are tried,
 * unless the profile {@code long} asks for everything.
 */
final class Console {

    /** How every command of the manual starts. */
    private static final String PROGRAM = "dynamics-examples/foreload ";

    /** How the programs of the examples start. */
    private static final Pattern EXAMPLE = Pattern.compile(
            "java -cp dynamics-examples/target/foreload.jar (org\\.foreload\\.examples\\.program\\.\\w+)( [^|>]+)?");

    /** Whether what takes long is done, too. */
    static final boolean EVERYTHING = Boolean.getBoolean("manual.long");

    /** Whether pages are to show what is printed now, in place of being held to it. */
    static final boolean RENEW = Boolean.getBoolean("manual.renew");

    /** Commands that make the jar, and therefore cannot be run by its own build. */
    private static final Pattern BUILD = Pattern.compile("mvn .*|\\.ci/run");

    private static final Pattern FILE = Pattern.compile("[\\w.-]+\\.(json|csv|svg|png|txt|html|checkpoint)");

    private final Path directory;
    private int done;

    Console(Path directory) {
        this.directory = directory;
    }

    /** How many commands were run to their end. */
    int done() {
        return done;
    }

    /** Does what a block says, and returns its text as it should be, if that is asked for. */
    String show(Page.Block block) throws IOException {
        if ((block.is("json") || block.is("csv")) && !block.words().isEmpty()) {
            Files.writeString(directory.resolve(block.words().get(0)), block.text());
        } else if (block.is("sh")) {
            for (String line : block.text().replace("\\\n", " ").split("\n")) {
                for (String command : line.split(" && ")) {
                    run(block, command);
                }
            }
        } else if (block.is("console")) {
            StringBuilder text = new StringBuilder();
            for (String part : ("\n" + block.text()).split("\n\\$ ")) {
                if (!part.isBlank()) {
                    String[] shown = part.split("\n", 2);
                    String now = answer(block, run(block, shown[0]), shown.length > 1 ? shown[1] : "");
                    text.append("$ ").append(shown[0]).append('\n').append(now);
                }
            }
            return text.toString();
        }
        return block.text();
    }

    /** Compares what a command printed with what a page shows of it, or renews that. */
    private static String answer(Page.Block block, String printed, String shown) {
        if (!RENEW) {
            compare(block, printed, shown);
        } else if (!(block.isLong() && !EVERYTHING || shown.isBlank())) {
            List<String> now = Renewal.of(
                    shown.stripTrailing().lines().toList(),
                    printed.stripTrailing().lines().map(String::stripTrailing).toList());
            return String.join("\n", now) + "\n";
        }
        return shown;
    }

    /** Runs one command and returns what it writes, the file that it was sent to aside. */
    private String run(Page.Block block, String command) throws IOException {
        if (BUILD.matcher(command).matches()) {
            return "";
        }
        Matcher example = EXAMPLE.matcher(command);
        if (example.matches()) {
            return example(block, example.group(1), example.group(2));
        }
        assertTrue(command.startsWith(PROGRAM), () -> "not a command of the manual: " + command + " in " + block);
        String[] parts = command.substring(PROGRAM.length()).split(" > ");
        List<String> words = new ArrayList<>(
                Arrays.stream(parts[0].strip().split(" +")).map(this::placed).toList());
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        if (block.isLong() && !EVERYTHING) {
            // Help is asked for after all other words, so these must be right for it to be shown.
            words.add("--help");
            assertEquals(0, Foreload.run(words.toArray(String[]::new), out, err), () -> command + ": " + err);
            return "";
        }
        int status = Foreload.run(words.toArray(String[]::new), out, err);
        boolean refusal = block.words().contains("refused");
        String said = err.toString(StandardCharsets.UTF_8).replace(directory + "/", "");
        assertEquals(refusal ? Foreload.WRONG : 0, status, () -> command + ": " + said);
        done++;
        if (parts.length > 1) {
            try (OutputStream file = Files.newOutputStream(directory.resolve(parts[1].strip()))) {
                out.writeTo(file);
            }
            return said;
        }
        return said + out.toString(StandardCharsets.UTF_8).replace(directory + "/", "");
    }

    /** A word of a command with the file in it, if there is one, in this page's own directory. */
    private String placed(String word) {
        int start = word.startsWith("table:") ? "table:".length() : 0;
        String name = word.substring(start);
        return FILE.matcher(name).matches() ? word.substring(0, start) + directory.resolve(name) : word;
    }

    /** Runs one of the programs, its files in this page's own directory, and returns what it says. */
    private String example(Page.Block block, String name, String files) {
        if (block.isLong() && !EVERYTHING) {
            assertDoesNotThrow(() -> Class.forName(name).getMethod("main", String[].class), () -> "in " + block);
            return "";
        }
        ByteArrayOutputStream told = new ByteArrayOutputStream();
        PrintStream before = System.out;
        try (PrintStream out = new PrintStream(told, true, StandardCharsets.UTF_8)) {
            System.setOut(out);
            String[] args = files == null
                    ? new String[0]
                    : Arrays.stream(files.strip().split(" +")).map(this::placed).toArray(String[]::new);
            Class.forName(name).getMethod("main", String[].class).invoke(null, (Object) args);
            for (String file : args) {
                assertTrue(Files.size(Path.of(file)) > 0, file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (ReflectiveOperationException e) {
            throw new AssertionError(name, e);
        } finally {
            System.setOut(before);
        }
        done++;
        return told.toString(StandardCharsets.UTF_8);
    }

    private static void compare(Page.Block block, String printed, String shown) {
        if (block.isLong() && !EVERYTHING || shown.isBlank()) {
            return;
        }
        List<String> lines = printed.lines().map(String::stripTrailing).toList();
        int at = 0;
        boolean gap = false;
        for (String line : shown.stripTrailing().split("\n")) {
            if (line.equals(Renewal.LEFT_OUT)) {
                gap = true;
                continue;
            }
            int found = at;
            while (gap && found < lines.size() && !lines.get(found).equals(line)) {
                found++;
            }
            String there = found < lines.size() ? lines.get(found) : "nothing more of:\n" + printed;
            assertEquals(line, there, () -> block.page() + " shows what is not printed; printed is\n" + printed);
            at = found + 1;
            gap = false;
        }
        assertTrue(
                gap || at == lines.size() || printed.lines().skip(at).allMatch(String::isBlank),
                () -> block.page() + " ends before the output does:\n" + printed);
    }
}
