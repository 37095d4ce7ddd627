package org.foreload.examples.command;

import org.foreload.examples.answer.Units;
import org.foreload.examples.output.Format;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Options that every verb has. */
final class CommonOptions {

    /** Place in the help: below the verb's own options. */
    static final int LAST = 1000;

    @Option(
            names = "--format",
            order = CommonOptions.LAST,
            paramLabel = "<format>",
            defaultValue = "table",
            completionCandidates = Candidates.Formats.class,
            description =
                    "table for people, json or csv for programs; standard output holds nothing else. Default: ${DEFAULT-VALUE}.")
    private Format format;

    @Mixin
    private PictureOptions picture;

    @Option(
            names = "--units",
            order = CommonOptions.LAST,
            paramLabel = "<units>",
            defaultValue = "kmh",
            completionCandidates = Candidates.UnitNames.class,
            description =
                    "Units beside SI in sentences and captions: kmh (km/h and g), mph (mph and g) or si (none). Tables, json "
                            + "and csv are in SI. Default: ${DEFAULT-VALUE}.")
    private Units units;

    @Option(names = "--debug", order = CommonOptions.LAST, description = "Show the stack trace when something fails.")
    private boolean debug;

    @Option(
            names = {"-h", "--help"},
            order = CommonOptions.LAST,
            usageHelp = true,
            description = "Show this help.")
    private boolean help;

    Format format() {
        return format;
    }

    /** Units of sentences. */
    Units units() {
        return units;
    }

    /** Whether people read the answer, or look at a picture of it. */
    boolean forPeople() {
        return format == Format.TABLE || picture.wanted();
    }

    /** Where to draw. */
    PictureOptions picture() {
        return picture;
    }
}
