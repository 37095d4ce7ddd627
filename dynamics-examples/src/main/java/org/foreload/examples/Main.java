package org.foreload.examples;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.util.Locale;
import org.foreload.examples.command.Console;
import org.foreload.examples.command.Foreload;
import org.foreload.examples.sweep.Stop;
import org.jline.nativ.CLibrary;

/** Starts the program. */
public final class Main {

    private Main() {}

    /** Longest time, s, that Ctrl-C waits for an answer: far more than a release takes that is being tried. */
    private static final long LONGEST_WAIT = 20;

    private static final int STANDARD_ERROR = 2;

    /**
     * Runs one verb and exits with its status.
     *
     * @param args as typed
     */
    public static void main(String[] args) {
        Locale.setDefault(Locale.ROOT);
        System.setProperty("java.awt.headless", "true");
        Stop stop = new Stop();
        Runtime.getRuntime().addShutdownHook(new Thread(() -> stop.request(LONGEST_WAIT), "foreload-stop"));
        // The raw streams: text is always UTF-8, and a reader that goes away shows as an exception, not silently.
        Console console = new Console(new FileOutputStream(FileDescriptor.err), () -> isTerminal(STANDARD_ERROR), stop)
                .reading(System.in)
                .ofOneRun();
        int status = Foreload.run(args, new FileOutputStream(FileDescriptor.out), console);
        stop.answered();
        System.exit(status);
    }

    /** Where the system cannot be asked, what is written is taken for a file: plain lines are right everywhere. */
    private static boolean isTerminal(int descriptor) {
        try {
            return CLibrary.isatty(descriptor) != 0;
        } catch (LinkageError | RuntimeException e) {
            return false;
        }
    }
}
