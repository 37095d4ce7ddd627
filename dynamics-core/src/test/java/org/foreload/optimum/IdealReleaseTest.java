package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.SimulationSettings;
import org.foreload.ideal.IdealProfile;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.junit.jupiter.api.Test;

/** Releases read off ideal entries, held against the brake force of the ideal entry itself. */
class IdealReleaseTest {

    private static final CornerStudy STUDY = SampleStudies.roadCar();
    private static final IdealProfile IDEAL = STUDY.bound();
    private static final double MASS = STUDY.simulator().car().chassis().mass();

    /** More than the ideal entry ever brakes by, m/s². */
    private static final double HARD = 30;

    private static double deceleration(int i) {
        return IDEAL.brakeForce(i) / MASS;
    }

    private static double highest() {
        double highest = 0;
        for (int i = 0; i < IDEAL.size(); i++) {
            highest = Math.max(highest, deceleration(i));
        }
        return highest;
    }

    /** The first is that of the whole friction: it brakes by as much as the ideal entry does, place by place. */
    @Test
    void theFirstBrakesAsTheIdealEntryDoes() {
        Braking first = IdealRelease.all(STUDY, 0.25, HARD).get(0);
        Release release = first.release();
        assertEquals(highest(), first.peakDeceleration(), 0.002 * highest());
        assertEquals(0.25, first.buildUpTime());
        assertEquals(IdealRelease.NAME, release.shape().name());
        assertEquals(IDEAL.releaseEnd().orElseThrow(), release.end());
        assertTrue(release.start() >= IDEAL.brakePoint().orElseThrow());
        int compared = 0;
        for (int i = 0; i < IDEAL.size(); i++) {
            double station = IDEAL.station(i);
            if (station >= release.start() && station < release.end()) {
                double asked = first.peakDeceleration() * release.remaining(station);
                assertEquals(deceleration(i), asked, 0.06 * highest(), "at " + station);
                compared++;
            }
        }
        assertTrue(compared > 10, compared + " places");
    }

    /** A foot that may not brake as hard holds what it may until the ideal entry brakes by less. */
    @Test
    void aPeakThatIsHeldDownEndsWhereTheIdealEntryBrakesByLess() {
        double most = 0.6 * highest();
        Braking first = IdealRelease.all(STUDY, 0.25, most).get(0);
        assertEquals(most, first.peakDeceleration());
        for (int i = 0; i < IDEAL.size(); i++) {
            if (IDEAL.station(i) > first.release().start()
                    && IDEAL.station(i) <= first.release().end()) {
                assertTrue(deceleration(i) < most, "at " + IDEAL.station(i));
            }
            if (IDEAL.station(i) == first.release().start()) {
                assertTrue(deceleration(i) >= most);
            }
        }
    }

    /** With 1.5 % less friction each, no peak falls by more than about that: three releases, each a little softer. */
    @Test
    void withLessFrictionThePeakIsLower() {
        List<Braking> all = IdealRelease.all(STUDY, 0.25, HARD);
        assertEquals(IdealRelease.MOST, all.size());
        for (int i = 1; i < all.size(); i++) {
            double share = all.get(i).peakDeceleration() / all.get(i - 1).peakDeceleration();
            assertTrue(share > 0.98 && share < 0.998, "softer by " + share);
        }
    }

    @Test
    void aShapeNeverRisesAndEndsWithTheBrakeOff() {
        for (Braking braking : IdealRelease.all(STUDY, 0.25, HARD)) {
            double last = 1;
            for (double u = 0; u <= 1; u += 1.0 / 64) {
                double left = braking.release().shape().remaining(u);
                assertTrue(left <= last && left >= 0, left + " after " + last);
                last = left;
            }
            assertEquals(0, last);
            assertEquals(1, braking.release().shape().remaining(0));
        }
    }

    /** Round a bend of 400 m, √(0.9 g·400 m) is near 60 m/s: more than the car comes to. */
    @Test
    void whoNeedNotBrakeHasNoRelease() {
        Corner wide = new Corner(
                "wide",
                25,
                SegmentPath.of(
                        60,
                        List.of(
                                Segment.spiralIn(30, 400, Turn.LEFT),
                                Segment.arc(30, 400, Turn.LEFT),
                                Segment.spiralOut(30, 400, Turn.LEFT)),
                        30,
                        5));
        CornerStudy easy = CornerStudy.of(
                SampleCars.ROAD_CAR,
                wide,
                DriverSettings.practised(),
                new SimulationSettings(1e-4, 1),
                Allowance.NO_MARGIN);
        assertTrue(IdealRelease.all(easy, 0.25, HARD).isEmpty());
    }
}
