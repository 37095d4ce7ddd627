package org.foreload.strategy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.Gravity;
import org.foreload.driver.DriverSettings;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;

/** Brake points and peaks of a car with anti-lock brakes. */
class AntiLockStudyTest {

    private static final Car CAR = SampleCars.ROAD_CAR.withAntiLock(true);

    private static CornerStudy study(Car car) {
        return CornerStudy.of(
                car, ShortStudies.CORNER, DriverSettings.practised(), ShortStudies.COARSE, Allowance.STANDARD);
    }

    /** The use of such brakes: stand on them, and steer (common practice, no source). */
    @Test
    void aHarderFootCostsNoBrakePoint() {
        CornerStudy study = study(CAR);
        double before = Double.POSITIVE_INFINITY;
        for (double share : new double[] {0.7, 1, 1.4}) {
            Braking braking =
                    Braking.of(share * ShortStudies.BARE.lockLimit(), 0.25, new Release(ReleaseShapes.LINEAR, -10, 10));
            Trial trial = study.search().latest(braking);
            assertTrue(trial.met(), share + " of what locks a wheel");
            assertTrue(trial.entry().time() < before + 0.01, share + " of what locks a wheel");
            before = trial.entry().time();
        }
    }

    /**
     * More pedal changes nothing once the axle that gets the smaller part of what it could hold has its friction, too:
     * with μ on all wheels that is μ g (b + μ h)/L over the front brake share, or the same of the rear axle (statics).
     */
    @Test
    void theLimitOfAHarderFootIsWhatHoldsAllWheelsBack() {
        double friction = 1.1;
        Car car = CAR.with(Aerodynamics.NONE)
                .withTyres(SampleCars.tyre(friction, friction, 0), SampleCars.tyre(friction, friction, 0));
        double front = friction * Gravity.G * (2.6 - 1.22 + friction * 0.5) / 2.6;
        double rear = friction * Gravity.G * (1.22 - friction * 0.5) / 2.6;
        assertEquals(front / 0.66, study(car.withFrontBrakeShare(0.66)).lockLimit(), 1e-5);
        assertEquals(rear / 0.1, study(car.withFrontBrakeShare(0.9)).lockLimit(), 1e-5);
        assertEquals(
                friction * Gravity.G * (2.6 - 1.22) / (2.6 - friction * 0.5),
                study(car.withFrontBrakeShare(1)).lockLimit(),
                1e-5);
    }

    /**
     * A foot that asks for more than the tyres hold gets less than it asks for, and must come down earlier than for a
     * car that gave it: the quick search finds what trying every brake point finds.
     */
    @Test
    void theSearchKnowsWhatTheBrakesGive() {
        Corner hairpin = new Corner(
                "hairpin",
                38,
                SegmentPath.of(
                        220,
                        List.of(
                                Segment.spiralIn(12, 15, Turn.LEFT),
                                Segment.arc(30, 15, Turn.LEFT),
                                Segment.spiralOut(14, 15, Turn.LEFT)),
                        60,
                        5));
        CornerStudy study =
                CornerStudy.of(CAR, hairpin, DriverSettings.practised(), ShortStudies.COARSE, Allowance.STANDARD);
        for (double share : new double[] {0.8, 0.95, 1.1}) {
            Braking braking = Braking.of(share * study.lockLimit(), 0.25, new Release(ReleaseShapes.HELD, -6, 12));
            Trial all = study.search().lastOfAll(braking);
            assertTrue(all.met(), share + " of what holds all wheels back");
            assertEquals(all.point(), study.search().estimate(braking), 4, share + " of what holds all wheels back");
            Trial quick = study.search().quickest(braking);
            assertTrue(quick.met() && quick.entry().time() < all.entry().time() + 0.002, share + ": " + quick.met());
        }
    }
}
