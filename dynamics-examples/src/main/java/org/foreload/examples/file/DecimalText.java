package org.foreload.examples.file;

import java.util.regex.Pattern;

/** Numbers as text: decimal digits with a point and perhaps an exponent. */
public final class DecimalText {

    /** What may be written; {@code Double.parseDouble} alone would also take {@code 1f} and hexadecimal. */
    private static final Pattern DECIMAL = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,4})?");

    private DecimalText() {}

    /** The number that the text says; NaN if it says none, or infinite if it is too large. */
    public static double parse(String text) {
        return DECIMAL.matcher(text).matches() ? Double.parseDouble(text) : Double.NaN;
    }
}
