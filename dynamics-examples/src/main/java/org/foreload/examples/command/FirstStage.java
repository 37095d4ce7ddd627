package org.foreload.examples.command;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.management.JMException;
import javax.management.ObjectName;

/**
 * Has the Java virtual machine compile with its first compiler only. In a run of seconds the second one costs more than
 * what it makes quicker: it takes a third of the processor time, and until it is done code runs that also counts for
 * it. Answers are the same, bit for bit.
 */
final class FirstStage {

    /** To leave every method out of the second stage, as a compiler directive of the virtual machine. */
    private static final String DIRECTIVE = "[{match: \"*.*\", c2: {Exclude: true}}]";

    private FirstStage() {}

    /** Begins to, beside the run. A virtual machine that knows no directives goes on as it does. */
    static void begin() {
        Thread thread = new Thread(FirstStage::direct, "foreload-first-stage");
        thread.setDaemon(true);
        thread.start();
    }

    private static void direct() {
        try {
            Path file = Files.createTempFile("foreload", ".json");
            file.toFile().deleteOnExit(); // A run may end before this does.
            try {
                Files.writeString(file, DIRECTIVE);
                ManagementFactory.getPlatformMBeanServer()
                        .invoke(
                                new ObjectName("com.sun.management:type=DiagnosticCommand"),
                                "compilerDirectivesAdd",
                                new Object[] {new String[] {file.toString()}},
                                new String[] {String[].class.getName()});
            } finally {
                Files.deleteIfExists(file);
            }
        } catch (JMException | IOException | RuntimeException e) {
            // The answer only takes longer.
        }
    }
}
