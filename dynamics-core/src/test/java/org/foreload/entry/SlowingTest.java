package org.foreload.entry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryEvent.Kind;
import org.foreload.path.Corner;
import org.foreload.trace.Trace;
import org.junit.jupiter.api.Test;

/**
 * How much of the slowing is done where: speed shed after turn-in over all speed shed from the brake point to the
 * slowest point, for plans that put these in an unusual order. Expected values are read off the profile.
 */
class SlowingTest {

    private static final double START = SampleRun.CORNER.path().start();

    private static EntryResult run(double approachSpeed, BrakePlan plan) {
        return SampleRun.simulator(SampleRun.CAR, new Corner("medium", approachSpeed, SampleRun.CORNER.path()))
                .run(plan);
    }

    private static BrakePlan plan(double peak, double brakePoint, double start, double end) {
        return Braking.of(peak, 0, new Release(ReleaseShapes.LINEAR, start, end))
                .from(brakePoint);
    }

    private static double speed(EntryResult entry, double station) {
        Trace trace = entry.profile().orElseThrow();
        int row = 0;
        while (Math.abs(trace.column("s_m").at(row) - station) > 1e-6) {
            row++;
        }
        return trace.column("speed_mps").at(row);
    }

    @Test
    void theUsualOrder() {
        EntryResult entry = run(45, SampleRun.PLAN);
        double slowest = entry.minimumSpeed();
        double after = speed(entry, 0) - slowest;
        double all = speed(entry, SampleRun.BRAKE_POINT) - slowest;
        assertTrue(after > 1 && all > after + 10);
        assertEquals(after / all, entry.trailShare(), 1e-9);
    }

    /** Still faster and faster at turn-in, and on the brake only after it: all the slowing is done there. */
    @Test
    void whoBrakesAfterTurnInDoesAllOfItThere() {
        EntryResult entry = run(12, plan(4, 10, 15, 30));
        assertTrue(speed(entry, 10) > entry.turnInSpeed() + 0.2);
        assertTrue(entry.minimumSpeed() < entry.turnInSpeed() - 0.2);
        assertEquals(1, entry.trailShare());
    }

    /** Slowed too much on the approach and faster again before turn-in: none of the slowing is done after it. */
    @Test
    void whoIsSlowestBeforeTurnInDoesNoneAfterIt() {
        EntryResult entry = run(45, plan(8, -190, -90, -80));
        assertTrue(entry.made());
        assertTrue(entry.minimumSpeedAt() < -20);
        assertTrue(entry.turnInSpeed() > entry.minimumSpeed() + 1);
        assertEquals(0, entry.trailShare());
    }

    /** A plan whose brake point lies before the line: the foot is on the brake where the line begins. */
    @Test
    void aBrakePointBeforeTheLineCountsWhereTheLineBegins() {
        EntryResult entry = run(45, plan(5, START - 100, 0, 30));
        assertTrue(entry.braked());
        assertEquals(START, entry.event(Kind.BRAKE_ON).orElseThrow().station());
        assertEquals(0, entry.event(Kind.BRAKE_ON).orElseThrow().time());
        assertEquals(45, entry.topSpeed());
        assertTrue(speed(entry, START + 20) < 44);
        assertEquals(START, entry.events().get(0).station());
    }

    /** Off the road before the brake point: there is no slowest point after it, and no speed there. */
    @Test
    void whoNeverBrakesHasNoSlowestPoint() {
        EntryResult entry = run(45, plan(6, 120, 130, 140));
        assertEquals(Outcome.RAN_WIDE, entry.outcome());
        assertFalse(entry.braked());
        assertEquals(Double.NaN, entry.minimumSpeed());
        assertEquals(Double.NaN, entry.minimumSpeedAt());
        assertEquals(Double.NaN, entry.trailShare());
    }
}
