package org.foreload.conventions;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against {@link Math}, over all sizes of argument, to a few units of the last digit. */
class ElementaryTest {

    private static final double UNITS = 4;

    @ParameterizedTest
    @ValueSource(doubles = {1e-300, 1e-9, 1e-3, 0.05, 0.2, 0.43, 0.44, 0.49, 0.51, 1, 3, 25, 1e5, 1e300})
    void theFunctionsAreThoseOfTheLanguage(double size) {
        for (int i = 0; i <= 200; i++) {
            double x = size * (0.5 + i / 200.0);
            for (double signed : new double[] {x, -x}) {
                assertEquals(Math.atan(signed), Elementary.atan(signed), UNITS * Math.ulp(Math.atan(signed)));
                assertEquals(Math.sin(signed), Elementary.sin(signed), UNITS * Math.ulp(Math.sin(signed)));
                assertEquals(Math.cos(signed), Elementary.cos(signed), UNITS * Math.ulp(Math.cos(signed)));
                assertEquals(Math.tanh(signed), Elementary.tanh(signed), UNITS * Math.ulp(Math.tanh(signed)));
            }
            assertEquals(Elementary.atan(x), -Elementary.atan(-x), 0);
            assertEquals(Elementary.sin(x), -Elementary.sin(-x), 0);
            assertEquals(Elementary.tanh(x), -Elementary.tanh(-x), 0);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -0.0, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NaN})
    void soTheyAreAtTheEnds(double x) {
        assertEquals(Math.atan(x), Elementary.atan(x));
        assertEquals(Math.tanh(x), Elementary.tanh(x));
        assertEquals(Math.sin(x), Elementary.sin(x));
        assertEquals(Math.cos(x), Elementary.cos(x));
    }
}
