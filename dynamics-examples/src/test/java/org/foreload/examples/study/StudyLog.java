package org.foreload.examples.study;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Locale;

/** The figures of the long studies, in {@code target/studies.txt}: one line each, as they come. */
final class StudyLog {

    private static final Path FILE = Path.of("target", "studies.txt");

    private StudyLog() {}

    static synchronized void line(String format, Object... arguments) {
        String line = String.format(Locale.ROOT, format, arguments) + "\n";
        try {
            Files.createDirectories(FILE.getParent());
            Files.writeString(FILE, line, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
