package org.foreload.grip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.conventions.Gravity;
import org.foreload.load.SampleCars;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;

/** What anti-lock brakes give on a straight, against statics. */
class HeldBrakesTest {

    private static final double FRICTION = 1.1;

    private static final double HELD = 0.95 * FRICTION;

    /** Wheelbase 2.6 m, CG 1.22 m behind the front axle and 0.5 m high; four fifths of the brake in front. */
    private static final Car CAR = SampleCars.ROAD_CAR
            .withAntiLock(true)
            .with(Aerodynamics.NONE)
            .withFrontBrakeShare(0.8)
            .withTyres(SampleCars.tyre(FRICTION, FRICTION, 0), SampleCars.tyre(FRICTION, FRICTION, 0));

    private static double given(Car car, double asked) {
        return new HeldBrakes(car).given(asked, 900);
    }

    @Test
    void aGentleFootGetsWhatItAsksFor() {
        assertEquals(7, given(CAR, 7), 1e-9);
        assertEquals(20, given(CAR.withAntiLock(false), 20));
    }

    /**
     * With the front held back, m·d = μ·m·(g·b + d·h)/L + (1 − β)·m·P by the moments about the rear axle: the rear
     * takes its share, and the load that it moves helps the front.
     */
    @Test
    void theAxleThatIsNotHeldBackGoesOn() {
        double asked = 11;
        double front = HELD * Gravity.G * (2.6 - 1.22) / 2.6;
        double expected = (front + 0.2 * asked) / (1 - HELD * 0.5 / 2.6);
        assertTrue(0.8 * asked > HELD * (Gravity.G * 1.38 + 0.5 * expected) / 2.6, "the front is held back");
        assertTrue(0.2 * asked < HELD * (Gravity.G * 1.22 - 0.5 * expected) / 2.6, "the rear is not");
        assertEquals(expected, given(CAR, asked), 1e-6);
    }

    /** With both held back the car slows with the friction of all its weight, and with that of its downforce. */
    @Test
    void withBothHeldBackTheWholeWeightSlowsTheCar() {
        assertEquals(HELD * Gravity.G, given(CAR, 30), 1e-6);
        Car winged = CAR.with(new Aerodynamics(0, 1.1, 0.4, 1.2, 0));
        double downforce = 0.5 * 1.2 * (1.1 + 0.4) * 900 / CAR.chassis().mass();
        assertEquals(HELD * (Gravity.G + downforce), given(winged, 30), 1e-6);
    }
}
