package org.foreload.line;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.ideal.IdealEntry;
import org.foreload.limit.Hands;
import org.foreload.limit.LimitOptions;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The same corner on several lines. */
class LineStudyTest {

    private static final Car CAR = SampleCars.ROAD_CAR;

    private static final Corner CORNER = new Corner(
            "bend",
            28,
            SegmentPath.of(
                    110,
                    List.of(
                            Segment.spiralIn(20, 30, Turn.RIGHT),
                            Segment.arc(30, 30, Turn.RIGHT),
                            Segment.spiralOut(20, 30, Turn.RIGHT)),
                    60,
                    4));

    private static LineStudy study(double brakeUntil) {
        Hands hands = Hands.practised(7).withBrakeUntil(brakeUntil);
        return new LineStudy(CAR, CORNER, hands, new LimitOptions(40, 1e-5, 300), (step, residual) -> {});
    }

    /**
     * Distance, m, over which a brake that must be off at turn-in may still fall while the line begins to bend: a
     * quarter of a second at the speed of the corner.
     */
    private static final double OVERLAP = 8;

    private static final LineRun CONSTANT = study(Double.POSITIVE_INFINITY).constantRadius();

    /** Braking before turn-in only is never quicker on the same line, and no line beats its quasi-steady bound. */
    @Test
    void trailBrakingIsQuickerOnTheSameLine() {
        compare(CONSTANT, study(0).constantRadius());
    }

    private static void compare(LineRun trailed, LineRun straight) {
        assertTrue(trailed.converged(), trailed.name());
        assertTrue(straight.converged(), straight.name());
        assertTrue(straight.time() > trailed.time(), trailed.name());
        assertTrue(trailed.trailShare() > straight.trailShare(), trailed.name());
        double bound = IdealEntry.solve(CAR, trailed.corner()).time();
        // Perfect hands may leave the line by 0.15 m: worth some hundredths of a second.
        assertTrue(trailed.time() > bound - 0.1, trailed.name() + " " + trailed.time() + " against " + bound);
    }

    /** Of the lines that are quick to solve, the quickest is the one that uses the road. */
    @Test
    void theGivenLineIsTheSlowest() {
        LineRun given = study(Double.POSITIVE_INFINITY).given();
        assertTrue(given.converged());
        assertTrue(CONSTANT.time() < given.time());
    }

    /** No line is quicker than the quickest, with trail braking and without. */
    @Tag("long")
    @Test
    void theOptimalLineIsTheQuickest() {
        LineStudy free = study(Double.POSITIVE_INFINITY);
        LineStudy held = study(0);
        LineRun optimal = free.quickest();
        assertTrue(optimal.converged());
        List<LineRun> trailed = List.of(free.given(), CONSTANT, free.lateApex());
        List<LineRun> straight = List.of(held.given(), held.constantRadius(), held.lateApex());
        for (int i = 0; i < trailed.size(); i++) {
            LineRun run = trailed.get(i);
            compare(run, straight.get(i));
            // A line may be left by 0.15 m, which at the edge of the road is more than the free road allows.
            assertTrue(optimal.time() < run.time() + 0.02, run.name() + " " + run.time());
        }
        LineRun before = held.quickest();
        assertTrue(before.converged());
        assertTrue(before.time() > optimal.time());
        assertTrue(
                before.brakeOff().orElseThrow() < before.turnIn() + OVERLAP, before.brakeOff() + " " + before.turnIn());
    }

    /** Stations of a run are those of the road: the car sets out at its start and passes each place once. */
    @Test
    void stationsAreThoseOfTheRoad() {
        LineRun run = CONSTANT;
        List<Double> stations = run.roadStations();
        assertEquals(CORNER.path().start(), stations.get(0), 1e-6);
        assertEquals(CORNER.path().end(), stations.get(stations.size() - 1), 1e-6);
        for (int i = 1; i < stations.size(); i++) {
            assertTrue(stations.get(i) >= stations.get(i - 1));
        }
        assertTrue(run.pickUp().orElseThrow() > run.brakeOff().orElseThrow() - 1e-9);
        assertTrue(run.slowestAt() > run.brakePoint().orElseThrow());
    }
}
