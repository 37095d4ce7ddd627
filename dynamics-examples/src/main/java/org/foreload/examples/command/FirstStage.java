package org.foreload.examples.command;

import java.io.IOException;
import java.lang.reflect.Method;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * Has the Java virtual machine compile with its first compiler only. In a run of seconds the second one costs more than
 * what it makes quicker: it takes a third of the processor time, and until it is done code runs that also counts for
 * it. Answers are the same, bit for bit.
 */
final class FirstStage {

    /** To leave every method out of the second stage, as a compiler directive of the virtual machine. */
    private static final String DIRECTIVE = "[{match: \"*.*\", c2: {Exclude: true}}]";

    /**
     * What passes a diagnostic command on to the virtual machine. The jar's manifest opens its package. The public way
     * there, by the platform beans, loads two hundred classes more, which takes a tenth of a second.
     */
    private static final String COMMANDS = "com.sun.management.internal.DiagnosticCommandImpl";

    /** Loads the native code of those commands. */
    private static final String NATIVE = "com.sun.management.internal.PlatformMBeanProviderImpl";

    /** Begins to, beside the run. A virtual machine that has no such commands goes on as it does. */
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
                command("Compiler.directives_add \"" + file + "\"");
            } finally {
                Files.deleteIfExists(file);
            }
        } catch (ReflectiveOperationException | RuntimeException | IOException e) {
            // The answer only takes longer.
        }
    }

    private static void command(String words) throws ReflectiveOperationException {
        Class.forName(NATIVE);
        Class<?> commands = Class.forName(COMMANDS);
        Method own = commands.getDeclaredMethod("getDiagnosticCommandMBean");
        own.setAccessible(true);
        Method execute = commands.getDeclaredMethod("executeDiagnosticCommand", String.class);
        execute.setAccessible(true);
        execute.invoke(own.invoke(null), words);
    }
}
