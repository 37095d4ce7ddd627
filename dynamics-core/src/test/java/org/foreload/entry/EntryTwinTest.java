package org.foreload.entry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.Gravity;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.DriverView;
import org.foreload.driver.SpeedPlan;
import org.foreload.driver.Steering;
import org.foreload.driver.Throttle;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.trace.Trace;
import org.foreload.vehicle.Car;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The readable twin of the simulator: the equations over station in plain words, with the slip that the tyres feel as a
 * state of its own, followed by an integrator of Hipparchus. {@link EntryEquations}, with its lags, and the exponential
 * rule under it must come to the same. The car's equations have a twin of their own.
 */
class EntryTwinTest {

    private static final SimulationSettings FINE = new SimulationSettings(1e-10, 1);

    /** Both integrate so finely that what is left between them is theirs together, in s, m, m/s and rad/s. */
    private static final double AGREEMENT = 2e-6;

    static Stream<Arguments> cases() {
        return Stream.of(
                Arguments.of(
                        SampleEntries.ROAD,
                        SampleEntries.medium(45),
                        Braking.of(6, 0.25, new Release(ReleaseShapes.LINEAR, -10, 25))
                                .from(-130),
                        new SpeedPlan(new double[] {80, 285}, new double[] {22.5, 32})),
                Arguments.of(
                        SampleEntries.LIGHT,
                        SampleEntries.medium(45),
                        Braking.of(8, 0.25, new Release(ReleaseShapes.SMOOTH, -5, 40))
                                .from(-115)
                                .withPickUp(50),
                        new SpeedPlan(new double[] {80, 285}, new double[] {25, 38})),
                Arguments.of(
                        SampleEntries.WINGED,
                        SampleEntries.hairpin(50),
                        Braking.of(8, 0.25, new Release(ReleaseShapes.PROGRESSIVE, -5, 10))
                                .from(-168),
                        new SpeedPlan(new double[] {40, 188}, new double[] {13.5, 32})));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void theSimulatorFollowsThePlainEquations(Car car, Corner corner, BrakePlan plan, SpeedPlan exit) {
        DriverSettings driver = DriverSettings.practised();
        EntryResult run = new EntrySimulator(car, corner, driver, exit, FINE).run(plan);
        assertTrue(run.made() && run.lockReserve() > 0, run.cause());
        Trace profile = run.profile().orElseThrow();
        double[] rows = profile.column("s_m").values();
        Plain plain = new Plain(car, corner, driver, plan, exit);
        double[] joints = plain.joints();
        double[] x = plain.start();
        for (int i = 0; i + 1 < joints.length; i++) {
            plain.enter(joints[i], joints[i + 1], x);
            x = plain.follow(joints[i], x, joints[i + 1]);
            int row = Arrays.binarySearch(rows, joints[i + 1]);
            String where = "at s = " + joints[i + 1];
            assertTrue(row >= 0, where);
            assertEquals(x[EntryState.TIME], value(profile, "time_s", row), AGREEMENT, where);
            assertEquals(x[EntryState.OFFSET], value(profile, "offset_m", row), AGREEMENT, where);
            assertEquals(x[EntryState.YAW_RATE], value(profile, "yaw_rate_rad_per_s", row), AGREEMENT, where);
            assertEquals(Math.toDegrees(x[EntryState.STEER]), value(profile, "steer_deg", row), 1e-4, where);
            assertEquals(
                    Math.hypot(x[EntryState.VX], x[EntryState.VY]),
                    value(profile, "speed_mps", row),
                    10 * AGREEMENT,
                    where);
            assertEquals(
                    x[EntryState.CAR + BicycleState.REAR_SLIP], value(profile, "rear_slip", row), AGREEMENT, where);
        }
        assertEquals(x[EntryState.TIME], run.time(), AGREEMENT);
    }

    private static double value(Trace profile, String column, int row) {
        return profile.column(column).values()[row];
    }

    /** Car, driver and line, one formula after the other. */
    private static final class Plain implements OrdinaryDifferentialEquation {

        private final BicycleModel model;
        private final Path path;
        private final double approachSpeed;
        private final double mass;
        private final DriverSettings driver;
        private final BrakePlan plan;
        private final Steering steering;
        private final Throttle throttle;
        private final SpeedPlan exit;
        private double pieceStart;
        private double pieceEnd;
        private double timeOfBrake = Double.NaN;

        Plain(Car car, Corner corner, DriverSettings driver, BrakePlan plan, SpeedPlan exit) {
            this.model = new BicycleModel(car);
            this.path = corner.path();
            this.approachSpeed = corner.approachSpeed();
            this.mass = car.chassis().mass();
            this.driver = driver;
            this.plan = plan;
            this.steering = new Steering(car, path, driver.hands());
            this.throttle = new Throttle(car, exit, driver.rightFoot());
            this.exit = exit;
        }

        /** Stations between which nothing jumps. */
        double[] joints() {
            DoubleStream own =
                    DoubleStream.of(path.start(), plan.brakePoint(), 0, plan.drivenFrom(), exit.opening(), path.end());
            DoubleStream drawn = DoubleStream.concat(
                    DoubleStream.of(path.kinks()),
                    DoubleStream.of(plan.release().kinks()));
            return DoubleStream.concat(own, drawn).sorted().distinct().toArray();
        }

        /** Straight ahead and flat out, the load settled. */
        double[] start() {
            double[] x = new double[EntryState.SIZE];
            x[EntryState.VX] = approachSpeed;
            enter(path.start(), path.start(), x);
            WheelForces wheels = new WheelForces();
            for (int i = 0; i < 60; i++) {
                car(path.start(), x, wheels, new double[x.length]);
                x[EntryState.DRIVE] = throttle.flatOut(approachSpeed, wheels) / mass;
                x[EntryState.CAR + BicycleState.PITCH_TRANSFER] = wheels.pitchTarget();
            }
            return x;
        }

        void enter(double from, double to, double[] x) {
            pieceStart = from;
            pieceEnd = to;
            if (from == plan.brakePoint()) {
                timeOfBrake = x[EntryState.TIME];
            }
        }

        double[] follow(double from, double[] x, double to) {
            return new DormandPrince853Integrator(1e-9, 1, 1e-11, 1e-11)
                    .integrate(this, new ODEState(from, x), to)
                    .getPrimaryState();
        }

        @Override
        public int getDimension() {
            return EntryState.SIZE;
        }

        @Override
        public double[] computeDerivatives(double station, double[] x) {
            double s = Math.max(pieceStart, Math.min(pieceEnd, station));
            // At the end of a piece the road is still that of the piece.
            double middle = (pieceStart + pieceEnd) / 2;
            double curvature = path.curvature(middle) + path.curvatureGradient(middle) * (s - middle);
            double vx = x[EntryState.VX];
            double vy = x[EntryState.VY];
            double heading = x[EntryState.HEADING_ERROR];
            double along = vx * Math.cos(heading) - vy * Math.sin(heading);
            double progress = along / (1 - x[EntryState.OFFSET] * curvature);
            double speed = Math.hypot(vx, vy);
            WheelForces wheels = new WheelForces();
            double[] rate = new double[x.length];
            car(s, x, wheels, rate);
            DriverView view = new DriverView();
            view.where(s, x[EntryState.OFFSET], heading, x[EntryState.STEER]);
            view.slope(Gravity.G * Math.sin(path.grade(s)));
            view.motion(x, rate, EntryState.CAR, -(wheels.accelerationX() * vx + wheels.accelerationY() * vy) / speed);
            double wanted = steering.angle(view, wheels);
            boolean before = middle < plan.brakePoint();
            boolean braking = !before && middle < plan.release().end();
            boolean pickedUp = middle > plan.drivenFrom();
            boolean open = pickedUp && middle > exit.opening();
            double brake = braking ? plan.demand(s, x[EntryState.TIME] - timeOfBrake) : 0;
            double drive = before
                    ? throttle.flatOut(speed, wheels)
                    : open
                            ? throttle.exit(view, wheels, steering)
                            : pickedUp ? throttle.pickUp(view, wheels, steering) : throttle.closed();
            double quickest = driver.hands().rate();
            double gap = wanted - x[EntryState.STEER];
            rate[EntryState.TIME] = 1;
            rate[EntryState.OFFSET] = vx * Math.sin(heading) + vy * Math.cos(heading);
            rate[EntryState.HEADING_ERROR] = x[EntryState.YAW_RATE] - curvature * progress;
            rate[EntryState.STEER] = quickest * Math.tanh(gap / (driver.hands().lag() * quickest));
            rate[EntryState.BRAKE] =
                    (brake - x[EntryState.BRAKE]) / driver.leftFoot().lag();
            rate[EntryState.DRIVE] =
                    (drive / mass - x[EntryState.DRIVE]) / driver.rightFoot().lag();
            for (int i = 0; i < rate.length; i++) {
                rate[i] /= progress;
            }
            return rate;
        }

        private void car(double s, double[] x, WheelForces wheels, double[] rate) {
            double brake = Math.max(0, mass * x[EntryState.BRAKE]);
            Controls controls = new Controls(
                    x[EntryState.STEER],
                    brake,
                    mass * x[EntryState.DRIVE],
                    WheelLocks.NONE,
                    path.grade(s),
                    path.banking(s));
            model.rates(x, EntryState.CAR, controls, wheels, rate);
        }
    }
}
