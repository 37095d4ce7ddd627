package org.foreload.examples.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;

/** The command reference of the manual, made from the commands themselves, so that it cannot differ from them. */
public final class CommandReference {

    private CommandReference() {}

    /**
     * Writes the page.
     *
     * @param args the file to write
     * @throws IOException if it cannot be written
     */
    public static void main(String[] args) throws IOException {
        Files.writeString(Path.of(args[0]), page(), StandardCharsets.UTF_8);
    }

    /** The page, in Markdown: the program's own help, then that of each verb, in the order of the program's list. */
    public static String page() {
        PrintWriter nowhere = new PrintWriter(new StringWriter());
        CommandLine program = Foreload.commandLine(nowhere, nowhere);
        StringBuilder page = new StringBuilder("""
                # Commands

                This page is generated from the program; do not edit it. [DEVELOPERS.md](../DEVELOPERS.md) has the command.
                What the words mean is in the [glossary](glossary.md).

                | exit status | means |
                | --- | --- |
                | 0 | done |
                | 1 | the computation failed |
                | 2 | the request or a file is wrong: one line names file, field, value and what is allowed |

                Results go to standard output; warnings, progress and errors go to standard error.
                """);
        section(page, "foreload", program);
        for (Map.Entry<String, CommandLine> verb : program.getSubcommands().entrySet()) {
            section(page, verb.getKey(), verb.getValue());
        }
        return page.toString();
    }

    private static void section(StringBuilder page, String title, CommandLine command) {
        page.append("\n## ").append(title).append("\n\n```text\n");
        command.getUsageMessage(Ansi.OFF)
                .lines()
                .map(String::stripTrailing)
                .forEach(line -> page.append(line).append('\n'));
        page.append("```\n");
    }
}
