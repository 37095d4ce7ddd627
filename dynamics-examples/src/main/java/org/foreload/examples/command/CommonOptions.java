package org.foreload.examples.command;

import org.foreload.examples.answer.Units;
import org.foreload.examples.output.Format;
import org.foreload.file.InputException;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Options that every verb has. */
final class CommonOptions {

    /** Place in the help: below the verb's own options. */
    static final int LAST = 1000;

    /** The option for the format of the answer. */
    static final String FORMAT = "--format";

    @Spec(Spec.Target.MIXEE)
    private CommandSpec verb;

    @Option(
            names = FORMAT,
            order = CommonOptions.LAST,
            paramLabel = "<format>",
            defaultValue = "table",
            completionCandidates = Candidates.Formats.class,
            description =
                    "table for people, json or csv for programs; standard output holds nothing else. json has every field, "
                            + "csv the rows of its first list and, in each, the single values of the answer. Default: "
                            + "${DEFAULT-VALUE}.")
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

    @Option(names = "--quiet", order = CommonOptions.LAST, description = "Show no progress.")
    private boolean quiet;

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

    /**
     * Refuses another format than JSON, and a picture, of what is always lines of JSON.
     *
     * @param why ends the sentence that begins "must be json"
     * @throws InputException if one of them was asked for
     */
    void onlyJson(String why) {
        if (format != Format.JSON && GivenOptions.has(verb, FORMAT)) {
            throw new InputException(null, FORMAT, Choices.word(format), "must be json " + why);
        }
        if (picture.wanted()) {
            throw new InputException(null, PictureOptions.NAME, picture.file(), "must be left out " + why);
        }
    }

    /** Whether no progress is shown. */
    boolean quiet() {
        return quiet;
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
