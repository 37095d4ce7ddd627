package org.foreload.study;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Steps against linear programmes that are solved by hand. */
class LinearStepTest {

    private static final double NONE = Double.NEGATIVE_INFINITY;

    /**
     * Largest 3x + 5y under x ≤ 4, 2y ≤ 12, 3x + 2y ≤ 18: 36 at (2, 6). Source: F. S. Hillier and G. J. Lieberman,
     * Introduction to Operations Research, the example that opens the chapter on linear programming; from memory, and
     * the corner checked by hand.
     */
    @Test
    void aTextbookProgramme() {
        double[] step = LinearStep.of(
                        new double[] {-3, -5},
                        new double[] {-4, -12, -18},
                        new double[][] {{1, 0}, {0, 2}, {3, 2}},
                        new double[] {0, 0},
                        new double[] {100, 100})
                .orElseThrow();
        assertArrayEquals(new double[] {2, 6}, step, 1e-9);
    }

    /** Downhill to a corner of the box, below zero too; a limit of which nothing is asked does not count. */
    @Test
    void withoutLimitsItEndsInACornerOfTheBox() {
        double[] step = LinearStep.of(
                        new double[] {1, -2},
                        new double[] {NONE},
                        new double[][] {{1, 1}},
                        new double[] {-0.5, -1},
                        new double[] {2, 3})
                .orElseThrow();
        assertArrayEquals(new double[] {-0.5, 3}, step, 1e-12);
    }

    /** Along x + y = -1, the cheaper way back to a limit that is exceeded by one: y alone, at its slope of 1. */
    @Test
    void whatIsExceededIsTakenBackTheCheapestWay() {
        double[] cost = {-3, -1};
        double[] step = LinearStep.of(
                        cost, new double[] {1}, new double[][] {{1, 1}}, new double[] {-2, -2}, new double[] {0, 0})
                .orElseThrow();
        assertEquals(-1, step[0] + step[1], 1e-12);
        assertArrayEquals(new double[] {0, -1}, step, 1e-12);
    }

    /** Two units beyond, and room for one. */
    @Test
    void noneWhereTheBoxIsTooSmall() {
        Optional<double[]> step = LinearStep.of(
                new double[] {1}, new double[] {2}, new double[][] {{1}}, new double[] {-1}, new double[] {1});
        assertFalse(step.isPresent());
    }
}
