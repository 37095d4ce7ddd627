package org.foreload.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.conventions.InvalidValueException;
import org.foreload.tyre.BareTyre;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;

/** The two forms of the equations of motion, and the derivatives of the smooth one. */
class SmoothBicycleTest {

    private static final Car BRUSH = LimitCases.ROAD.withTyres(
            new FrictionTyre(new SlipCurve.Brush(), 1.05, 1.00, 0.08, 3600, 0.4, 15, 18),
            new FrictionTyre(new SlipCurve.Brush(), 1.08, 1.04, 0.08, 3600, 0.4, 17, 18));

    /**
     * What is asked of a wheel over what it carries, below which anti-lock brakes leave it, and above which they hold.
     */
    private static final double SURELY_FREE = 0.9;

    private static final double SURELY_HELD = 1.25;

    /** Unknowns of a car at work: all wheels on the road and rolling, slips beyond those where the brush is rounded. */
    private static double[] scene(SplittableRandom random, double hardest) {
        double slip = 0.01 + 0.06 * random.nextDouble();
        double side = random.nextBoolean() ? 1 : -1;
        boolean braking = random.nextBoolean();
        return new double[] {
            10 + 40 * random.nextDouble(),
            -2 + 4 * random.nextDouble(),
            -0.6 + 1.2 * random.nextDouble(),
            -500 + 2000 * random.nextDouble(),
            -5 + 10 * random.nextDouble(),
            side * slip,
            side * (0.01 + 0.06 * random.nextDouble()),
            -0.2 + 0.4 * random.nextDouble(),
            braking ? hardest * random.nextDouble() : 0,
            braking ? 0 : 2 * random.nextDouble()
        };
    }

    private static int[] record(SmoothBicycle smooth, Tape tape, double[] x, double grade, double banking) {
        int[] u = new int[x.length];
        for (int i = 0; i < x.length; i++) {
            u[i] = tape.input(i, x[i], 1);
        }
        smooth.evaluate(tape, u[0], u[1], u[2], u[3], u[4], u[5], u[6], u[7], u[8], u[9], grade, banking);
        return u;
    }

    /** Returns the number of wheels that anti-lock brakes held back. */
    private static int compare(Car car, double hardest, double accuracy, long seed) {
        int held = 0;
        SplittableRandom random = new SplittableRandom(seed);
        SmoothBicycle smooth = new SmoothBicycle(car);
        BicycleModel model = new BicycleModel(car);
        double mass = car.chassis().mass();
        Tape tape = new Tape(10);
        WheelForces wheels = new WheelForces();
        for (int scene = 0; scene < 500; scene++) {
            double[] x = scene(random, hardest);
            double grade = -0.1 + 0.2 * random.nextDouble();
            double banking = -0.1 + 0.2 * random.nextDouble();
            tape.restart(false);
            record(smooth, tape, x, grade, banking);
            double[] state = new double[BicycleState.SIZE];
            state[BicycleState.VX] = x[0];
            state[BicycleState.VY] = x[1];
            state[BicycleState.YAW_RATE] = x[2];
            state[BicycleState.PITCH_TRANSFER] = x[3];
            state[BicycleState.ROLL_ACCELERATION] = x[4];
            state[BicycleState.FRONT_SLIP] = x[5];
            state[BicycleState.REAR_SLIP] = x[6];
            double[] rate = new double[BicycleState.SIZE];
            model.rates(
                    state,
                    0,
                    new Controls(x[7], mass * x[8], mass * x[9], WheelLocks.NONE, grade, banking),
                    wheels,
                    rate);
            double smallest =
                    Math.min(Math.min(wheels.load(0), wheels.load(1)), Math.min(wheels.load(2), wheels.load(3)));
            boolean rolling = smallest > 0.02 * mass * 9.81;
            for (int wheel = 0; wheel < 4; wheel++) {
                double size = Math.abs(wheels.longitudinal(wheel));
                rolling &= size < 0.97 * (size + Math.max(0, wheels.lockMargin(wheel) - 1)) || size == 0;
                rolling &= x[9] == 0 || wheels.load(wheel) > 0.1 * mass * 9.81;
                if (car.antiLock() && x[8] > 0) {
                    double most = size + wheels.lockMargin(wheel) - 1;
                    double share = wheel < 2 ? car.frontBrakeShare() : 1 - car.frontBrakeShare();
                    double asked = mass * x[8] * share / 2;
                    rolling &= asked < SURELY_FREE * most || asked > SURELY_HELD * most;
                    held += asked > SURELY_HELD * most ? 1 : 0;
                }
            }
            if (!rolling) {
                continue;
            }
            assertEquals(wheels.accelerationX(), tape.value(smooth.accelerationX), accuracy, "scene " + scene);
            assertEquals(wheels.accelerationY(), tape.value(smooth.accelerationY), accuracy, "scene " + scene);
            assertEquals(rate[BicycleState.YAW_RATE], tape.value(smooth.yawAcceleration), accuracy, "scene " + scene);
            assertEquals(wheels.pitchTarget(), tape.value(smooth.pitchTarget), 1e3 * accuracy, "scene " + scene);
            assertEquals(wheels.frontLateral(), tape.value(smooth.lateral[0]), 1e3 * accuracy, "scene " + scene);
            double slipRate = x[0] / car.frontTyre().relaxationLength() * (tape.value(smooth.frontSlip) - x[5]);
            assertEquals(rate[BicycleState.FRONT_SLIP], slipRate, accuracy, "scene " + scene);
        }
        return held;
    }

    /** On brush tyres both forms are the same formulas. */
    @Test
    void bothFormsAgreeOnBrushTyres() {
        compare(BRUSH, 5, 1e-8, 11);
    }

    /** The other form reads the magic formula off a table that is held to within 1e-8 of it. */
    @Test
    void bothFormsAgreeOnMagicFormulaTyres() {
        compare(LimitCases.LIGHT, 5, 1e-5, 12);
    }

    /** Where anti-lock brakes hold a wheel back, and where they do not yet; in between one form is rounded. */
    @Test
    void bothFormsAgreeOnAntiLockBrakes() {
        assertTrue(compare(BRUSH.withAntiLock(true), 25, 1e-5, 14) > 100);
        assertTrue(compare(LimitCases.LIGHT.withAntiLock(true), 25, 1e-5, 15) > 100);
    }

    /** Slopes and curvature against differences, also where a wheel is asked for more than it has. */
    @Test
    void derivativesAreThoseOfTheValues() {
        SplittableRandom random = new SplittableRandom(13);
        for (Car car : new Car[] {BRUSH, LimitCases.LIGHT, LimitCases.LIGHT.withAntiLock(true)}) {
            SmoothBicycle smooth = new SmoothBicycle(car);
            for (int scene = 0; scene < 20; scene++) {
                double[] x = scene(random, scene % 2 == 0 ? 5 : 12);
                for (int input = 0; input < 10; input++) {
                    check(smooth, x, input);
                }
            }
        }
    }

    private static double[] slopes(SmoothBicycle smooth, double[] x, double[] curvature) {
        Tape tape = new Tape(10);
        tape.restart(true);
        record(smooth, tape, x, 0.02, 0.03);
        double[] slopes = new double[10];
        tape.gradient(smooth.yawAcceleration, 1, slopes, 0);
        tape.addGradient(smooth.accelerationX, 0.7, slopes, 0);
        tape.weigh(smooth.yawAcceleration, 1);
        tape.weigh(smooth.accelerationX, 0.7);
        tape.addCurvature(curvature);
        return slopes;
    }

    private static double value(SmoothBicycle smooth, double[] x) {
        Tape tape = new Tape(10);
        tape.restart(false);
        record(smooth, tape, x, 0.02, 0.03);
        return tape.value(smooth.yawAcceleration) + 0.7 * tape.value(smooth.accelerationX);
    }

    private static void check(SmoothBicycle smooth, double[] x, int input) {
        double step = input == 3 ? 1e-2 : 1e-6;
        double[] up = x.clone();
        double[] down = x.clone();
        up[input] += step;
        down[input] -= step;
        double[] curvature = new double[100];
        double[] slopes = slopes(smooth, x, curvature);
        double difference = (value(smooth, up) - value(smooth, down)) / (2 * step);
        assertEquals(difference, slopes[input], 1e-5 * (1 + Math.abs(difference)), "slope " + input);
        double[] above = slopes(smooth, up, new double[100]);
        double[] below = slopes(smooth, down, new double[100]);
        for (int other = 0; other < 10; other++) {
            double bend = (above[other] - below[other]) / (2 * step);
            int row = Math.max(input, other);
            int column = Math.min(input, other);
            assertEquals(
                    bend, curvature[row * 10 + column], 1e-4 * (1 + Math.abs(bend)), "bend " + input + " " + other);
        }
    }

    /** Common practice, no source: the value that is refused is the caller's own. */
    @Test
    void anotherTyreIsNamedByItsType() {
        Tyre own = BareTyre.of(LimitCases.LIGHT.frontTyre());
        Car car = LimitCases.LIGHT.withTyres(own, LimitCases.LIGHT.rearTyre());
        InvalidValueException refused = assertThrows(InvalidValueException.class, () -> new SmoothBicycle(car));
        assertEquals("front_tyre", refused.field());
        assertEquals(BareTyre.class.getName(), refused.value());
    }
}
