package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Isolated;

/** What the machine's country does to the output: nothing. */
@Isolated("It moves the machine to other countries.")
class CountryTest {

    @Test
    void theAnswerIsTheSameInEveryCountry() {
        String before = Run.of("grip").out();
        Locale locale = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            assertEquals(before, Run.of("grip").out());
            Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
            assertEquals(before, Run.of("grip").out());
        } finally {
            Locale.setDefault(locale);
        }
    }
}
