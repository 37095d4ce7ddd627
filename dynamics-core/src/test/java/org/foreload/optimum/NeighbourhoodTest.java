package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.InvalidValueException;
import org.foreload.strategy.CornerStudy;
import org.junit.jupiter.api.Test;

/** What a neighbourhood answers where nothing near the release that is known makes the corner. */
class NeighbourhoodTest {

    private static final CornerStudy STUDY = SampleStudies.roadCar();

    /** Far too late to make the corner. */
    private static final BrakePlan LATE = Braking.of(
                    0.6 * STUDY.lockLimit(), 0.25, new Release(ReleaseShapes.LINEAR, 0, 30))
            .from(-5);

    private static double fromEstimate(CornerStudy study, BrakePlan plan) {
        return plan.brakePoint() - study.search().estimate(plan.braking());
    }

    @Test
    void whereNoneIsFoundTheKnownOneStays() {
        Neighbourhood nearby = new Neighbourhood(STUDY, LATE, 5);
        assertEquals(LATE, nearby.best().plan());
        assertEquals(STUDY.search().trial(LATE).entry().time(), nearby.best().time());
    }

    /** Its peak as a share of the hardest, its release, and its distance from its estimate stay. */
    @Test
    void inAStudyMuchLikeItTheKnownOneIsScaled() {
        var car = STUDY.simulator().car();
        CornerStudy slippery = STUDY.with(
                car.withTyres(car.frontTyre().withFriction(0.95), car.rearTyre().withFriction(0.95)),
                STUDY.simulator().driver());
        BrakePlan there = new Neighbourhood(STUDY, LATE, 5).in(slippery, 0.3).plan();
        double share = LATE.peakDeceleration() / new LockReserve(STUDY).hardest(0.25);
        assertEquals(share, there.peakDeceleration() / new LockReserve(slippery).hardest(0.3), 1e-12);
        assertFalse(there.peakDeceleration() == LATE.peakDeceleration());
        assertEquals(0.3, there.buildUpTime());
        assertEquals(LATE.release(), there.release());
        assertEquals(fromEstimate(STUDY, LATE), fromEstimate(slippery, there), 1e-9);
    }

    @Test
    void someEntriesMustBeDriven() {
        assertThrows(InvalidValueException.class, () -> new Neighbourhood(STUDY, LATE, 0));
    }
}
