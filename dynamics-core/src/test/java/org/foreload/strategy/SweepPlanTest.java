package org.foreload.strategy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Test;

/** Which releases a sweep tries. */
class SweepPlanTest {

    /** Straight-line braking with each peak first, then every shape with all that ends after it starts. */
    @Test
    void everyPairThatEndsAfterItStartsIsTried() {
        SweepPlan plan = new SweepPlan(
                List.of(ReleaseShapes.LINEAR, ReleaseShapes.HELD),
                List.of(0.5, 0.8),
                List.of(-0.25, 0.5),
                List.of(0.25, 0.5, 1.0),
                0.25);
        List<Braking> releases = plan.releases(10, List.of(40.0));
        // Three ends after the first start, one after the second: four pairs, of two peaks and two shapes.
        assertEquals(2 + 4 * 2 * 2, releases.size());
        for (int i = 0; i < 2; i++) {
            assertTrue(StraightLine.is(releases.get(i).from(-50)));
        }
        assertEquals(5, releases.get(0).peakDeceleration(), 1e-12);
        assertEquals(8, releases.get(1).peakDeceleration(), 1e-12);
        Braking first = releases.get(2);
        assertEquals(ReleaseShapes.LINEAR, first.release().shape());
        assertEquals(-10, first.release().start(), 1e-12);
        assertEquals(10, first.release().end(), 1e-12);
        assertEquals(5, first.peakDeceleration(), 1e-12);
        assertEquals(0.25, first.buildUpTime());
        Braking last = releases.get(releases.size() - 1);
        assertEquals(ReleaseShapes.HELD, last.release().shape());
        assertEquals(20, last.release().start(), 1e-12);
        assertEquals(40, last.release().end(), 1e-12);
        assertEquals(releases.size(), releases.stream().distinct().count());
    }

    /** Five shapes of 3·3·3 pairs that all fit, and three straight lines; twice as fine, 5·5·5. */
    @Test
    void aFinerSweepTriesTheCoarseOnesToo() {
        List<Braking> coarse = SweepPlan.standard().releases(10, List.of(40.0));
        List<Braking> fine = SweepPlan.withResolution(2).releases(10, List.of(40.0));
        assertEquals(5 * 27 + 3, coarse.size());
        assertEquals(5 * 125 + 5, fine.size());
        assertTrue(fine.containsAll(coarse));
        assertEquals(
                List.of(0.5, 0.625, 0.75, 0.81, 0.87),
                rounded(SweepPlan.withResolution(2).peaks()));
    }

    /** Twice as far to the second apex: the same shares of the way end twice as late. */
    @Test
    void eachBendIsTriedInSharesOfTheWayToItsOwnApex() {
        SweepPlan plan =
                new SweepPlan(List.of(ReleaseShapes.LINEAR), List.of(0.5), List.of(-0.25), List.of(0.25, 1.0), 0.25);
        List<Release> releases = plan.releases(10, List.of(20.0, 40.0)).stream()
                .map(Braking::release)
                .toList();
        assertEquals(
                List.of(
                        new Release(ReleaseShapes.ABRUPT, 0, 0),
                        new Release(ReleaseShapes.LINEAR, -5, 5),
                        new Release(ReleaseShapes.LINEAR, -5, 20),
                        new Release(ReleaseShapes.LINEAR, -10, 10),
                        new Release(ReleaseShapes.LINEAR, -10, 40)),
                releases);
    }

    /** The plan is refused, before a sweep begins, and says where: one shape would end it as a whole. */
    @Test
    void aShapeThatGivesNoNumberIsRefusedByItsName() {
        ReleaseShape broken = new ReleaseShape() {
            @Override
            public String name() {
                return "broken";
            }

            @Override
            public double remaining(double u) {
                return u > 0.4 && u < 0.41 ? Double.NaN : 1 - u;
            }

            @Override
            public double[] kinks() {
                return new double[0];
            }
        };
        List<ReleaseShape> shapes = List.of(ReleaseShapes.LINEAR, broken);
        List<Double> numbers = List.of(0.5);
        InvalidValueException refused = assertThrows(
                InvalidValueException.class, () -> new SweepPlan(shapes, numbers, List.of(0.0), numbers, 0.25));
        assertEquals("release_shape broken, remaining(0.405)", refused.field());
    }

    private static List<Double> rounded(List<Double> values) {
        return values.stream().map(value -> Math.rint(1e9 * value) / 1e9).toList();
    }

    @Test
    void aPlanWithNothingToTryIsRefused() {
        List<Double> one = List.of(0.5);
        assertThrows(InvalidValueException.class, () -> new SweepPlan(List.of(), one, one, one, 0.25));
        assertThrows(
                InvalidValueException.class,
                () -> new SweepPlan(List.of(ReleaseShapes.LINEAR), List.of(), one, one, 0.25));
        assertThrows(
                InvalidValueException.class,
                () -> new SweepPlan(List.of(ReleaseShapes.LINEAR), one, List.of(), one, 0.25));
        assertThrows(
                InvalidValueException.class,
                () -> new SweepPlan(List.of(ReleaseShapes.LINEAR), one, one, List.of(), 0.25));
        for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThrows(
                    InvalidValueException.class,
                    () -> new SweepPlan(List.of(ReleaseShapes.LINEAR), one, List.of(bad), one, 0.25));
            assertThrows(
                    InvalidValueException.class,
                    () -> new SweepPlan(List.of(ReleaseShapes.LINEAR), one, one, List.of(bad), 0.25));
        }
        assertEquals("peak_share", refusedPeak(0.009));
        assertEquals("peak_share", refusedPeak(2.001));
    }

    private static String refusedPeak(double peak) {
        List<Double> one = List.of(0.5);
        return assertThrows(
                        InvalidValueException.class,
                        () -> new SweepPlan(List.of(ReleaseShapes.LINEAR), List.of(peak), one, one, 0.25))
                .field();
    }
}
