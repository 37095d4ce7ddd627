package org.foreload.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Test;

class LoadTransferTest {

    private static final double G = 9.81;

    /** Rounding of sums of loads of some ten thousand newtons. */
    private static final double ROUNDING = 1e-8;

    private static Car car(double mass, double wheelbase, double a, double height) {
        return SampleCars.pointMass(1).with(new Chassis(mass, wheelbase, a, height, 0, 1.5, 1.5));
    }

    /** Slides "2 Forward Vehicle Dynamics", Example 1 (after Jazar, ch. 2): 2916.5 N and 1449 N per wheel. */
    @Test
    void staticLoadsOfThePublishedExample() {
        WheelLoads loads = LoadTransfer.wheelLoads(car(890, 2.35, 0.78, 0.5), 0, 0, 0, 0, 0);
        assertEquals(2916.5, loads.frontLeft(), 0.05);
        assertEquals(2916.5, loads.frontRight(), 0.05);
        assertEquals(1449, loads.rearLeft(), 0.05);
        assertEquals(1449, loads.rearRight(), 0.05);
    }

    /** Jazar, ch. 2, Example 40: axle loads 2000 and 1800 N per wheel over 2.34 m put the CG at 1.1084 m. */
    @Test
    void staticLoadsGiveTheCentreOfGravityBack() {
        WheelLoads loads = LoadTransfer.wheelLoads(car(7600 / G, 2.34, 1.1084, 0.5), 0, 0, 0, 0, 0);
        assertEquals(2000, loads.frontLeft(), 0.1);
        assertEquals(1800, loads.rearRight(), 0.1);
    }

    /**
     * The moment about the outer wheels: a car tips at g·t/(2h) of lateral acceleration (R. N. Jazar, Vehicle Dynamics,
     * from memory), here 1.5/(2·0.5) g; tracks of 1.4 and 1.6 m count by their loads, and one without height never
     * tips.
     */
    @Test
    void aCarTipsOverItsOuterWheels() {
        Car car = car(1000, 2.5, 1.25, 0.5);
        Chassis body = car.chassis();
        Car even = car.with(new Chassis(1000, 2.5, 1.25, 0.5, body.yawInertia(), 1.5, 1.5));
        assertEquals(1.5 * G, LoadTransfer.of(even).tipping(500 * G, 500 * G), 1e-9);
        Car uneven = car.with(new Chassis(1000, 2.5, 1.25, 0.5, body.yawInertia(), 1.4, 1.6));
        assertEquals(1.45 * G, LoadTransfer.of(uneven).tipping(750 * G, 250 * G), 1e-9);
        Car flat = car.with(new Chassis(1000, 2.5, 1.25, 0, body.yawInertia(), 1.5, 1.5));
        assertEquals(Double.POSITIVE_INFINITY, LoadTransfer.of(flat).tipping(500 * G, 500 * G));
    }

    /**
     * Halliday, Resnick, Walker, ch. 12, the car that slides on four locked wheels (answers from memory; recomputed
     * 3535.71 and 1964.29 N per wheel).
     */
    @Test
    void fourLockedWheels() {
        double deceleration = 0.4 * G;
        WheelLoads loads = LoadTransfer.wheelLoads(car(11_000 / G, 4.2, 1.8, 0.75), 20, deceleration, 0, 0, 0);
        assertEquals(3.92, deceleration, 0.005);
        assertEquals(2 * 3535.71, loads.frontAxle(), 0.02);
        assertEquals(2 * 1964.29, loads.rearAxle(), 0.02);
        assertEquals(1414.29, 0.4 * loads.frontLeft(), 0.01);
        assertEquals(785.71, 0.4 * loads.rearLeft(), 0.01);
    }

    /** Jazar, eq. 2.87-2.88: m·d·h/L moves forward. */
    @Test
    void brakingMovesMassTimesDecelerationTimesHeightOverWheelbase() {
        LoadTransfer transfer = LoadTransfer.of(car(1500, 2.5, 1.2, 0.55));
        assertEquals(1500 * 8 * 0.55 / 2.5, transfer.longitudinal(8, 900, 0), ROUNDING);
    }

    /** Derived example after Milliken and Milliken, ch. 18 (from memory), without the roll-gravity term. */
    @Test
    void lateralTransferPerAxle() {
        Car car = SampleCars.pointMass(1)
                .with(new Chassis(1500, 2.7, 1.2, 0.55, 0, 1.55, 1.55))
                .with(new Suspension(0.6, 0.05, 0.12, Response.RIGID, Response.RIGID));
        LoadTransfer transfer = LoadTransfer.of(car);
        assertEquals(2393.1183, transfer.frontLateral(8), 1e-4);
        assertEquals(1864.9462, transfer.rearLateral(8), 1e-4);
        assertEquals(1500 * 8 * 0.55 / 1.55, transfer.frontLateral(8) + transfer.rearLateral(8), ROUNDING);
    }

    /** Statics: on the flat a left turn loads the right wheels. */
    @Test
    void leftTurnLoadsTheRightWheels() {
        WheelLoads loads = LoadTransfer.wheelLoads(SampleCars.ROAD_CAR, 20, 0, 5, 0, 0);
        assertTrue(loads.frontRight() > loads.frontLeft());
        assertTrue(loads.rearRight() > loads.rearLeft());
    }

    /** Statics: on a bank with tan φ = a/g the car feels no lateral force and is pressed down by √(g² + a²). */
    @Test
    void bankThatFitsTheCorner() {
        double acceleration = 4;
        double banking = Math.atan2(acceleration, G);
        assertEquals(0, RoadPlane.lateral(acceleration, 0, banking), 1e-12);
        assertEquals(Math.hypot(acceleration, G), RoadPlane.normal(acceleration, 0, banking), 1e-12);
    }

    /** Statics: parked on a hill, m·g·sin γ·h/L moves backward and the loads sum to m·g·cos γ. */
    @Test
    void parkedUphill() {
        double grade = 0.1;
        WheelLoads loads = LoadTransfer.wheelLoads(car(1500, 2.5, 1.25, 0.5), 0, 0, 0, grade, 0);
        double moved = 1500 * G * Math.sin(grade) * 0.5 / 2.5;
        assertEquals(2 * moved, loads.rearAxle() - loads.frontAxle(), ROUNDING);
        assertEquals(1500 * G * Math.cos(grade), loads.total(), ROUNDING);
    }

    /** Statics: drag above the road lifts the front axle; with drag alone slowing, (h − h_d)·drag/L moves forward. */
    @Test
    void dragActsAtItsHeight() {
        Car car = car(1500, 2.5, 1.25, 0.5).with(new Aerodynamics(1, 0, 0, 1.2, 0.8));
        double drag = 0.5 * 1.2 * 1600;
        WheelLoads loads = LoadTransfer.wheelLoads(car, 40, drag / 1500, 0, 0, 0);
        assertEquals(2 * drag * (0.5 - 0.8) / 2.5, loads.frontAxle() - loads.rearAxle(), ROUNDING);
    }

    @Test
    void liftedWheelsAreReported() {
        Car tall = SampleCars.pointMass(1).with(new Chassis(1500, 2.5, 1.25, 1.2, 0, 1.4, 1.4));
        WheelLoads loads = LoadTransfer.wheelLoads(tall, 20, 0, 9, 0, 0);
        assertEquals(Set.of(Wheel.FRONT_LEFT, Wheel.REAR_LEFT), loads.lifted());
        assertEquals(1500 * G, loads.total(), ROUNDING);
        assertTrue(LoadTransfer.wheelLoads(tall, 20, 0, 2, 0, 0).lifted().isEmpty());
    }

    @Test
    void liftedAxlePassesItsLoadOn() {
        WheelLoads loads = LoadTransfer.assemble(6000, 5000, 7000, 0, 0);
        assertEquals(11_000, loads.frontAxle());
        assertEquals(Set.of(Wheel.REAR_LEFT, Wheel.REAR_RIGHT), loads.lifted());
    }

    @Provide
    Arbitrary<Car> cars() {
        return SampleCars.possible();
    }

    @Property
    void loadsSumToWeightPlusDownforce(
            @ForAll("cars") Car car,
            @ForAll @DoubleRange(min = 0, max = 90) double speed,
            @ForAll @DoubleRange(min = -10, max = 25) double deceleration,
            @ForAll @DoubleRange(min = -25, max = 25) double lateral) {
        WheelLoads loads = LoadTransfer.wheelLoads(car, speed, deceleration, lateral, 0, 0);
        double downforce = car.aerodynamics().frontDownforce(speed * speed)
                + car.aerodynamics().rearDownforce(speed * speed);
        assertEquals(car.chassis().mass() * G + downforce, loads.total(), 1e-12 * loads.total() + ROUNDING);
        for (Wheel wheel : Wheel.values()) {
            assertTrue(loads.of(wheel) >= 0);
        }
    }

    @Property
    void mirroredMotionMirrorsTheLoads(
            @ForAll("cars") Car car,
            @ForAll @DoubleRange(min = 0, max = 90) double speed,
            @ForAll @DoubleRange(min = -10, max = 25) double deceleration,
            @ForAll @DoubleRange(min = -25, max = 25) double lateral,
            @ForAll @DoubleRange(min = -0.3, max = 0.3) double banking) {
        WheelLoads loads = LoadTransfer.wheelLoads(car, speed, deceleration, lateral, 0.05, banking);
        WheelLoads mirrored = LoadTransfer.wheelLoads(car, speed, deceleration, -lateral, 0.05, -banking);
        assertEquals(loads.frontLeft(), mirrored.frontRight(), ROUNDING);
        assertEquals(loads.frontRight(), mirrored.frontLeft(), ROUNDING);
        assertEquals(loads.rearLeft(), mirrored.rearRight(), ROUNDING);
        assertEquals(loads.rearRight(), mirrored.rearLeft(), ROUNDING);
    }

    /**
     * Balance of roll moments: what moves across both axles, times track, is m·a·h whatever the roll stiffness split.
     */
    @Property
    void rollMomentsBalance(@ForAll("cars") Car car, @ForAll @DoubleRange(min = -20, max = 20) double lateral) {
        LoadTransfer transfer = LoadTransfer.of(car);
        Chassis chassis = car.chassis();
        double moment = transfer.frontLateral(lateral) * chassis.frontTrack()
                + transfer.rearLateral(lateral) * chassis.rearTrack();
        assertEquals(chassis.mass() * lateral * chassis.cgHeight(), moment, ROUNDING);
    }
}
