package org.foreload.pedal;

import java.util.function.DoubleUnaryOperator;
import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.vehicle.Car;

/**
 * A car braked in a straight line at a speed that is held, as on a moving belt, so that drag and downforce stay what
 * they are: the equations of motion with nothing but the pitching left to move. Fixed steps of the classic Runge-Kutta
 * rule.
 */
final class StraightLine {

    /** Longest step, s. */
    private static final double LONGEST_STEP = 0.005;

    /** Step times undamped pitch frequency, rad: the rule's error in amplitude is then below 1e-5 a radian. */
    private static final double STEP_ANGLE = 0.15;

    private final BicycleModel model;
    private final double mass;
    private final double step;
    private final DoubleUnaryOperator brake;
    private final WheelForces wheels = new WheelForces();
    private final double[] state = new double[BicycleState.SIZE];
    private final double[] rate = new double[BicycleState.SIZE];
    private double time;

    /** @param brake brake force over mass, m/s², over time, s */
    StraightLine(Car car, double speed, DoubleUnaryOperator brake) {
        this.model = new BicycleModel(car);
        this.mass = car.chassis().mass();
        this.brake = brake;
        var pitch = car.suspension().pitch();
        this.step =
                pitch.rigid() ? LONGEST_STEP : Math.min(LONGEST_STEP, STEP_ANGLE / (2 * Math.PI * pitch.frequency()));
        state[BicycleState.VX] = speed;
        evaluate(0, state);
        state[BicycleState.PITCH_TRANSFER] = wheels.pitchTarget();
    }

    double time() {
        return time;
    }

    /** Load on the front axle, N. */
    double frontLoad() {
        evaluate(time, state);
        return wheels.frontAxleLoad();
    }

    /** Loads and forces as they are. */
    WheelForces wheels() {
        evaluate(time, state);
        return wheels;
    }

    void advance() {
        double[] k1 = slope(time, state);
        double[] k2 = slope(time + step / 2, moved(k1, step / 2));
        double[] k3 = slope(time + step / 2, moved(k2, step / 2));
        double[] k4 = slope(time + step, moved(k3, step));
        for (int i = 0; i < state.length; i++) {
            state[i] += step / 6 * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]);
        }
        time += step;
    }

    private double[] moved(double[] slope, double by) {
        double[] moved = state.clone();
        for (int i = 0; i < moved.length; i++) {
            moved[i] += by * slope[i];
        }
        return moved;
    }

    private double[] slope(double at, double[] x) {
        evaluate(at, x);
        double[] slope = rate.clone();
        slope[BicycleState.VX] = 0;
        return slope;
    }

    private void evaluate(double at, double[] x) {
        double force = mass * Math.max(0, brake.applyAsDouble(at));
        model.rates(x, 0, new Controls(0, force, 0, WheelLocks.NONE, 0, 0), wheels, rate);
    }
}
