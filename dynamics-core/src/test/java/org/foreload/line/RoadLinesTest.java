package org.foreload.line;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.conventions.InvalidValueException;
import org.foreload.path.MeasuredPath;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lines that know the road only, and how they are read off and laid again. */
class RoadLinesTest {

    private static final double HALF_CAR = 0.75;

    private static Path bend(double degrees, double radius, Turn turn) {
        return SegmentPath.of(160, List.of(Segment.arcThroughAngle(Math.toRadians(degrees), radius, turn)), 160, 5);
    }

    private static double tightest(RoadLine line) {
        return line.points(1).stream()
                .mapToDouble(point -> Math.abs(point.curvature()))
                .max()
                .orElseThrow();
    }

    /**
     * Source: plane geometry. An arc that touches the outer edges of both straights and the inner edge of the bend has
     * the radius r_i + (r_o − r_i)/(1 − cos ψ/2). The line here must also bend in and out, and begins in the middle of
     * the road: 4 %.
     */
    @ParameterizedTest
    @CsvSource({"60, 60", "90, 40", "120, 50"})
    void theWidestArcIsThatOfPlaneGeometry(double degrees, double radius) {
        double inner = radius - 5 + HALF_CAR;
        double outer = radius + 5 - HALF_CAR;
        double widest = inner + (outer - inner) / (1 - Math.cos(Math.toRadians(degrees) / 2));
        RoadLine line = RoadLines.constantRadius(bend(degrees, radius, Turn.LEFT), HALF_CAR);
        assertEquals(widest, 1 / tightest(line), 0.04 * widest);
    }

    /** Source: the same; around half a circle the widest arc runs along the outer edge. */
    @Test
    void aroundHalfACircleItStaysOutside() {
        RoadLine line = RoadLines.constantRadius(bend(180, 20, Turn.LEFT), HALF_CAR);
        assertEquals(24.25, 1 / tightest(line), 0.04 * 24.25);
    }

    @Test
    void itStaysOnTheRoadAndIsMirrored() {
        RoadLine left = RoadLines.lateApex(bend(90, 40, Turn.LEFT), HALF_CAR);
        RoadLine right = RoadLines.lateApex(bend(90, 40, Turn.RIGHT), HALF_CAR);
        for (LinePoint point : left.points(2)) {
            double offset = left.offset(point.roadStation());
            assertTrue(Math.abs(offset) <= 5 - HALF_CAR + 1e-3, point.toString());
            assertEquals(offset, -right.offset(point.roadStation()), 1e-3);
        }
    }

    /** Later than on the line of constant radius, and tighter before than after. */
    @Test
    void aLateApexIsLate() {
        Path road = bend(90, 40, Turn.LEFT);
        RoadLine even = RoadLines.constantRadius(road, HALF_CAR);
        RoadLine late = RoadLines.lateApex(road, HALF_CAR);
        assertTrue(apex(late) > apex(even) + 3, apex(late) + " and " + apex(even));
        assertTrue(tightest(late) > 1.05 * tightest(even));
    }

    private static double apex(RoadLine line) {
        double most = Double.NEGATIVE_INFINITY;
        double at = Double.NaN;
        for (LinePoint point : line.points(0.5)) {
            double offset = line.offset(point.roadStation());
            if (point.roadStation() > 0 && point.roadStation() < 63 && offset > most) {
                most = offset;
                at = point.roadStation();
            }
        }
        return at;
    }

    /** Direction and curvature of the points are those of their places, and the path laid through them is the line. */
    @Test
    void pointsAndPathAreTheLine() {
        RoadLine line = RoadLines.constantRadius(bend(90, 40, Turn.LEFT), HALF_CAR);
        List<LinePoint> points = line.points(0.5);
        for (int i = 1; i + 1 < points.size(); i++) {
            LinePoint before = points.get(i - 1);
            LinePoint here = points.get(i);
            LinePoint after = points.get(i + 1);
            double heading = Math.atan2(after.y() - before.y(), after.x() - before.x());
            assertEquals(heading, here.heading(), 2e-3, here.toString());
        }
        MeasuredPath path = line.line();
        assertTrue(path.maxDeviation() < 1e-3, path.maxDeviation() + " m");
        for (LinePoint point : points) {
            double s = line.lineStation(point.roadStation());
            assertEquals(point.curvature(), path.curvature(s), 6e-4, point.toString());
            assertEquals(point.widthLeft(), path.widthLeft(s), 0.02);
            assertEquals(point.roadStation(), line.roadStation(s), 1e-6);
        }
    }

    @Test
    void aRoadNarrowerThanTheCarIsRefused() {
        Path road = bend(90, 40, Turn.LEFT);
        assertThrows(InvalidValueException.class, () -> RoadLines.constantRadius(road, 5.1));
    }
}
