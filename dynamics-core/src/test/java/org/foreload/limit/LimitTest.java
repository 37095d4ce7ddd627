package org.foreload.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import org.foreload.conventions.InvalidValueException;
import org.foreload.ideal.IdealEntry;
import org.foreload.path.Corner;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The limit against an independent solution of the same problem, and its laws. */
class LimitTest {

    private static final LimitOptions COARSE = new LimitOptions(40, 1e-5, 300);

    private static LimitResult solve(Car car, Corner corner, Band band, double peak, LimitOptions options) {
        return Limit.solve(car, corner, band, Hands.practised(peak), options, (step, residual) -> {});
    }

    /**
     * Source: an independent solution of the same equations by a general nonlinear-programming library (299 intervals
     * of three Radau points, exact derivatives): 16.050 s within 0.15 m, no axle above 98.5 % of its lateral peak,
     * brake at most 10.150 m/s². Agreed accuracy: one in a thousand.
     */
    @Test
    void theLightCarInTheMediumCornerTakesWhatAnIndependentSolutionTakes() {
        LimitResult result = solve(
                LimitCases.LIGHT, LimitCases.medium(), Band.within(0.15), 10.150, new LimitOptions(60, 1e-5, 300));
        assertTrue(result.converged(), "residual " + result.optimality());
        assertEquals(16.050, result.time(), 0.001 * 16.050);
        // The same source: brake on between 105 m and 98 m before turn-in, 33.3 m/s at turn-in, slowest 23.85 m/s at 74
        // m.
        assertEquals(-102, result.brakePoint().orElseThrow(), 4);
        assertEquals(33.3, result.turnInSpeed(), 0.3);
        assertEquals(23.85, result.minimumSpeed(), 0.3);
        double ideal = IdealEntry.solve(LimitCases.LIGHT, new Corner("own way", 50, result.way()))
                .time();
        assertTrue(result.time() > ideal, result.time() + " is quicker than the bound on its own way, " + ideal);
    }

    /** The same source: 19.769 s, brake at most 8.236 m/s². */
    @Test
    void theRoadCarInTheHairpinTakesWhatAnIndependentSolutionTakes() {
        LimitResult result =
                solve(LimitCases.ROAD, LimitCases.hairpin(), Band.within(0.15), 8.236, LimitOptions.STANDARD);
        assertTrue(result.converged(), "residual " + result.optimality());
        assertEquals(19.769, result.time(), 0.001 * 19.769);
        assertEquals(12.07, result.minimumSpeed(), 0.15);
    }

    /** Two meshes agree to a millisecond in a hairpin, too. */
    @Tag("long")
    @Test
    void inTheHairpinAFinerMeshTakesAsLong() {
        LimitResult result =
                solve(LimitCases.ROAD, LimitCases.hairpin(), Band.within(0.15), 8.236, LimitOptions.STANDARD);
        LimitResult fine = solve(
                LimitCases.ROAD, LimitCases.hairpin(), Band.within(0.15), 8.236, new LimitOptions(225, 1e-5, 300));
        assertTrue(result.converged() && fine.converged());
        assertEquals(result.time(), fine.time(), TWO_MESHES);
    }

    /** Two meshes agree to a millisecond, s. */
    private static final double TWO_MESHES = 1e-3;

    private static final Corner BEND = LimitCases.bend(30, 5, Turn.LEFT);

    /** Along the line of that bend. */
    private static final LimitResult NEAR = solve(LimitCases.LIGHT, BEND, Band.within(0.15), 10, COARSE);

    /** Anywhere on the road is quicker than near the line, and no bound is passed. */
    @Test
    void theFreeRoadIsQuicker() {
        LimitResult free = solve(LimitCases.LIGHT, BEND, Band.road(), 10, COARSE);
        assertTrue(NEAR.converged() && free.converged());
        assertTrue(free.time() < NEAR.time() - 0.1, free.time() + " and " + NEAR.time());
        for (LimitPoint point : free.points()) {
            assertTrue(Math.abs(point.offset()) <= 5 - 0.72 + 1e-4, point.toString());
            assertTrue(point.brake() <= 10 * 1.01, point.toString());
        }
        for (LimitPoint point : NEAR.points()) {
            assertTrue(Math.abs(point.offset()) <= 0.15 + 1e-4, point.toString());
            assertTrue(Math.max(point.frontUtilisation(), point.rearUtilisation()) <= 1.01, point.toString());
        }
    }

    /** Acceleration, m/s², to which intervals of 18 m follow one that bends. */
    private static final double AGREED = 0.3;

    /**
     * On the straight behind the corner the brake stays off to the last metre, and speed changes by what the
     * deceleration says: v dv = −d ds (kinematics), with d as a straight line between two rows.
     */
    @Test
    void theLastMetresAreDrivenAsThoseBefore() {
        List<LimitPoint> points = NEAR.points();
        for (int i = points.size() - 6; i + 1 < points.size(); i++) {
            LimitPoint from = points.get(i);
            LimitPoint to = points.get(i + 1);
            double rise = (to.speed() * to.speed() - from.speed() * from.speed()) / 2;
            double mean = rise / (to.station() - from.station());
            assertEquals(-(from.deceleration() + to.deceleration()) / 2, mean, AGREED, from + " to " + to);
            assertEquals(0, to.brake(), 0.01, to.toString());
        }
    }

    /** A band wider than the road ends where the road does, on both sides. */
    @Test
    void aBandWiderThanTheRoadEndsAtItsEdges() {
        Corner narrow = LimitCases.bend(30, 1.2, Turn.LEFT);
        LimitResult result = solve(LimitCases.LIGHT, narrow, Band.within(4), 10, COARSE);
        assertTrue(result.converged(), "residual " + result.optimality());
        for (LimitPoint point : result.points()) {
            assertTrue(Math.abs(point.offset()) <= 1.2 + 1e-4, point.toString());
        }
    }

    /**
     * A road that is banked on its straights, too, is steered straight there, and gains what the quasi-steady profile
     * gains by the banking: the lags cost the same. Agreed accuracy: a sixth of that gain.
     */
    @Test
    void bankingGainsWhatItGainsWithoutLags() {
        Corner banked =
                new Corner("banked", BEND.approachSpeed(), ((SegmentPath) BEND.path()).withBanking(Math.toRadians(3)));
        LimitResult result = solve(LimitCases.LIGHT, banked, Band.within(0.15), 10, COARSE);
        assertTrue(result.converged(), "residual " + result.optimality());
        double gain = IdealEntry.solve(LimitCases.LIGHT, BEND).time()
                - IdealEntry.solve(LimitCases.LIGHT, banked).time();
        assertEquals(gain, NEAR.time() - result.time(), gain / 6);
    }

    /** Who lets the car slide less takes longer, and it does not slide further. */
    @Test
    void aBoundOnTheSlideIsKept() {
        Hands free = Hands.practised(10);
        double most = 0.7 * slide(NEAR);
        LimitResult held = Limit.solve(
                LimitCases.LIGHT, BEND, Band.within(0.15), free.withMostSideslip(most), COARSE, (i, r) -> {});
        assertTrue(NEAR.converged() && held.converged());
        assertTrue(slide(held) <= most + 1e-4, slide(held) + " rad, " + most + " allowed");
        assertTrue(held.time() > NEAR.time(), held.time() + " and " + NEAR.time());
        assertThrows(InvalidValueException.class, () -> free.withMostSideslip(0));
        assertThrows(InvalidValueException.class, () -> free.withMostSideslip(1.6));
    }

    private static double slide(LimitResult result) {
        return result.points().stream()
                .mapToDouble(point -> Math.abs(point.sideslip()))
                .max()
                .orElseThrow();
    }

    /**
     * A right-hand corner is its mirror image, point by point; in every build the laws of the limit hold it of times.
     */
    @Tag("long")
    @Test
    void aMirroredCornerMirrorsTheRun() {
        LimitResult left = solve(LimitCases.ROAD, LimitCases.bend(30, 5, Turn.LEFT), Band.within(0.5), 8, COARSE);
        LimitResult right = solve(LimitCases.ROAD, LimitCases.bend(30, 5, Turn.RIGHT), Band.within(0.5), 8, COARSE);
        assertEquals(left.time(), right.time(), 1e-4);
        for (int i = 0; i < left.points().size(); i++) {
            assertEquals(left.points().get(i).offset(), -right.points().get(i).offset(), 0.02);
        }
    }

    /** Two meshes agree to a millisecond; in every build the laws of the limit hold the same of random cases. */
    @Tag("long")
    @Test
    void aFinerMeshTakesAsLong() {
        Corner corner = LimitCases.bend(30, 5, Turn.LEFT);
        LimitResult coarse = solve(LimitCases.LIGHT, corner, Band.within(0.3), 10, LimitOptions.STANDARD);
        LimitResult fine = solve(LimitCases.LIGHT, corner, Band.within(0.3), 10, new LimitOptions(225, 1e-5, 300));
        assertTrue(coarse.converged() && fine.converged());
        assertEquals(coarse.time(), fine.time(), 1e-3);
    }

    /** Who no longer waits need not wait for the end; the flag stays for who asks next. Common practice, no source. */
    @Test
    void anInterruptEndsTheSearch() {
        AtomicInteger steps = new AtomicInteger();
        Hands hands = Hands.practised(10);
        assertThrows(
                CancellationException.class,
                () -> Limit.solve(
                        LimitCases.LIGHT,
                        LimitCases.bend(30, 5, Turn.LEFT),
                        Band.within(0.3),
                        hands,
                        COARSE,
                        (step, residual) -> {
                            if (steps.incrementAndGet() == 3) {
                                Thread.currentThread().interrupt();
                            }
                        }));
        assertTrue(Thread.interrupted(), "the interrupt was swallowed");
        assertEquals(3, steps.get());
    }

    @Test
    void aCornerThatComesTooSoonIsRefused() {
        Corner corner = LimitCases.bend(12, 5, Turn.LEFT);
        Corner fast = new Corner("fast", 70, corner.path());
        assertThrows(InvalidValueException.class, () -> Limit.solve(LimitCases.ROAD, fast, Band.within(0.15)));
    }

    /** Without yaw inertia there is no yaw acceleration to find: the car is refused by that field. */
    @Test
    void aCarWithoutYawInertiaIsRefused() {
        Car point = LimitCases.LIGHT.with(new Chassis(780, 2.4, 1.25, 0.45, 0, 1.42, 1.44));
        InvalidValueException refused =
                assertThrows(InvalidValueException.class, () -> solve(point, BEND, Band.within(0.15), 10, COARSE));
        assertEquals("yaw_inertia_kg_m2", refused.field());
    }
}
