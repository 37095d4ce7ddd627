package org.foreload.path;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lines fitted to points, held against the known line that the points were taken from. */
class MeasuredPathTest {

    private static final double RADIUS = 60;
    private static final double NOISE = 0.03;
    private static final double TOLERANCE = 0.05;
    private static final long SEEDS = 10;
    private static final double LENGTH = 300;
    private static final SegmentPath TRUTH = SamplePoints.TRUTH;

    /** Errors of curvature relative to the largest of the truth; stations are aligned at the first point. */
    private record CurvatureError(double rms, double largest, double largestAwayFromSpiralEnds) {

        static CurvatureError of(Path fit) {
            double offset = TRUTH.start() - fit.start();
            double sum = 0;
            double largest = 0;
            double away = 0;
            int count = 0;
            for (double s = fit.start(); s < fit.end(); s += 0.25) {
                double error = RADIUS * Math.abs(fit.curvature(s) - TRUTH.curvature(s + offset));
                sum += error * error;
                count++;
                largest = Math.max(largest, error);
                if (distanceFromSpiralEnds(s + offset) > 10) {
                    away = Math.max(away, error);
                }
            }
            return new CurvatureError(Math.sqrt(sum / count), largest, away);
        }

        private static double distanceFromSpiralEnds(double s) {
            double nearest = Double.POSITIVE_INFINITY;
            for (double end : new double[] {0, 40, 100, 140}) {
                nearest = Math.min(nearest, Math.abs(s - end));
            }
            return nearest;
        }
    }

    @ParameterizedTest
    @CsvSource({"2", "3", "5"})
    void noisyPointsGiveBackTheCurvature(double step) {
        for (long seed = 0; seed < SEEDS; seed++) {
            MeasuredPath fit =
                    MeasuredPath.fit(SamplePoints.of(TRUTH, step, NOISE, seed).line(), TOLERANCE);
            CurvatureError error = CurvatureError.of(fit);
            String run = "step " + step + ", seed " + seed + ": " + error;
            assertTrue(error.rms < 0.025, run);
            assertTrue(error.largestAwayFromSpiralEnds < 0.05, run);
            assertTrue(error.largest < 0.09, run);
            assertEquals(LENGTH, fit.end() - fit.start(), 1e-3 * LENGTH, run);
            assertTrue(Math.abs(-80 - fit.start()) < 7, run + ", turn-in " + fit.start());
        }
    }

    /** The fit lies closer to the line behind the points than the points themselves do. */
    @ParameterizedTest
    @CsvSource({"2", "3", "5"})
    void noisyPointsGiveBackTheLine(double step) {
        for (long seed = 0; seed < SEEDS; seed++) {
            MeasuredPath fit =
                    MeasuredPath.fit(SamplePoints.of(TRUTH, step, NOISE, seed).line(), TOLERANCE);
            double sum = 0;
            int count = 0;
            for (double s = -80; s <= 220; s += 1) {
                Path.Point at = TRUTH.position(s);
                double distance = distance(fit, fit.inPathFrame(at.x(), at.y()));
                assertTrue(distance < 2.5 * NOISE, "off by " + distance + " m at " + s + ", seed " + seed);
                sum += distance * distance;
                count++;
            }
            assertTrue(Math.sqrt(sum / count) < NOISE, "rms " + Math.sqrt(sum / count) + ", seed " + seed);
        }
    }

    /**
     * Points of a straight of 80 m and a bend in a country's grid, turned by 0.7 rad: turn-in lies about 80 m from the
     * first point in that direction, however long a straight is set before it.
     */
    @ParameterizedTest
    @CsvSource({"0", "30"})
    void turnInIsFoundInTheFrameOfTheSurvey(double approach) {
        SamplePoints own = SamplePoints.of(TRUTH, 2, 0, 1);
        double cos = Math.cos(0.7);
        double sin = Math.sin(0.7);
        double[] x = new double[own.x().length];
        double[] y = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            x[i] = 400_000 + cos * own.x()[i] - sin * own.y()[i];
            y[i] = 5_600_000 + sin * own.x()[i] + cos * own.y()[i];
        }
        MeasuredPath fit = MeasuredPath.fit(MeasuredLine.of(x, y, 5), TOLERANCE, approach, 0);
        double along = -fit.firstPoint();
        assertEquals(80, along, 1);
        assertEquals(approach, fit.firstPoint() - fit.start(), 1e-9);
        Path.Point here = fit.position(0);
        Path.Point turnIn = fit.inMeasuredFrame(here.x(), here.y());
        assertEquals(x[0] + along * cos, turnIn.x(), 0.01);
        assertEquals(y[0] + along * sin, turnIn.y(), 0.01);
        Path.Point back = fit.inPathFrame(turnIn.x(), turnIn.y());
        assertEquals(here.x(), back.x(), 1e-8);
        assertEquals(here.y(), back.y(), 1e-8);
    }

    @Test
    void deviationsAreThoseOfThePoints() {
        SamplePoints points = SamplePoints.of(TRUTH, 3, NOISE, 11);
        MeasuredPath fit = MeasuredPath.fit(points.line(), TOLERANCE, 30, 20);
        double sum = 0;
        double largest = 0;
        for (int i = 0; i < points.x().length; i++) {
            double distance = distance(fit, fit.inPathFrame(points.x()[i], points.y()[i]));
            sum += distance * distance;
            largest = Math.max(largest, distance);
        }
        assertEquals(Math.sqrt(sum / points.x().length), fit.rmsDeviation(), 1e-5);
        assertEquals(largest, fit.maxDeviation(), 1e-5);
        assertTrue(fit.rmsDeviation() <= TOLERANCE);
        assertEquals(NOISE, fit.rmsDeviation(), 0.2 * NOISE);
    }

    /** Distance of a point from a line by walking along it in steps down to a millimetre. */
    private static double distance(Path path, Path.Point point) {
        double nearest = Double.POSITIVE_INFINITY;
        double at = path.start();
        for (double step : new double[] {3, 0.3, 0.03, 0.003, 0.001}) {
            double from = step == 3 ? path.start() : at - 10 * step;
            double to = step == 3 ? path.end() : at + 10 * step;
            for (double s = from; s <= to; s += step) {
                Path.Point here = path.position(s);
                double distance = Math.hypot(here.x() - point.x(), here.y() - point.y());
                if (distance < nearest) {
                    nearest = distance;
                    at = s;
                }
            }
        }
        return nearest;
    }

    @ParameterizedTest
    @CsvSource({"2, 0.011", "3, 0.02", "5, 0.025"})
    void cleanPointsGiveBackTheCurvature(double step, double largest) {
        MeasuredPath fit = MeasuredPath.fit(SamplePoints.of(TRUTH, step, 0, 0).line(), TOLERANCE);
        CurvatureError error = CurvatureError.of(fit);
        assertTrue(error.rms < 0.006, error.toString());
        assertTrue(error.largestAwayFromSpiralEnds < 0.005, error.toString());
        assertTrue(error.largest < largest, error.toString());
        assertTrue(fit.maxDeviation() < 0.003, "off by " + fit.maxDeviation());
        assertEquals(LENGTH, fit.end() - fit.start(), 1e-5 * LENGTH);
        assertEquals(-80, fit.start(), 1);
    }

    /** SamplePoints on a circle have one curvature, 1/R, from the first to the last; so the line starts at turn-in. */
    @ParameterizedTest
    @CsvSource({"LEFT, 30", "RIGHT, 12"})
    void pointsOnACircle(Turn turn, double radius) {
        SegmentPath circle = SegmentPath.of(0, List.of(Segment.arcThroughAngle(5, radius, turn)), 0, 5);
        MeasuredPath fit = MeasuredPath.fit(SamplePoints.of(circle, 2, 0, 0).line(), TOLERANCE);
        assertEquals(0, fit.start());
        for (double s = 0; s <= fit.end(); s += 0.7) {
            assertEquals(turn.sign() / radius, fit.curvature(s), 1e-6 / radius);
        }
    }

    @Test
    void pointsOnAStraight() {
        SegmentPath straight = SegmentPath.of(100, List.of(), 0, 5);
        MeasuredPath fit = MeasuredPath.fit(SamplePoints.of(straight, 4, 0, 0).line(), TOLERANCE);
        assertEquals(100, fit.end() - fit.start(), 1e-9);
        assertEquals(0, fit.curvature(fit.start() + 50), 1e-12);
    }

    @Test
    void endsHaveNoSpikes() {
        for (long seed = 0; seed < SEEDS; seed++) {
            MeasuredPath fit =
                    MeasuredPath.fit(SamplePoints.of(TRUTH, 3, NOISE, seed).line(), TOLERANCE);
            for (double s : new double[] {fit.start(), fit.start() + 3, fit.end() - 3, fit.end()}) {
                assertTrue(RADIUS * Math.abs(fit.curvature(s)) < 0.07, "seed " + seed + ": " + fit.curvature(s));
            }
        }
    }

    @Test
    void addedStraightsJoinWithoutAJump() {
        MeasuredPath fit = MeasuredPath.fit(SamplePoints.of(TRUTH, 3, NOISE, 3).line(), TOLERANCE, 200, 100);
        MeasuredPath alone =
                MeasuredPath.fit(SamplePoints.of(TRUTH, 3, NOISE, 3).line(), TOLERANCE);
        assertEquals(alone.end() - alone.start() + 300, fit.end() - fit.start(), 0.05);
        double join = fit.start() + 200;
        assertEquals(200, fit.position(join).x());
        assertEquals(0, fit.position(join).y(), 1e-12);
        assertEquals(0, fit.curvature(join - 1));
        assertEquals(0, fit.curvature(join), 1e-12);
        assertEquals(0, fit.curvature(fit.end() - 100 - 1e-9), 1e-10);
        assertEquals(0, fit.curvature(fit.end() - 50));
    }

    @Test
    void pointsInTheMirrorGiveThePathInTheMirror() {
        SamplePoints points = SamplePoints.of(TRUTH, 3, NOISE, 4);
        Path mirrored = MeasuredPath.fit(points.line(), TOLERANCE).mirrored();
        Path right = MeasuredPath.fit(points.mirrored().line(), TOLERANCE);
        assertEquals(mirrored.start(), right.start(), 1e-9);
        assertArrayEquals(mirrored.kinks(), right.kinks(), 1e-9);
        for (double s = right.start(); s < right.end(); s += 1.3) {
            assertEquals(mirrored.curvature(s), right.curvature(s), 1e-9);
            assertEquals(mirrored.position(s).y(), right.position(s).y(), 1e-7);
        }
    }

    /** Quarter turn and a shift to the coordinates of a country-wide grid. */
    @Test
    void theFrameOfTheSurveyDoesNotMatter() {
        SamplePoints points = SamplePoints.of(TRUTH, 3, NOISE, 5);
        SamplePoints moved = new SamplePoints(
                SamplePoints.scaled(points.y(), -1, 512_000), SamplePoints.scaled(points.x(), 1, 5_340_000));
        Path here = MeasuredPath.fit(points.line(), TOLERANCE);
        Path there = MeasuredPath.fit(moved.line(), TOLERANCE);
        for (double s = here.start(); s < here.end(); s += 1.3) {
            assertEquals(here.curvature(s), there.curvature(s), 1e-7);
        }
    }

    @Test
    void keepsTheLawsOfAPath() {
        SamplePoints points = SamplePoints.of(TRUTH, 3, NOISE, 6);
        PathLaws.check(MeasuredPath.fit(points.line(), TOLERANCE));
        PathLaws.check(MeasuredPath.fit(points.mirrored().line(), TOLERANCE, 50, 60));
    }

    @Test
    void curvatureIsContinuousAndPiecesAreNotTooShort() {
        MeasuredPath fit =
                MeasuredPath.fit(SamplePoints.of(TRUTH, 0.5, NOISE, 7).line(), TOLERANCE);
        double previous = fit.start();
        for (double kink : fit.kinks()) {
            assertEquals(fit.curvature(kink - 1e-9), fit.curvature(kink), 1e-10);
            assertTrue(kink - previous > 1.4, "piece of " + (kink - previous) + " m");
            previous = kink;
        }
    }

    /** A line of many corners, four kilometres long, and one corner that turns by far more than half a circle. */
    @Test
    void longAndWindingLines() {
        List<Segment> corner = List.of(
                Segment.spiralIn(40, 50, Turn.LEFT),
                Segment.arc(80, 50, Turn.LEFT),
                Segment.spiralOut(40, 50, Turn.LEFT),
                Segment.spiralIn(30, 35, Turn.RIGHT),
                Segment.arc(150, 35, Turn.RIGHT),
                Segment.spiralOut(60, 35, Turn.RIGHT));
        List<Segment> segments = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            segments.addAll(corner);
        }
        SegmentPath winding = SegmentPath.of(50, segments, 50, 5);
        MeasuredPath fit =
                MeasuredPath.fit(SamplePoints.of(winding, 3, NOISE, 8).line(), TOLERANCE);
        assertTrue(fit.rmsDeviation() < TOLERANCE);
        double sum = 0;
        int count = 0;
        double offset = winding.start() - fit.start();
        for (double s = fit.start(); s < fit.end() - 20; s += 1) {
            double error = 35 * (fit.curvature(s) - winding.curvature(s + offset));
            sum += error * error;
            count++;
        }
        assertTrue(Math.sqrt(sum / count) < 0.04, "rms error of curvature " + Math.sqrt(sum / count));
    }

    /** Whatever the points, the answer is a path that keeps its promises, or a refusal that names the field. */
    @Property
    void anyPointsAreFittedOrRefused(
            @ForAll @IntRange(min = 5, max = 40) int count,
            @ForAll @DoubleRange(min = 0.1, max = 10) double step,
            @ForAll @DoubleRange(min = 0, max = 1.2) double wildness,
            @ForAll @LongRange(min = 0, max = 1000) long seed) {
        Random random = new Random(seed);
        double[] x = new double[count];
        double[] y = new double[count];
        double heading = 0;
        for (int i = 1; i < count; i++) {
            heading += wildness * (2 * random.nextDouble() - 1);
            x[i] = x[i - 1] + step * Math.cos(heading);
            y[i] = y[i - 1] + step * Math.sin(heading);
        }
        try {
            MeasuredPath fit = MeasuredPath.fit(MeasuredLine.of(x, y, 5), TOLERANCE, 10, 10);
            assertTrue(fit.rmsDeviation() <= TOLERANCE * 1.001, "rms " + fit.rmsDeviation());
            assertTrue(fit.rmsDeviation() <= fit.maxDeviation());
            PathLaws.check(fit);
        } catch (InvalidValueException refused) {
            assertTrue(List.of("tolerance_m", "x_m").contains(refused.field()), refused.getMessage());
        }
    }

    @Test
    void aToleranceBelowTheScatterIsRefusedWithTheScatter() {
        MeasuredLine line = SamplePoints.of(TRUTH, 3, 0.2, 9).line();
        InvalidValueException error =
                assertThrows(InvalidValueException.class, () -> MeasuredPath.fit(line, TOLERANCE));
        assertEquals("tolerance_m", error.field());
        double scatter = Double.parseDouble(error.allowed().split(" ")[2]);
        assertEquals(0.2, scatter, 0.05);
        assertTrue(MeasuredPath.fit(line, 0.3).rmsDeviation() <= 0.3);
    }
}
