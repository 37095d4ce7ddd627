package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.strategy.CornerStudy;
import org.junit.jupiter.api.Test;

/** Searches from a release that is known. */
class NearbyTest {

    private static final CornerStudy STUDY = SampleStudies.roadCar();

    private static final BrakePlan KNOWN = known();

    private static BrakePlan known() {
        double apex = STUDY.simulator().apex();
        Release release = new Release(ReleaseShapes.LINEAR, -0.1 * apex, 0.8 * apex);
        Braking plan = Braking.of(0.8 * STUDY.lockLimit(), 0.25, release);
        return STUDY.latest(plan).entry().plan();
    }

    @Test
    void aLongerSearchLooksAroundWhatTheLocalOnesCameTo() {
        Nearby local = Nearby.search(STUDY, KNOWN, 120);
        Nearby longer = Nearby.search(STUDY, KNOWN, 400);
        double before = STUDY.simulator().run(KNOWN).time();
        assertTrue(local.time() < before);
        assertTrue(longer.time() < local.time() - 0.005);
        assertTrue(longer.time() > STUDY.bound().time());
        assertEquals(longer.time(), STUDY.simulator().run(longer.plan()).time(), 1e-3);
        assertEquals(longer, Nearby.search(STUDY, KNOWN, 400));
    }
}
