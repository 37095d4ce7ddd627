package org.foreload.entry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.PedalDisturbance;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Test;

/** Entries without an end: numbers that are legal one by one, and shapes that give none. */
class BeyondFollowingTest {

    private static String message(EntrySimulator simulator, BrakePlan plan) {
        String run = assertThrows(IllegalStateException.class, () -> simulator.run(plan))
                .getMessage();
        String probe = assertThrows(IllegalStateException.class, () -> simulator.probe(plan))
                .getMessage();
        String begins = "the entry cannot be followed beyond ";
        assertTrue(run.startsWith(begins), run);
        assertTrue(probe.startsWith(begins), probe);
        String why = run.substring(run.indexOf(" m: ") + 4);
        assertEquals(why, probe.substring(probe.indexOf(" m: ") + 4));
        return why;
    }

    @Test
    void aMotionMuchTooQuickIsSaidToBeThat() {
        String quick =
                "its numbers make a motion too quick or too stiff; look for one that is far from usual, or use a larger"
                        + " tolerance";
        Car car = SampleRun.CAR;
        Chassis chassis = car.chassis();
        Car pointed = car.with(new Chassis(
                chassis.mass(),
                chassis.wheelbase(),
                chassis.cgToFrontAxle(),
                chassis.cgHeight(),
                1e-6,
                chassis.frontTrack(),
                chassis.rearTrack()));
        assertEquals(quick, message(SampleRun.simulator(pointed), SampleRun.PLAN));
        Car ringing = car.with(car.suspension().withPitch(new Response(1e6, 0.3)));
        assertEquals(quick, message(SampleRun.simulator(ringing), SampleRun.PLAN));
        BrakePlan rippled = SampleRun.PLAN.with(new PedalDisturbance.Ripple(0.1, 1e6));
        assertEquals(quick, message(SampleRun.simulator(car), rippled));
    }

    /** A shape of somebody's own that forgets its middle: the message names the brake. */
    @Test
    void aNumberThatIsNoneIsNamed() {
        ReleaseShape forgetful = new ReleaseShape() {
            @Override
            public String name() {
                return "forgetful";
            }

            @Override
            public double remaining(double released) {
                return released <= 0 ? 1 : released >= 1 ? 0 : Double.NaN;
            }

            @Override
            public double[] kinks() {
                return new double[0];
            }
        };
        BrakePlan plan = Braking.of(6, 0.25, new Release(forgetful, -10, 25)).from(SampleRun.BRAKE_POINT);
        assertEquals(
                "its brake is not a finite number from there on", message(SampleRun.simulator(SampleRun.CAR), plan));
    }
}
