package org.foreload.strategy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.EntryResult;
import org.foreload.load.SampleCars;
import org.foreload.optimum.SampleStudies;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Test;

/** Two bends, the second a little tighter: the brake is for the first. */
class SeveralBendsTest {

    private static final CornerStudy STUDY = CornerStudy.of(
            SampleCars.ROAD_CAR,
            SampleStudies.twoBends(),
            DriverSettings.practised(),
            ShortStudies.COARSE,
            Allowance.STANDARD);

    private static final double FIRST_APEX = 33;
    private static final double SECOND_APEX = 115;

    /**
     * Common practice, no source: the brake is trailed towards the apex of the bend that is braked for. The share of
     * the way at which the brake comes off, 0.7, is at 80 m of the way to the second apex: held on until there, through
     * the whole first bend, it leaves no brake point that keeps the margin.
     */
    @Test
    void trailingTheBrakeIntoTheFirstOfTwoBendsGains() {
        SweepPlan plan = new SweepPlan(List.of(ReleaseShapes.LINEAR), List.of(0.87), List.of(-0.1), List.of(0.7), 0.25);
        Exploration found = new ReleaseSweep(STUDY, plan).run(Sweep.quiet());
        assertEquals(3, found.candidates().size());
        Release best = found.best().orElseThrow().entry().plan().release();
        assertEquals(0.7 * FIRST_APEX, best.end(), 0.5);
        assertTrue(found.gain() > 0.1, "gain " + found.gain());
    }

    /** Nearest to 20 m and to 74 m is the first, to 75 m the second: the middle is 74 m. */
    @Test
    void aReleaseBelongsToTheBendWhoseApexItEndsNearest() {
        assertEquals(FIRST_APEX, STUDY.apex(release(20)), 0.5);
        assertEquals(FIRST_APEX, STUDY.apex(release(73)), 0.5);
        assertEquals(SECOND_APEX, STUDY.apex(release(75)), 0.5);
    }

    /**
     * A hairpin behind a wide bend, and a straight between them: who is over with braking before the wide bend crawls
     * through it. An S of two bends alike asks for no less at the first, and one bend has none behind it. Geometry.
     */
    @Test
    void straightLineBrakingMaySlowForALaterBend() {
        CornerStudy wide = CornerStudy.of(
                SampleCars.ROAD_CAR,
                new Corner(
                        "a hairpin behind a wide bend",
                        50,
                        SegmentPath.of(
                                300,
                                List.of(
                                        Segment.spiralIn(30, 120, Turn.LEFT),
                                        Segment.arc(60, 120, Turn.LEFT),
                                        Segment.spiralOut(30, 120, Turn.LEFT),
                                        Segment.straight(60),
                                        Segment.spiralIn(12, 12, Turn.RIGHT),
                                        Segment.arc(25, 12, Turn.RIGHT),
                                        Segment.spiralOut(12, 12, Turn.RIGHT)),
                                100,
                                5)),
                DriverSettings.practised(),
                ShortStudies.COARSE,
                Allowance.STANDARD);
        assertTrue(StraightLine.slowsForALaterBend(wide, straight(wide)));
        assertFalse(StraightLine.slowsForALaterBend(STUDY, straight(STUDY)));
        assertFalse(StraightLine.slowsForALaterBend(ShortStudies.BARE, straight(ShortStudies.BARE)));
    }

    /** With one bend there is no later one, and be the car slower at turn-in than the fastest entry ever is. */
    @Test
    void whoCrawlsRoundTheOnlyBendSlowsForIt() {
        CornerStudy one = ShortStudies.BARE;
        EntryResult straight = straight(one);
        BrakePlan plan = straight.plan();
        EntryResult slowest = straight;
        for (double earlier = 0; slowest.turnInSpeed() >= one.bound().minimumSpeed(); earlier += 0.5) {
            slowest = one.simulator().probe(plan.withBrakePoint(plan.brakePoint() - earlier));
            assertFalse(StraightLine.slowsForALaterBend(one, slowest), earlier + " m earlier");
        }
        assertTrue(slowest.turnInSpeed() < one.bound().minimumSpeed());
    }

    private static EntryResult straight(CornerStudy study) {
        return StraightLine.best(study, 0.25, Sweep.quiet()).orElseThrow().entry();
    }

    /** The brake that is off at 0.7 of the way belongs to the first bend: see above. One bend is what there is. */
    @Test
    void theApexOfAReleaseIsThatForWhichItIsQuickest() {
        double peak = 0.75 * STUDY.lockLimit();
        assertEquals(FIRST_APEX, STUDY.apex(apex -> Braking.of(peak, 0.25, release(0.7 * apex))), 0.5);
        CornerStudy one = ShortStudies.BARE;
        assertEquals(one.simulator().apex(), one.apex(apex -> Braking.of(peak, 0.25, release(0.7 * apex))), 0.5);
    }

    private static Release release(double end) {
        return new Release(ReleaseShapes.LINEAR, 0, end);
    }
}
