package org.foreload.file;

import java.util.Objects;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.foreload.conventions.InvalidValueException;

/**
 * A file or a request that cannot be used: where, which field, what value, and what is allowed. Every text is kept to
 * one line.
 */
public final class InputException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** A whole number as Java writes a double, but none with an exponent. */
    private static final Pattern WHOLE = Pattern.compile("(?<![\\d.])(\\d+)\\.0(?![\\d.eE])");

    private final String file;
    private final String field;
    private final String value;

    /**
     * @param file the file as the user named it; null for a request on the command line
     * @param field the field with its place in the file ({@code front_tyre.model}) or the option; null if it is the
     *     file as a whole
     * @param value the offending value; null if there is none
     * @param message what is allowed or what is wrong, without the other three
     */
    public InputException(String file, String field, String value, String message) {
        super(OneLine.of(Objects.requireNonNull(message)));
        this.file = file == null ? null : OneLine.of(file);
        this.field = field == null ? null : OneLine.of(field);
        this.value = value == null ? null : OneLine.of(value);
    }

    /**
     * What the core refuses, in the words of this program; whole numbers are said as people write them, {@code 74} and
     * not {@code 74.0}.
     *
     * @param file the file as the user named it; null for a request on the command line
     * @param field the field with its place in the file, or the option; null if it is the file as a whole
     * @param refused by the core
     */
    public static InputException of(String file, String field, InvalidValueException refused) {
        return new InputException(file, field, plain(refused.value()), "must be " + plain(refused.allowed()));
    }

    private static String plain(String numbers) {
        return WHOLE.matcher(numbers).replaceAll("$1");
    }

    /** The file as the user named it, or null. */
    public String file() {
        return file;
    }

    /** The field or option, or null. */
    public String field() {
        return field;
    }

    /** The offending value as text, or null. */
    public String value() {
        return value;
    }

    /** File, field, value and message as one line; what is not known is left out. */
    public String line() {
        return Stream.of(file, field, value, getMessage())
                .filter(Objects::nonNull)
                .collect(Collectors.joining(": "));
    }
}
