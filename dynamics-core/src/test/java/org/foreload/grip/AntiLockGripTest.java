package org.foreload.grip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.conventions.Gravity;
import org.foreload.load.SampleCars;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Anti-lock brakes: what one axle cannot hold, the other may. Friction without load sensitivity, no air. */
class AntiLockGripTest {

    private static final double FRICTION = 1.1;

    private static Car car(double brakeShare) {
        return SampleCars.ROAD_CAR
                .with(new Chassis(1400, 2.6, 1.22, 0.50, 2200, 1.52, 1.52))
                .with(Aerodynamics.NONE)
                .withTyres(SampleCars.tyre(FRICTION, FRICTION, 0), SampleCars.tyre(FRICTION, FRICTION, 0))
                .withFrontBrakeShare(brakeShare);
    }

    private static double hardest(Car car, double speed, double curvature) {
        return -GripLimits.of(car)
                .accelerationRange(speed * speed, curvature, 0, 0, 0)
                .orElseThrow()
                .lowest();
    }

    /** Both axles at their peaks brake with friction times weight (Coulomb's law), however the brakes are shared. */
    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.66, 0.95})
    void aCarBrakesWithFrictionTimesWeight(double share) {
        assertEquals(FRICTION * Gravity.G, hardest(car(share).withAntiLock(true), 30, 0), 1e-6);
        assertTrue(hardest(car(share), 30, 0) < FRICTION * Gravity.G - 0.1);
    }

    /** Without brakes at the rear only the front axle's load counts: μ g b/(L − μ h), by statics. */
    @Test
    void anAxleWithoutBrakesGivesNothing() {
        double expected = FRICTION * Gravity.G * (2.6 - 1.22) / (2.6 - FRICTION * 0.5);
        assertEquals(expected, hardest(car(1).withAntiLock(true), 30, 0), 1e-6);
    }

    /** In a bend what is left of the friction circle: √((μg)² − a²), of a car without height or inertia in yaw. */
    @Test
    void inABendTheCircleOfTheWholeCarIsLeft() {
        Car still = car(0.66)
                .with(new Chassis(1400, 2.6, 1.22, 0, 1e-9, 1.52, 1.52))
                .withAntiLock(true);
        double across = 7;
        double left = Math.sqrt(Math.pow(FRICTION * Gravity.G, 2) - across * across);
        assertEquals(left, hardest(still, 30, across / 900), 1e-5);
    }
}
