package org.foreload.study;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class LowDiscrepancyTest {

    /** Each coordinate of the first 2ᵏ points of a shifted net has one point in each of 2ᵏ equal cells. */
    @Property(tries = 50)
    void everyCellOfEachCoordinateHasItsPoint(@ForAll @IntRange(min = 1, max = 8) int k, @ForAll long seed) {
        int cells = 1 << k;
        List<double[]> points = LowDiscrepancy.points(6, cells, seed);
        for (int i = 0; i < 6; i++) {
            double shift = points.get(0)[i] * cells % 1;
            boolean[] seen = new boolean[cells];
            for (double[] point : points) {
                int cell = Math.floorMod(Math.round(point[i] * cells - shift), cells);
                assertTrue(!seen[cell], "two points in one cell");
                seen[cell] = true;
            }
        }
    }

    @Test
    void morePointsChangeNoneAndEachSeedIsItsOwn() {
        List<double[]> few = LowDiscrepancy.points(3, 10, 5);
        List<double[]> many = LowDiscrepancy.points(3, 100, 5);
        for (int i = 0; i < few.size(); i++) {
            assertArrayEquals(few.get(i), many.get(i));
        }
        assertNotEquals(few.get(0)[0], LowDiscrepancy.points(3, 10, 6).get(0)[0]);
    }

    /** Percentiles of the standard normal distribution from any table. */
    @Test
    void normalDeviatesAreThoseOfTheTables() {
        assertEquals(0, LowDiscrepancy.normal(0.5), 1e-12);
        assertEquals(1.959964, LowDiscrepancy.normal(0.975), 1e-6);
        assertEquals(-1.644854, LowDiscrepancy.normal(0.05), 1e-6);
    }
}
