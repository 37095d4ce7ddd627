package org.foreload.tyre;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** Cubic pieces give back a cubic, its value and its slope, wherever it is read. */
class CurveTableTest {

    private final CurveTable table = new CurveTable(2, 8, 4, CurveTableTest::cubic, CurveTableTest::slopeOfCubic);

    private static double cubic(double x) {
        return ((0.3 * x - 1.1) * x + 0.7) * x - 2;
    }

    private static double slopeOfCubic(double x) {
        return (0.9 * x - 2.2) * x + 0.7;
    }

    @Property
    void aCubicIsGivenBack(@ForAll @DoubleRange(min = 2, max = 3.99) double x) {
        assertEquals(cubic(x), table.value(x), 1e-12);
        assertEquals(slopeOfCubic(x), table.slope(x), 1e-12);
        assertEquals(1.8 * x - 2.2, table.bend(x), 1e-10);
    }

    /** In the middle of a piece of width w, a quartic is missed by w⁴/384 of its fourth derivative, 24 for x⁴. */
    @Test
    void theErrorIsThatOfTheMiddleOfAPiece() {
        CurveTable quartic = new CurveTable(1, 8, 4, x -> x * x * x * x, x -> 4 * x * x * x);
        assertEquals(2.875 * 24 / 384 / 256, quartic.error(x -> x * x * x * x), 1e-12);
    }

    /** It takes the fewest pieces that are good enough. */
    @Test
    void asManyPiecesAsTheAccuracyAsksFor() {
        double error64 = CurveTable.accurate(0, 2, 1, Math::sin, Math::cos).error(Math::sin);
        double error128 =
                CurveTable.accurate(0, 2, 0.9 * error64, Math::sin, Math::cos).error(Math::sin);
        double error256 = CurveTable.accurate(0, 2, 0, Math::sin, Math::cos).error(Math::sin);
        assertEquals(16, error64 / error128, 0.5);
        assertEquals(16, error128 / error256, 0.5);
        assertEquals(
                error64,
                CurveTable.accurate(0, 2, error64, Math::sin, Math::cos).error(Math::sin),
                0);
    }

    @Test
    void itHoldsItsStartAndNotItsEnd() {
        assertTrue(table.holds(2));
        assertTrue(table.holds(Math.nextDown(4)));
        assertFalse(table.holds(Math.nextDown(2)));
        assertFalse(table.holds(4));
        assertFalse(table.holds(Double.NaN));
    }
}
