package org.foreload.ideal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.junit.jupiter.api.Test;

/** Where the bends are tightest that a car slows for; stations of spirals and arcs added up by hand. */
class ApexesTest {

    /** Two thousand looks at a line of up to 700 m. */
    private static final double LOOK = 0.35;

    private static List<Double> apexes(Segment... segments) {
        Corner corner = new Corner("bends", 50, SegmentPath.of(300, List.of(segments), 200, 5));
        return Apexes.of(IdealEntry.solve(SampleCars.ROAD_CAR, corner), corner);
    }

    private static Segment in(double length, double radius, Turn turn) {
        return Segment.spiralIn(length, radius, turn);
    }

    private static Segment arc(double length, double radius, Turn turn) {
        return Segment.arc(length, radius, turn);
    }

    private static Segment out(double length, double radius, Turn turn) {
        return Segment.spiralOut(length, radius, turn);
    }

    private static void assertStations(List<Double> actual, double... expected) {
        assertEquals(expected.length, actual.size(), actual::toString);
        for (int i = 0; i < expected.length; i++) {
            assertEquals(expected[i], actual.get(i), LOOK);
        }
    }

    /** 20 + 26/2 m, and 20 + 26 + 20 + 15 + 20 + 28/2 m. */
    @Test
    void eachOfTwoBendsHasItsOwn() {
        assertStations(
                apexes(
                        in(20, 50, Turn.LEFT),
                        arc(26, 50, Turn.LEFT),
                        out(20, 50, Turn.LEFT),
                        Segment.straight(15),
                        in(20, 45, Turn.RIGHT),
                        arc(28, 45, Turn.RIGHT),
                        out(20, 45, Turn.RIGHT)),
                33,
                115);
    }

    /** 20 + 30/2 m; nobody brakes any more for the wider bend behind it. */
    @Test
    void theSlowestBendIsTheLast() {
        assertStations(
                apexes(
                        in(20, 35, Turn.LEFT),
                        arc(30, 35, Turn.LEFT),
                        out(20, 35, Turn.LEFT),
                        Segment.straight(20),
                        in(25, 60, Turn.RIGHT),
                        arc(42, 60, Turn.RIGHT),
                        out(25, 60, Turn.RIGHT)),
                35);
    }

    /** 30 + 65 + 30 + 28/2 m: through the wide bend the car slows all the way to the tight one. */
    @Test
    void aBendThatOnlyTightensHasOne() {
        assertStations(
                apexes(
                        in(30, 150, Turn.LEFT),
                        arc(65, 150, Turn.LEFT),
                        Segment.spiralBetween(30, 150, 20, Turn.LEFT),
                        arc(28, 20, Turn.LEFT),
                        out(20, 20, Turn.LEFT)),
                139);
    }

    /** 40 + 40/2 m of a bend that can be driven at any speed the car has. */
    @Test
    void aBendThatNeedsNoBrakeHasOneToo() {
        assertStations(apexes(in(40, 600, Turn.LEFT), arc(40, 600, Turn.LEFT), out(40, 600, Turn.LEFT)), 60);
    }
}
