package org.foreload.ideal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.foreload.grip.GripLimits;
import org.foreload.grip.LocalGrip;
import org.foreload.load.SampleCars;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.junit.jupiter.api.Test;

/** Where the stations lie, and that the limits are those of the road there. */
class GridTest {

    private static final GripLimits LIMITS = GripLimits.of(SampleCars.ROAD_CAR);

    /** Straight, spiral, arc, an arc set right on it, spiral, straight. */
    private static Path path(double radius, double spiral) {
        return SegmentPath.of(
                        37,
                        List.of(
                                Segment.spiralIn(spiral, radius, Turn.RIGHT),
                                Segment.arc(20, radius, Turn.RIGHT),
                                Segment.arc(15, 2 * radius, Turn.RIGHT),
                                Segment.spiralOut(spiral, 2 * radius, Turn.RIGHT)),
                        25,
                        5)
                .withGrade(0.03)
                .withBanking(-0.04);
    }

    private static void same(LocalGrip expected, LocalGrip actual) {
        for (double w : new double[] {30, 300}) {
            for (double d : new double[] {-1, 3}) {
                assertEquals(expected.frontUtilisation(w, d), actual.frontUtilisation(w, d), 1e-5);
                assertEquals(expected.rearUtilisation(w, d), actual.rearUtilisation(w, d), 1e-5);
            }
        }
    }

    private static LocalGrip at(Path path, double s) {
        return LIMITS.at(path.curvature(s), path.curvatureGradient(s), path.grade(s), path.banking(s));
    }

    /**
     * As few equal steps as keep to the longest and to a fiftieth of the smallest radius, from one end, kink or turn-in
     * to the next.
     */
    @Property
    void stepsAreEqualAndAsLongAsAllowed(
            @ForAll @DoubleRange(min = 8, max = 120) double radius,
            @ForAll @DoubleRange(min = 1, max = 60) double spiral,
            @ForAll @DoubleRange(min = 0.1, max = 5) double longest) {
        Path path = path(radius, spiral);
        Grid grid = Grid.of(path, LIMITS, longest);
        double[] ends = {-37, 0, spiral, spiral + 20, spiral + 35, 2 * spiral + 35, 2 * spiral + 60};
        double straight = Double.POSITIVE_INFINITY;
        double[] sharpest = {straight, radius, radius, 2 * radius, 2 * radius, straight};
        int i = 0;
        for (int piece = 0; piece < sharpest.length; piece++) {
            double length = ends[piece + 1] - ends[piece];
            double most = Math.min(longest, sharpest[piece] / 50);
            double exact = length / most;
            int steps = (int) Math.round(exact);
            if (Math.abs(exact - steps) > 1e-4) {
                steps = (int) Math.ceil(exact);
            }
            for (int k = 0; k < steps; k++, i++) {
                assertEquals(ends[piece] + k * length / steps, grid.station(i), 1e-9);
                assertEquals(length / steps, grid.length(i), 1e-9);
                same(at(path, grid.station(i) + grid.length(i) / 2), grid.limits(i));
                assertEquals(k == 0 ? 2 : 0, grid.kink(i).length);
            }
        }
        assertEquals(i, grid.steps());
        assertEquals(path.end(), grid.station(i), 1e-9);
    }

    /** At a kink both sides hold; here the curvature itself jumps between the two arcs. */
    @Test
    void bothSidesOfAKinkAreKept() {
        Path path = path(30, 10);
        Grid grid = Grid.of(path, LIMITS, 0.5);
        int kinks = 0;
        for (int i = 0; i <= grid.steps(); i++) {
            LocalGrip[] sides = grid.kink(i);
            if (sides.length > 0) {
                kinks++;
                same(at(path, grid.station(i) - 1e-6), sides[0]);
                same(at(path, grid.station(i) + 1e-6), sides[1]);
            }
            if (Math.abs(grid.station(i) - 30) < 1e-9) {
                assertNotEquals(sides[0].frontUtilisation(300, 0), sides[1].frontUtilisation(300, 0), 0.01);
            }
        }
        // Both ends count: their other side is read as the end itself.
        assertEquals(7, kinks);
    }

    /** Kinks that rounding has split are one; a path that starts at turn-in has no station twice. */
    @Test
    void stationsRise() {
        Path path = SegmentPath.of(
                0,
                List.of(
                        Segment.arc(10, 50, Turn.LEFT),
                        Segment.arc(5e-10, 40, Turn.LEFT),
                        Segment.arc(10, 50, Turn.LEFT)),
                0,
                5);
        Grid grid = Grid.of(path, LIMITS, 1);
        assertEquals(20, grid.steps());
        for (int i = 0; i < grid.steps(); i++) {
            assertEquals(1, grid.length(i), 1e-8);
        }
    }

    /** Turn-in is a station though nothing bends there. */
    @Test
    void turnInIsAStation() {
        Grid grid = Grid.of(SegmentPath.of(10.3, List.of(Segment.straight(7)), 0, 5), LIMITS, 1);
        assertEquals(11 + 7, grid.steps());
        assertEquals(0, grid.station(11), 1e-12);
        assertTrue(grid.kink(11).length > 0);
    }
}
