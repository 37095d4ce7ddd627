package org.foreload.examples.command;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.foreload.file.InputException;

/**
 * One part of several.
 *
 * @param number 1 to {@code of}
 * @param of number of parts
 */
record Shard(int number, int of) {

    private static final Pattern FORM = Pattern.compile("(\\d{1,6})/(\\d{1,6})");

    /**
     * Reads I/N.
     *
     * @throws InputException if it is anything else, or I is not from 1 to N
     */
    static Shard of(String option, String text) {
        Matcher matcher = FORM.matcher(text);
        if (matcher.matches()) {
            int number = Integer.parseInt(matcher.group(1));
            int of = Integer.parseInt(matcher.group(2));
            if (number >= 1 && number <= of) {
                return new Shard(number, of);
            }
        }
        throw new InputException(null, option, text, "must be the number of a part and of all parts, such as 2/8");
    }

    /** As it is written. */
    String words() {
        return number + "/" + of;
    }
}
