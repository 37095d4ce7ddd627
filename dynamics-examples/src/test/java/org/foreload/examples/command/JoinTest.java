package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A sweep in parts against the same sweep in one run, byte for byte. */
class JoinTest {

    @TempDir
    private Path directory;

    private String request;

    /** Five releases of the light demo car on brush tyres, which are quick to compute. */
    @BeforeEach
    void writeCar() throws IOException {
        String light = EntryTest.demo("car-light")
                .replace("magic-formula", "brush")
                .replaceAll("\"slip_stiffness\": 21,[^}]*", "\"slip_stiffness\": 21");
        Path car = Files.writeString(directory.resolve("car.json"), light);
        request = "explore --quiet --shapes linear --peaks 0.75 --starts -0.1 --ends 0,0.35,0.7,1.4 --car " + car;
    }

    private static Run run(String words) {
        return Run.of(words.split(" "));
    }

    private List<String> parts(int of) throws IOException {
        List<String> files = new ArrayList<>();
        for (int i = of; i >= 1; i--) {
            Run part = run(request + " --format json --threads " + i + " --shard " + i + "/" + of);
            assertEquals(0, part.status(), part.err());
            files.add(
                    Files.writeString(directory.resolve("part" + i), part.out()).toString());
        }
        return files;
    }

    @Test
    void partsGiveTheAnswerOfOneRunByteForByte() throws IOException {
        String files = String.join(" ", parts(3));
        for (String format : List.of("json", "csv", "table")) {
            Run whole = run(request + " --format " + format);
            Run joined = run("join --quiet --format " + format + " " + files);
            assertEquals(0, joined.status(), joined.err());
            assertEquals(whole.out(), joined.out());
        }
    }

    @Test
    void aPartLeftOutOrOfAnotherSweepIsRefused() throws IOException {
        List<String> files = parts(2);
        Run missing = run("join " + files.get(0));
        assertEquals(2, missing.status());
        assertTrue(missing.err().contains("releases are missing"), missing.err());
        Run other = run(request.replace("0.75", "0.7") + " --format json --shard 1/2");
        Path stranger = Files.writeString(directory.resolve("stranger"), other.out());
        Run mixed = run("join " + files.get(0) + " " + stranger);
        assertEquals(2, mixed.status());
        assertTrue(mixed.err().contains("is part of another sweep"), mixed.err());
    }

    /** The files that the parts were asked with are read again, and must be what they were. */
    @Test
    void aCarThatHasChangedIsRefused() throws IOException {
        List<String> files = parts(1);
        Path car = directory.resolve("car.json");
        Files.writeString(car, Files.readString(car).replaceFirst("\"mass_kg\": \\d", "\"mass_kg\": 1"));
        Run changed = run("join " + files.get(0));
        assertEquals(2, changed.status());
        assertTrue(changed.err().contains("another car"), changed.err());
    }

    /** Of all that was asked only what has changed is named, without digests that nobody can read. */
    @Test
    void aTableThatHasChangedIsNamed() throws IOException {
        Path table = Files.writeString(directory.resolve("rel.csv"), "released,remaining\n0,1\n1,0\n");
        String shape = "table:" + table;
        Run part = run(request.replace("linear", "linear," + shape) + " --format json --shard 1/1");
        assertEquals(0, part.status(), part.err());
        Path file = Files.writeString(directory.resolve("part"), part.out());
        Files.writeString(table, "released,remaining\n0,1\n0.5,0.4\n1,0\n");
        run("join " + file)
                .refusedWith(file + ": settings: differ from those that it was computed with: the file of " + shape
                        + " has changed");
    }

    @Test
    void withoutAPartItIsSaidHowTheyAreGiven() {
        run("join").refusedWith("<part>: must be given: one or more, each a word of its own");
    }

    @Test
    void whatIsNoPartIsRefusedInOneLine() throws IOException {
        for (String text :
                List.of("", "no json\n", "{}\n", "{\"foreload_part\":1}\n[]\n", "{\"foreload_part\":1}\n{}\n")) {
            Path file = Files.writeString(directory.resolve("odd"), text);
            Run run = run("join " + file);
            assertEquals(2, run.status(), text);
            assertEquals(1, run.err().lines().count(), run.err());
        }
        for (String shard : List.of("0/2", "3/2", "1", "a/b", "1/0")) {
            assertEquals(2, run(request + " --shard " + shard).status());
        }
    }
}
