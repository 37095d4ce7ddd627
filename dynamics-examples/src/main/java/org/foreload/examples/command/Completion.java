package org.foreload.examples.command;

import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import picocli.AutoComplete;

/** Prints a script that lets bash complete verbs, options and their values; see docs/scripting.md. */
public final class Completion {

    private Completion() {}

    /** The script for a command of this name. */
    static String script(String command) {
        PrintWriter silent = new PrintWriter(Writer.nullWriter());
        return AutoComplete.bash(command, Foreload.commandLine(silent, silent));
    }

    /**
     * Prints the script.
     *
     * @param args the name of the command, if it is not {@code foreload}
     */
    public static void main(String[] args) {
        byte[] script = script(args.length > 0 ? args[0] : "foreload").getBytes(StandardCharsets.UTF_8);
        System.out.write(script, 0, script.length);
        System.out.flush();
    }
}
