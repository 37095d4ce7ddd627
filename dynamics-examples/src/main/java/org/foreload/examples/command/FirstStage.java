package org.foreload.examples.command;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
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

    /** Loads what it takes, beside the run: the longer part of it, for which the start has a processor to spare. */
    void prepare() {
        beside(ManagementFactory::getPlatformMBeanServer);
    }

    /** Begins to, beside the run. A virtual machine that knows no directives goes on as it does. */
    void begin() {
        beside(FirstStage::direct);
    }

    /** Runs a task without which the answer only takes longer: it says nothing when the run ends before it does. */
    static Thread beside(Runnable task) {
        Thread thread = new Thread(task, "foreload-first-stage");
        thread.setDaemon(true);
        thread.setUncaughtExceptionHandler((failed, cause) -> {});
        thread.start();
        return thread;
    }

    private static void direct() {
        try {
            // A name of its own and a file that must be new: a random name would take longer than all the rest.
            String name = "foreload-" + ProcessHandle.current().pid() + "-" + System.nanoTime() + ".json";
            Path file = Path.of(System.getProperty("java.io.tmpdir"), name);
            file.toFile().deleteOnExit(); // A run may end before this does.
            try {
                Files.writeString(file, DIRECTIVE, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
                ManagementFactory.getPlatformMBeanServer()
                        .invoke(
                                new ObjectName("com.sun.management:type=DiagnosticCommand"),
                                "compilerDirectivesAdd",
                                new Object[] {new String[] {file.toString()}},
                                new String[] {String[].class.getName()});
            } finally {
                Files.deleteIfExists(file);
            }
        } catch (JMException | IOException e) {
            // The answer only takes longer.
        }
    }
}
