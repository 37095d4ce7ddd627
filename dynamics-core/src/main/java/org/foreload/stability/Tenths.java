package org.foreload.stability;

import java.util.Locale;

/** Numbers in sentences: one decimal, and no sign on a zero. */
final class Tenths {

    private Tenths() {}

    static String of(double number) {
        String words = String.format(Locale.ROOT, "%.1f", number);
        return words.equals("-0.0") ? "0.0" : words;
    }
}
