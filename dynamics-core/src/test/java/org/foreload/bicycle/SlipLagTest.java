package org.foreload.bicycle;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.foreload.load.SampleCars;
import org.foreload.tyre.FrictionTyre;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;

/** The change of coordinates against the angle between a wheel and its way, and against differences. */
class SlipLagTest {

    private static final Car CAR = SampleCars.ROAD_CAR;
    private static final int AT = 2;
    private static final double STEP = 1e-6;

    private static double[] random(Random random) {
        double[] x = new double[AT + BicycleState.SIZE];
        for (int i = 0; i < x.length; i++) {
            x[i] = random.nextDouble() - 0.5;
        }
        x[AT + BicycleState.VX] = 10 + 40 * random.nextDouble();
        x[AT + BicycleState.VY] *= 6;
        return x;
    }

    private static double slip(double[] x, boolean front, double steer) {
        double arm = front ? CAR.chassis().cgToFrontAxle() : -CAR.chassis().cgToRearAxle();
        double across = x[AT + BicycleState.VY] + arm * x[AT + BicycleState.YAW_RATE];
        return Math.tan(Math.atan2(across, x[AT + BicycleState.VX]) - (front ? steer : 0));
    }

    @Test
    void aLagIsTheDistanceFromTheTrueSlip() {
        Random random = new Random(11);
        SlipLag lag = new SlipLag(CAR);
        for (int i = 0; i < 100; i++) {
            double[] x = random(random);
            double steer = 0.4 * (random.nextDouble() - 0.5);
            double[] y = x.clone();
            lag.toLag(y, AT, steer);
            assertEquals(
                    x[AT + BicycleState.FRONT_SLIP] - slip(x, true, steer), y[AT + BicycleState.FRONT_SLIP], 1e-13);
            assertEquals(x[AT + BicycleState.REAR_SLIP] - slip(x, false, steer), y[AT + BicycleState.REAR_SLIP], 1e-13);
            lag.toSlip(y, AT, steer);
            assertArrayEquals(x, y, 1e-14);
        }
    }

    /** Along a straight line of states, a lag changes as the difference of its values says. */
    @Test
    void theRateOfALagIsItsDerivative() {
        Random random = new Random(12);
        SlipLag lag = new SlipLag(CAR);
        for (int i = 0; i < 100; i++) {
            double[] x = random(random);
            double[] rate = random(random);
            double steer = 0.4 * (random.nextDouble() - 0.5);
            double steerRate = random.nextDouble() - 0.5;
            double[] before = x.clone();
            double[] after = x.clone();
            for (int j = 0; j < x.length; j++) {
                before[j] -= STEP * rate[j];
                after[j] += STEP * rate[j];
            }
            lag.toLag(before, AT, steer - STEP * steerRate);
            lag.toLag(after, AT, steer + STEP * steerRate);
            lag.rates(x, AT, steer, steerRate, rate);
            for (int j = 0; j < x.length; j++) {
                assertEquals((after[j] - before[j]) / (2 * STEP), rate[j], 1e-6);
            }
        }
    }

    /**
     * With the rates of the model, a lag decays at speed over relaxation length, driven by what turns the true slip.
     */
    @Test
    void aLagDecaysByItself() {
        SlipLag lag = new SlipLag(CAR);
        assertEquals(30 / 0.3, lag.frontDecay(30), 1e-12);
        assertEquals(30 / 0.3, lag.rearDecay(-30), 1e-12);
    }

    @Test
    void withoutRelaxationNothingIsMoved() {
        Car car = CAR.withTyres(
                ((FrictionTyre) CAR.frontTyre()).withRelaxationLength(0),
                ((FrictionTyre) CAR.rearTyre()).withRelaxationLength(0));
        SlipLag lag = new SlipLag(car);
        double[] x = random(new Random(13));
        double[] y = x.clone();
        lag.toLag(y, AT, 0.1);
        lag.toSlip(y, AT, 0.1);
        double[] rate = x.clone();
        lag.rates(x, AT, 0.1, 0.2, rate);
        assertArrayEquals(x, y, 0);
        assertArrayEquals(x, rate, 0);
        assertEquals(0, lag.frontDecay(30) + lag.rearDecay(30), 0);
    }
}
