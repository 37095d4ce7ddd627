package org.foreload.bicycle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.util.Random;
import java.util.stream.Stream;
import org.foreload.load.SampleCars;
import org.foreload.tyre.BareTyre;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The quick equations against the plain ones, over random cars in random motion, and what they promise besides. */
class BicycleTwinTest {

    private static final long SEED = 20_260_101;

    private static final int SCENES = 1500;

    /** The same for a tyre whose peaks have to be searched: a hundred times slower. */
    private static final int BARE_SCENES = 100;

    /** Part by which sums of a dozen terms may round apart. */
    private static final double ROUNDING = 1e-11;

    /**
     * The same where loads and forces of a rigid body were searched: they agree to 1e-6 N and 1e-9 m/s², and a wheel
     * near its limit makes a thousand times as much of that.
     */
    private static final double SEARCHED = 1e-6;

    /**
     * What a rounded load or brake force makes of the lateral force of a wheel at its limit: its root. A tyre without a
     * closed form knows its limit no better anywhere.
     */
    private static final double AT_THE_EDGE = 1e-7;

    /** The lateral shares of two wheels with the Magic Formula come off a table that is good to a few millionths. */
    private static final double OFF_A_TABLE = 5e-6;

    private static final Response SPRUNG = new Response(1.7, 0.4);

    private static FrictionTyre tyre(SlipCurve curve, double friction, double lag) {
        return new FrictionTyre(curve, 1.1 * friction, friction, 0.1, 3600, lag, 18, 22);
    }

    static Stream<Tyre> tyres() {
        return Stream.of(
                tyre(new SlipCurve.Linear(), 1.1, 0.4),
                tyre(new SlipCurve.Brush(), 1.1, 0.4),
                tyre(new SlipCurve.Brush(), 0.9, 0),
                tyre(new SlipCurve.MagicFormula(1.4, -0.4), 1.1, 0.4),
                tyre(new SlipCurve.MagicFormula(1.8, -3), 1.2, 0),
                BareTyre.of(tyre(new SlipCurve.MagicFormula(1.4, -0.4), 1.1, 0.4)),
                BareTyre.of(tyre(new SlipCurve.Brush(), 1.1, 0.4)).withFriction(0.7));
    }

    private static Car car(Tyre tyre, Random random) {
        Response pitch = random.nextBoolean() ? SPRUNG : Response.RIGID;
        Response roll = random.nextBoolean() ? SPRUNG : Response.RIGID;
        DrivenAxle[] driven = DrivenAxle.values();
        return SampleCars.ROAD_CAR
                .withTyres(tyre, tyre.withFriction(1.03))
                .with(new Aerodynamics(0.7, 0.3, 0.5, 1.2, 0.3))
                .with(new Driveline(200e3, driven[random.nextInt(driven.length)]))
                .with(new Suspension(0.55, 0.03, 0.06, pitch, roll));
    }

    private static Controls controls(Random random) {
        boolean slopes = random.nextBoolean();
        return new Controls(
                within(random, -0.3, 0.3),
                random.nextInt(3) == 0 ? 0 : within(random, 0, 14_000),
                random.nextBoolean() ? 0 : within(random, 0, 4000),
                random.nextInt(3) == 0 ? new WheelLocks(random.nextInt(16)) : WheelLocks.NONE,
                slopes ? within(random, -0.1, 0.1) : 0,
                slopes ? within(random, -0.2, 0.2) : 0);
    }

    private static double[] state(Random random) {
        return new double[] {
            within(random, 5, 70),
            within(random, -4, 4),
            within(random, -1, 1),
            within(random, -4000, 8000),
            within(random, -3e4, 3e4),
            within(random, -14, 14),
            within(random, -40, 40),
            within(random, -0.2, 0.2),
            within(random, -0.2, 0.2)
        };
    }

    private static double within(Random random, double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /** The same rates, loads and forces in every scene; of rigid bodies, in those where loads and forces do agree. */
    @ParameterizedTest
    @MethodSource("tyres")
    void theyAreThePlainEquations(Tyre tyre) {
        Random random = new Random(SEED);
        WheelForces wheels = new WheelForces();
        double[] rate = new double[BicycleState.SIZE];
        int compared = 0;
        int scenes = tyre instanceof FrictionTyre ? SCENES : BARE_SCENES;
        for (int scene = 0; scene < scenes; scene++) {
            Car car = car(tyre, random);
            Controls controls = controls(random);
            double[] x = state(random);
            boolean searched =
                    car.suspension().pitch().rigid() || car.suspension().roll().rigid();
            boolean bare = !(tyre instanceof FrictionTyre);
            if (bare && searched) {
                continue;
            }
            PlainBicycle plain = new PlainBicycle(car, controls, x);
            new BicycleModel(car).rates(x, 0, controls, wheels, rate);
            boolean edge = nearLimit(plain, wheels);
            if (searched && (plain.apart > 1e-7 || edge)) {
                continue;
            }
            compared++;
            double part = searched ? SEARCHED : edge || bare ? AT_THE_EDGE : ROUNDING;
            if (offATable(tyre)) {
                part = Math.max(part, OFF_A_TABLE);
            }
            for (int wheel = 0; wheel < 4; wheel++) {
                assertEquals(plain.load[wheel], wheels.load(wheel), part * 1e4);
                assertEquals(plain.force[wheel][0], wheels.longitudinal(wheel), part * 1e4);
                assertEquals(plain.force[wheel][1], wheels.lateral(wheel), part * 1e4);
            }
            for (int i = 0; i < rate.length; i++) {
                double size = i == BicycleState.PITCH_TRANSFER_RATE ? 1e6 : i >= BicycleState.FRONT_SLIP ? 1e3 : 1e2;
                assertEquals(plain.rate[i], rate[i], part * (size + Math.abs(plain.rate[i])));
            }
        }
        assertTrue(compared > scenes / 6, compared + " scenes");
    }

    private static boolean offATable(Tyre tyre) {
        return tyre instanceof FrictionTyre friction && friction.curve() instanceof SlipCurve.MagicFormula;
    }

    /** Whether a wheel uses all but a twentieth of its friction, or of what it can carry along itself, or more. */
    private static boolean nearLimit(PlainBicycle plain, WheelForces wheels) {
        for (int wheel = 0; wheel < 4; wheel++) {
            double along = wheels.longitudinal(wheel) / wheels.peakX(wheel);
            double across = wheels.lateral(wheel) / wheels.peakY(wheel);
            boolean far =
                    Math.hypot(along, across) < 0.95 && Math.abs(wheels.longitudinal(wheel)) < 0.95 * plain.most[wheel];
            if (!far) {
                return true;
            }
        }
        return false;
    }

    /** What the wheels' buffer says of peaks is what the tyre says. */
    @ParameterizedTest
    @MethodSource("tyres")
    void peaksAreThoseOfTheTyreAtItsLoad(Tyre tyre) {
        Random random = new Random(SEED);
        WheelForces wheels = new WheelForces();
        Car car = car(tyre, random);
        for (int locks : new int[] {0, 15}) {
            Controls controls = new Controls(0.02, 4000, 0, new WheelLocks(locks), 0, 0);
            new BicycleModel(car).rates(state(random), 0, controls, wheels, new double[BicycleState.SIZE]);
            for (int wheel = 0; wheel < 4; wheel++) {
                Tyre on = wheel < 2 ? car.frontTyre() : car.rearTyre();
                assertEquals(on.peakForceX(wheels.load(wheel)), wheels.peakX(wheel), 1e-9);
                assertEquals(on.peakForceY(wheels.load(wheel)), wheels.peakY(wheel), 1e-9);
            }
        }
    }

    /** Left and right exchanged, every number is the same to the last bit, with its sign where it has a side. */
    @ParameterizedTest
    @MethodSource("tyres")
    void theMirrorImageIsExact(Tyre tyre) {
        Random random = new Random(SEED);
        WheelForces wheels = new WheelForces();
        WheelForces mirrored = new WheelForces();
        double[] rate = new double[BicycleState.SIZE];
        double[] back = new double[BicycleState.SIZE];
        int[] sided = {
            BicycleState.VY,
            BicycleState.YAW_RATE,
            BicycleState.ROLL_ACCELERATION,
            BicycleState.ROLL_ACCELERATION_RATE,
            BicycleState.FRONT_SLIP,
            BicycleState.REAR_SLIP
        };
        for (int scene = 0; scene < 300; scene++) {
            Car car = car(tyre, random);
            Controls there = controls(random);
            int mask = there.locks().mask();
            Controls here = new Controls(
                    -there.steer(),
                    there.brakeForce(),
                    there.driveForce(),
                    new WheelLocks((mask & 5) << 1 | (mask & 10) >> 1),
                    there.grade(),
                    -there.banking());
            double[] x = state(random);
            double[] y = x.clone();
            for (int i : sided) {
                y[i] = -y[i];
            }
            BicycleModel model = new BicycleModel(car);
            model.rates(x, 0, there, wheels, rate);
            model.rates(y, 0, here, mirrored, back);
            for (int i : sided) {
                back[i] = -back[i];
            }
            for (int i = 0; i < rate.length; i++) {
                assertEquals(rate[i], back[i], 0);
            }
            for (int wheel = 0; wheel < 4; wheel++) {
                assertEquals(wheels.load(wheel), mirrored.load(wheel ^ 1), 0);
                assertEquals(wheels.longitudinal(wheel), mirrored.longitudinal(wheel ^ 1), 0);
                assertEquals(wheels.lateral(wheel), -mirrored.lateral(wheel ^ 1), 0);
                assertEquals(wheels.lockMargin(wheel), mirrored.lockMargin(wheel ^ 1), 0);
            }
        }
    }

    /** A buffer that has seen other scenes leaves nothing behind. */
    @Test
    void whatWasBeforeDoesNotMatter() {
        Random random = new Random(SEED);
        WheelForces used = new WheelForces();
        Inputs inputs = new Inputs();
        double[] rate = new double[BicycleState.SIZE];
        double[] fresh = new double[BicycleState.SIZE];
        Tyre tyre = tyre(new SlipCurve.MagicFormula(1.5, -0.6), 1.1, 0.4);
        for (int scene = 0; scene < 300; scene++) {
            Car car = car(tyre, random);
            Controls controls = controls(random);
            double[] x = state(random);
            inputs.take(controls);
            new BicycleModel(car).rates(x, 0, inputs, used, rate);
            new BicycleModel(car).rates(x, 0, controls, new WheelForces(), fresh);
            for (int i = 0; i < rate.length; i++) {
                assertEquals(fresh[i], rate[i], 0);
            }
        }
    }

    /** Ten thousand evaluations make no objects: so few bytes that they are those of the measurement. */
    @Test
    void theyMakeNoObjects() {
        var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        Random random = new Random(SEED);
        Tyre tyre = tyre(new SlipCurve.MagicFormula(1.4, -0.4), 1.1, 0.4);
        BicycleModel[] models = {new BicycleModel(car(tyre, random)), new BicycleModel(car(tyre, random))};
        double[][] states = new double[64][];
        Inputs[] inputs = new Inputs[64];
        for (int i = 0; i < states.length; i++) {
            states[i] = state(random);
            states[i][BicycleState.VY] *= 0.2;
            inputs[i] = new Inputs();
            inputs[i].take(controls(random));
        }
        WheelForces wheels = new WheelForces();
        double[] rate = new double[BicycleState.SIZE];
        // The tables of the tyres are made when they are first asked for.
        models[0].rates(states[0], 0, inputs[0], wheels, rate);
        models[1].rates(states[0], 0, inputs[0], wheels, rate);
        long thread = Thread.currentThread().getId();
        long before = threads.getThreadAllocatedBytes(thread);
        for (int i = 0; i < 10_000; i++) {
            models[i & 1].rates(states[i % 64], 0, inputs[i % 64], wheels, rate);
        }
        long made = threads.getThreadAllocatedBytes(thread) - before;
        assertTrue(made < 10_000, made + " bytes");
    }
}
