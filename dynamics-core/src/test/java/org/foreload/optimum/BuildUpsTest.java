package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Rounds;
import org.foreload.study.StopAfter;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Where a slower foot is worth a try, and that it then is. */
class BuildUpsTest {

    /** A bend taken at about a g, out of which the car must brake for a tight corner. */
    private static CornerStudy bending() {
        Corner corner = new Corner(
                "a bend before a corner",
                40,
                SegmentPath.of(
                        60,
                        List.of(
                                Segment.spiralIn(40, 160, Turn.RIGHT),
                                Segment.spiralOut(80, 160, Turn.RIGHT),
                                Segment.straight(40),
                                Segment.spiralIn(25, 40, Turn.LEFT),
                                Segment.arc(45, 40, Turn.LEFT),
                                Segment.spiralOut(25, 40, Turn.LEFT)),
                        60,
                        5));
        return SampleStudies.coarse(SampleCars.ROAD_CAR, corner);
    }

    @Test
    void onAStraightAQuickFootIsBest() {
        assertEquals(List.of(), BuildUps.slower(SampleStudies.roadCar(), 0.25));
    }

    @Test
    void noneIsQuickerThanTheOneAskedFor() {
        assertEquals(List.of(0.7, 0.95, 1.3), BuildUps.slower(bending(), 0.6));
    }

    @Test
    void inABendEverySlowerFootIsTried() {
        assertEquals(List.of(0.5, 0.7, 0.95, 1.3), BuildUps.slower(bending(), 0.25));
        assertEquals(List.of(0.7, 0.95, 1.3), BuildUps.slower(bending(), 0.5), "not itself");
    }

    private static CornerStudy study(double approachSpeed, double straight, Segment... segments) {
        return SampleStudies.coarse(
                SampleCars.ROAD_CAR,
                new Corner("made up", approachSpeed, SegmentPath.of(straight, List.of(segments), 30, 5)));
    }

    /** Who brakes just before turn-in has the corner itself within half a second; that is no bend before it. */
    @Test
    void theCornerItselfIsNoBend() {
        CornerStudy slow = study(
                17,
                12,
                Segment.spiralIn(15, 20, Turn.RIGHT),
                Segment.arc(20, 20, Turn.RIGHT),
                Segment.spiralOut(15, 20, Turn.RIGHT));
        double point = slow.bound().brakePoint().orElseThrow();
        double speed = slow.bound().topSpeed();
        assertTrue(point < 0 && point + 0.6 * speed > 5, "from " + point + " at " + speed);
        assertTrue(slow.simulator().corner().path().curvature(5) * speed * speed < -1.5);
        assertEquals(List.of(), BuildUps.slower(slow, 0.25));
    }

    /** Half a g of what a line bends by is much, a twentieth is nothing: at 30 m/s radii of 180 and of 1800 m. */
    @Test
    void aLineThatHardlyBendsIsStraight() {
        for (double radius : new double[] {180, 1800}) {
            CornerStudy study = study(
                    30,
                    30,
                    Segment.arc(120, radius, Turn.RIGHT),
                    Segment.spiralIn(20, 35, Turn.RIGHT),
                    Segment.arc(40, 35, Turn.RIGHT),
                    Segment.spiralOut(20, 35, Turn.RIGHT));
            assertEquals(radius < 1000, !BuildUps.slower(study, 0.25).isEmpty(), "radius " + radius);
        }
    }

    @Test
    void whoNeedNotBrakeNeedsNoSlowerFoot() {
        CornerStudy easy = study(
                25,
                60,
                Segment.spiralIn(30, 400, Turn.LEFT),
                Segment.arc(30, 400, Turn.LEFT),
                Segment.spiralOut(30, 400, Turn.LEFT));
        assertTrue(easy.bound().brakePoint().isEmpty());
        assertEquals(List.of(), BuildUps.slower(easy, 0.25));
    }

    /** Each slower foot tries the releases of the one before, with their own peaks and with those of the sweep. */
    @Test
    void aSlowerFootTriesEveryPeak() {
        CornerStudy study = bending();
        EntryResult entry = study.simulator()
                .probe(Braking.of(5, 0.25, new Release(ReleaseShapes.LINEAR, -10, 12))
                        .from(-60));
        List<Braking> tried = BestRelease.withAnyPeak(study, List.of(entry), 0.7);
        double limit = study.lockLimit();
        assertEquals(
                List.of(5.0, 0.5 * limit, 0.75 * limit, 0.87 * limit),
                tried.stream().map(Braking::peakDeceleration).toList());
        for (Braking one : tried) {
            assertEquals(0.7, one.buildUpTime());
            assertEquals(entry.plan().release(), one.release());
        }
    }

    /**
     * The sweep, once more for the second bend that the car slows for, and eleven descents, up to 160 entries each,
     * twice; and between them, for each slower foot, four peaks of the six best, and as many descents again.
     */
    @Test
    void theCountIsThatOfAllBuildUps() {
        BestRelease search = new BestRelease(7, 0, 20, 0.5);
        StopAfter stop = new StopAfter(1);
        search.find(bending(), 1, stop);
        assertEquals(2 * (search.total() + 5 * 27) + 3 * (6 * 4 + 11 * 160), stop.total());
    }

    /** Who brakes out of a bend and takes half a second to reach the peak is quicker with a slower foot still. */
    @Tag("long")
    @Test
    void inABendTheQuickestFootOfAllIsTaken() {
        CornerStudy study = bending();
        BestRelease search = new BestRelease(7, 0, 20, 0.5);
        EntryResult chosen =
                search.find(study, 2, Sweep.Progress.SILENT).entry().orElseThrow();
        Optimum ofOne = search.find(study, new Rounds(2, Sweep.Progress.SILENT, search.total()));
        EntryResult asked = ofOne.entry().orElseThrow();
        assertEquals(5, ofOne.families().size());
        assertEquals(0.5, asked.plan().buildUpTime());
        assertTrue(
                chosen.plan().buildUpTime() > 0.5, "a foot of " + chosen.plan().buildUpTime() + " s");
        assertTrue(chosen.time() < asked.time() - 0.01, chosen.time() + " and " + asked.time());
    }
}
