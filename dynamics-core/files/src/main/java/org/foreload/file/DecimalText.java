package org.foreload.file;

import java.math.BigDecimal;
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

    /** The shortest text that says the number fully, without a needless {@code .0}. */
    public static String of(double value) {
        if (!Double.isFinite(value)) {
            return Double.toString(value);
        }
        if (value == 0) {
            return "0";
        }
        double size = Math.abs(value);
        BigDecimal exact = BigDecimal.valueOf(value).stripTrailingZeros();
        return size >= 1e-4 && size < 1e9 ? exact.toPlainString() : Double.toString(value);
    }
}
