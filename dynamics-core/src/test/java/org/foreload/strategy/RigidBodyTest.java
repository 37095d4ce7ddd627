package org.foreload.strategy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.SampleEntries;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Test;

/** A rigid body is the limit of ever stiffer springs: a light car in a fast corner, where yaw is least damped. */
class RigidBodyTest {

    private static Finding latest(Response response) {
        Car light = SampleEntries.LIGHT;
        Car car = light.with(light.suspension().withPitch(response).withRoll(response));
        CornerStudy study = CornerStudy.of(car, SampleEntries.fast(55));
        Braking plan = Braking.of(0.6 * study.lockLimit(), 0.25, new Release(ReleaseShapes.LINEAR, 0, 60));
        return study.with(Allowance.NO_MARGIN).latest(plan);
    }

    @Test
    void aRigidBodyIsTheLimitOfAStiffOne() {
        Finding rigid = latest(Response.RIGID);
        Finding stiff = latest(new Response(12, 0.7));
        assertTrue(rigid.found() && stiff.found());
        assertEquals(
                stiff.entry().plan().brakePoint(), rigid.entry().plan().brakePoint(), 0.3, "latest brake point, m");
        assertEquals(stiff.entry().time(), rigid.entry().time(), 0.01);
        assertEquals(stiff.entry().minimumSpeed(), rigid.entry().minimumSpeed(), 0.02);
    }
}
