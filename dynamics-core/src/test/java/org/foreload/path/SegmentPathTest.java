package org.foreload.path;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Lines drawn from straights, arcs and spirals. */
class SegmentPathTest {

    private static final double INFINITE = Double.POSITIVE_INFINITY;
    private static final double NAN = Double.NaN;

    /** Rounding of coordinates of some hundred metres. */
    private static final double ROUNDING = 1e-12;

    private static SegmentPath alone(Segment segment) {
        return SegmentPath.of(0, List.of(segment), 0, 5);
    }

    private static final SegmentPath BEND = SegmentPath.of(
            200,
            List.of(
                    Segment.spiralIn(40, 60, Turn.LEFT),
                    Segment.arc(70, 60, Turn.LEFT),
                    Segment.spiralOut(30, 60, Turn.LEFT)),
            150,
            5);

    @Test
    void stationsRunFromTurnIn() {
        assertEquals(-200, BEND.start());
        assertEquals(290, BEND.end());
        assertArrayEquals(new double[] {0, 40, 110, 140}, BEND.kinks());
        assertArrayEquals(new double[0], BEND.curvatureJumps());
    }

    @Test
    void curvatureAndItsGradientFollowTheSegments() {
        assertEquals(0, BEND.curvature(-100));
        assertEquals(1 / 120.0, BEND.curvature(20), ROUNDING);
        assertEquals(1 / 60.0, BEND.curvature(77));
        assertEquals(1 / 60.0 / 3, BEND.curvature(130), ROUNDING);
        assertEquals(0, BEND.curvatureGradient(-1e-9));
        assertEquals(1 / 2400.0, BEND.curvatureGradient(0), ROUNDING);
        assertEquals(0, BEND.curvatureGradient(40));
        assertEquals(-1 / 1800.0, BEND.curvatureGradient(110), ROUNDING);
        assertEquals(0, BEND.curvatureGradient(140));
    }

    /** A spiral turns by L/(2R), an arc by L/R: exact. */
    @Test
    void headingIsTheIntegralOfCurvature() {
        assertEquals(20 / 60.0, BEND.heading(40), ROUNDING);
        assertEquals(90 / 60.0, BEND.heading(110), ROUNDING);
        assertEquals(105 / 60.0, BEND.heading(290), ROUNDING);
    }

    @Test
    void leadingStraightsBelongToTheApproach() {
        SegmentPath path = SegmentPath.of(
                100,
                List.of(
                        Segment.straight(20),
                        Segment.straight(5),
                        Segment.spiralIn(30, 50, Turn.RIGHT),
                        Segment.straight(10)),
                40,
                5);
        assertEquals(-125, path.start());
        assertEquals(80, path.end());
        assertArrayEquals(new double[] {0, 30}, path.kinks());
        assertArrayEquals(new double[] {30}, path.curvatureJumps());
        assertEquals(-1 / 100.0, path.curvature(15), ROUNDING);
    }

    @Test
    void aLineThatNeverTurnsEndsItsApproachAtZero() {
        SegmentPath path = SegmentPath.of(100, List.of(Segment.straight(20)), 30, 5);
        assertEquals(-100, path.start());
        assertEquals(50, path.end());
        assertArrayEquals(new double[0], path.kinks());
        assertEquals(new Path.Point(120, 0), path.position(20));
    }

    @Test
    void anArcOnAStraightIsAJumpAndReadJustAfter() {
        SegmentPath path = SegmentPath.of(50, List.of(Segment.arc(30, 25, Turn.RIGHT)), 20, 5);
        assertArrayEquals(new double[] {0, 30}, path.curvatureJumps());
        assertEquals(0, path.curvature(-1e-9));
        assertEquals(-0.04, path.curvature(0));
        assertEquals(-0.04, path.curvature(30 - 1e-9));
        assertEquals(0, path.curvature(30));
    }

    @Test
    void segmentsThatContinueEachOtherAreNoKink() {
        SegmentPath path = SegmentPath.of(
                0,
                List.of(
                        Segment.arc(10, 30, Turn.LEFT),
                        Segment.arc(15, 30, Turn.LEFT),
                        Segment.spiralOut(20, 30, Turn.LEFT)),
                0,
                5);
        assertArrayEquals(new double[] {25}, path.kinks());
    }

    /** Quarter circle of radius 50 to the right: from (0, 0) to (50, −50), exact. */
    @Test
    void arcEndsWhereItsCircleDoes() {
        Path.Point end =
                alone(Segment.arcThroughAngle(Math.PI / 2, 50, Turn.RIGHT)).position(INFINITE);
        assertEquals(50, end.x(), ROUNDING);
        assertEquals(-50, end.y(), ROUNDING);
    }

    /**
     * A land-survey spiral: length 350 ft, end radius 954.93 ft (a six-degree curve). Angle θ = L/(2R), x = L(1 − θ²/10
     * + θ⁴/216 − …), y = L(θ/3 − θ³/42 + …); k and p are where the circle, drawn back, would touch. The line does not
     * care for the unit.
     */
    @Test
    void clothoidOfALandSurvey() {
        SegmentPath path = alone(Segment.spiralIn(350, 954.93, Turn.LEFT));
        double angle = path.heading(350);
        Path.Point end = path.position(350);
        assertEquals(0.183259505932372, angle, ROUNDING);
        double rounding = 1e-9;
        assertEquals(348.8263845528102, end.x(), rounding);
        assertEquals(21.329042167707563, end.y(), rounding);
        assertEquals(174.8042757205206, end.x() - 954.93 * Math.sin(angle), rounding);
        assertEquals(5.33866245090918, end.y() - 954.93 * (1 - Math.cos(angle)), rounding);
    }

    /** Clothoid of parameter A = 12 that ends at R = 9: L = A²/R = 16, angle L/(2R) = 8/9 rad, by definition. */
    @Test
    void clothoidOfAGivenParameter() {
        SegmentPath path = alone(Segment.spiralIn(12 * 12 / 9.0, 9, Turn.LEFT));
        assertEquals(16, path.end());
        assertEquals(8 / 9.0, path.heading(16), ROUNDING);
        assertEquals(50.9296, Math.toDegrees(path.heading(16)), 5e-5);
    }

    /**
     * Curvature πs gives the Fresnel integrals themselves. Source: Abramowitz and Stegun, Table 7.7, from memory,
     * recomputed to all digits.
     */
    @ParameterizedTest
    @CsvSource({"0.5, 0.4923442, 0.0647324", "1, 0.7798934, 0.4382591", "2, 0.4882534, 0.3434157"})
    void clothoidIsTheFresnelIntegral(double u, double cosine, double sine) {
        Path.Point end =
                alone(Segment.spiralIn(u, 1 / (Math.PI * u), Turn.LEFT)).position(u);
        assertEquals(cosine, end.x(), 5e-8);
        assertEquals(sine, end.y(), 5e-8);
    }

    /** Largest value of ∫cos t² dt, at t = √(π/2): 0.977451424, by its power series. */
    @Test
    void largestFresnelCosine() {
        double t = Math.sqrt(Math.PI / 2);
        assertEquals(
                0.977451424,
                alone(Segment.spiralIn(t, 1 / (2 * t), Turn.LEFT)).position(t).x(),
                5e-10);
    }

    /**
     * Power series of the Fresnel integrals (Press et al., Numerical Recipes in C, 6.9): x = s·Σ(−1)ⁿθ²ⁿ/((2n)!(4n+1)),
     * y = s·Σ(−1)ⁿθ²ⁿ⁺¹/((2n+1)!(4n+3)), with θ = s/(2R). Up to two whole turns; a nanometre is asked for.
     */
    @Property
    void clothoidAgreesWithItsPowerSeries(
            @ForAll @DoubleRange(min = 1, max = 400) double length,
            @ForAll @DoubleRange(min = 0.01, max = 12) double turn) {
        SegmentPath path = alone(Segment.spiralIn(length, length / (2 * turn), Turn.LEFT));
        double x = 0;
        double y = 0;
        double term = length;
        for (int n = 0; n < 90; n++) {
            double value = term / (2 * n + 1);
            switch (n % 4) {
                case 0 -> x += value;
                case 1 -> y += value;
                case 2 -> x -= value;
                default -> y -= value;
            }
            term *= turn / (n + 1);
        }
        Path.Point end = path.position(length);
        double nanometre = 1e-9;
        assertEquals(x, end.x(), nanometre);
        assertEquals(y, end.y(), nanometre);
    }

    @Property
    void everyLineKeepsTheLawsOfAPath(@ForAll("paths") SegmentPath path) {
        PathLaws.check(path);
    }

    /** Driven backwards, a line turns the other way and leads home: the origin as seen from the end, looking back. */
    @Property
    void backwardsTheLineLeadsHome(@ForAll("segmentLists") List<Segment> segments) {
        SegmentPath there = SegmentPath.of(10, segments, 20, 5);
        List<Segment> reversed = new ArrayList<>();
        segments.forEach(segment -> reversed.add(0, backwards(segment)));
        SegmentPath back = SegmentPath.of(20, reversed, 10, 5);
        Path.Point out = there.position(there.end());
        Path.Point home = back.position(back.end());
        double heading = there.heading(there.end());
        double nanometre = 1e-9;
        assertEquals(-heading, back.heading(back.end()), nanometre);
        assertEquals(out.x() * Math.cos(heading) + out.y() * Math.sin(heading), home.x(), nanometre);
        assertEquals(out.y() * Math.cos(heading) - out.x() * Math.sin(heading), home.y(), nanometre);
    }

    private static Segment backwards(Segment segment) {
        if (segment instanceof Segment.Spiral spiral) {
            return new Segment.Spiral(
                    spiral.length(),
                    spiral.endRadius(),
                    spiral.startRadius(),
                    spiral.turn().opposite());
        }
        return segment instanceof Segment.Arc arc
                ? new Segment.Arc(arc.length(), arc.radius(), arc.turn().opposite())
                : segment;
    }

    @Provide
    Arbitrary<List<Segment>> segmentLists() {
        Arbitrary<Double> length = Arbitraries.doubles().between(0.5, 150);
        Arbitrary<Double> radius = Arbitraries.doubles().between(8, 300);
        Arbitrary<Turn> turn = Arbitraries.of(Turn.class);
        Arbitrary<Segment> segment = Arbitraries.oneOf(
                length.map(Segment::straight),
                Combinators.combine(length, radius, turn).as(Segment::arc),
                Combinators.combine(length, radius, turn).as(Segment::spiralIn),
                Combinators.combine(length, radius, turn).as(Segment::spiralOut),
                Combinators.combine(length, radius, radius, turn).as(Segment::spiralBetween));
        return segment.list().ofMaxSize(6);
    }

    @Provide
    Arbitrary<SegmentPath> paths() {
        Arbitrary<Double> straight = Arbitraries.doubles().between(1, 300);
        Arbitrary<Double> angle = Arbitraries.doubles().between(-0.3, 0.3);
        return Combinators.combine(straight, segmentLists(), straight, angle, angle)
                .as((approach, segments, exit, grade, banking) -> SegmentPath.of(approach, segments, exit, 5)
                        .withGrade(grade)
                        .withBanking(banking));
    }

    @Test
    void theExitStraightBeginsWhereTheLineLastTurns() {
        assertEquals(140, BEND.exitStraight());
        assertEquals(140, BEND.mirrored().exitStraight());
        assertEquals(140, new TiltedPath(BEND, 0.1, 0.1).exitStraight());
        SegmentPath twice = SegmentPath.of(10, List.of(Segment.arc(30, 60, Turn.LEFT), new Segment.Straight(20)), 5, 4);
        assertEquals(30, twice.exitStraight());
        SegmentPath none = alone(Segment.arc(70, 60, Turn.LEFT));
        assertEquals(none.end(), none.exitStraight());
        SegmentPath only = SegmentPath.of(100, List.of(), 50, 4);
        assertEquals(only.start(), only.exitStraight());
    }

    @Test
    void widthGradeAndBankingAreTheSameEverywhere() {
        SegmentPath path = BEND.withGrade(0.05).withBanking(-0.1);
        for (double s : new double[] {-200, 0, 77, 290}) {
            assertEquals(5, path.widthLeft(s));
            assertEquals(5, path.widthRight(s));
            assertEquals(0.05, path.grade(s));
            assertEquals(-0.1, path.banking(s));
            assertEquals(0, BEND.grade(s));
            assertEquals(0, BEND.banking(s));
        }
    }

    @Test
    void impossibleNumbersAreRefused() {
        refused("length_m", () -> Segment.straight(NAN));
        refused("length_m", () -> Segment.arc(0, 50, Turn.LEFT));
        refused("radius_m", () -> Segment.arc(10, -50, Turn.LEFT));
        refused("radius_m", () -> Segment.arc(10, INFINITE, Turn.LEFT));
        refused("angle", () -> Segment.arcThroughAngle(NAN, 50, Turn.LEFT));
        refused("radius_m", () -> Segment.arcThroughAngle(1, -50, Turn.LEFT));
        refused("radius_m", () -> Segment.arc(Turn.LEFT).radiusM(-50).angleDeg(90));
        refused(
                "start_radius_m",
                () -> Segment.spiral(Turn.LEFT).fromRadiusM(-50).toStraight().angleDeg(90));
        refused(
                "end_radius_m",
                () -> Segment.spiral(Turn.LEFT).fromStraight().toStraight().angleDeg(90));
        refused("start_radius_m", () -> Segment.spiralOut(10, NAN, Turn.LEFT));
        refused("end_radius_m", () -> Segment.spiralIn(10, 0, Turn.LEFT));
        refused("end_radius_m", () -> Segment.spiralBetween(10, INFINITE, INFINITE, Turn.LEFT));
        refused("approach_length_m", () -> SegmentPath.of(NAN, List.of(), 10, 5));
        refused("exit_length_m", () -> SegmentPath.of(10, List.of(), -1, 5));
        refused("half_width_m", () -> SegmentPath.of(10, List.of(), 10, NAN));
        refused("segments", () -> SegmentPath.of(0, List.of(), 0, 5));
        refused("grade", () -> BEND.withGrade(NAN));
        refused("banking", () -> BEND.withBanking(1.6));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -3, Double.NaN})
    void cornersNeedASpeed(double speed) {
        refused("approach_speed_mps", () -> new Corner("bend", speed, BEND));
    }

    /**
     * Stations of hundreds of metres cannot tell the ends of such a piece apart: it is left out, and nothing is NaN.
     */
    @ParameterizedTest
    @ValueSource(doubles = {1e-15, 1e-12, 1e-300, 4.9e-324})
    void aPieceOfNoLengthIsLeftOut(double length) {
        Segment bend = Segment.arc(60, 50, Turn.LEFT);
        List<Segment> pieces =
                List.of(Segment.spiralIn(length, 50, Turn.LEFT), bend, Segment.spiralOut(length, 50, Turn.LEFT));
        SegmentPath with = SegmentPath.of(200, pieces, length, 5);
        SegmentPath without = SegmentPath.of(200, List.of(bend), 0, 5);
        assertEquals(without.end(), with.end());
        assertEquals(without.position(60), with.position(60));
        assertEquals(without.curvatureGradient(60), with.curvatureGradient(60));
        refused("segments", () -> SegmentPath.of(length, pieces.subList(0, 1), length, 5));
    }

    private static void refused(String field, Runnable making) {
        assertEquals(
                field, assertThrows(InvalidValueException.class, making::run).field());
    }

    /** The contract of {@link Object#equals}: what is drawn alike is equal, and what differs in one number is not. */
    @Test
    void linesDrawnAlikeAreEqual() {
        List<Segment> bend = List.of(Segment.arc(25, 30, Turn.LEFT));
        SegmentPath path = SegmentPath.of(50, bend, 40, 5);
        SegmentPath same = SegmentPath.of(50, List.of(Segment.arc(25, 30, Turn.LEFT)), 40, 5);
        assertEquals(path, same);
        assertEquals(path.hashCode(), same.hashCode());
        assertEquals(path.toString(), same.toString());
        assertEquals(new Corner("x", 30, path), new Corner("x", 30, same));
        for (SegmentPath other : List.of(
                SegmentPath.of(51, bend, 40, 5),
                SegmentPath.of(50, List.of(Segment.arc(25, 30, Turn.RIGHT)), 40, 5),
                SegmentPath.of(50, bend, 41, 5),
                SegmentPath.of(50, bend, 40, 6),
                path.withGrade(0.01),
                path.withBanking(0.01))) {
            assertNotEquals(path, other);
            assertNotEquals(path.toString(), other.toString());
        }
    }
}
