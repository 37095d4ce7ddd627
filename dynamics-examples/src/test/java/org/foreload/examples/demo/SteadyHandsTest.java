package org.foreload.examples.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.foreload.bicycle.BicycleState;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.SpeedPlan;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.entry.Outcome;
import org.foreload.entry.SimulationSettings;
import org.foreload.handling.Trim;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.strategy.CornerStudy;
import org.foreload.trace.Trace;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The driver over time, in the three demo cars: a wiggle dies down, a steady bend is held with a steady wheel, and a
 * hard entry into the fast corner is still held on the straight after it.
 */
class SteadyHandsTest {

    private static final double G = 9.81;

    /** Yaw rate, rad/s, below which there is nothing left to die down: a fiftieth of a degree per second. */
    private static final double STILL = 3.5e-4;

    /** Length of a spiral of the wiggle in time, s: a half turn of the wheel to each side in about two seconds. */
    private static final double WIGGLE = 0.4;

    private static Car car(String name) {
        return Demos.car("--demo-car", name).value();
    }

    /** A driver who holds a speed on a line that begins with a straight. */
    private static EntryResult drive(Car car, double speed, SegmentPath path, double tolerance) {
        double start = path.start();
        BrakePlan touch = Braking.of(0.01, 0, new Release(ReleaseShapes.LINEAR, start + 2, start + 3))
                .from(start + 1);
        // The throttle opens for good where the plan of the exit begins: at the end of the line. Until then the speed
        // is held.
        SpeedPlan held = new SpeedPlan(new double[] {path.end() - 1, path.end()}, new double[] {speed, speed});
        return new EntrySimulator(
                        car,
                        new Corner("steady", speed, path),
                        DriverSettings.practised(),
                        held,
                        new SimulationSettings(tolerance, 1))
                .run(touch);
    }

    static Stream<Arguments> wiggles() {
        return Demos.CARS.stream()
                .flatMap(car ->
                        Stream.of(30.0, 40.0, 50.0, 55.0, 60.0, 67.5, 75.0).map(speed -> Arguments.of(car, speed)));
    }

    /** Left and right with 0.15 g, then straight on for six seconds: each second leaves less than half. */
    @ParameterizedTest
    @MethodSource("wiggles")
    void aWiggleHalvesEachSecond(String name, double speed) {
        double radius = speed * speed / (0.15 * G);
        double length = WIGGLE * speed;
        SegmentPath path = SegmentPath.of(
                100,
                List.of(
                        Segment.spiralIn(length, radius, Turn.LEFT),
                        Segment.spiralOut(length, radius, Turn.LEFT),
                        Segment.spiralIn(length, radius, Turn.RIGHT),
                        Segment.spiralOut(length, radius, Turn.RIGHT)),
                6 * speed,
                10);
        EntryResult run = drive(car(name), speed, path, 1e-6);
        assertEquals(Outcome.MADE_IT, run.outcome());
        Trace trace = run.profile().orElseThrow();
        double over = 4 * length;
        List<Double> most = new ArrayList<>();
        double since = Double.NaN;
        for (int row = 0; row < trace.rows(); row++) {
            if (trace.column("s_m").at(row) >= over) {
                double time = trace.column("time_s").at(row);
                since = Double.isNaN(since) ? time : since;
                int second = (int) (time - since);
                while (most.size() <= second) {
                    most.add(0.0);
                }
                most.set(
                        second,
                        Math.max(
                                most.get(second),
                                Math.abs(trace.column("yaw_rate_rad_per_s").at(row))));
            }
        }
        assertTrue(most.size() >= 5 && most.get(0) > 5 * STILL, "no wiggle to die down: " + most);
        for (int second = 1; second < most.size(); second++) {
            assertTrue(
                    most.get(second) <= Math.max(STILL, most.get(second - 1) / 2), "second " + second + " of " + most);
        }
    }

    static Stream<Arguments> bends() {
        return Demos.CARS.stream()
                .flatMap(car -> Stream.of(60.0, 100.0, 150.0)
                        .flatMap(radius ->
                                Stream.of(1e-5, 1e-8).map(tolerance -> Arguments.of(car, radius, tolerance))));
    }

    /** A round bend at nine tenths of the front axle: from two seconds on the wheel stays within 0.2° of its mean. */
    @ParameterizedTest
    @MethodSource("bends")
    void onASteadyBendTheWheelIsSteady(String name, double radius, double tolerance) {
        Car car = car(name);
        double speed = speedFor(car, radius, 0.9);
        SegmentPath path = SegmentPath.of(
                100,
                List.of(
                        Segment.spiralIn(Math.max(40, 1.5 * speed), radius, Turn.LEFT),
                        Segment.arc(8 * speed, radius, Turn.LEFT)),
                20,
                10);
        EntryResult run = drive(car, speed, path, tolerance);
        Trace trace = run.profile().orElseThrow();
        double bend = Math.max(40, 1.5 * speed);
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        double use = 0;
        for (int row = 0; row < trace.rows(); row++) {
            double s = trace.column("s_m").at(row);
            if (s > bend + 2 * speed && s < bend + 7.5 * speed) {
                least = Math.min(least, trace.column("steer_deg").at(row));
                most = Math.max(most, trace.column("steer_deg").at(row));
                use = Math.max(use, trace.column("front_utilisation").at(row));
            }
        }
        assertEquals(0.9, use, 0.03);
        assertTrue((most - least) / 2 <= 0.2, "steers from " + least + " to " + most);
    }

    /** Speed at which a round bend takes this share of the front axle's grip. */
    private static double speedFor(Car car, double radius, double wanted) {
        double low = 1;
        double high = 150;
        for (int i = 0; i < 40; i++) {
            double middle = (low + high) / 2;
            Optional<Trim> trim = Trim.find(car, middle, 0, middle * middle / radius);
            if (trim.isPresent() && frontUse(trim.get()) <= wanted) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static double frontUse(Trim trim) {
        Tyre tyre = trim.car().frontTyre();
        double along = trim.driveForce() * trim.car().driveline().drivenAxle().frontShare() / 2;
        double force = 0;
        double most = 0;
        for (double load : new double[] {trim.loads().frontLeft(), trim.loads().frontRight()}) {
            double used = along / tyre.peakForceX(load);
            most += tyre.peakForceY(load) * Math.sqrt(1 - used * used);
            force += Math.abs(tyre.lateralForce(trim.state()[BicycleState.FRONT_SLIP], along, load));
        }
        return force / most;
    }

    /** A hard entry, late and long on the brake: made, and with a longer straight after it made as well. */
    @ParameterizedTest
    @ValueSource(doubles = {250, 350})
    void aHardEntryIsHeldOnTheWayOut(double exit) {
        Corner corner = Demos.corner("--demo-corner", "fast").value();
        SegmentPath fast = (SegmentPath) corner.path();
        Corner longer = new Corner(
                corner.name(),
                corner.approachSpeed(),
                SegmentPath.of(-fast.start(), fast.segments(), exit, fast.widthLeft(0)));
        CornerStudy study = CornerStudy.of(car("light"), longer);
        EntryResult run = study.simulator()
                .run(Braking.of(8.5, 0.25, new Release(ReleaseShapes.LINEAR, 0, 150))
                        .from(-49));
        assertEquals(Outcome.MADE_IT, run.outcome(), run.cause());
    }
}
