package org.foreload.entry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.SlipLag;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.BrakeFoot;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.DriverView;
import org.foreload.driver.LeftFoot;
import org.foreload.driver.SpeedPlan;
import org.foreload.driver.Steering;
import org.foreload.driver.Throttle;
import org.foreload.entry.EntryEquations.Foot;
import org.foreload.path.Path;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Driveline;
import org.junit.jupiter.api.Test;

/**
 * The equations over station at one state in the arc, against the kinematics of a car beside a curved line, and against
 * car, hands and feet asked one by one.
 */
class EntryEquationsTest {

    /** Drag of the engine with the throttle closed, N. */
    private static final double DRAG = 350;

    private static final Car CAR = SampleEntries.ROAD.with(new Driveline(110e3, Driveline.DrivenAxle.FRONT, DRAG));
    private static final Path PATH = SampleEntries.medium(45).path();
    private static final double MASS = 1380;
    private static final double CURVATURE = 1 / 60.0;
    private static final double STATION = 60;
    private static final double VX = 19;
    private static final double VY = -1.2;
    private static final double YAW_RATE = 0.36;
    private static final double OFFSET = 1.7;
    private static final double HEADING = 0.11;

    /** Way along the line per second: the course against the line's, and the shorter way of the inside. */
    private static final double PROGRESS = (VX * Math.cos(HEADING) - VY * Math.sin(HEADING)) / (1 - OFFSET * CURVATURE);

    private static final SpeedPlan EXIT = new SpeedPlan(new double[] {80, 285}, new double[] {22.5, 32});

    private static double[] state() {
        double[] x = new double[EntryState.SIZE];
        x[EntryState.TIME] = 7.3;
        x[EntryState.OFFSET] = OFFSET;
        x[EntryState.HEADING_ERROR] = HEADING;
        x[EntryState.VX] = VX;
        x[EntryState.VY] = VY;
        x[EntryState.YAW_RATE] = YAW_RATE;
        x[EntryState.CAR + BicycleState.PITCH_TRANSFER] = 600;
        x[EntryState.CAR + BicycleState.ROLL_ACCELERATION] = 6;
        x[EntryState.CAR + BicycleState.FRONT_SLIP] = -0.05;
        x[EntryState.CAR + BicycleState.REAR_SLIP] = -0.06;
        x[EntryState.STEER] = 0.05;
        x[EntryState.BRAKE] = 2.5;
        x[EntryState.DRIVE] = 0.4;
        return x;
    }

    private static EntryEquations equations(DriverSettings driver, Path path, BrakePlan plan) {
        return equations(driver, path, plan, EXIT);
    }

    private static EntryEquations equations(DriverSettings driver, Path path, BrakePlan plan, SpeedPlan exit) {
        EntryEquations equations = new EntryEquations(
                new BicycleModel(CAR),
                path,
                new Steering(CAR, path, driver.hands()),
                new Throttle(CAR, exit, driver.rightFoot()),
                new BrakeFoot(CAR, driver.leftFoot(), exit.speed(exit.opening()), Optional.empty()),
                driver,
                plan);
        equations.enterPiece(50, 70);
        return equations;
    }

    private static BrakePlan plan(double buildUp) {
        return Braking.of(6, buildUp, new Release(ReleaseShapes.LINEAR, 20, 100))
                .from(-100);
    }

    private static double[] perSecond(EntryEquations equations, double[] x) {
        double[] perMetre = perMetre(equations, STATION, x);
        double[] perSecond = new double[perMetre.length];
        for (int i = 0; i < perSecond.length; i++) {
            perSecond[i] = perMetre[i] * PROGRESS;
        }
        return perSecond;
    }

    /** Loads and forces, and rates per second, of the car alone. */
    private static double[] carAlone(WheelForces wheels) {
        double[] rates = new double[EntryState.SIZE];
        new BicycleModel(CAR)
                .rates(
                        state(),
                        EntryState.CAR,
                        new Controls(0.05, MASS * 2.5, MASS * 0.4, WheelLocks.NONE, 0, 0),
                        wheels,
                        rates);
        return rates;
    }

    @Test
    void theCarMovesBesideItsLine() {
        double[] rates = perSecond(equations(DriverSettings.practised(), PATH, plan(0)), state());
        assertEquals(1, rates[EntryState.TIME], 1e-12);
        assertEquals(VX * Math.sin(HEADING) + VY * Math.cos(HEADING), rates[EntryState.OFFSET], 1e-12);
        assertEquals(YAW_RATE - CURVATURE * PROGRESS, rates[EntryState.HEADING_ERROR], 1e-12);
    }

    /** But for the slips, in whose place the equations have their lags. */
    @Test
    void theCarIsThatOfTheModel() {
        double[] alone = carAlone(new WheelForces());
        double[] rates = perSecond(equations(DriverSettings.practised(), PATH, plan(0)), state());
        new SlipLag(CAR).rates(state(), EntryState.CAR, 0.05, rates[EntryState.STEER], alone);
        for (int i = EntryState.CAR; i < EntryState.STEER; i++) {
            assertEquals(alone[i], rates[i], 1e-9 * Math.max(1, Math.abs(alone[i])), "state " + i);
        }
    }

    /**
     * The wheels turn to what the hands want with their lag, and no faster than their rate: rate·tanh(gap/(lag·rate)).
     * Here nearly on the line, where the front axle is not full and the hands feel how much the car slows.
     */
    @Test
    void theHandsTurnTheWheelsTowardsWhatTheyWant() {
        double heading = 0.06;
        double[] x = state();
        x[EntryState.OFFSET] = 0;
        x[EntryState.HEADING_ERROR] = heading;
        WheelForces wheels = new WheelForces();
        double[] alone = carAlone(wheels);
        DriverSettings driver = DriverSettings.practised();
        double slowing = -(wheels.accelerationX() * VX + wheels.accelerationY() * VY) / Math.hypot(VX, VY);
        double wanted = hands(driver, heading, alone, slowing, wheels);
        assertTrue(Math.abs(wanted - hands(driver, heading, alone, slowing + 0.1, wheels)) > 1e-5, "the axle is full");
        double rate = 1.2 * Math.tanh((wanted - 0.05) / (0.06 * 1.2));
        double progress = VX * Math.cos(heading) - VY * Math.sin(heading);
        assertEquals(rate, perMetre(equations(driver, PATH, plan(0)), STATION, x)[EntryState.STEER] * progress, 1e-12);
    }

    private static double hands(
            DriverSettings driver, double heading, double[] rates, double slowing, WheelForces wheels) {
        return new Steering(CAR, PATH, driver.hands()).angle(view(0, heading, rates, slowing), wheels);
    }

    /** What the driver sees of the car of {@link #state()} at this place beside the line. */
    private static DriverView view(double offset, double heading, double[] rates, double slowing) {
        DriverView view = new DriverView();
        view.where(STATION, offset, heading, 0.05);
        view.motion(state(), rates, EntryState.CAR, slowing);
        return view;
    }

    /** Half way through the release, 3 m/s² are asked for; with the brake lag of 0.04 s, and the throttle closed. */
    @Test
    void aBrakingFootFollowsThePlan() {
        EntryEquations equations = equations(DriverSettings.practised(), PATH, plan(0));
        equations.foot(Foot.BRAKING, 3);
        double[] rates = perSecond(equations, state());
        assertEquals((3 - 2.5) / 0.04, rates[EntryState.BRAKE], 1e-9);
        assertEquals(drive(-DRAG), rates[EntryState.DRIVE], 1e-9);
    }

    /** A quarter of a second after it came down, a foot that builds up over half a second asks for half. */
    @Test
    void theBuildUpRunsFromWhenTheFootCameDown() {
        EntryEquations equations = equations(DriverSettings.practised(), PATH, plan(0.5));
        equations.foot(Foot.BRAKING, 7.3 - 0.25);
        double wanted = plan(0.5).demand(STATION, 0.25);
        assertTrue(wanted > 0 && wanted < 3);
        assertEquals((wanted - 2.5) / 0.04, perSecond(equations, state())[EntryState.BRAKE], 1e-9);
    }

    /** A driver who never brakes below 0.7 of 22.5 m/s, at 19 m/s: x = v/15.75 − 1, and 3x² − 2x³ of the plan. */
    @Test
    void aCarefulFootFadesThePlanOut() {
        EntryEquations equations =
                equations(DriverSettings.practised().with(LeftFoot.practised().withSlowestBraking(0.7)), PATH, plan(0));
        equations.foot(Foot.BRAKING, 3);
        double x = Math.hypot(VX, VY) / (0.7 * 22.5) - 1;
        assertEquals(
                (3 * (3 * x * x - 2 * x * x * x) - 2.5) / 0.04, perSecond(equations, state())[EntryState.BRAKE], 1e-9);
    }

    /** The throttle is flat out, closed while braking and coasting, or what the way out leaves for it. */
    @Test
    void theThrottleFootIsThatOfTheDriver() {
        WheelForces wheels = new WheelForces();
        double[] alone = carAlone(wheels);
        double speed = Math.hypot(VX, VY);
        DriverSettings driver = DriverSettings.practised();
        // Before the corner opens and close to the speed aimed for, the plan decides; the flat foot has all of the
        // engine.
        SpeedPlan exitPlan = new SpeedPlan(new double[] {80, 285}, new double[] {19.2, 25});
        Throttle throttle = new Throttle(CAR, exitPlan, driver.rightFoot());
        EntryEquations equations = equations(driver, PATH, plan(0), exitPlan);
        assertEquals(drive(throttle.flatOut(speed, wheels)), perSecond(equations, state())[EntryState.DRIVE], 1e-9);
        equations.foot(Foot.COASTING, 3);
        assertEquals(drive(-DRAG), perSecond(equations, state())[EntryState.DRIVE], 1e-9);
        equations.foot(Foot.BRAKING, 3);
        assertEquals(drive(-DRAG), perSecond(equations, state())[EntryState.DRIVE], 1e-9);
        equations.foot(Foot.PICKING_UP, 5);
        double slowing = -(wheels.accelerationX() * VX + wheels.accelerationY() * VY) / speed;
        DriverView view = view(OFFSET, HEADING, alone, slowing);
        Steering hands = new Steering(CAR, PATH, driver.hands());
        hands.angle(view, wheels);
        double pickUp = throttle.pickUp(view, wheels, hands);
        assertEquals(drive(pickUp), perSecond(equations, state())[EntryState.DRIVE], 1e-9);
        equations.foot(Foot.DRIVING, 6);
        double exit = throttle.exit(view, wheels, hands);
        assertEquals(drive(exit), perSecond(equations, state())[EntryState.DRIVE], 1e-9);
        double flatOut = throttle.flatOut(speed, wheels);
        assertTrue(
                0 < pickUp && pickUp < Math.min(exit, flatOut) - 100 && Math.abs(exit - flatOut) > 10,
                "nothing to tell apart: " + pickUp + ", " + exit + " and " + flatOut);
    }

    private static double[] perMetre(EntryEquations equations, double station, double[] state) {
        double[] rate = new double[equations.size()];
        equations.perMetre(station, withLags(state), new WheelForces(), rate);
        return rate;
    }

    private static double[] withLags(double[] state) {
        double[] x = state.clone();
        new SlipLag(CAR).toLag(x, EntryState.CAR, x[EntryState.STEER]);
        return x;
    }

    private static double drive(double force) {
        return (force / MASS - 0.4) / 0.10;
    }

    /** Outside its piece nothing is read: the curvature of the piece's end is that of the arc. */
    @Test
    void nothingIsReadOutsideThePiece() {
        EntryEquations equations = equations(DriverSettings.practised(), PATH, plan(0));
        equations.enterPiece(50, 60);
        assertEquals(
                perMetre(equations, 60, state())[EntryState.HEADING_ERROR],
                perMetre(equations, 200, state())[EntryState.HEADING_ERROR]);
    }

    /** Who only looks sees the wheels of the whole equations; each asking counts as one evaluation. */
    @Test
    void aLookSeesTheWheelsOfTheEquations() {
        EntryEquations equations = equations(DriverSettings.practised(), PATH, plan(0));
        assertEquals(0, equations.evaluations());
        WheelForces whole = new WheelForces();
        equations.perMetre(STATION, withLags(state()), whole, new double[equations.size()]);
        assertEquals(1, equations.evaluations());
        WheelForces looked = new WheelForces();
        equations.wheelsAt(STATION, withLags(state()), looked);
        assertEquals(2, equations.evaluations());
        WheelForces alone = new WheelForces();
        carAlone(alone);
        for (int wheel = 0; wheel < 4; wheel++) {
            assertEquals(whole.lateral(wheel), looked.lateral(wheel), 0);
            assertEquals(whole.lockMargin(wheel), looked.lockMargin(wheel), 0);
            assertEquals(alone.lateral(wheel), looked.lateral(wheel), 1e-9);
            assertEquals(alone.longitudinal(wheel), looked.longitudinal(wheel), 1e-9);
        }
    }
}
