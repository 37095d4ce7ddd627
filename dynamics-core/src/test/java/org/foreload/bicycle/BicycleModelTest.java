package org.foreload.bicycle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.foreload.conventions.InvalidValueException;
import org.foreload.load.LoadTransfer;
import org.foreload.load.SampleCars;
import org.foreload.load.WheelLoads;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.Tyre;
import org.foreload.tyre.TyreForce;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Test;

/** The equations of motion against Newton and Euler, wheel by wheel, and against the tyre and the loads themselves. */
class BicycleModelTest {

    private static final double G = 9.81;

    /**
     * Load, N, to which a rigid body's loads and forces agree in any scene: nearly always to a millionth of this, but
     * less well where a wheel is at the edge of sliding.
     */
    private static final double AGREED = 10;

    /** The same far from that edge: less than a millionth of a wheel's load. */
    private static final double AGREED_CLOSELY = 1e-3;

    private static final Car RIGID = SampleCars.ROAD_CAR
            .with(new Aerodynamics(0.7, 0.3, 0.4, 1.2, 0.4))
            .with(new Driveline(200e3, DrivenAxle.REAR));

    private static final Car SPRUNG = RIGID.with(
                    new Suspension(0.55, 0.03, 0.06, new Response(1.5, 0.35), new Response(1.8, 0.4)))
            .with(new Driveline(200e3, DrivenAxle.ALL));

    /** A car that moves, what acts on it, and what the model makes of that. */
    private static final class Scene {
        final Car car;
        final double[] x = new double[BicycleState.SIZE];
        final double[] rate = new double[BicycleState.SIZE];
        final Controls controls;
        final WheelForces wheels = new WheelForces();

        Scene(Car car, Controls controls, double... speeds) {
            this.car = car;
            this.controls = controls;
            System.arraycopy(speeds, 0, x, 0, speeds.length);
            evaluate();
        }

        void evaluate() {
            new BicycleModel(car).rates(x, 0, controls, wheels, rate);
        }

        double vx() {
            return x[BicycleState.VX];
        }

        double vy() {
            return x[BicycleState.VY];
        }

        double yawRate() {
            return x[BicycleState.YAW_RATE];
        }

        /** Tangent of the angle at which an axle's wheels are dragged across, seen by the wheels. */
        double slip(boolean front) {
            double across = vy()
                    + (front ? car.chassis().cgToFrontAxle() : -car.chassis().cgToRearAxle()) * yawRate();
            double steer = front ? controls.steer() : 0;
            // The velocity of the axle, turned into the frame of its wheels.
            return (across * Math.cos(steer) - vx() * Math.sin(steer))
                    / (vx() * Math.cos(steer) + across * Math.sin(steer));
        }
    }

    @Provide
    Arbitrary<Scene> scenes() {
        Arbitrary<Car> cars = Arbitraries.of(RIGID, SPRUNG, withoutLag(RIGID), withoutLag(SPRUNG));
        Arbitrary<double[]> states = Combinators.combine(
                        number(10, 60),
                        number(-3, 3),
                        number(-0.6, 0.6),
                        number(-3000, 5000),
                        number(-2e4, 2e4),
                        number(-9, 9),
                        number(-30, 30))
                .as((vx, vy, yaw, pitch, pitchRate, roll, rollRate) ->
                        new double[] {vx, vy, yaw, pitch, pitchRate, roll, rollRate, 0.04 * vy / 3, -0.05 * yaw});
        Arbitrary<Controls> controls = Combinators.combine(
                        number(-0.2, 0.2),
                        number(0, 12_000),
                        number(0, 4000),
                        Arbitraries.integers().between(0, 15),
                        number(-0.1, 0.1),
                        number(-0.15, 0.15))
                .as((steer, brake, drive, locks, grade, bank) ->
                        new Controls(steer, brake, drive, new WheelLocks(locks), grade, bank));
        return Combinators.combine(cars, controls, states).as(Scene::new);
    }

    private static Arbitrary<Double> number(double low, double high) {
        return Arbitraries.doubles().between(low, high).ofScale(4);
    }

    private static Car withoutLag(Car car) {
        return car.withTyres(
                ((FrictionTyre) car.frontTyre()).withRelaxationLength(0),
                ((FrictionTyre) car.rearTyre()).withRelaxationLength(0));
    }

    /**
     * Newton and Euler for the four wheel forces, each at its own place: force over mass, and moment about the CG over
     * inertia. Gravity along the road's plane is g·sin γ backward and g·sin φ·cos γ to the left; a turn at vx·r on a
     * bank φ accelerates the car by vx·r·cos φ within that plane.
     */
    @Property
    void wheelForcesMoveTheCar(@ForAll("scenes") Scene scene) {
        Car car = scene.car;
        double steer = scene.controls.steer();
        double forceX = -0.5 * 1.2 * 0.7 * scene.vx() * scene.vx();
        double forceY = 0;
        double moment = 0;
        for (int wheel = 0; wheel < 4; wheel++) {
            boolean front = wheel < 2;
            double angle = front ? steer : 0;
            double along = scene.wheels.longitudinal(wheel);
            double across = scene.wheels.lateral(wheel);
            double bodyX = along * Math.cos(angle) - across * Math.sin(angle);
            double bodyY = along * Math.sin(angle) + across * Math.cos(angle);
            double atX = front ? car.chassis().cgToFrontAxle() : -car.chassis().cgToRearAxle();
            double atY = (wheel % 2 == 0 ? 1 : -1)
                    * (front ? car.chassis().frontTrack() : car.chassis().rearTrack())
                    / 2;
            forceX += bodyX;
            forceY += bodyY;
            moment += atX * bodyY - atY * bodyX;
        }
        double mass = car.chassis().mass();
        double grade = scene.controls.grade();
        double bank = scene.controls.banking();
        double accelerationX = forceX / mass - G * Math.sin(grade);
        double accelerationY = forceY / mass + G * Math.sin(bank) * Math.cos(grade);
        assertEquals(accelerationX, scene.wheels.accelerationX(), 1e-9);
        assertEquals(accelerationY, scene.wheels.accelerationY(), 1e-9);
        assertEquals(accelerationX + scene.yawRate() * scene.vy(), scene.rate[BicycleState.VX], 1e-9);
        assertEquals(accelerationY - scene.yawRate() * scene.vx() * Math.cos(bank), scene.rate[BicycleState.VY], 1e-9);
        assertEquals(moment / car.chassis().yawInertia(), scene.rate[BicycleState.YAW_RATE], 1e-9);
        // Moments of all forces about the contact line, with drag at its height, settle the load.
        double drag = 0.5 * 1.2 * 0.7 * scene.vx() * scene.vx();
        double forward = forceX + drag;
        double settled = (-forward * car.chassis().cgHeight()
                        + drag * (car.chassis().cgHeight() - car.aerodynamics().dragHeight()))
                / car.chassis().wheelbase();
        assertEquals(settled, scene.wheels.pitchTarget(), 1e-8);
        follows(scene, car.suspension().pitch(), BicycleState.PITCH_TRANSFER, settled);
        follows(scene, car.suspension().roll(), BicycleState.ROLL_ACCELERATION, forceY / mass);
    }

    /** A damped oscillator: ẍ = ω²·(target − x) − 2·ζ·ω·ẋ, ω = 2π·f. A rigid body has nothing to follow. */
    private static void follows(Scene scene, Response response, int at, double target) {
        if (response.rigid()) {
            assertEquals(0, scene.rate[at]);
            assertEquals(0, scene.rate[at + 1]);
            return;
        }
        double omega = 2 * Math.PI * response.frequency();
        double value = scene.x[at];
        double speed = scene.x[at + 1];
        double pull = omega * omega * (target - value) - 2 * response.dampingRatio() * omega * speed;
        assertEquals(speed, scene.rate[at]);
        assertEquals(pull, scene.rate[at + 1], 1e-9 * (1 + omega * omega * Math.abs(target - value)));
    }

    /** Relaxation: the slip that the tyre feels runs after the true one by dy/dt = (v/σ)·(tan α − y). */
    @Property
    void slipRelaxesOverItsLength(@ForAll("scenes") Scene scene) {
        double length = scene.car.frontTyre().relaxationLength();
        for (boolean front : new boolean[] {true, false}) {
            int at = front ? BicycleState.FRONT_SLIP : BicycleState.REAR_SLIP;
            double expected = length == 0 ? 0 : scene.vx() / length * (scene.slip(front) - scene.x[at]);
            assertEquals(expected, scene.rate[at], 1e-9 * (1 + Math.abs(expected)));
        }
    }

    /**
     * What each wheel gives: brake and drive force by their shares, halved between the wheels of an axle, within what
     * the tyre can carry; across, what the tyre has left; and a stopped wheel slides against its slip.
     */
    @Property
    void everyWheelGivesWhatItsTyreHas(@ForAll("scenes") Scene scene) {
        Car car = scene.car;
        for (int wheel = 0; wheel < 4; wheel++) {
            boolean front = wheel < 2;
            Tyre tyre = front ? car.frontTyre() : car.rearTyre();
            double lagged = scene.x[front ? BicycleState.FRONT_SLIP : BicycleState.REAR_SLIP];
            double slip = tyre.relaxationLength() > 0 ? lagged : scene.slip(front);
            double load = scene.wheels.load(wheel);
            double brake = scene.controls.brakeForce() * (front ? 0.66 : 0.34) / 2;
            boolean all = car.driveline().drivenAxle() == DrivenAxle.ALL;
            double asked = scene.controls.driveForce() * (all ? 0.25 : front ? 0 : 0.5) - brake;
            if (scene.controls.locks().locked(wheel)) {
                TyreForce sliding = tyre.lockedForce(scene.slip(front), load);
                assertEquals(-sliding.longitudinal(), scene.wheels.longitudinal(wheel), 1e-6);
                assertEquals(-sliding.lateral(), scene.wheels.lateral(wheel), 1e-6);
            } else {
                double most = tyre.rollingForceLimit(slip, load);
                double carried = Math.abs(asked) <= most ? asked : Math.copySign(most, asked);
                assertEquals(carried, scene.wheels.longitudinal(wheel), 1e-6);
                assertEquals(-tyre.lateralForce(slip, carried, load), scene.wheels.lateral(wheel), 1e-5 * (1 + load));
            }
        }
    }

    /**
     * Loads: for a sprung body those of its state; for a rigid one, in balance with the accelerations that the same
     * loads lead to. Each by the load model, which has its own tests. Left out is a rigid body with a wheel at its
     * limit: there forces jump with the loads, and the search for those that agree may end some newtons apart.
     */
    @Property
    void loadsFollowTheBody(@ForAll("scenes") Scene scene) {
        Assume.that(!scene.car.suspension().pitch().rigid() || awayFromTheLimit(scene.wheels));
        loadsFollowTheBody(scene, AGREED);
    }

    private static boolean awayFromTheLimit(WheelForces wheels) {
        return IntStream.range(0, 4)
                .allMatch(i -> wheels.lockMargin(i) > 0.05 * wheels.peakX(i)
                        && Math.hypot(wheels.longitudinal(i) / wheels.peakX(i), wheels.lateral(i) / wheels.peakY(i))
                                < 0.95);
    }

    /** A brisk turn in, some brake: no wheel near its limit. */
    @Test
    void farFromTheLimitLoadsAndForcesOfARigidBodyAgreeClosely() {
        Controls controls = new Controls(0.03, 3000, 0, WheelLocks.NONE, 0.02, 0.05);
        loadsFollowTheBody(new Scene(RIGID, controls, 30, -0.2, 0.15), AGREED_CLOSELY);
    }

    private static void loadsFollowTheBody(Scene scene, double agreed) {
        Car car = scene.car;
        double grade = scene.controls.grade();
        double bank = scene.controls.banking();
        double speedSquared = scene.vx() * scene.vx();
        double turning = scene.vx() * scene.yawRate();
        double normal = G * Math.cos(bank) * Math.cos(grade) + turning * Math.sin(bank);
        LoadTransfer transfer = LoadTransfer.of(car);
        boolean rigid = car.suspension().pitch().rigid();
        WheelForces found = scene.wheels;
        // Across, the tyres give what gravity on the bank does not.
        double lateral = found.accelerationY() - G * Math.sin(bank) * Math.cos(grade);
        double shift = rigid
                ? transfer.longitudinal(-found.accelerationX(), speedSquared, grade)
                : scene.x[BicycleState.PITCH_TRANSFER];
        double roll = rigid ? lateral : scene.x[BicycleState.ROLL_ACCELERATION];
        WheelLoads expected = LoadTransfer.assemble(
                transfer.frontAxle(normal, speedSquared),
                transfer.rearAxle(normal, speedSquared),
                shift,
                transfer.frontLateral(roll),
                transfer.rearLateral(roll));
        double[] loads = {expected.frontLeft(), expected.frontRight(), expected.rearLeft(), expected.rearRight()};
        for (int wheel = 0; wheel < 4; wheel++) {
            assertEquals(loads[wheel], scene.wheels.load(wheel), agreed);
        }
        WheelForces wheels = scene.wheels;
        assertEquals(expected.frontAxle(), wheels.frontAxleLoad(), agreed);
        assertEquals(expected.rearAxle(), wheels.rearAxleLoad(), agreed);
        assertEquals(wheels.lateral(0) + wheels.lateral(1), wheels.frontLateral());
        assertEquals(wheels.lateral(2) + wheels.lateral(3), wheels.rearLateral());
    }

    /**
     * The margin is what the wheel could still carry, less what is asked of it, to the newton below which no brake is
     * felt: on a straight the peak friction force less the brake force of the wheel.
     */
    @Test
    void aRollingWheelTellsWhatItCouldStillCarry() {
        Scene scene = new Scene(RIGID, new Controls(0, 8000, 0, WheelLocks.NONE, 0, 0), 30, 0, 0);
        for (int wheel = 0; wheel < 4; wheel++) {
            Tyre tyre = wheel < 2 ? RIGID.frontTyre() : RIGID.rearTyre();
            double brake = 8000 * (wheel < 2 ? 0.66 : 0.34) / 2;
            double left = tyre.peakForceX(scene.wheels.load(wheel)) - brake;
            assertEquals(left, scene.wheels.lockMargin(wheel), 1.5);
        }
    }

    /**
     * On a straight a stopped wheel turns again once the brake asks for clearly less than the friction it slides with.
     */
    @Test
    void aStoppedWheelTurnsAgainBelowTheForceThatItSlidesWith() {
        for (int wheel = 0; wheel < 4; wheel++) {
            double share = (wheel < 2 ? 0.66 : 0.34) / 2;
            WheelLocks locks = WheelLocks.NONE.with(wheel);
            // A car with a rigid body shifts its load with the brake: the sprung one, at rest, does not.
            Scene scene = new Scene(SPRUNG, new Controls(0, 20_000, 0, locks, 0, 0), 30, 0, 0);
            double pull = -scene.wheels.longitudinal(wheel);
            assertTrue(pull > 0);
            double margin = scene.wheels.lockMargin(wheel);
            assertTrue(margin > 20_000 * share - pull && margin < 20_000 * share - 0.8 * pull);
            Scene eased = new Scene(SPRUNG, new Controls(0, 0.8 * pull / share, 0, locks, 0, 0), 30, 0, 0);
            assertTrue(eased.wheels.lockMargin(wheel) < 0);
            Scene held = new Scene(SPRUNG, new Controls(0, pull / share, 0, locks, 0, 0), 30, 0, 0);
            assertTrue(held.wheels.lockMargin(wheel) > 0);
        }
    }

    /** A wheel in the air is stopped by the least brake, but not by none. */
    @Test
    void aWheelInTheAirIsStoppedByAnyBrakeButNotByNone() {
        Scene turning = new Scene(SPRUNG, new Controls(0, 0, 0, WheelLocks.NONE, 0, 0), 30, 0, 0, 0, 0, 60);
        assertEquals(0, turning.wheels.load(0));
        assertTrue(turning.wheels.lockMargin(0) > 0);
        Scene braked = new Scene(SPRUNG, new Controls(0, 20, 0, WheelLocks.NONE, 0, 0), 30, 0, 0, 0, 0, 60);
        assertTrue(braked.wheels.lockMargin(0) < 0);
        WheelLocks locks = WheelLocks.NONE.with(0);
        Scene stopped = new Scene(SPRUNG, new Controls(0, 0, 0, locks, 0, 0), 30, 0, 0, 0, 0, 60);
        assertTrue(stopped.wheels.lockMargin(0) < 0);
    }

    /** A tyre with lag feels the slip of its state, here none as yet; one without feels where its axle goes. */
    @Test
    void onlyATyreWithoutLagFeelsItsSlipAtOnce() {
        Controls coasting = new Controls(0, 0, 0, WheelLocks.NONE, 0, 0);
        Scene lagging = new Scene(SPRUNG, coasting, 30, 0.3, 0.02);
        Scene prompt = new Scene(withoutLag(SPRUNG), coasting, 30, 0.3, 0.02);
        for (int wheel = 0; wheel < 4; wheel++) {
            Tyre tyre = wheel < 2 ? SPRUNG.frontTyre() : SPRUNG.rearTyre();
            double expected = tyre.lateralForce(prompt.slip(wheel < 2), 0, prompt.wheels.load(wheel));
            assertTrue(expected > 100);
            assertEquals(0, lagging.wheels.lateral(wheel), 1e-9);
            assertEquals(-expected, prompt.wheels.lateral(wheel), 1e-6 * expected);
        }
    }

    /** The state may lie anywhere in the array, and nothing else of it is touched. */
    @Test
    void readsAndWritesFromTheIndexGiven() {
        Scene scene = new Scene(
                SPRUNG,
                new Controls(0.05, 3000, 500, WheelLocks.NONE, 0.03, 0.02),
                30,
                0.4,
                0.2,
                900,
                50,
                3,
                2,
                0.01,
                0.02);
        int shift = 3;
        double[] x = new double[BicycleState.SIZE + 2 * shift];
        double[] rate = new double[x.length];
        System.arraycopy(scene.x, 0, x, shift, BicycleState.SIZE);
        new BicycleModel(SPRUNG).rates(x, shift, scene.controls, new WheelForces(), rate);
        for (int i = 0; i < rate.length; i++) {
            boolean own = i >= shift && i < shift + BicycleState.SIZE;
            assertEquals(own ? scene.rate[i - shift] : 0, rate[i]);
        }
    }

    @Test
    void aCarWithoutYawInertiaIsRefused() {
        InvalidValueException error =
                assertThrows(InvalidValueException.class, () -> new BicycleModel(SampleCars.pointMass(1)));
        assertEquals("yaw_inertia_kg_m2", error.field());
        assertSame(RIGID, new BicycleModel(RIGID).car());
    }

    @Test
    void locksAreASetOfWheels() {
        WheelLocks locks = WheelLocks.NONE.with(1).with(3).with(3);
        assertTrue(locks.any() && !WheelLocks.NONE.any());
        for (int wheel = 0; wheel < 4; wheel++) {
            assertEquals(wheel % 2 == 1, locks.locked(wheel));
        }
        assertEquals(WheelLocks.NONE.with(3), locks.without(1));
        assertEquals(locks, locks.without(0));
    }
}
