package org.foreload.grip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Searches on functions whose limits are known. */
class LimitSearchTest {

    private double farthest;

    /** A level whose limit is at √2 on either side. */
    private double square(double x) {
        farthest = Math.max(farthest, Math.abs(x));
        return x * x - 2;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.01, 0.3, 1, 5})
    void theEdgeIsTheLastFeasiblePointAndNothingFarIsLookedAt(double step) {
        for (int sign = -1; sign <= 1; sign += 2) {
            farthest = 0;
            double edge = LimitSearch.edgeFrom(this::square, 0, sign * step, sign * 1e6);
            assertEquals(sign * Math.sqrt(2), edge, 1e-10);
            assertTrue(square(edge) <= 0);
            // Growing steps: the last one is as long as all before it together, and one first step more.
            assertTrue(farthest <= 2 * Math.sqrt(2) + step, "looked at " + farthest);
        }
    }

    @Test
    void aFeasibleBoundIsReturned() {
        farthest = 0;
        assertEquals(1.2, LimitSearch.edgeFrom(this::square, -1, 0.5, 1.2), 0);
        assertEquals(1.2, LimitSearch.edgeFrom(this::square, 0.5, 0.5, 1.2), 0);
        assertEquals(-1.2, LimitSearch.edgeFrom(this::square, 1, -0.5, -1.2), 0);
        assertTrue(farthest <= 1.2, "nothing is looked at beyond the bound");
    }

    @Test
    void aStepOfNoLengthIsRefused() {
        for (double step : new double[] {0, -0.0, Double.NaN}) {
            assertThrows(IllegalArgumentException.class, () -> LimitSearch.edgeFrom(this::square, 0, step, 1));
        }
    }

    @Test
    void whoStandsAtTheLimitStays() {
        assertEquals(3, LimitSearch.edgeFrom(x -> x - 3, 3, 0.5, 10), 0);
        assertEquals(4, LimitSearch.edgeFrom(x -> x - 3, 4, 0.5, 10), 0);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.01, 0.3, 2})
    void fromOneEdgeItGoesThroughToTheOther(double step) {
        for (int sign = -1; sign <= 1; sign += 2) {
            double other = -sign * Math.nextUp(Math.sqrt(2));
            assertEquals(
                    sign * Math.sqrt(2), LimitSearch.edgeFrom(this::square, other, sign * step, sign * 1e6), 1e-10);
        }
    }

    /** A level that jumps: the edge is on the feasible side of the jump. */
    @Test
    void anEdgeAtAJump() {
        double edge = LimitSearch.edgeFrom(x -> x <= 0.7 ? -0.3 : 1, 0, 0.1, 10);
        assertTrue(edge <= 0.7);
        assertEquals(0.7, edge, 1e-11);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-9.9, -3, 0.001, 17, 49})
    void aFeasibleStretchIsFound(double middle) {
        for (double half : new double[] {5, 0.1, 1e-6}) {
            DoubleUnaryOperator level = x -> Math.abs(x - middle) - half;
            double found = LimitSearch.feasibleBetween(level, -10, 50);
            assertTrue(Math.abs(found - middle) <= half, "found " + found);
        }
    }

    @Test
    void whereNothingIsFeasibleNothingIsFound() {
        assertEquals(Double.NaN, LimitSearch.feasibleBetween(x -> Math.abs(x - 3) + 1e-6, -10, 50));
        assertEquals(Double.NaN, LimitSearch.feasibleBetween(x -> -1, 2, 2));
        assertEquals(Double.NaN, LimitSearch.feasibleBetween(x -> -1, 3, 2));
    }

    /** Zero at the limit, in order of utilisation, and finite. */
    @Test
    void theLevelOfAUtilisation() {
        assertEquals(-1, LimitSearch.level(-1), 0);
        assertEquals(0, LimitSearch.level(0), 0);
        assertEquals(0.5, LimitSearch.level(2), 1e-15);
        assertEquals(1, LimitSearch.level(Double.POSITIVE_INFINITY), 0);
        assertEquals(1, LimitSearch.level(Double.NaN), 0, "what is not a number is not feasible");
    }
}
