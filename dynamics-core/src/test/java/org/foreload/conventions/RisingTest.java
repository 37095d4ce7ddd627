package org.foreload.conventions;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.hipparchus.analysis.interpolation.LinearInterpolator;
import org.junit.jupiter.api.Test;

/** Tables over a rising axis, against a library's polygon and a scan. */
class RisingTest {

    private static final double[] AXIS = {-2, 0, 0.5, 4};
    private static final double[] VALUES = {1, 3, -1, 6};

    @Test
    void aRowBeginsItsCellAndTheOuterCellsGoOn() {
        assertEquals(0, Rising.cell(AXIS, -9));
        assertEquals(0, Rising.cell(AXIS, -2));
        assertEquals(1, Rising.cell(AXIS, 0));
        assertEquals(1, Rising.cell(AXIS, Math.nextDown(0.5)));
        assertEquals(2, Rising.cell(AXIS, 0.5));
        assertEquals(2, Rising.cell(AXIS, 4));
        assertEquals(2, Rising.cell(AXIS, 9));
    }

    @Test
    void beyondTheEndsTheEndsAreKept() {
        assertEquals(1, Rising.straight(AXIS, VALUES, Double.NEGATIVE_INFINITY));
        assertEquals(1, Rising.straight(AXIS, VALUES, -2));
        assertEquals(6, Rising.straight(AXIS, VALUES, 4));
        assertEquals(6, Rising.straight(AXIS, VALUES, 1e9));
        assertTrue(Double.isNaN(Rising.straight(AXIS, VALUES, Double.NaN)));
    }

    /** Between the rows it is the polygon of Hipparchus. */
    @Test
    void betweenRowsItIsThePolygonOfTheLibrary() {
        SplittableRandom random = new SplittableRandom(5);
        for (int n = 2; n < 40; n++) {
            double[] axis = DoubleStream.generate(() -> random.nextDouble(-50, 50))
                    .limit(n)
                    .sorted()
                    .toArray();
            double[] values = DoubleStream.generate(random::nextDouble).limit(n).toArray();
            var polygon = new LinearInterpolator().interpolate(axis, values);
            for (int k = 0; k < 50; k++) {
                double at = random.nextDouble(axis[0], axis[n - 1]);
                assertEquals(polygon.value(at), Rising.straight(axis, values, at), 1e-13);
                int cell = Rising.cell(axis, at);
                assertTrue(axis[cell] <= at && at < axis[cell + 1], "cell " + cell);
            }
        }
    }
}
