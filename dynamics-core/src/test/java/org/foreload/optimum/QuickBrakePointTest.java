package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.SampleEntries;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.TiltedPath;
import org.foreload.path.Turn;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.LatestBrakePoint.Finding;
import org.junit.jupiter.api.Test;

/** Where the two searches of the latest brake point must agree, and what both must keep. */
class QuickBrakePointTest {

    /** A hairpin at the end of a straight on which the car gains half as much speed again before it brakes. */
    private static final Corner AFTER_A_LONG_STRAIGHT = new Corner(
            "hairpin after a long straight",
            30,
            SegmentPath.of(
                    350,
                    List.of(
                            Segment.spiralIn(15, 22, Turn.RIGHT),
                            Segment.arc(45, 22, Turn.RIGHT),
                            Segment.spiralOut(15, 22, Turn.RIGHT)),
                    60,
                    5));

    private static final CornerStudy STUDY = CornerStudy.of(SampleEntries.LIGHT, AFTER_A_LONG_STRAIGHT);

    private static BrakePlan plan(ReleaseShape shape, double start, double end) {
        return new BrakePlan(0, 0.7 * STUDY.lockLimit(), 0.25, new Release(shape, start, end));
    }

    /** Both look for one change, one by a scan and one from a guess that must meet the speed gained on the straight. */
    @Test
    void agreesWithTheScanAfterALongStraight() {
        for (BrakePlan plan : List.of(
                plan(ReleaseShapes.ABRUPT, 0, 0),
                plan(ReleaseShapes.LINEAR, -7, 20),
                plan(ReleaseShapes.PROGRESSIVE, 0, 25))) {
            Finding scanned = STUDY.latest(plan);
            QuickBrakePoint.Answer quick = new QuickBrakePoint(STUDY).find(plan);
            assertTrue(scanned.found());
            assertEquals(scanned.entry().plan().brakePoint(), quick.brakePoint(), BOTH_SEARCHES, plan.toString());
            assertEquals(scanned.entry().time(), quick.time(), 0.008);
        }
    }

    /**
     * Each search narrows to 0.02 m; the quick one reads between trials a decimetre apart, the other answers in whole
     * decimetres.
     */
    private static final double BOTH_SEARCHES = 0.16;

    /**
     * On a banked road the wheels of one side carry less, by more than two hundredths at two degrees (m·g·sin φ·h/t of
     * half the weight, for a CG a third of a track high), and the first of them to stop bounds the braking.
     */
    @Test
    void theHardestBrakingIsLessWhereTheRoadIsBanked() {
        CornerStudy level = SampleStudies.roadCar();
        Corner corner = level.simulator().corner();
        Corner banked = new Corner("banked", corner.approachSpeed(), new TiltedPath(corner.path(), 0, -BANKING));
        CornerStudy tilted = CornerStudy.of(level.simulator().car(), banked);
        double most = new QuickBrakePoint(level).hardest(0.25);
        double less = new QuickBrakePoint(tilted).hardest(0.25);
        assertTrue(less < 0.98 * most, less + " against " + most);
    }

    private static final double BANKING = Math.toRadians(2);

    /** A driver who is a metre early makes the corner too, or the brake point was luck. */
    @Test
    void aMetreEarlierMakesTheCornerToo() {
        int found = 0;
        for (ReleaseShape shape : List.of(ReleaseShapes.LINEAR, ReleaseShapes.LATE, ReleaseShapes.TWO_STAGE)) {
            for (double end : new double[] {10, 22, 34, 46}) {
                Finding finding = STUDY.latest(plan(shape, 0, end));
                if (finding.found()) {
                    found++;
                    BrakePlan latest = finding.entry().plan();
                    BrakePlan earlier = latest.withBrakePoint(latest.brakePoint() - 1);
                    assertTrue(STUDY.allowance().met(STUDY.simulator().run(earlier)), shape + " to " + end);
                }
            }
        }
        assertTrue(found >= 4, "only " + found + " releases make the corner");
    }
}
