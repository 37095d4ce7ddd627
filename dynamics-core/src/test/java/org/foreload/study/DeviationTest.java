package org.foreload.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.foreload.conventions.InvalidValueException;
import org.hipparchus.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DeviationTest {

    /**
     * Critical values of the chi-squared law, 0.05 and 0.95, by degrees of freedom: NIST/SEMATECH, e-Handbook of
     * Statistical Methods, 1.3.6.7.4, from memory. That of two degrees is in closed form besides: −2 ln of the tail.
     */
    @ParameterizedTest
    @CsvSource({"3, 0.103, 5.991", "5, 0.711, 9.488", "10, 3.325, 16.919", "30, 17.708, 42.557"})
    void theIntervalIsThatOfTheTables(int count, double lower, double upper) {
        Deviation deviation = new Deviation(2, count);
        assertEquals(2 * Math.sqrt((count - 1) / upper), deviation.low(), 2e-3 * deviation.low());
        assertEquals(2 * Math.sqrt((count - 1) / lower), deviation.high(), 5e-3 * deviation.high());
        if (count == 3) {
            assertEquals(2 * Math.sqrt(2 / (-2 * Math.log(0.05))), deviation.low(), 1e-6);
            assertEquals(2 * Math.sqrt(2 / (-2 * Math.log(0.95))), deviation.high(), 1e-6);
        }
    }

    /** Coverage by repetition. Of 4000 the binomial law has nine in ten within 0.015 but once in a thousand. */
    @ParameterizedTest
    @ValueSource(ints = {3, 5, 10, 30})
    void theIntervalHoldsNineTimesInTen(int count) {
        Well19937c random = new Well19937c(count);
        int held = 0;
        int repetitions = 4000;
        for (int i = 0; i < repetitions; i++) {
            double[] values = new double[count];
            for (int k = 0; k < count; k++) {
                values[k] = -100 + 2 * random.nextGaussian();
            }
            Deviation deviation = Deviation.of(values);
            held += deviation.low() <= 2 && deviation.high() >= 2 ? 1 : 0;
        }
        assertEquals(0.9, (double) held / repetitions, 0.015);
    }

    @Test
    void whatIsNoSampleIsRefused() {
        assertThrows(InvalidValueException.class, () -> new Deviation(1, 1));
        assertThrows(InvalidValueException.class, () -> new Deviation(Double.NaN, 3));
        assertThrows(InvalidValueException.class, () -> new Deviation(-1, 3));
    }
}
