package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.ResourceLock;
import org.junit.jupiter.api.parallel.Resources;

/** What runs beside the run. */
@ResourceLock(Resources.SYSTEM_ERR)
class FirstStageTest {

    /**
     * As where the virtual machine is shutting down while it starts: nobody who asked for something else hears of it.
     */
    @Test
    void whatFailsBesideTheRunSaysNothing() throws InterruptedException {
        PrintStream before = System.err;
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        System.setErr(new PrintStream(said, true, StandardCharsets.UTF_8));
        try {
            Thread thread = FirstStage.beside(() -> {
                throw new ExceptionInInitializerError("Shutdown in progress");
            });
            thread.join();
        } finally {
            System.setErr(before);
        }
        String all = said.toString(StandardCharsets.UTF_8);
        assertFalse(all.contains("Shutdown in progress"), all);
    }
}
