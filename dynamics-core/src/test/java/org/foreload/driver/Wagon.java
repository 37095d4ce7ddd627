package org.foreload.driver;

import static org.foreload.bicycle.BicycleState.VX;
import static org.foreload.bicycle.BicycleState.VY;
import static org.foreload.bicycle.BicycleState.YAW_RATE;

import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Suspension;

/** A car on linear tyres without load sensitivity: an axle's lateral force is its stiffness times its slip. */
final class Wagon {

    static final double G = 9.81;
    static final double MASS = 1500;
    static final double TO_FRONT = 1.2;
    static final double TO_REAR = 1.5;
    static final double WHEELBASE = 2.7;
    static final double INERTIA = 2500;
    static final double HEIGHT = 0.5;
    static final double POWER = 150_000;

    static final double BRAKE_SHARE = 0.8;

    /** Lateral slip at which a tyre is at its peak, friction one: one over the stiffness per load. */
    static final double PEAK_SLIP = 0.05;

    /** Cornering stiffness of the axles, N/rad: of 20 N/rad for each newton of load. */
    static final double FRONT = MASS * G * TO_REAR / WHEELBASE / PEAK_SLIP;

    static final double REAR = MASS * G * TO_FRONT / WHEELBASE / PEAK_SLIP;

    /** Distance of the centre of percussion ahead of the CG, m: where a blow at the rear axle is not felt. */
    static final double PERCUSSION = INERTIA / (MASS * TO_REAR);

    private Wagon() {}

    /** The tyre with this relaxation length, m. */
    static FrictionTyre tyre(double relaxation) {
        return new FrictionTyre(new SlipCurve.Linear(), 1, 1, 0, 4000, relaxation, 1 / PEAK_SLIP, 1 / PEAK_SLIP);
    }

    /** The car with this relaxation length, m, and drag area, m². */
    static Car car(double relaxation, double dragArea, Driveline.DrivenAxle driven) {
        FrictionTyre tyre = tyre(relaxation);
        return new Car(
                "wagon",
                new Chassis(MASS, WHEELBASE, TO_FRONT, HEIGHT, INERTIA, 1.5, 1.5),
                new Suspension(0.5, 0, 0, Suspension.Response.RIGID, Suspension.Response.RIGID),
                dragArea > 0 ? new Aerodynamics(dragArea, 0, 0, 1.2, 0) : Aerodynamics.NONE,
                BRAKE_SHARE,
                new Driveline(POWER, driven),
                tyre,
                tyre);
    }

    /** Loads and forces of the car without relaxation as it moves, with straight front wheels. */
    static WheelForces wheels(double vx, double vy, double yawRate, double brakeForce) {
        return wheels(tyre(0), vx, vy, yawRate, brakeForce);
    }

    /** The same on other tyres. */
    static WheelForces wheels(Tyre tyre, double vx, double vy, double yawRate, double brakeForce) {
        return wheels(car(0, 0, Driveline.DrivenAxle.REAR).withTyres(tyre, tyre), vx, vy, yawRate, brakeForce);
    }

    /** The same of another car. */
    static WheelForces wheels(Car car, double vx, double vy, double yawRate, double brakeForce) {
        WheelForces wheels = new WheelForces();
        rates(car, vx, vy, yawRate, 0, brakeForce, wheels);
        return wheels;
    }

    /**
     * Loads of a tall car that brakes at 8 m/s² with its front wheels alone: more than g·a/h, 7.85 m/s², at which the
     * rear wheels leave the road.
     */
    static WheelForces rearInTheAir() {
        Car tall = car(0, 0, Driveline.DrivenAxle.REAR)
                .with(new Chassis(MASS, WHEELBASE, TO_FRONT, 1.5, INERTIA, 1.5, 1.5))
                .withFrontBrakeShare(1);
        return wheels(tall, 20, 0, 0, 8 * MASS);
    }

    /** Rates of the same car as it moves with its front wheels at an angle; fills the buffer. */
    static double[] rates(double vx, double vy, double yawRate, double steer, double brakeForce, WheelForces wheels) {
        return rates(car(0, 0, Driveline.DrivenAxle.REAR), vx, vy, yawRate, steer, brakeForce, wheels);
    }

    private static double[] rates(
            Car car, double vx, double vy, double yawRate, double steer, double brakeForce, WheelForces wheels) {
        double[] x = new double[BicycleState.SIZE];
        x[VX] = vx;
        x[VY] = vy;
        x[YAW_RATE] = yawRate;
        double[] rates = new double[BicycleState.SIZE];
        new BicycleModel(car).rates(x, 0, new Controls(steer, brakeForce, 0, WheelLocks.NONE, 0, 0), wheels, rates);
        return rates;
    }

    /** What a driver sees of a car that moves so, with straight front wheels. */
    static DriverView view(double station, double offset, double heading, double vx, double vy, double yawRate) {
        return view(station, offset, heading, vx, vy, yawRate, 0, 0, 0);
    }

    /** The same with the rates of the speed across and of the yaw rate, and slowing, m/s². */
    static DriverView view(
            double station,
            double offset,
            double heading,
            double vx,
            double vy,
            double yawRate,
            double lateralRate,
            double yawAcceleration,
            double deceleration) {
        double[] state = new double[BicycleState.SIZE];
        state[VX] = vx;
        state[VY] = vy;
        state[YAW_RATE] = yawRate;
        double[] rate = new double[BicycleState.SIZE];
        rate[VY] = lateralRate;
        rate[YAW_RATE] = yawAcceleration;
        DriverView view = new DriverView();
        view.where(station, offset, heading, 0);
        view.motion(state, rate, 0, deceleration);
        return view;
    }
}
