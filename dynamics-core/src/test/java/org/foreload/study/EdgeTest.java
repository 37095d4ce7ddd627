package org.foreload.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.DoubleUnaryOperator;
import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The largest value that keeps something, against closed forms. */
class EdgeTest {

    private static final double FINE = 1e-4;

    private static double largest(DoubleUnaryOperator left) {
        return Edge.largest(left, 0.7, 1.15, 0.1, 2, FINE);
    }

    /** Above and below the first look, near a bound, and at the first look itself. */
    @ParameterizedTest
    @ValueSource(doubles = {0.101, 0.3, 0.69, 0.7, 0.75, 1.2, 1.99})
    void theRootOfALogarithmIsKeptOnItsNearSide(double edge) {
        AtomicInteger looks = new AtomicInteger();
        double found = largest(x -> {
            looks.incrementAndGet();
            return Math.log(edge / x);
        });
        assertEquals(edge, found, 3 * FINE);
        assertTrue(found <= edge, found + " is beyond");
        assertTrue(looks.get() < 25, looks + " looks");
    }

    /** As where a wheel stops: nothing is left, and how far beyond cannot be told. */
    @Test
    void aStepIsFoundToo() {
        double found = largest(x -> x < 0.9 ? 0.02 + 0.9 - x : -0.003);
        assertEquals(0.9, found, 2 * FINE);
        assertTrue(found <= 0.9);
    }

    /** Strides that lead nowhere would never end. */
    @Test
    void wrongNumbersAreRefused() {
        for (double stride : new double[] {1, 0.5, Double.NaN}) {
            assertThrows(InvalidValueException.class, () -> Edge.largest(x -> 1 - x, 0.5, stride, 0, 10, FINE));
        }
        assertThrows(InvalidValueException.class, () -> Edge.largest(x -> 1 - x, 0, 2, 0, 10, FINE));
        assertThrows(InvalidValueException.class, () -> Edge.largest(x -> 1 - x, 0.5, 2, 0.6, 10, FINE));
        assertThrows(InvalidValueException.class, () -> Edge.largest(x -> 1 - x, 0.5, 2, 0, 0.4, FINE));
        assertThrows(InvalidValueException.class, () -> Edge.largest(x -> 1 - x, 0.5, 2, 0, 10, 0));
    }

    @Test
    void whatIsKeptEverywhereOrNowhereEndsAtABound() {
        assertEquals(2, largest(x -> 1));
        assertEquals(0.1, largest(x -> -1));
    }
}
