package org.foreload.examples.recording;

/**
 * Decimal numbers of few digits, as loggers write them, read exactly and quickly: up to 2^53 their digits are a whole
 * number without rounding, so are the powers of ten to the twenty-second, and a division rounds once (W. D. Clinger,
 * How to read floating point numbers accurately, PLDI 1990, from memory).
 */
final class ShortDecimal {

    private static final long MOST = 1L << 53;

    private static final double[] POWERS = {
        1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19,
        1e20, 1e21, 1e22
    };

    private ShortDecimal() {}

    /**
     * The number; NaN if the text is not one of digits up to 2^53, at most 22 of them behind the separator, with a sign
     * at most.
     *
     * @param separator between whole and fraction
     */
    static double parse(String text, char separator) {
        return parse(text.toCharArray(), 0, text.length(), separator);
    }

    /** The same for a part of some characters. */
    static double parse(char[] text, int from, int to, char separator) {
        boolean signed = to > from && (text[from] == '-' || text[from] == '+');
        int at = signed ? from + 1 : from;
        long whole = 0;
        int digits = 0;
        int fraction = -1;
        for (int i = at; i < to; i++) {
            char c = text[i];
            if (c >= '0' && c <= '9') {
                whole = 10 * whole + (c - '0');
                digits++;
                fraction += fraction >= 0 ? 1 : 0;
            } else if (c == separator && fraction < 0) {
                fraction = 0;
            } else {
                return Double.NaN;
            }
            if (whole > MOST || fraction >= POWERS.length) {
                return Double.NaN;
            }
        }
        if (digits == 0) {
            return Double.NaN;
        }
        double value = whole / POWERS[Math.max(0, fraction)];
        return text[from] == '-' ? -value : value;
    }
}
