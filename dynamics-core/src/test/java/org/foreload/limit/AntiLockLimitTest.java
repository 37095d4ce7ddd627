package org.foreload.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.conventions.Gravity;
import org.foreload.path.Corner;
import org.foreload.path.Turn;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;

/** Perfect feet with anti-lock brakes. */
class AntiLockLimitTest {

    private static final double FRICTION = 1.05;
    private static final FrictionTyre TYRE =
            new FrictionTyre(new SlipCurve.MagicFormula(1.4, -0.4), FRICTION, FRICTION, 0, 3000, 0.36, 18, 20);

    /** Load does not take friction away, and air does not help: every share of the brake could stop it equally hard. */
    private static final Car CAR =
            LimitCases.LIGHT.withTyres(TYRE, TYRE).with(Aerodynamics.NONE).withAntiLock(true);

    private static final Corner BEND =
            new Corner("bend", 34, LimitCases.bend(30, 5, Turn.LEFT).path());

    private static LimitResult solve(Car car) {
        return Limit.solve(
                car,
                BEND,
                Band.within(0.15),
                Hands.practised(Limit.peakDeceleration(car, BEND)),
                new LimitOptions(40, 1e-5, 300),
                (step, residual) -> {});
    }

    private static double hardest(LimitResult result) {
        return result.points().stream()
                .filter(point -> point.station() < 0)
                .mapToDouble(LimitPoint::deceleration)
                .max()
                .orElseThrow();
    }

    /**
     * Both axles held at 95 % of what they carry: 0.95 μ g, whichever axle the brake favours. Force balance; the share
     * is that of the simulated entries. Without such brakes the share that suits the car badly costs what the first
     * axle to lock leaves unused.
     */
    @Test
    void theShareOfTheBrakeStopsMattering() {
        double held = 0.95 * FRICTION * Gravity.G;
        LimitResult good = solve(CAR);
        LimitResult bad = solve(CAR.withFrontBrakeShare(0.55));
        assertTrue(good.converged() && bad.converged());
        assertEquals(held, hardest(good), 0.005 * held);
        assertEquals(held, hardest(bad), 0.005 * held);
        LimitResult plain = solve(CAR.withFrontBrakeShare(0.55).withAntiLock(false));
        assertTrue(hardest(plain) < 0.9 * held, "brakes with " + hardest(plain));
        // Where no wheel is held back, easing off in the bend, the share still has a say.
        assertEquals(good.time(), bad.time(), (plain.time() - good.time()) / 4);
    }
}
