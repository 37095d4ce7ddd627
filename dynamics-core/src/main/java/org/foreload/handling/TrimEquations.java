package org.foreload.handling;

import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.load.WheelLoads;
import org.foreload.vehicle.Car;

/**
 * The three equations of a trim, on the flat: along its course the car slows as asked, its sideslip angle and its yaw
 * rate are steady. Unknown are sideslip, steer, and brake force less drive force over mass.
 */
final class TrimEquations {

    static final int UNKNOWNS = 3;

    private final BicycleModel model;
    private final Car car;
    private final double speed;
    private final double mass;
    private final WheelForces wheels = new WheelForces();
    private final double[] rate = new double[BicycleState.SIZE];

    TrimEquations(Car car, double speed) {
        this.model = new BicycleModel(car);
        this.car = car;
        this.speed = speed;
        this.mass = car.chassis().mass();
    }

    BicycleModel model() {
        return model;
    }

    /** What is left of the three equations, m/s²; the last one is a yaw acceleration times the wheelbase. */
    double[] residual(double[] unknown, double lateral, double deceleration) {
        double[] state = state(unknown, lateral, deceleration);
        model.rates(state, 0, controls(unknown), wheels, rate);
        double sin = Math.sin(unknown[0]);
        double cos = Math.cos(unknown[0]);
        return new double[] {
            rate[BicycleState.VX] + deceleration * cos,
            rate[BicycleState.VY] + deceleration * sin,
            rate[BicycleState.YAW_RATE] * car.chassis().wheelbase()
        };
    }

    /** The state of a car in that motion; load has followed it, and slip is what its motion makes it. */
    double[] state(double[] unknown, double lateral, double deceleration) {
        double sin = Math.sin(unknown[0]);
        double cos = Math.cos(unknown[0]);
        double yawRate = lateral / speed;
        double[] state = new double[BicycleState.SIZE];
        state[BicycleState.VX] = speed * cos;
        state[BicycleState.VY] = speed * sin;
        state[BicycleState.YAW_RATE] = yawRate;
        double drag = car.aerodynamics().drag(speed * speed * cos * cos);
        double slowing = deceleration * cos + lateral * sin;
        state[BicycleState.PITCH_TRANSFER] =
                (mass * car.chassis().cgHeight() * slowing - car.aerodynamics().dragHeight() * drag)
                        / car.chassis().wheelbase();
        state[BicycleState.ROLL_ACCELERATION] = lateral * cos - deceleration * sin;
        state[BicycleState.FRONT_SLIP] =
                Math.tan(Math.atan2(speed * sin + car.chassis().cgToFrontAxle() * yawRate, speed * cos) - unknown[1]);
        state[BicycleState.REAR_SLIP] = (speed * sin - car.chassis().cgToRearAxle() * yawRate) / (speed * cos);
        return state;
    }

    Controls controls(double[] unknown) {
        return new Controls(
                unknown[1], Math.max(0, mass * unknown[2]), Math.max(0, -mass * unknown[2]), WheelLocks.NONE, 0, 0);
    }

    /** Loads at the last residual. */
    WheelLoads loads() {
        return new WheelLoads(wheels.load(0), wheels.load(1), wheels.load(2), wheels.load(3));
    }

    /** Whether at the last residual every wheel carried what was asked of it. */
    boolean allRoll() {
        for (int wheel = 0; wheel < 4; wheel++) {
            if (!(wheels.lockMargin(wheel) >= 0)) {
                return false;
            }
        }
        return true;
    }
}
