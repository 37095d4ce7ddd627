package org.foreload.conventions;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Held to the mathematical library of the language, {@link StrictMath}. */
class AnglesTest {

    /** A few roundings of the result, relative to it. */
    private static final double ROUNDING = 1e-15;

    private static void agree(DoubleUnaryOperator expected, DoubleUnaryOperator quick) {
        for (int i = -4000; i <= 4000; i++) {
            double x = i / 4000.0;
            double value = expected.applyAsDouble(x);
            assertEquals(value, quick.applyAsDouble(x), ROUNDING * Math.abs(value), () -> "at " + x);
        }
    }

    @Test
    void theSineIsTheLibrarys() {
        agree(StrictMath::sin, Angles::sin);
    }

    @Test
    void theCosineIsTheLibrarys() {
        agree(StrictMath::cos, Angles::cos);
    }

    @Test
    void theArcTangentIsTheLibrarys() {
        agree(StrictMath::atan, Angles::atan);
    }

    /** So that a corner and its mirror image are driven alike. */
    @Test
    void sineAndArcTangentAreOddAndTheCosineEvenToTheBit() {
        for (double x = 0; x < 1; x += 0.013) {
            assertEquals(-Angles.sin(x), Angles.sin(-x), 0);
            assertEquals(Angles.cos(x), Angles.cos(-x), 0);
            assertEquals(-Angles.atan(x), Angles.atan(-x), 0);
        }
    }

    @Test
    void largeAnglesAndWhatIsNoNumberAreLeftToTheLibrary() {
        for (double x : new double[] {0.5, -0.5, 2, -30, 1e9, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertEquals(Math.sin(x), Angles.sin(x), 0);
            assertEquals(Math.cos(x), Angles.cos(x), 0);
            assertEquals(Math.atan(x), Angles.atan(x), 0);
        }
    }
}
