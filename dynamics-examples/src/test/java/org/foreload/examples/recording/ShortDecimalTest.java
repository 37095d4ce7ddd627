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
            @ForAll @LongRange(min = -(1L << 53), max = 1L << 53) long digits, @ForAll @IntRange(max = 22) int scale) {
        String text = BigDecimal.valueOf(digits, scale).toPlainString();
        double read = ShortDecimal.parse(text, '.');
        assertEquals(Double.parseDouble(text), read, text);
        assertEquals(read, ShortDecimal.parse(text.replace('.', ','), ','));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "-",
                ".",
                "1.2.3",
                "1e5",
                " 1",
                "1 ",
                "0x1",
                "1,5",
                "9007199254740993",
                "12345678901234567",
                "0.00000000000000000000001",
                "NaN",
                "١"
            })
    void whatIsNoShortNumberIsLeftToOthers(String text) {
        assertTrue(Double.isNaN(ShortDecimal.parse(text, '.')), text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "-0", "+7", "5.", ".5", "-.25", "00012.50", "-0.0"})
    void unusualFormsAreReadAsTheJdkDoes(String text) {
        assertEquals(Double.parseDouble(text), ShortDecimal.parse(text, '.'));
    }
}
