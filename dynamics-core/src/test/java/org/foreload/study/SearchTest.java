package org.foreload.study;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.atomic.AtomicInteger;
import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Test;

class SearchTest {

    private static final double[] LOW = {-5, -5, -5};
    private static final double[] HIGH = {5, 5, 5};
    private static final double[] START = {-3, 4, 1};
    private static final double[] SPREAD = {1, 1, 1};

    /** A bowl whose lowest point is known by construction. */
    private static double bowl(double[] x) {
        double a = x[0] - 1;
        double b = x[1] + 2;
        double c = x[2] - 0.5;
        return 7 + a * a + 3 * b * b + 0.5 * c * c + a * b;
    }

    /** Many shallow dips around one deep one: Rastrigin's function, lowest at the origin. */
    private static double dips(double[] x) {
        double sum = 0;
        for (double one : x) {
            sum += one * one - 3 * Math.cos(2 * Math.PI * one) + 3;
        }
        return sum;
    }

    private static Search search(int evaluations) {
        return new Search(LOW, HIGH, evaluations, () -> false);
    }

    @Test
    void bothFindTheBottomOfABowl() {
        double[] bottom = {1, -2, 0.5};
        assertArrayEquals(
                bottom, search(3000).wide(SearchTest::bowl, START, SPREAD, 1).point(), 0.05);
        assertArrayEquals(bottom, search(500).nearby(SearchTest::bowl, START, 1).point(), 0.02);
    }

    @Test
    void theWideSearchClimbsOutOfDips() {
        assertTrue(search(6000)
                        .wide(SearchTest::dips, START, new double[] {3, 3, 3}, 4)
                        .cost()
                < 1.5);
        assertTrue(search(6000).nearby(SearchTest::dips, START, 0.1).cost() > 1.5);
    }

    @Test
    void theSameSearchFindsTheSame() {
        Search.Found found = search(300).wide(SearchTest::bowl, START, SPREAD, 1);
        assertEquals(found, search(300).wide(SearchTest::bowl, START, SPREAD, 1));
        assertEquals(
                found.hashCode(),
                search(300).wide(SearchTest::bowl, START, SPREAD, 1).hashCode());
        assertNotEquals(found, search(300).wide(SearchTest::bowl, START, SPREAD, 2));
    }

    @Test
    void theBottomMayLieOnTheEdge() {
        double[] bottom = search(3000)
                .wide(x -> x[0] + x[1] * x[1] + x[2] * x[2], START, SPREAD, 1)
                .point();
        assertArrayEquals(new double[] {-5, 0, 0}, bottom, 0.05);
    }

    @Test
    void theSameSeedFindsTheSamePointToTheBit() {
        double[] once = search(400).wide(SearchTest::dips, START, SPREAD, 3).point();
        double[] again = search(400).wide(SearchTest::dips, START, SPREAD, 3).point();
        double[] other = search(400).wide(SearchTest::dips, START, SPREAD, 5).point();
        assertArrayEquals(once, again);
        assertTrue(once[0] != other[0], "another seed draws other points");
    }

    @Test
    void neverUsesMoreThanItsEvaluationsAndKeepsTheBest() {
        AtomicInteger count = new AtomicInteger();
        double[] least = {Double.POSITIVE_INFINITY};
        Search.Found found = search(57)
                .wide(
                        x -> {
                            count.incrementAndGet();
                            least[0] = Math.min(least[0], dips(x));
                            return dips(x);
                        },
                        START,
                        SPREAD,
                        1);
        assertEquals(57, count.get());
        assertEquals(57, found.evaluations());
        assertEquals(least[0], found.cost());
        assertEquals(least[0], dips(found.point()));
    }

    @Test
    void aStopKeepsWhatWasFound() {
        AtomicInteger count = new AtomicInteger();
        Search search = new Search(LOW, HIGH, 1000, () -> count.get() >= 20);
        Search.Found found = search.nearby(
                x -> {
                    count.incrementAndGet();
                    return bowl(x);
                },
                START,
                1);
        assertEquals(20, found.evaluations());
        assertTrue(found.cost() <= bowl(START));
    }

    @Test
    void refusesBoundsThatHoldNothing() {
        assertThrows(
                InvalidValueException.class,
                () -> new Search(new double[] {0, 0}, new double[] {1, Double.NaN}, 10, () -> false));
        assertThrows(
                InvalidValueException.class, () -> new Search(new double[] {0}, new double[] {1}, 10, () -> false));
    }
}
