package org.foreload.examples.command;

import java.util.Collection;
import java.util.stream.Collectors;
import org.foreload.examples.output.Numbers;
import org.foreload.file.InputException;

/** Ranges of options, refused in the words of the command line. */
final class Options {

    private Options() {}

    /** Requires zero or more. */
    static void notNegative(String option, double value, String unit) {
        require(option, value, value >= 0, "a number of 0 or more in " + unit);
    }

    /** Requires more than zero. */
    static void positive(String option, double value, String unit) {
        require(option, value, value > 0, "a number above 0 in " + unit);
    }

    /** Requires a value between two ends. */
    static void within(String option, double value, double low, double high, String unit) {
        String range = "a number from " + Numbers.shortest(low) + " to " + Numbers.shortest(high);
        require(option, value, value >= low && value <= high, unit.isEmpty() ? range : range + " in " + unit);
    }

    private static void require(String option, double value, boolean allowed, String what) {
        if (!allowed) {
            throw new InputException(null, option, Numbers.shortest(value), "must be " + what);
        }
    }

    /** Constants as words: {@code front left, rear left}. */
    static String words(Collection<? extends Enum<?>> constants) {
        return constants.stream()
                .map(constant -> Choices.word(constant).replace('-', ' '))
                .collect(Collectors.joining(", "));
    }
}
