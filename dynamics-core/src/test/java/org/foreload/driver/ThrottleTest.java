package org.foreload.driver;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.bicycle.WheelForces;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Driveline;
import org.junit.jupiter.api.Test;

/** The right foot, against force balances written out: mass times what is wanted, plus what slows the car anyway. */
class ThrottleTest {

    private static final double DRAG_AREA = 0.8;
    private static final ExitPlan EXIT = new ExitPlan(new double[] {20, 60}, new double[] {10, 20});

    private static Throttle foot(Driveline.DrivenAxle driven) {
        return new Throttle(Wagon.car(0, DRAG_AREA, driven), EXIT);
    }

    private static double drag(double speed) {
        return 0.5 * 1.2 * DRAG_AREA * speed * speed;
    }

    @Test
    void flatOutIsPowerOverSpeed() {
        WheelForces wheels = Wagon.wheels(40, 0, 0, 0);
        assertEquals(Wagon.POWER / 40, foot(Driveline.DrivenAxle.REAR).flatOut(40, wheels), 1e-9);
    }

    /** At low speed friction limits: 95 % of the driven axle's load on friction one, or of all four by quarters. */
    @Test
    void flatOutIsWhatTheDrivenWheelsCanCarry() {
        WheelForces wheels = Wagon.wheels(5, 0, 0, 0);
        double weight = Wagon.MASS * Wagon.G;
        double front = weight * Wagon.TO_REAR / Wagon.WHEELBASE;
        double rear = weight * Wagon.TO_FRONT / Wagon.WHEELBASE;
        assertEquals(0.95 * rear, foot(Driveline.DrivenAxle.REAR).flatOut(5, wheels), 1e-8);
        assertEquals(0.95 * front, foot(Driveline.DrivenAxle.FRONT).flatOut(5, wheels), 1e-8);
        assertEquals(0.95 * 2 * rear, foot(Driveline.DrivenAxle.ALL).flatOut(5, wheels), 1e-8);
        assertEquals(0.95 * rear, foot(Driveline.DrivenAxle.REAR).flatOut(0.1, wheels), 1e-8);
    }

    /** Where a driven wheel corners with 80 % of its friction, 60 % is left to drive: the friction circle. */
    @Test
    void corneringLeavesLessToDriveWith() {
        double vy = -0.8 * Wagon.PEAK_SLIP * 10;
        WheelForces wheels = Wagon.wheels(10, vy, 0, 0);
        double lighter = Math.min(wheels.load(2), wheels.load(3));
        assertEquals(0.95 * 0.6 * 2 * lighter, foot(Driveline.DrivenAxle.REAR).flatOut(10, wheels), 1e-6);
    }

    /** Each axle has its own tyres. */
    @Test
    void aGrippierRearAxleDrivesMore() {
        WheelForces wheels = Wagon.wheels(5, 0, 0, 0);
        Car car = Wagon.car(0, DRAG_AREA, Driveline.DrivenAxle.REAR);
        Throttle foot =
                new Throttle(car.withTyres(car.frontTyre(), car.rearTyre().withFriction(1.1)), EXIT);
        double rear = Wagon.MASS * Wagon.G * Wagon.TO_FRONT / Wagon.WHEELBASE;
        assertEquals(0.95 * 1.1 * rear, foot.flatOut(5, wheels), 1e-8);
    }

    @Test
    void inTheAirNothingDrives() {
        assertEquals(0, foot(Driveline.DrivenAxle.REAR).flatOut(30, new WheelForces()));
    }

    /** Holding a speed takes what drag and the steered front cost; an error is mended at two per second. */
    @Test
    void holdingASpeedBalancesDragAndTheSteeredFront() {
        double speed = 25;
        WheelForces wheels = Wagon.wheels(speed, -0.2, 0, 0);
        double steer = 0.04;
        double costs = drag(speed) + wheels.frontLateral() * Math.sin(steer);
        assertTrue(wheels.frontLateral() > 1000);
        Throttle foot = foot(Driveline.DrivenAxle.REAR);
        assertEquals(costs, foot.hold(speed, speed, steer, wheels), 1e-9);
        assertEquals(costs + Wagon.MASS * 2 * 0.1, foot.hold(speed + 0.1, speed, steer, wheels), 1e-9);
        assertEquals(0, foot.hold(speed - 5, speed, steer, wheels));
        assertEquals(foot.flatOut(speed, wheels), foot.hold(speed + 50, speed, steer, wheels));
    }

    /** The plan asks for (400 − 100)/80 = 3.75 m/s²; beyond a decimetre wide the driver gives up 6 1/s² of it. */
    @Test
    void onTheWayOutThePlanIsFollowedAndWidthCostsSpeed() {
        double speed = Math.sqrt(100 + 2 * 3.75 * 10);
        WheelForces wheels = Wagon.wheels(speed, 0, 0, 0);
        Throttle foot = foot(Driveline.DrivenAxle.REAR);
        double planned = Wagon.MASS * 3.75 + drag(speed);
        assertEquals(planned, foot.exit(30, 0, speed, 0, wheels), 1e-6);
        assertEquals(planned, foot.exit(30, 0.1, speed, 0, wheels), 1e-6);
        assertEquals(planned, foot.exit(30, -3, speed, 0, wheels), 1e-6);
        assertEquals(planned - Wagon.MASS * 6 * 0.2, foot.exit(30, 0.3, speed, 0, wheels), 1e-6);
        double slower = speed - 0.05;
        assertEquals(Wagon.MASS * (3.75 + 2 * 0.05) + drag(slower), foot.exit(30, 0, slower, 0, wheels), 1e-6);
    }
}
