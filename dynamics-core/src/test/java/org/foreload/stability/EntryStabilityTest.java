package org.foreload.stability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntryEvent.Kind;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.entry.Outcome;
import org.foreload.grip.Axle;
import org.foreload.strategy.CornerStudy;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;

/** What the eigenvalues along an entry tell, held against how the entry ends. */
class EntryStabilityTest {

    private static EntrySimulator simulator(Car car) {
        return CornerStudy.of(car, Scenes.medium()).simulator();
    }

    private static BrakePlan plan(double brakePoint, double peak, double end) {
        return Braking.of(peak, 0.25, new Release(ReleaseShapes.LINEAR, -5, end))
                .from(brakePoint);
    }

    private static double station(EntryResult entry, Kind kind) {
        return entry.event(kind).map(EntryEvent::station).orElse(Double.POSITIVE_INFINITY);
    }

    /**
     * Too much brake behind, though no wheel locks, and a long trail: the rear goes, which it does not with the car's
     * own share. The eigenvalue crosses first, and the report says so.
     */
    @Test
    void beforeASpinTheEigenvalueCrosses() {
        BrakePlan plan = plan(-130, 7, 45);
        assertNotEquals(Outcome.SPUN, simulator(Scenes.light()).probe(plan).outcome());
        Car car = Scenes.light().withFrontBrakeShare(0.66);
        EntryResult entry = simulator(car).run(plan);
        assertEquals(Outcome.SPUN, entry.outcome(), entry.cause());
        assertTrue(entry.event(Kind.FRONT_LOCKS).isEmpty()
                && entry.event(Kind.REAR_LOCKS).isEmpty());
        EntryStability stability = EntryStability.of(car, entry);
        StabilityEvent loss = stability.loss().orElseThrow();
        EntryEvent spin = entry.event(Kind.SPIN).orElseThrow();
        assertTrue(loss.row().station() < spin.station());
        assertTrue(loss.row().time() < spin.time());
        assertTrue(loss.row().growthRate() > 0);
        assertTrue(stability.verdict().contains("it spins"), stability.verdict());
        // From there on it stays unstable to the end.
        assertTrue(stability.rows().stream()
                .filter(row -> row.station() >= loss.row().station())
                .noneMatch(StabilityRow::stable));
    }

    /** Too fast into the corner: the front tyres have nothing left to steer with first, and the car runs wide. */
    @Test
    void beforeRunningWideTheFrontSaturates() {
        Car car = Scenes.frontHeavy();
        EntryResult entry = simulator(car).run(plan(-130, 7.5, 20));
        assertEquals(Outcome.RAN_WIDE, entry.outcome(), entry.cause());
        double front = Math.min(station(entry, Kind.FRONT_SATURATES), station(entry, Kind.FRONT_LOCKS));
        double rear = Math.min(station(entry, Kind.REAR_SATURATES), station(entry, Kind.REAR_LOCKS));
        assertTrue(front < station(entry, Kind.TRACK_EDGE));
        assertTrue(front < rear, front + " and " + rear);
        EntryStability stability = EntryStability.of(car, entry);
        assertEquals(Axle.FRONT, stability.firstSaturated().orElseThrow());
        StabilityRow there = stability.rows().stream()
                .filter(row -> row.station() >= front)
                .findFirst()
                .orElseThrow();
        assertEquals(Axle.FRONT, there.nearest());
        assertTrue(there.stable(), "a car that pushes its nose wide does not turn round");
    }

    /** Stable on the approach; least stable while braking, when the rear axle is light. */
    @Test
    void aCalmEntryIsLeastStableUnderTheBrake() {
        Car car = Scenes.light();
        EntryResult entry = simulator(car).run(plan(-155, 7.5, 20));
        assertTrue(entry.made(), entry.cause());
        EntryStability stability = EntryStability.of(car, entry);
        assertEquals(entry.profile().orElseThrow().rows(), stability.rows().size());
        StabilityRow first = stability.rows().get(1);
        assertTrue(first.stable());
        StabilityRow least = stability.least().row();
        assertTrue(least.station() > -155 && least.station() < 20, "least stable at " + least.station());
        assertTrue(least.growthRate() > first.growthRate());
        assertTrue(stability.least().cause().contains("the load that braking takes off the rear axle"));
        assertTrue(stability.least().describe().startsWith("least stable at "));
    }

    @Test
    void marginsAreNamedForBothAxles() {
        StabilityRow row = new StabilityRow(1, 2, 0.5, 0.06, 0.02);
        assertEquals("front has 6 % left, rear 2 %", row.margins());
        assertEquals(Axle.REAR, row.nearest());
    }

    @Test
    void aRunWithoutProfileIsRefused() {
        Car car = Scenes.light();
        EntryResult probe = simulator(car).probe(plan(-155, 7.5, 20));
        assertThrows(IllegalArgumentException.class, () -> EntryStability.of(car, probe));
    }
}
