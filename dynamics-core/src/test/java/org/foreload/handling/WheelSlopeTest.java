package org.foreload.handling;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.load.SampleCars;
import org.foreload.load.Wheel;
import org.foreload.load.WheelLoads;
import org.foreload.vehicle.Car;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Forces of single wheels and their slopes, against those of the equations of motion. */
class WheelSlopeTest {

    private static final double SPEED = 25;
    private static final double STEER = 0.03;
    private static final double FRONT_SLIP = -0.03;
    private static final double REAR_SLIP = -0.02;

    /** Slip to either side over which a slope is read off the forces. */
    private static final double APART = 1e-4;

    private static WheelForces motion(Car car, double brake, double front, double rear) {
        double[] x = new double[BicycleState.SIZE];
        x[BicycleState.VX] = SPEED;
        x[BicycleState.FRONT_SLIP] = front;
        x[BicycleState.REAR_SLIP] = rear;
        WheelForces wheels = new WheelForces();
        Controls controls = new Controls(STEER, brake, 0, WheelLocks.NONE, 0, 0);
        new BicycleModel(car).rates(x, 0, controls, wheels, new double[BicycleState.SIZE]);
        return wheels;
    }

    /** Braked gently, and far beyond what the wheels carry; with anti-lock brakes, and without while none locks. */
    @ParameterizedTest
    @CsvSource({"false, 4000", "true, 4000", "true, 60000"})
    void aWheelHasTheForcesOfTheEquationsOfMotion(boolean antiLock, double brake) {
        Car car = SampleCars.ROAD_CAR.withAntiLock(antiLock);
        WheelForces wheels = motion(car, brake, FRONT_SLIP, REAR_SLIP);
        WheelLoads loads = new WheelLoads(wheels.load(0), wheels.load(1), wheels.load(2), wheels.load(3));
        OperatingPoint point = point(car, brake, loads, 0);
        OperatingPoint less = point(car, brake, loads, -APART);
        OperatingPoint more = point(car, brake, loads, APART);
        for (Wheel wheel : Wheel.values()) {
            WheelSlope slope = WheelSlope.of(point, wheel);
            int i = wheel.ordinal();
            assertEquals(wheels.longitudinal(i), slope.along(), 1e-6 * wheels.load(i), wheel + " along");
            assertEquals(wheels.lateral(i), slope.across(), 1e-5 * wheels.load(i), wheel + " across");
            double rise = WheelSlope.of(more, wheel).across()
                    - WheelSlope.of(less, wheel).across();
            assertEquals(rise / (2 * APART), slope.acrossSlope(), 0.01 * wheels.load(i), wheel + " across slope");
        }
    }

    private static OperatingPoint point(Car car, double brake, WheelLoads loads, double off) {
        return new OperatingPoint(
                car, SPEED, 0, 0, STEER, brake, 0, loads, WheelLocks.NONE, FRONT_SLIP + off, REAR_SLIP + off);
    }
}
