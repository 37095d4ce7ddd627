package org.foreload.pedal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.foreload.conventions.Gravity;
import org.foreload.grip.Axle;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** First axle to lock in the simulator against the closed forms of brake distribution. */
class LockingRampTest {

    /** The accuracy that was promised for the deceleration. */
    private static final double TWO_PERCENT = 0.02;

    /** Lengths of the worked example: a = 1.20 m, b = 1.50 m, h = 0.55 m. */
    private static final double A = 1.2;

    private static final double B = 1.5;
    private static final double H = 0.55;

    private static Car car(double friction, double share) {
        Tyre tyre = new FrictionTyre(new SlipCurve.Brush(), friction, friction, 0, 4000, 0.3, 20, 25);
        return new Car(
                "worked example",
                new Chassis(1500, A + B, A, H, 2500, 1.55, 1.55),
                new Suspension(0.6, 0.05, 0.1, new Response(1.5, 0.4), Response.RIGID),
                Aerodynamics.NONE,
                share,
                new Driveline(1e5, Driveline.DrivenAxle.REAR),
                tyre,
                tyre);
    }

    /**
     * Lock limits in g, front share 0.70: at μ 0.4 the front axle locks at 0.359281, at 0.8 the rear one at 0.768000,
     * at 1.0 the rear one at 0.882353; derived from the formulas of UN Regulation 13-H, Annex 5 (from memory).
     */
    @ParameterizedTest
    @CsvSource({"0.4, FRONT, 0.359281", "0.8, REAR, 0.768000", "1.0, REAR, 0.882353"})
    void theFirstAxleLocksWhereTheClosedFormSays(double friction, Axle axle, double rate) {
        LockingRamp ramp = LockingRamp.of(car(friction, 0.70), 30).orElseThrow();
        assertEquals(axle, ramp.axle());
        assertEquals(rate * Gravity.G, ramp.deceleration(), TWO_PERCENT * rate * Gravity.G);
        assertEquals(ramp.deceleration(), ramp.brakeDeceleration(), 0.01, "without drag both are one, but for a step");
    }

    /**
     * The order flips at z = (φL − b)/h = 0.709091 for a front share of 0.70: on just that friction both axles lock at
     * once, and a share moved rearward makes the rear axle the first.
     */
    @Test
    void theOrderFlipsAtTheCriticalRate() {
        double critical = (0.70 * (A + B) - B) / H;
        assertEquals(0.709091, critical, 1e-6);
        double low = 0.6;
        double high = 0.8;
        while (high - low > 1e-4) {
            double share = (low + high) / 2;
            boolean front =
                    LockingRamp.of(car(critical, share), 30).orElseThrow().axle() == Axle.FRONT;
            low = front ? low : share;
            high = front ? share : high;
        }
        assertEquals(0.70, high, TWO_PERCENT * 0.70);
        double limit = LockingRamp.of(car(critical, high), 30).orElseThrow().deceleration();
        assertEquals(critical * Gravity.G, limit, TWO_PERCENT * critical * Gravity.G);
    }

    @Test
    void aCarWithoutFrontBrakesOnlyLocksItsRearAxle() {
        assertEquals(Axle.REAR, LockingRamp.of(car(1, 0), 30).orElseThrow().axle());
    }
}
