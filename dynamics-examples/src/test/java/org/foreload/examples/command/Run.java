package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/** One call of the program inside the test. */
record Run(int status, String out, String err) {

    static Run of(String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Foreload.run(args, out, err);
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
