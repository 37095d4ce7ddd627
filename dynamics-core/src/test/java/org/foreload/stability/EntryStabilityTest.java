package org.foreload.stability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
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
import org.foreload.trace.Trace;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Driveline;
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

    /** While the driver brakes the closed throttle slows the driven wheels with the force that the car has for it. */
    @Test
    void anOperatingPointHasTheDragOfTheEngine() {
        Car plain = Scenes.light();
        Car car = plain.with(new Driveline(130_000, Driveline.DrivenAxle.REAR, 300));
        Trace profile = simulator(car).run(plan(-140, 6, 30)).profile().orElseThrow();
        int row = 0;
        while (profile.column("s_m").at(row) < -20) {
            row++;
        }
        assertEquals(-300, ProfilePoint.at(car, profile, row).driveForce(), 0.1);
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

    /** Rows of growth rates, a hundred a second, at ten metres a second. */
    private static List<StabilityRow> rows(DoubleUnaryOperator rate, double seconds) {
        return IntStream.rangeClosed(0, (int) Math.round(100 * seconds))
                .mapToObj(i -> new StabilityRow(0.1 * i, 0.01 * i, rate.applyAsDouble(0.01 * i), 0.5, 0.4))
                .toList();
    }

    /**
     * Half a wave of growth rate, A sin(πt/T), multiplies a disturbance by exp(2AT/π) (integral calculus). The one of
     * twice the height comes first: in it a disturbance doubles in half the time, by the definition of the rate.
     */
    @Test
    void theHighestGrowthComesFirst() {
        List<UnstableStretch> all = UnstableStretch.all(
                rows(
                        t -> t < 0.705
                                ? 4 * Math.sin(Math.PI * (t - 0.205) / 0.5)
                                : t < 1.105
                                        ? -3 * Math.min(1, 20 * (t - 0.705))
                                        : t > 3.105 ? -2 : 2 * Math.sin(Math.PI * (t - 1.105) / 2),
                        3.5),
                row -> "row " + row);
        assertEquals(2, all.size(), all.toString());
        UnstableStretch brief = all.get(0);
        UnstableStretch lasting = all.get(1);
        assertEquals(2 * 2 * 2 / Math.PI / Math.log(2), lasting.doublings(), 0.01);
        assertEquals(2 * 4 * 0.5 / Math.PI / Math.log(2), brief.doublings(), 0.01);
        assertEquals(11.05, lasting.from(), 0.1);
        assertEquals(31.05, lasting.to(), 0.1);
        // The rates bend between two rows, which are 0.1 m apart.
        assertEquals(2.05, brief.from(), 0.05);
        assertEquals(7.05, brief.to(), 0.05);
        assertEquals(0.5, brief.duration(), 0.01);
        assertEquals(21, lasting.worst().station(), 0.2);
        assertEquals("row 45", brief.cause());
    }

    /** A run that ends unstable has a stretch up to its end; a stable one has none. Common practice, no source. */
    @Test
    void aStretchMayReachTheEndOfTheRun() {
        UnstableStretch only =
                UnstableStretch.all(rows(t -> t - 1, 3), row -> "").get(0);
        assertEquals(10, only.from(), 1e-9);
        assertEquals(30, only.to(), 1e-9);
        assertEquals(2 / Math.log(2), only.doublings(), 1e-9);
        assertTrue(UnstableStretch.all(rows(t -> -1, 3), row -> "").isEmpty());
    }

    /**
     * Every row of a run is unstable just where a stretch says so, and the sentence names each place: one left out is
     * one that the driver does not look at. Common practice, no source.
     */
    @Test
    void everyUnstableStretchIsNamed() {
        Car car = Scenes.light();
        EntryResult entry = simulator(car).run(plan(-130, 8.4, 47));
        EntryStability stability = EntryStability.of(car, entry);
        assertTrue(stability.unstable().size() > 1, stability.verdict());
        for (StabilityRow row : stability.rows()) {
            boolean inside = stability.unstable().stream()
                    .anyMatch(one -> row.station() >= one.from() && row.station() <= one.to());
            assertEquals(!row.stable(), inside, "at " + row.station());
        }
        double highest = stability.rows().stream()
                .mapToDouble(StabilityRow::growthRate)
                .max()
                .orElseThrow();
        assertEquals(highest, stability.unstable().get(0).worst().growthRate());
        assertTrue(
                stability
                        .verdict()
                        .startsWith("The car is unstable "
                                + stability.unstable().get(0).place()),
                stability.verdict());
        for (UnstableStretch one : stability.unstable()) {
            assertTrue(stability.verdict().contains(one.place()), stability.verdict());
            assertTrue(one.worst().growthRate() > 0);
        }
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
