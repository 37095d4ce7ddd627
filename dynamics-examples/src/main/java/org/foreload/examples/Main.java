package org.foreload.examples;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.util.Locale;
import org.foreload.examples.command.Foreload;

/** Starts the program. */
public final class Main {

    private Main() {}

    /**
     * Runs one verb and exits with its status.
     *
     * @param args as typed
     */
    public static void main(String[] args) {
        Locale.setDefault(Locale.ROOT);
        // The raw streams: text is always UTF-8, and a reader that goes away shows as an exception, not silently.
        int status =
                Foreload.run(args, new FileOutputStream(FileDescriptor.out), new FileOutputStream(FileDescriptor.err));
        System.exit(status);
    }
}
