package org.foreload.strategy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.conventions.Gravity;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.EntryResult;
import org.foreload.ideal.IdealProfile;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.study.Sweep;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Roads that slope, and cars whose axles have the same grip: any car can brake in a straight line there, too. */
class HillsAndNeutralCarsTest {

    private static final SegmentPath BEND = (SegmentPath) ShortStudies.CORNER.path();

    private static CornerStudy study(Car car, Path path) {
        Corner corner = new Corner("slope", ShortStudies.CORNER.approachSpeed(), path);
        return CornerStudy.of(car, corner, DriverSettings.practised(), ShortStudies.COARSE, Allowance.STANDARD);
    }

    /**
     * The friction circle on a slope: of μ times the load g·cos γ·cos φ, g·sin φ·cos γ holds the car across, and what
     * is left brakes it; the grade does not help the brakes themselves.
     */
    @ParameterizedTest
    @CsvSource({"0, 0", "0.1, 0", "-0.1, 0", "0, 0.2", "0, -0.2", "-0.05, 0.3"})
    void theBrakesOfAPointMassLockEarlierOnASlope(double grade, double banking) {
        CornerStudy study =
                study(SampleCars.pointMass(1.1), BEND.withGrade(grade).withBanking(banking));
        double friction = 1.1 * Gravity.G * Math.cos(grade) * Math.cos(banking);
        double across = Gravity.G * Math.cos(grade) * Math.sin(banking);
        assertEquals(Math.sqrt(friction * friction - across * across), study.lockLimit(), 1e-6);
    }

    /**
     * Straight-line braking keeps the margin from a brake point that turns in about as fast as the bound is at its
     * slowest, and not only by crawling: downhill, uphill, and where both axles have the same friction, so that the
     * rear has less than the margin left wherever the car corners as it can.
     */
    @ParameterizedTest
    @CsvSource({"-0.08, 1.12", "0.06, 1.12", "0, 1.08", "-0.05, 1.08"})
    void straightLineBrakingNeedNotCrawl(double grade, double rearFriction) {
        Tyre rear = SampleCars.tyre(1.17, rearFriction, 0.08);
        Car car = SampleCars.ROAD_CAR.withTyres(SampleCars.ROAD_CAR.frontTyre(), rear);
        CornerStudy study = study(car, BEND.withGrade(grade));
        EntryResult best =
                StraightLine.best(study, 0.25, Sweep.quiet()).orElseThrow().entry();
        IdealProfile bound = study.bound();
        assertTrue(best.turnInSpeed() > 0.95 * bound.minimumSpeed(), best.turnInSpeed() + " " + bound.minimumSpeed());
        assertTrue(best.time() < 1.1 * bound.time(), best.time() + " " + bound.time());
    }

    /** In the middle of the first of two bends, and not on the straight between them; so in an S. */
    @ParameterizedTest
    @CsvSource({"60, LEFT", "60, RIGHT", "20, RIGHT"})
    void theApexLiesInABend(double between, Turn second) {
        SegmentPath two = SegmentPath.of(
                90,
                List.of(
                        Segment.spiralIn(15, 40, Turn.LEFT),
                        Segment.arc(30, 40, Turn.LEFT),
                        Segment.spiralOut(15, 40, Turn.LEFT),
                        Segment.straight(between),
                        Segment.spiralIn(15, 40, second),
                        Segment.arc(30, 40, second),
                        Segment.spiralOut(15, 40, second)),
                25,
                5);
        assertEquals(30, study(SampleCars.ROAD_CAR, two).simulator().apex(), 0.3);
    }
}
