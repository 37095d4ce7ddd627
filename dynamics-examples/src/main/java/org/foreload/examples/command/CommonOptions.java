package org.foreload.examples.command;

import org.foreload.examples.output.Format;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Options that every verb has. */
final class CommonOptions {

    @Option(
            names = "--format",
            paramLabel = "<format>",
            defaultValue = "table",
            completionCandidates = Candidates.Formats.class,
            description =
                    "table for people, json or csv for programs; standard output holds nothing else. Default: table.")
    private Format format;

    @Mixin
    private PictureOptions picture;

    @Option(names = "--debug", description = "Show the stack trace when something fails.")
    private boolean debug;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help.")
    private boolean help;

    Format format() {
        return format;
    }

    /** Where to draw. */
    PictureOptions picture() {
        return picture;
    }
}
