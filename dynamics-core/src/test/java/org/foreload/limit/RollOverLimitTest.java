package org.foreload.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.conventions.Gravity;
import org.foreload.ideal.IdealEntry;
import org.foreload.ideal.IdealProfile;
import org.foreload.path.Corner;
import org.foreload.path.Turn;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Test;

/** Perfect hands in cars that roll over before they slide. */
class RollOverLimitTest {

    private static final double RADIUS = 30;
    private static final double HALF_TRACK = 0.7;
    private static final double HEIGHT = 0.95;

    /** What a bound may be broken by. */
    private static final double BROKEN = 1e-4;

    /** A body that follows at once: the lateral force that it feels is that of the turn. */
    private static final Car TALL = LimitCases.ROAD
            .with(new Chassis(1480, 2.62, 1.06, HEIGHT, 2350, 2 * HALF_TRACK, 2 * HALF_TRACK))
            .with(new Suspension(0.62, 0.05, 0.11, new Response(1.4, 0.35), Response.RIGID));

    private static LimitResult solve(Car car, Corner corner, double peak) {
        return Limit.solve(
                car,
                corner,
                Band.within(0.05),
                Hands.practised(peak),
                new LimitOptions(40, 1e-5, 300),
                (step, residual) -> {});
    }

    private static double rollOver(LimitResult result) {
        return result.points().stream()
                .mapToDouble(LimitPoint::rollOverUtilisation)
                .max()
                .orElseThrow();
    }

    /**
     * It corners as hard as g t/(2 h) and no harder: balance of moments about the outer wheels, no lift on the car. Its
     * tyres would hold a third more.
     */
    @Test
    void aTallCarIsHeldWhereItsInnerWheelsLeaveTheRoad() {
        Corner bend = LimitCases.bend(RADIUS, 5, Turn.LEFT);
        Corner corner = new Corner("bend", 24, bend.path());
        Car car = TALL.with(LimitCases.LIGHT.aerodynamics());
        LimitResult result = solve(car, corner, 5);
        assertTrue(result.converged(), "residual " + result.optimality());
        double hardest = result.points().stream()
                .mapToDouble(point -> point.speed() * point.speed() * point.curvature())
                .max()
                .orElseThrow();
        double most = Gravity.G * HALF_TRACK / HEIGHT;
        assertEquals(most, hardest, 0.01 * most);
        assertTrue(rollOver(result) <= 1 + BROKEN, "use " + rollOver(result));
        double bound =
                IdealEntry.solve(car, new Corner("own way", 24, result.way())).time();
        assertTrue(result.time() >= bound, result.time() + " against " + bound);
    }

    /**
     * A car that stays clear of it where loads settle at once comes to it by the swing of its body, and is held there.
     */
    @Test
    void aSwingOfTheBodyIsHeldToo() {
        Suspension loose = new Suspension(0.6, 0.03, 0.07, new Response(1.8, 0.4), new Response(0.9, 0.05));
        Car car = LimitCases.LIGHT
                .with(new Chassis(780, 2.4, 1.25, 0.62, 980, 1.42, 1.44))
                .with(loose);
        Corner bend = LimitCases.bend(RADIUS, 5, Turn.LEFT);
        IdealProfile settled = IdealEntry.solve(car, bend);
        for (int i = 0; i < settled.size(); i++) {
            assertTrue(settled.rollOverUtilisation(i) < 0.95, "settled use " + settled.rollOverUtilisation(i));
        }
        LimitResult result = solve(car, bend, 9);
        assertTrue(result.converged(), "residual " + result.optimality());
        assertEquals(1, rollOver(result), 1e-3);
    }
}
