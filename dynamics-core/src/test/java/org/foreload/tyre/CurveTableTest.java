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
