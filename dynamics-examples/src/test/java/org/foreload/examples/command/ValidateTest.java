package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code validate}, on the quick chapters; the whole catalogue runs in the validation module. */
class ValidateTest {

    @TempDir
    private Path directory;

    @Test
    void everyCheckOfAChapterIsInTheJson() {
        JsonNode checks =
                Run.json("validate", "--check", "1", "--format", "json").get("checks");
        Set<String> ids = new TreeSet<>();
        for (JsonNode check : checks) {
            ids.add(check.get("id").asText());
            for (String field : new String[] {"name", "source", "status"}) {
                assertTrue(check.get(field).isTextual(), field);
            }
            for (String field : new String[] {"expected", "computed", "error", "budget"}) {
                assertTrue(check.get(field).isNumber(), field);
            }
            assertTrue(check.get("passed").asBoolean(), check.toString());
        }
        assertTrue(ids.contains("1.1-front"), ids.toString());
        assertTrue(ids.stream().allMatch(id -> id.startsWith("1.")), ids.toString());
    }

    @Test
    void theTableCounts() {
        Run run = Run.of("validate", "--check", "1.2");
        assertEquals(0, run.status(), run.err());
        assertTrue(run.out().contains("2 of 2 pass"), run.out());
        assertTrue(run.out().contains("Every check passes."), run.out());
    }

    @Test
    void csvHasARowPerCheck() {
        assertEquals(
                3,
                Run.of("validate", "--check", "1.2", "--format", "csv")
                        .out()
                        .lines()
                        .count());
    }

    @Test
    void wrongRequestsAreRefused() throws IOException {
        Run.of("validate", "--check", "99")
                .refusedWith("--check: 99: must be the beginning of a check's number, such as 2.4");
        Run.of("validate", "--report", "nowhere").refusedWith("--report: nowhere: must be a folder that is there");
        Path file = Files.writeString(directory.resolve("file"), "");
        Run.of("validate", "--report", file.toString())
                .refusedWith("--report: " + file + ": must be a folder that is there");
        Run.of("validate", "--report", directory.toString(), "--check", "1")
                .refusedWith("--report: " + directory + ": must stand without --check");
        assertEquals(1, Files.list(directory).count(), "nothing is written");
    }
}
