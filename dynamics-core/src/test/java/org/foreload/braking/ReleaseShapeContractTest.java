package org.foreload.braking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** The laws in the documentation of {@link ReleaseShape}, for every ready shape and for random tables. */
class ReleaseShapeContractTest {

    /** Rounding of a few operations on numbers of order one. */
    private static final double ROUNDING = 1e-14;

    @Property
    void startsAtOneAndEndsAtZero(@ForAll("shapes") ReleaseShape shape) {
        assertEquals(1, shape.remaining(0));
        assertEquals(0, shape.remaining(1), ROUNDING);
    }

    @Property
    void isReadAtTheNearestEndOutside(
            @ForAll("shapes") ReleaseShape shape, @ForAll @DoubleRange(min = 0, max = 1e6) double beyond) {
        assertEquals(1, shape.remaining(-beyond));
        assertEquals(shape.remaining(1), shape.remaining(1 + beyond));
    }

    @Property
    void neverRisesAndStaysBetweenZeroAndOne(
            @ForAll("shapes") ReleaseShape shape,
            @ForAll @DoubleRange(min = 0, max = 1) double one,
            @ForAll @DoubleRange(min = 0, max = 1) double other) {
        double earlier = shape.remaining(Math.min(one, other));
        double later = shape.remaining(Math.max(one, other));
        assertTrue(later <= earlier + ROUNDING, () -> later + " after " + earlier);
        assertTrue(later >= 0 && earlier <= 1);
    }

    @Property
    void kinksRiseAndLieInside(@ForAll("shapes") ReleaseShape shape) {
        double previous = 0;
        for (double kink : shape.kinks()) {
            assertTrue(kink > previous && kink < 1);
            previous = kink;
        }
    }

    /**
     * Between two kinks a shape is smooth, so Gauss-Legendre quadrature over each half of the gap and over the whole of
     * it agree; an unpublished corner or step would spoil that. Only up to 0.98, as the quarter circle is infinitely
     * steep at 1.
     */
    @Property
    void isSmoothBetweenKinks(@ForAll("shapes") ReleaseShape shape) {
        List<Double> bounds = new ArrayList<>(List.of(0.0));
        Arrays.stream(shape.kinks()).filter(kink -> kink < 0.98).forEach(bounds::add);
        bounds.add(0.98);
        for (int i = 1; i < bounds.size(); i++) {
            double left = bounds.get(i - 1);
            double right = bounds.get(i);
            double middle = left + 0.37 * (right - left);
            double whole = Quadrature.integral(shape::remaining, left, right);
            double halves = Quadrature.integral(shape::remaining, left, middle)
                    + Quadrature.integral(shape::remaining, middle, right);
            assertEquals(halves, whole, 1e-5, shape.name());
        }
    }

    @Property
    void tableIsReadStraightBetweenItsRows(
            @ForAll("tables") TabulatedRelease table, @ForAll @DoubleRange(min = 0, max = 1) double share) {
        double[] kinks = table.kinks();
        double left = kinks.length > 0 ? kinks[kinks.length - 1] : 0;
        double expected = table.remaining(left) * (1 - share);
        assertEquals(expected, table.remaining(left + share * (1 - left)), 1e-12);
    }

    @Provide
    Arbitrary<ReleaseShape> shapes() {
        return Arbitraries.oneOf(
                Arbitraries.of(ReleaseShapes.all()),
                tables().map(table -> (ReleaseShape) table),
                splines().map(spline -> (ReleaseShape) spline));
    }

    @Property
    void splinePassesThroughItsValues(@ForAll("splines") SplineRelease spline) {
        double[] inner = spline.inner();
        for (int i = 0; i < inner.length; i++) {
            assertEquals(inner[i], spline.remaining(SplineRelease.place(i + 1, inner.length + 1)), ROUNDING * 100);
        }
    }

    /** Friction circle: the brake of a point mass in a spiral goes as √(1 − u²), here within 0.4 % of the peak. */
    @Test
    void splineFollowsTheReleaseOfAPointMass() {
        double[] inner = new double[6];
        for (int i = 0; i < inner.length; i++) {
            inner[i] = ReleaseShapes.CIRCLE.remaining(SplineRelease.place(i + 1, inner.length + 1));
        }
        SplineRelease spline = new SplineRelease("spline", inner);
        for (double u = 0; u <= 1; u += 0.001) {
            assertEquals(ReleaseShapes.CIRCLE.remaining(u), spline.remaining(u), 0.004, "at " + u);
        }
    }

    @Provide
    Arbitrary<SplineRelease> splines() {
        return Arbitraries.doubles()
                .between(0, 1)
                .list()
                .ofMinSize(1)
                .ofMaxSize(8)
                .map(values -> {
                    double[] falling = values.stream()
                            .sorted(java.util.Comparator.reverseOrder())
                            .mapToDouble(Double::doubleValue)
                            .toArray();
                    return new SplineRelease("spline", falling);
                });
    }

    @Provide
    Arbitrary<TabulatedRelease> tables() {
        Arbitrary<List<Integer>> inner =
                Arbitraries.integers().between(1, 99).list().uniqueElements().ofMaxSize(6);
        return inner.flatMap(stations -> Combinators.combine(
                        Arbitraries.just(stations),
                        Arbitraries.doubles().between(0, 1).list().ofSize(stations.size()))
                .as(ReleaseShapeContractTest::table));
    }

    private static TabulatedRelease table(List<Integer> percent, List<Double> shares) {
        double[] u = new double[percent.size() + 2];
        double[] remaining = new double[u.length];
        for (int i = 0; i < percent.size(); i++) {
            u[i + 1] = percent.get(i) / 100.0;
            remaining[i + 1] = -shares.get(i);
        }
        u[u.length - 1] = 1;
        remaining[0] = -1;
        Arrays.sort(u);
        Arrays.sort(remaining);
        for (int i = 0; i < u.length; i++) {
            remaining[i] = Math.abs(remaining[i]);
        }
        return new TabulatedRelease(u, remaining);
    }
}
