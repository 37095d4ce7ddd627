package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import org.foreload.examples.Vocabulary;

/** One call of the program inside the test. */
record Run(int status, String out, String err) {

    static Run of(String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Foreload.run(args, out, err);
        Run run = new Run(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
        List<String> words = List.of(args);
        if (status == 0 && words.stream().noneMatch(FOR_PROGRAMS::contains)) {
            run.assertReadable();
        }
        return run;
    }

    /** Formats that nobody reads. */
    private static final Set<String> FOR_PROGRAMS = Set.of("json", "csv", "--format=json", "--format=csv");

    /** Longest line of output, in characters. */
    private static final int WIDTH = 110;

    /** What people read fits on their screen, and speaks the project's words. */
    void assertReadable() {
        out.lines()
                .forEach(line -> assertTrue(line.codePointCount(0, line.length()) <= WIDTH, () -> "too long: " + line));
        assertEquals(List.of(), Vocabulary.broken(out));
    }

    /** One call that reads questions from standard input. */
    static Run asked(String questions, String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        InputStream in = new ByteArrayInputStream(questions.getBytes(StandardCharsets.UTF_8));
        int status = Foreload.run(args, out, Console.plain(err).reading(in));
        return new Run(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    /** The JSON answer of a call that must succeed without a word on standard error. */
    static JsonNode json(String... args) {
        Run run = of(args);
        assertEquals("", run.err);
        assertEquals(0, run.status);
        return run.json();
    }

    JsonNode json() {
        try {
            return new ObjectMapper().readTree(out);
        } catch (JsonProcessingException e) {
            throw new AssertionError("not JSON: " + out, e);
        }
    }

    /** Asserts a refusal in exactly this line, with status 2 and nothing on standard output. */
    Run refusedWith(String line) {
        assertEquals(line + System.lineSeparator(), err);
        assertEquals("", out);
        assertEquals(2, status);
        return this;
    }

    /** Asserts a refusal in one line that contains the text, with status 2 and nothing on standard output. */
    Run refusedNaming(String text) {
        assertTrue(err.contains(text), err);
        assertEquals(1, err.lines().count(), err);
        assertFalse(err.contains("Exception"), err);
        assertEquals("", out);
        assertEquals(2, status);
        return this;
    }
}
