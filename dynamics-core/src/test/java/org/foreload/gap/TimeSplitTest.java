package org.foreload.gap;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.load.SampleCars;
import org.foreload.optimum.SampleStudies;
import org.foreload.strategy.CornerStudy;
import org.foreload.trace.Trace;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;

class TimeSplitTest {

    /** What the parts of a difference may lose to rounding, s: asked for by whoever sums them. */
    private static final double SUM_ACCURACY = 1e-9;

    private static final CornerStudy STUDY = SampleStudies.roadCar();
    private static final EntryResult TRAILED = entry(new Release(ReleaseShapes.LINEAR, -3, 24));
    private static final EntryResult STRAIGHT = entry(new Release(ReleaseShapes.ABRUPT, 0, 0));
    private static final double APEX = STUDY.simulator().apex();

    private static EntryResult entry(Release release) {
        return STUDY.latest(Braking.of(0.8 * STUDY.lockLimit(), 0.25, release)).entry();
    }

    private static TimeSplit between(EntryResult one, EntryResult other) {
        return TimeSplit.between(SampleCars.ROAD_CAR, APEX, one, other);
    }

    @Test
    void thePartsSumToTheWholeGap() {
        TimeSplit split = between(TRAILED, STRAIGHT);
        assertEquals(STRAIGHT.time() - TRAILED.time(), split.total());
        assertEquals(split.total(), split.byBraking() + split.byTurning() + split.byExit(), SUM_ACCURACY);
        Trace.Column gap = split.curve().column("gap_s");
        assertEquals(0, gap.at(0));
        assertEquals(split.total(), gap.at(gap.size() - 1), SUM_ACCURACY);
    }

    @Test
    void aTrailedBrakeWinsByBrakingLater() {
        TimeSplit split = between(TRAILED, STRAIGHT);
        assertTrue(split.total() > 0);
        assertTrue(split.brakesLater() > 0);
        assertTrue(split.byBraking() > 0);
        assertTrue(split.sentence().startsWith(String.format("%.3f s quicker", split.total())), split.sentence());
        assertTrue(split.sentence().contains("m later"), split.sentence());
    }

    @Test
    void nothingIsGainedBeforeEitherBrakes() {
        TimeSplit split = between(TRAILED, STRAIGHT);
        double first = Math.min(TRAILED.plan().brakePoint(), STRAIGHT.plan().brakePoint());
        Trace curve = split.curve();
        for (int i = 0; i < curve.rows(); i++) {
            if (curve.column("s_m").at(i) < first) {
                assertEquals(0, curve.column("gap_s").at(i), 1e-4, "flat out both, read linearly between rows");
            }
        }
    }

    @Test
    void theOtherWayRoundChangesEverySign() {
        TimeSplit there = between(TRAILED, STRAIGHT);
        TimeSplit back = between(STRAIGHT, TRAILED);
        assertEquals(there.byBraking(), -back.byBraking(), SUM_ACCURACY);
        assertEquals(there.byTurning(), -back.byTurning(), SUM_ACCURACY);
        assertEquals(there.byExit(), -back.byExit(), SUM_ACCURACY);
        assertTrue(back.sentence().contains(" s slower"), back.sentence());
    }

    @Test
    void anEntryHasNoGapToItself() {
        TimeSplit none = between(TRAILED, TRAILED);
        assertEquals(0, none.total());
        assertEquals(0, none.byBraking());
        assertEquals(0, none.brakesLater());
    }

    /**
     * Gained and spent on the straight, from wheel loads alone: with a load F on each wheel, of which the brake's force
     * over mass d moved m·d·h/L onto the two, load sensitivity λ over F₀, friction μ: μ(F) = μ₀(1 − λ(F/F₀ − 1)). The
     * car's numbers are those of the sample car.
     */
    @Test
    void gripIsThatOfTheWheelLoads() {
        Trace grip = FrontGrip.of(SampleCars.ROAD_CAR, TRAILED);
        Trace profile = TRAILED.profile().orElseThrow();
        int row = 0;
        while (profile.column("s_m").at(row) < TRAILED.plan().brakePoint() + 20) {
            row++;
        }
        double front = profile.column("front_axle_load_n").at(row) / 2;
        double unmoved = front - 1400 * profile.column("brake_mps2").at(row) * 0.50 / 2.6 / 2;
        double capacity = 2 * peak(1.10, front);
        assertEquals(
                capacity - 2 * peak(1.10, unmoved),
                grip.column("gained_by_load_n").at(row),
                0.5);
        double force = 1400 * profile.column("brake_mps2").at(row) * 0.66 / 2;
        double kept = capacity * Math.sqrt(1 - Math.pow(force / peak(1.15, front), 2));
        assertEquals(capacity - kept, grip.column("spent_on_braking_n").at(row), 0.5);
    }

    /**
     * Anti-lock brakes hold each wheel to 0.95 of its peak, however hard the foot presses: the front axle keeps √(1 −
     * 0.95²) of its lateral peak (friction ellipse), and the load moved is that of the force that slows the car,
     * m·d·h/L with d the deceleration less the drag over mass.
     */
    @Test
    void withAntiLockItIsWhatTheWheelsGive() {
        Car car = SampleCars.ROAD_CAR.withAntiLock(true);
        EntryResult entry = CornerStudy.of(car, SampleStudies.corner())
                .simulator()
                .run(Braking.of(16, 0.25, new Release(ReleaseShapes.LINEAR, -15, 10))
                        .from(-60));
        Trace grip = FrontGrip.of(car, entry);
        Trace profile = entry.profile().orElseThrow();
        int row = 0;
        while (profile.column("s_m").at(row) < -30) {
            row++;
        }
        assertTrue(profile.column("brake_mps2").at(row) > 15);
        double drag = 0.5 * 1.2 * 0.68 * Math.pow(profile.column("speed_mps").at(row), 2);
        double slowing = 1400 * profile.column("deceleration_mps2").at(row) - drag;
        double front = profile.column("front_axle_load_n").at(row) / 2;
        double capacity = 2 * peak(1.10, front);
        double unmoved = 2 * peak(1.10, front - slowing * 0.50 / 2.6 / 2);
        assertEquals(capacity - unmoved, grip.column("gained_by_load_n").at(row), 0.5);
        double spent = capacity * (1 - Math.sqrt(1 - 0.95 * 0.95));
        assertEquals(spent, grip.column("spent_on_braking_n").at(row), 0.5);
    }

    private static double peak(double friction, double load) {
        return friction * (1 - 0.08 * (load / 4000 - 1)) * load;
    }

    @Test
    void refusesEntriesWithoutProfile() {
        EntryResult probe = STUDY.simulator().probe(TRAILED.plan());
        assertThrows(IllegalArgumentException.class, () -> between(probe, STRAIGHT));
    }
}
