package org.foreload.examples.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.foreload.file.InputException;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** The options that the user gave, apart from those that have their default. */
final class GivenOptions {

    private GivenOptions() {}

    /** Whether the user gave an option. */
    static boolean has(CommandSpec verb, String option) {
        return verb.commandLine().getParseResult().hasMatchedOption(option);
    }

    /**
     * Refuses options that would change nothing, so that nobody takes the answer for one that heeds them.
     *
     * @param why ends the sentence that begins "has no effect": "without --given"
     * @throws InputException if the user gave one of them
     */
    static void refuse(CommandSpec verb, String why, String... options) {
        for (String option : options) {
            if (has(verb, option)) {
                throw new InputException(null, option, null, "has no effect " + why);
            }
        }
    }

    /** One option as it was typed: its name, and its value if it has one. */
    record Given(String name, List<String> words) {}

    /** All that were given, but for some. */
    static List<Given> of(CommandSpec verb, Set<String> except) {
        List<Given> given = new ArrayList<>();
        for (OptionSpec option : verb.commandLine().getParseResult().matchedOptions()) {
            String name = option.longestName();
            if (!except.contains(name)) {
                given.add(new Given(
                        name,
                        option.arity().max() > 0
                                ? List.of(name, String.join(",", option.originalStringValues()))
                                : List.of(name)));
            }
        }
        return given;
    }
}
