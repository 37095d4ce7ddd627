package org.foreload.examples.gallery;

import java.util.Locale;
import org.foreload.strategy.CornerStudy;

/** Numbers in captions. */
final class Say {

    private Say() {}

    /** A sentence with numbers, the same in every country. */
    static String of(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }

    /** Car and corner. */
    static String where(CornerStudy study) {
        return study.simulator().car().name() + " in "
                + study.simulator().corner().name();
    }

    /** A station in words: {@code 12.3 m before turn-in}. */
    static String station(double s) {
        return of("%.1f m %s turn-in", Math.abs(s), s < 0 ? "before" : "after");
    }

    /** Multiplied by a number: newtons as kilonewtons, shares as per cent. */
    static double[] times(double factor, double[] values) {
        double[] scaled = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            scaled[i] = factor * values[i];
        }
        return scaled;
    }
}
