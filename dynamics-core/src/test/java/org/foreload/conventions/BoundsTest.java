package org.foreload.conventions;

import static org.junit.jupiter.api.Assertions.assertEquals;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** Held to {@link Math}. */
class BoundsTest {

    private static final double[] EDGES = {
        Double.NaN, Double.NEGATIVE_INFINITY, -1.5, 0, Double.MIN_VALUE, 1.5, Double.POSITIVE_INFINITY
    };

    @Property
    void theyAreThoseOfJava(@ForAll double a, @ForAll double b) {
        assertEquals(Math.max(a, b), Bounds.larger(a, b), 0.0);
        assertEquals(Math.min(a, b), Bounds.smaller(a, b), 0.0);
    }

    @Test
    void whatIsNoNumberStaysSoAndInfinitiesCompare() {
        for (double a : EDGES) {
            for (double b : EDGES) {
                assertEquals(Math.max(a, b), Bounds.larger(a, b));
                assertEquals(Math.min(a, b), Bounds.smaller(a, b));
            }
        }
    }

    /** Of two zeros the second: so that a bound of zero, which stands second, never comes out below zero. */
    @Test
    void aBoundOfZeroIsAboveZero() {
        assertEquals(0.0, Bounds.larger(-0.0, 0));
        assertEquals(0.0, Bounds.clamp(0, -0.0, 1));
    }

    @Property
    void aNumberIsKeptBetweenItsBounds(
            @ForAll @DoubleRange(min = -5, max = 0) double low,
            @ForAll double number,
            @ForAll @DoubleRange(min = 0, max = 5) double high) {
        assertEquals(Math.max(low, Math.min(high, number)), Bounds.clamp(low, number, high), 0.0);
    }

    /** Held to {@link Math#tanh}; odd to the bit, so that left and right are alike. */
    @Test
    void theHyperbolicTangentIsThatOfJava() {
        for (double x = 1e-9; x < 40; x *= 1.03) {
            assertEquals(Math.tanh(x), Bounds.tanh(x), 4e-16);
            assertEquals(-Bounds.tanh(x), Bounds.tanh(-x), 0.0);
        }
    }

    @Test
    void theHyperbolicTangentOfItsEdges() {
        assertEquals(0.0, Bounds.tanh(0.0));
        assertEquals(1, Bounds.tanh(Double.POSITIVE_INFINITY));
        assertEquals(-1, Bounds.tanh(-1e9));
        assertEquals(Double.NaN, Bounds.tanh(Double.NaN));
    }
}
