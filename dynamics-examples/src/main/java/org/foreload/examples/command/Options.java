package org.foreload.examples.command;

import java.util.Collection;
import java.util.stream.Collectors;
import org.foreload.examples.output.Numbers;
import org.foreload.file.InputException;

/** Ranges of options, refused in the words of the command line. */
final class Options {

    /** Fastest speed of which anything is computed, m/s: some three times that of the fastest car. */
    private static final double FASTEST = 1000;

    /** Hardest acceleration of which anything is computed, m/s²: no tyre gives a tenth of it. */
    private static final double HARDEST = 1000;

    private Options() {}

    /** Requires a speed at which a car can be, at rest or not: beyond it numbers run over. */
    static void speed(String option, double value) {
        within(option, value, 0, FASTEST, "m/s");
    }

    /** Requires an acceleration that can be computed, to either side. */
    static void acceleration(String option, double value) {
        within(option, value, -HARDEST, HARDEST, "m/s²");
    }

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
