package org.foreload.braking;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Test;

/** The monotone spline against the paper it is made by: F. N. Fritsch and J. Butland, 1984 (from memory). */
class SplineReleaseTest {

    /** A cubic has no fourth difference: what is left is rounding. */
    private static final double ROUNDING = 1e-12;

    /** Difference from which a slope is read, as a share of a piece; one-sided, to second order. */
    private static final double PROBE = 1e-4;

    @Provide
    Arbitrary<SplineRelease> splines() {
        return Arbitraries.doubles()
                .between(0, 1)
                .list()
                .ofMinSize(1)
                .ofMaxSize(6)
                .map(list -> {
                    double[] falling = list.stream()
                            .mapToDouble(value -> -value)
                            .sorted()
                            .map(value -> -value)
                            .toArray();
                    return new SplineRelease("spline", falling);
                });
    }

    private static double[] knots(SplineRelease spline) {
        double[] inner = spline.inner();
        double[] knots = new double[inner.length + 2];
        knots[0] = 1;
        System.arraycopy(inner, 0, knots, 1, inner.length);
        return knots;
    }

    /** The spline over w = 1 − √(1 − u), in which its values are equally spaced. */
    private static double at(SplineRelease spline, double w) {
        return spline.remaining(1 - (1 - w) * (1 - w));
    }

    /** Slope per piece on one side of a knot: three points of the same cubic, so exact to the third order. */
    private static double slope(SplineRelease spline, int knot, int side, int pieces) {
        double at = at(spline, (double) knot / pieces);
        double near = at(spline, (knot + side * PROBE) / pieces);
        double far = at(spline, (knot + 2 * side * PROBE) / pieces);
        return side * (4 * near - 3 * at - far) / (2 * PROBE);
    }

    /**
     * On both sides of an inner value the slope is the harmonic mean of the slopes of the two pieces, and zero where
     * one of them is level; at the ends it is the three-point slope, no steeper than three times that of its piece.
     */
    @Property
    void slopesAreThoseOfTheMethod(@ForAll("splines") SplineRelease spline) {
        double[] knots = knots(spline);
        int pieces = knots.length - 1;
        for (int i = 0; i <= pieces; i++) {
            double expected;
            if (i > 0 && i < pieces) {
                double before = knots[i] - knots[i - 1];
                double after = knots[i + 1] - knots[i];
                expected = before == 0 || after == 0 ? 0 : 2 / (1 / before + 1 / after);
            } else {
                int inward = i == 0 ? 1 : -1;
                double own = inward * (knots[i + inward] - knots[i]);
                double next = inward * (knots[i + 2 * inward] - knots[i + inward]);
                // Slope at its end of the parabola through the three values: own − (next − own)/2.
                expected = Math.min(0, Math.max(3 * own, own - (next - own) / 2));
            }
            if (i > 0) {
                assertEquals(expected, slope(spline, i, -1, pieces), 1e-6);
            }
            if (i < pieces) {
                assertEquals(expected, slope(spline, i, 1, pieces), 1e-6);
            }
        }
    }

    @Property
    void everyPieceIsACubic(@ForAll("splines") SplineRelease spline) {
        int pieces = spline.inner().length + 1;
        for (int i = 0; i < pieces; i++) {
            double[] at = new double[5];
            for (int k = 0; k < at.length; k++) {
                at[k] = at(spline, (i + k / 4.0) / pieces);
            }
            assertEquals(0, at[0] - 4 * at[1] + 6 * at[2] - 4 * at[3] + at[4], ROUNDING);
        }
    }

    /**
     * Values of 1 − w² are given back: a parabola has the three-point slope at its ends; inside to the method's error.
     */
    @Test
    void valuesOfAParabolaGiveTheParabolaBackAtItsEnds() {
        SplineRelease spline = new SplineRelease("parabola", 1 - 1 / 16.0, 1 - 4 / 16.0, 1 - 9 / 16.0);
        assertArrayEquals(new double[] {7 / 16.0, 12 / 16.0, 15 / 16.0}, spline.kinks());
        assertEquals(0, slope(spline, 0, 1, 4), 1e-6);
        assertEquals(-2.0 / 4, slope(spline, 4, -1, 4), 1e-6);
        for (double w = 0; w <= 1; w += 0.01) {
            assertEquals(1 - w * w, at(spline, w), 0.01);
        }
    }

    @Test
    void aStationThatIsNoNumberHasNoValue() {
        assertTrue(Double.isNaN(new SplineRelease("spline", 0.5).remaining(Double.NaN)));
        assertTrue(Double.isNaN(ReleaseShapes.TWO_STAGE.remaining(Double.NaN)));
        assertTrue(Double.isNaN(ReleaseShapes.LINEAR.remaining(Double.NaN)));
    }

    @Test
    void valuesThatRiseOrLeaveTheRangeAreRefusedByTheirPlace() {
        refused("release_shape", new double[0]);
        refused("release_shape, value 1", 1.1);
        refused("release_shape, value 2", 0.5, 0.6);
        refused("release_shape, value 3", 0.5, 0.4, -0.1);
        refused("release_shape, value 2", 0.5, Double.NaN);
    }

    private static void refused(String field, double... inner) {
        assertEquals(
                field,
                assertThrows(InvalidValueException.class, () -> new SplineRelease("bad", inner))
                        .field());
    }

    /** What equals and hashCode promise in {@link Object}; a shape is its name and its values. */
    @Test
    void shapesOfTheSameNameAndValuesAreEqual() {
        SplineRelease spline = new SplineRelease("a", 0.7, 0.2);
        assertEquals(new SplineRelease("a", 0.7, 0.2), spline);
        assertEquals(new SplineRelease("a", 0.7, 0.2).hashCode(), spline.hashCode());
        assertNotEquals(new SplineRelease("b", 0.7, 0.2), spline);
        assertNotEquals(new SplineRelease("a", 0.7, 0.3), spline);
        assertNotEquals("a", spline);
        assertEquals("a", spline.toString());
        assertEquals("a", spline.name());

        double[] u = {0, 0.4, 1};
        double[] remaining = {1, 0.3, 0};
        TabulatedRelease table = new TabulatedRelease("a", u, remaining);
        assertEquals(new TabulatedRelease("a", u, remaining).hashCode(), table.hashCode());
        assertNotEquals(new TabulatedRelease("b", u, remaining), table);
        assertNotEquals(new TabulatedRelease("a", new double[] {0, 0.5, 1}, remaining), table);
        assertNotEquals(new TabulatedRelease("a", u, new double[] {1, 0.4, 0}), table);
        assertNotEquals("a", table);
        assertEquals("a", table.toString());
        assertEquals("table", new TabulatedRelease(u, remaining).name());
        assertEquals("linear", ReleaseShapes.LINEAR.toString());
    }
}
