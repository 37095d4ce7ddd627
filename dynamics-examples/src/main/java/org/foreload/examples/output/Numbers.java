package org.foreload.examples.output;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.foreload.file.DecimalText;

/** Numbers as text, the same in every country. */
public final class Numbers {

    /** From here on a rounded number would be a long row of digits: the exponent says it better. */
    private static final double LONGEST = 1e12;

    private Numbers() {}

    /** The shortest text that says the number fully, without a needless {@code .0}. */
    public static String shortest(double value) {
        return DecimalText.of(value);
    }

    /** The number with this many decimals; a dash for one that is not a number; no minus before a zero. */
    public static String rounded(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return Double.isNaN(value) ? "-" : Double.toString(value);
        }
        if (Math.abs(value) >= LONGEST) {
            return Double.toString(value);
        }
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
        return rounded.toPlainString();
    }
}
