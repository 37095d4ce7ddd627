package org.foreload.examples.output;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers as text, the same in every country. */
public final class Numbers {

    private Numbers() {}

    /** The shortest text that says the number fully, without a needless {@code .0}. */
    public static String shortest(double value) {
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

    /** The number with this many decimals; a dash for one that is not a number; no minus before a zero. */
    public static String rounded(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return Double.isNaN(value) ? "-" : Double.toString(value);
        }
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
        return rounded.toPlainString();
    }
}
