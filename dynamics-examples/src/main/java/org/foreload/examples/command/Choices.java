package org.foreload.examples.command;

import java.util.Locale;

/** How constants are written on the command line. */
final class Choices {

    private Choices() {}

    /** {@code REAR_LEFT} is written {@code rear-left}. */
    static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
