package org.foreload.examples.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A folder of this run, for readers that want a file. */
final class Scratch {

    private static final Path FOLDER = folder();

    private Scratch() {}

    private static Path folder() {
        try {
            return Files.createTempDirectory("foreload-fuzz");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The folder. */
    static Path directory() {
        return FOLDER;
    }

    /** Writes a file into it. */
    static Path write(String name, byte[] bytes) {
        try {
            return Files.write(FOLDER.resolve(name), bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
