package org.foreload.examples.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers of few digits are read as the JDK reads them, bit for bit. */
class ShortDecimalTest {

    @Property(tries = 2000)
    void itIsTheNumberThatTheJdkReads(
            @ForAll @LongRange(min = -999_999_999_999_999L, max = 999_999_999_999_999L) long digits,
            @ForAll @IntRange(max = 14) int scale) {
        String text = BigDecimal.valueOf(digits, scale).toPlainString();
        double read = ShortDecimal.parse(text, '.');
        // A plain text may have more than fifteen digits by its leading zeros; then it is left to the JDK.
        assertTrue(Double.isNaN(read) || read == Double.parseDouble(text), text);
        assertTrue(!Double.isNaN(read) || text.replaceAll("[^0-9]", "").length() > 15, text);
        assertEquals(read, ShortDecimal.parse(text.replace('.', ','), ','));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "-", ".", "1.2.3", "1e5", " 1", "1 ", "0x1", "1,5", "1234567890123456", "NaN", "١"})
    void whatIsNoShortNumberIsLeftToOthers(String text) {
        assertTrue(Double.isNaN(ShortDecimal.parse(text, '.')), text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "-0", "+7", "5.", ".5", "-.25", "00012.50", "-0.0"})
    void unusualFormsAreReadAsTheJdkDoes(String text) {
        assertEquals(Double.parseDouble(text), ShortDecimal.parse(text, '.'));
    }
}
