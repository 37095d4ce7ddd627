package org.foreload.validation.law;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.domains.DomainContext;
import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;

/** What holds of the equations of motion in any state that a car can be in. */
@Domain(Possible.class)
@Domain(DomainContext.Global.class)
class MotionLaws {

    /**
     * The search for combined slip ends at 1e-12 of the slip; near the peak of a curve the force knows the root of
     * that.
     */
    private static final double SEARCH = 1e-6;

    private static double[] state(double vx, double vy, double yawRate, double pitch, double roll) {
        double[] state = new double[BicycleState.SIZE];
        state[BicycleState.VX] = vx;
        state[BicycleState.VY] = vy;
        state[BicycleState.YAW_RATE] = yawRate;
        state[BicycleState.PITCH_TRANSFER] = pitch;
        state[BicycleState.ROLL_ACCELERATION] = roll;
        state[BicycleState.FRONT_SLIP] = (vy + yawRate) / vx;
        state[BicycleState.REAR_SLIP] = (vy - yawRate) / vx;
        return state;
    }

    private static double[] rates(Car car, double[] state, Controls controls, WheelForces wheels) {
        double[] rate = new double[BicycleState.SIZE];
        new BicycleModel(car).rates(state, 0, controls, wheels, rate);
        return rate;
    }

    @Property(seed = Possible.SEED)
    void loadsSumToWeightAndDownforce(
            @ForAll Car car,
            @ForAll @DoubleRange(min = 5, max = 60) double speed,
            @ForAll @DoubleRange(min = -2, max = 2) double vy,
            @ForAll @DoubleRange(min = -0.8, max = 0.8) double yawRate,
            @ForAll @DoubleRange(min = -1, max = 1) double pitch,
            @ForAll @DoubleRange(min = -12, max = 12) double roll,
            @ForAll @DoubleRange(min = 0, max = 12) double brake) {
        double mass = car.chassis().mass();
        WheelForces wheels = new WheelForces();
        rates(
                car,
                state(speed, vy, yawRate, pitch * mass, roll),
                new Controls(0.02, brake * mass, 0, WheelLocks.NONE, 0, 0),
                wheels);
        double air = car.aerodynamics().frontDownforce(speed * speed)
                + car.aerodynamics().rearDownforce(speed * speed);
        assertEquals(mass * 9.81 + air, wheels.frontAxleLoad() + wheels.rearAxleLoad(), 1e-8 * mass);
        for (int wheel = 0; wheel < 4; wheel++) {
            assertTrue(wheels.load(wheel) >= 0);
        }
    }

    @Property(seed = Possible.SEED)
    void mirrored(
            @ForAll Car car,
            @ForAll @DoubleRange(min = 5, max = 60) double speed,
            @ForAll @DoubleRange(min = -2, max = 2) double vy,
            @ForAll @DoubleRange(min = -0.8, max = 0.8) double yawRate,
            @ForAll @DoubleRange(min = -0.2, max = 0.2) double steer,
            @ForAll @DoubleRange(min = 0, max = 12) double brake,
            @ForAll @DoubleRange(min = -0.1, max = 0.1) double banking) {
        double force = brake * car.chassis().mass();
        double[] left = rates(
                car,
                state(speed, vy, yawRate, 500, 3),
                new Controls(steer, force, 0, WheelLocks.NONE, 0.02, banking),
                new WheelForces());
        double[] right = rates(
                car,
                state(speed, -vy, -yawRate, 500, -3),
                new Controls(-steer, force, 0, WheelLocks.NONE, 0.02, -banking),
                new WheelForces());
        assertEquals(left[BicycleState.VX], right[BicycleState.VX], SEARCH);
        assertEquals(left[BicycleState.VY], -right[BicycleState.VY], SEARCH);
        assertEquals(left[BicycleState.YAW_RATE], -right[BicycleState.YAW_RATE], SEARCH);
        assertEquals(left[BicycleState.PITCH_TRANSFER_RATE], right[BicycleState.PITCH_TRANSFER_RATE], 1e-3);
        assertEquals(left[BicycleState.ROLL_ACCELERATION_RATE], -right[BicycleState.ROLL_ACCELERATION_RATE], 1e-4);
    }

    @Property(seed = Possible.SEED)
    void straightOnNothingPullsAside(
            @ForAll Car car,
            @ForAll @DoubleRange(min = 5, max = 70) double speed,
            @ForAll @DoubleRange(min = 0, max = 15) double brake,
            @ForAll @DoubleRange(min = 0, max = 5) double drive) {
        double mass = car.chassis().mass();
        double[] rate = rates(
                car,
                state(speed, 0, 0, 0, 0),
                new Controls(0, brake * mass, drive * mass, WheelLocks.NONE, 0, 0),
                new WheelForces());
        assertEquals(0, rate[BicycleState.VY], 1e-12);
        assertEquals(0, rate[BicycleState.YAW_RATE], 1e-12);
    }

    /** Newton's second law along and across the car, from the wheel forces that the model reports. */
    @Property(seed = Possible.SEED)
    void forcesMakeTheAcceleration(
            @ForAll Car car,
            @ForAll @DoubleRange(min = 5, max = 60) double speed,
            @ForAll @DoubleRange(min = -2, max = 2) double vy,
            @ForAll @DoubleRange(min = -0.8, max = 0.8) double yawRate,
            @ForAll @DoubleRange(min = -0.2, max = 0.2) double steer,
            @ForAll @DoubleRange(min = 0, max = 15) double brake) {
        double mass = car.chassis().mass();
        WheelForces w = new WheelForces();
        double[] rate = rates(
                car, state(speed, vy, yawRate, 0, 0), new Controls(steer, brake * mass, 0, WheelLocks.NONE, 0, 0), w);
        double alongFront = w.longitudinal(0) + w.longitudinal(1);
        double acrossFront = w.lateral(0) + w.lateral(1);
        double x = alongFront * Math.cos(steer)
                - acrossFront * Math.sin(steer)
                + w.longitudinal(2)
                + w.longitudinal(3)
                - car.aerodynamics().drag(speed * speed);
        double y = alongFront * Math.sin(steer) + acrossFront * Math.cos(steer) + w.lateral(2) + w.lateral(3);
        assertEquals(x / mass + yawRate * vy, rate[BicycleState.VX], 1e-9);
        assertEquals(y / mass - yawRate * speed, rate[BicycleState.VY], 1e-9);
    }

    @Property(seed = Possible.SEED)
    void noWheelLeavesItsFrictionEllipse(
            @ForAll Car car,
            @ForAll @DoubleRange(min = 5, max = 60) double speed,
            @ForAll @DoubleRange(min = -6, max = 6) double vy,
            @ForAll @DoubleRange(min = -1.5, max = 1.5) double yawRate,
            @ForAll @DoubleRange(min = -0.4, max = 0.4) double steer,
            @ForAll @DoubleRange(min = 0, max = 25) double brake) {
        double mass = car.chassis().mass();
        WheelForces w = new WheelForces();
        rates(
                car,
                state(speed, vy, yawRate, 0.5 * mass, 5),
                new Controls(steer, brake * mass, 0, WheelLocks.NONE, 0, 0),
                w);
        for (int wheel = 0; wheel < 4; wheel++) {
            var tyre = wheel < 2 ? car.frontTyre() : car.rearTyre();
            double load = w.load(wheel);
            if (load > 1) {
                double reach = Math.hypot(
                        w.longitudinal(wheel) / tyre.peakForceX(load), w.lateral(wheel) / tyre.peakForceY(load));
                // Shares come off a table that is good to a few millionths.
                assertTrue(reach <= 1 + 5e-6, () -> "reach " + reach);
            }
        }
    }

    /** Tyres without engine only take: on the flat, kinetic energy of a car without CG height never grows. */
    @Property(seed = Possible.SEED)
    void tyresOnlyTakeEnergy(
            @ForAll Car car,
            @ForAll @DoubleRange(min = 5, max = 60) double speed,
            @ForAll @DoubleRange(min = -4, max = 4) double vy,
            @ForAll @DoubleRange(min = -1, max = 1) double yawRate,
            @ForAll @DoubleRange(min = -0.3, max = 0.3) double steer,
            @ForAll @DoubleRange(min = 0, max = 15) double brake) {
        Chassis c = car.chassis();
        Car low = withoutLag(car.with(new Chassis(
                c.mass(), c.wheelbase(), c.cgToFrontAxle(), 0, c.yawInertia(), c.frontTrack(), c.rearTrack())));
        double[] rate = rates(
                low,
                state(speed, vy, yawRate, 0, 0),
                new Controls(steer, brake * c.mass(), 0, WheelLocks.NONE, 0, 0),
                new WheelForces());
        double power = c.mass() * (speed * rate[BicycleState.VX] + vy * rate[BicycleState.VY])
                + c.yawInertia() * yawRate * rate[BicycleState.YAW_RATE];
        assertTrue(power <= 1e-6 * c.mass(), () -> "power " + power);
    }

    private static Car withoutLag(Car car) {
        return car.withTyres(
                ((org.foreload.tyre.FrictionTyre) car.frontTyre()).withRelaxationLength(0),
                ((org.foreload.tyre.FrictionTyre) car.rearTyre()).withRelaxationLength(0));
    }

    /**
     * A stopped wheel under a car that moves straight on slides as a block: it brakes with all it has, and steers not.
     */
    @Property(seed = Possible.SEED)
    void stoppedWheelsDoNotSteer(
            @ForAll Car car,
            @ForAll @DoubleRange(min = 5, max = 60) double speed,
            @ForAll @DoubleRange(min = -0.2, max = 0.2) double steer) {
        WheelForces w = new WheelForces();
        double[] rate = rates(
                car,
                state(speed, 0, 0, 0, 0),
                new Controls(steer, 20 * car.chassis().mass(), 0, new WheelLocks(0b1111), 0, 0),
                w);
        // Equal friction along and across would leave no side force at all; unequal friction leaves a part of it.
        double sliding = Math.abs(w.lateral(0) + w.lateral(1));
        double along = Math.abs(w.longitudinal(0) + w.longitudinal(1));
        assertTrue(rate[BicycleState.VX] < 0);
        assertEquals(Math.abs(Math.tan(steer)), sliding / along, 0.02 + 0.25 * Math.abs(Math.tan(steer)));
    }
}
