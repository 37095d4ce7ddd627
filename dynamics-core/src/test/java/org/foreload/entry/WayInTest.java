package org.foreload.entry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.trace.Trace;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.junit.jupiter.api.Test;

/**
 * What of the grip counts: brake and turn, not the throttle on the straight before. Common practice, no source: who
 * asks how near the rear is to its limit on the way in does not mean that the wheels nearly spin before the brake.
 */
class WayInTest {

    /** So strong that the rear wheels are at their limit on the straight. */
    private static final Car STRONG = SampleEntries.LIGHT.with(new Driveline(1e6, DrivenAxle.REAR));

    private static final BrakePlan PLAN =
            Braking.of(8, 0.2, new Release(ReleaseShapes.LINEAR, -10, 20)).from(-112);

    private static double most(Trace trace, String column, double from, double to) {
        double most = 0;
        for (int i = 0; i < trace.rows(); i++) {
            double s = trace.column("s_m").at(i);
            if (s >= from && s <= to) {
                most = Math.max(most, trace.column(column).at(i));
            }
        }
        return most;
    }

    @Test
    void theThrottleBeforeTheBrakeDoesNotCount() {
        EntryResult entry =
                SampleRun.simulator(STRONG, SampleEntries.medium(30)).run(PLAN);
        assertTrue(entry.made(), entry.outcome().toString());
        Trace trace = entry.profile().orElseThrow();
        double on = PLAN.brakePoint();
        double throttle = entry.event(EntryEvent.Kind.PICK_UP).orElseThrow().station();
        assertTrue(most(trace, "rear_utilisation", on, on) > 0.97, "at its limit on the straight");
        double braked = most(trace, "rear_utilisation", on + 8, throttle);
        assertTrue(braked < 0.9, "and far from it with the brake: " + braked);
        assertEquals(1 - braked, entry.margins().rear(), 0.02);
    }

    /**
     * What an axle has left is read off the profile for two stretches: while the brake asks for something, and from
     * where it has come off to where the throttle comes.
     */
    @Test
    void whatIsLeftOnTheBrakeAndOffItIsKeptApart() {
        BrakePlan early =
                Braking.of(8, 0.2, new Release(ReleaseShapes.LINEAR, -20, 2)).from(-112);
        EntryResult entry =
                SampleRun.simulator(STRONG, SampleEntries.medium(30)).run(early);
        assertTrue(entry.made(), entry.outcome().toString());
        Trace trace = entry.profile().orElseThrow();
        double off = early.release().end() + 5;
        double throttle = entry.event(EntryEvent.Kind.PICK_UP).orElseThrow().station();
        assertTrue(throttle > off + 2, "throttle at " + throttle);
        EntryResult.Margins margins = entry.margins();
        double front = most(trace, "front_utilisation", early.brakePoint() + 8, off);
        double rear = most(trace, "rear_utilisation", early.brakePoint() + 8, off);
        assertEquals(1 - front, margins.onBrake().front(), 0.01);
        assertEquals(1 - rear, margins.onBrake().rear(), 0.01);
        assertEquals(
                1 - most(trace, "front_utilisation", off, throttle),
                margins.offBrake().front(),
                0.01);
        assertEquals(
                1 - most(trace, "rear_utilisation", off, throttle),
                margins.offBrake().rear(),
                0.01);
        assertTrue(Math.abs(margins.onBrake().rear() - margins.offBrake().rear()) > 0.03, margins.toString());
        assertEquals(Math.min(1 - front, margins.offBrake().front()), margins.front(), 0.01);
    }

    /**
     * A dab that never outweighs the throttle, and then a foot that holds the car at its limit: it has no more left
     * than the same entry without the brake, and not all of it.
     */
    @Test
    void aBrakeThatNeverOutweighsTheThrottleLeavesNoMoreThanNone() {
        Release release = new Release(ReleaseShapes.LINEAR, -20, 10);
        EntrySimulator simulator = SampleRun.simulator(
                SampleEntries.LIGHT.with(new Driveline(3e4, DrivenAxle.REAR)), SampleEntries.fast(33));
        EntryResult dab = simulator.run(Braking.of(0.5, 0.2, release).from(9.5));
        EntryResult none = simulator.run(Braking.of(0.5, 0.2, release).from(10));
        assertTrue(dab.made() && dab.braked() && none.made() && !none.braked(), dab + " " + none);
        assertTrue(none.margins().rear() < 0.9, none.margins().toString());
        assertEquals(none.margins().front(), dab.margins().front(), 0.03);
        assertEquals(none.margins().rear(), dab.margins().rear(), 0.03);
    }
}
