package org.foreload.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.foreload.conventions.InvalidValueException;
import org.hipparchus.random.Well19937c;
import org.junit.jupiter.api.Test;

class ProportionTest {

    /** The limits solve (p̂ − p)² = z² p (1 − p)/n, which is how Wilson defined them: checked by putting them in. */
    @Property
    void theLimitsSolveTheScoreEquation(
            @ForAll @IntRange(min = 1, max = 2000) int of, @ForAll @IntRange(min = 0, max = 2000) int some) {
        int count = Math.min(some, of);
        Proportion proportion = new Proportion(count, of);
        double z = 1.959963984540054;
        for (double limit : new double[] {proportion.low(), proportion.high()}) {
            double apart = proportion.value() - limit;
            boolean atEnd = limit == 0 || limit == 1;
            assertEquals(atEnd ? 0 : z * z * limit * (1 - limit) / of, atEnd ? 0 : apart * apart, 1e-12);
        }
        assertTrue(proportion.low() <= proportion.value() && proportion.value() <= proportion.high());
    }

    @Test
    void noneAndAllHaveAnInterval() {
        assertEquals(0, new Proportion(0, 20).low());
        assertEquals(
                1.959963984540054 * 1.959963984540054 / (20 + 1.959963984540054 * 1.959963984540054),
                new Proportion(0, 20).high(),
                1e-12);
        assertEquals(1, new Proportion(20, 20).high());
    }

    /** Coverage by repetition: of independent draws, the interval holds the truth about as often as it says. */
    @Test
    void theIntervalHoldsTheTruthAboutAsOftenAsItSays() {
        Well19937c random = new Well19937c(11);
        for (double truth : new double[] {0.05, 0.3, 0.5}) {
            int held = 0;
            int repetitions = 4000;
            for (int i = 0; i < repetitions; i++) {
                int count = 0;
                for (int k = 0; k < 128; k++) {
                    count += random.nextDouble() < truth ? 1 : 0;
                }
                Proportion proportion = new Proportion(count, 128);
                held += proportion.low() <= truth && truth <= proportion.high() ? 1 : 0;
            }
            assertEquals(0.95, (double) held / repetitions, 0.025, "at " + truth);
        }
    }

    @Test
    void refusesCountsThatCannotBe() {
        assertThrows(InvalidValueException.class, () -> new Proportion(3, 2));
        assertThrows(InvalidValueException.class, () -> new Proportion(0, 0));
    }
}
