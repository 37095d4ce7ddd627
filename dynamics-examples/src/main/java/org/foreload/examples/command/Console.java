package org.foreload.examples.command;

import java.io.PrintWriter;
import java.util.Objects;
import org.foreload.examples.file.Loaded;

/** Standard error, for what is not the answer. */
final class Console {

    private final PrintWriter err;

    Console(PrintWriter err) {
        this.err = Objects.requireNonNull(err);
    }

    /** Prints the warnings of a file, one line each, and returns what was read. */
    <T> T warned(Loaded<T> loaded) {
        loaded.warnings().forEach(warning -> line(warning.line()));
        return loaded.value();
    }

    /** Prints one line. */
    void line(String text) {
        err.println(text);
        err.flush();
    }
}
