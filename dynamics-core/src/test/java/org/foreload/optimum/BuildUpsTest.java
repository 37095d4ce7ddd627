package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.EntryResult;
import org.foreload.entry.SimulationSettings;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Rounds;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Test;

/** Where a slower foot is worth a try, and that it then is. */
class BuildUpsTest {

    /** What is compared here differs by hundredths of a second. */
    private static final double COARSE = 1e-4;

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
        return CornerStudy.of(
                SampleCars.ROAD_CAR,
                corner,
                DriverSettings.practised(),
                new SimulationSettings(COARSE, 1),
                Allowance.NO_MARGIN);
    }

    @Test
    void onAStraightAQuickFootIsBest() {
        assertEquals(List.of(0.25), BuildUps.worthTrying(SampleStudies.roadCar(), 0.25));
    }

    @Test
    void noneIsQuickerThanTheOneAskedFor() {
        List<Double> tried = BuildUps.worthTrying(bending(), 0.6);
        assertEquals(0.6, tried.get(0));
        assertTrue(tried.size() > 1 && tried.stream().allMatch(time -> time >= 0.6), "tried " + tried);
    }

    /** Who brakes out of a bend and takes half a second to reach the peak is quicker with a slower foot still. */
    @Test
    void inABendTheQuickestFootOfAllIsTaken() {
        CornerStudy study = bending();
        BestRelease search = new BestRelease(7, 0, 20, 0.5);
        EntryResult chosen =
                search.find(study, 2, Sweep.Progress.SILENT).entry().orElseThrow();
        EntryResult asked = search.find(study, new Rounds(2, Sweep.Progress.SILENT, search.total()))
                .entry()
                .orElseThrow();
        assertEquals(0.5, asked.plan().buildUpTime());
        assertTrue(
                chosen.plan().buildUpTime() > 0.5, "a foot of " + chosen.plan().buildUpTime() + " s");
        assertTrue(chosen.time() < asked.time() - 0.01, chosen.time() + " and " + asked.time());
    }
}
