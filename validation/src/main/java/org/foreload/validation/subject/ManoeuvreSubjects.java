package org.foreload.validation.subject;

import java.util.Map;
import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.vehicle.Car;

/**
 * Open-loop tests of the transient model in the manner of ISO 4138 (steady circle), ISO 7975 (braking in a turn) and
 * ISO 7401 (step steer). The standards' scopes were read, their procedures in full were not.
 */
final class ManoeuvreSubjects {

    private static final double STEP = 1e-3;
    private static final int NEWTON_ROUNDS = 50;
    private static final double SMALL = 1e-6;

    private ManoeuvreSubjects() {}

    static Map<String, Subject> all() {
        return Map.of(
                "circle-understeer", ManoeuvreSubjects::circleUndersteer,
                "circle-asymmetry", ManoeuvreSubjects::circleAsymmetry,
                "circle-limit", ManoeuvreSubjects::circleLimit,
                "braking-turn-ratio", ManoeuvreSubjects::brakingTurnRatio,
                "step-steer-yaw", ManoeuvreSubjects::stepSteerYaw);
    }

    /** A steady circle: steer and sideslip speed at which the car neither drifts nor turns in, at constant speed. */
    private record Circle(double steer, double vy, double yawRate, boolean found) {

        static Circle of(Car car, double speed, double radius) {
            double yawRate = speed / radius;
            double[] unknown = {car.chassis().wheelbase() / radius, 0};
            for (int i = 0; i < NEWTON_ROUNDS; i++) {
                double[] rest = rest(car, speed, yawRate, unknown[0], unknown[1]);
                double[] bySteer = rest(car, speed, yawRate, unknown[0] + SMALL, unknown[1]);
                double[] byVy = rest(car, speed, yawRate, unknown[0], unknown[1] + SMALL);
                double a = (bySteer[0] - rest[0]) / SMALL;
                double b = (byVy[0] - rest[0]) / SMALL;
                double c = (bySteer[1] - rest[1]) / SMALL;
                double d = (byVy[1] - rest[1]) / SMALL;
                double determinant = a * d - b * c;
                unknown[0] -= (d * rest[0] - b * rest[1]) / determinant;
                unknown[1] -= (a * rest[1] - c * rest[0]) / determinant;
            }
            double[] rest = rest(car, speed, yawRate, unknown[0], unknown[1]);
            boolean found = Math.abs(rest[0]) < 1e-9 && Math.abs(rest[1]) < 1e-9;
            return new Circle(unknown[0], unknown[1], yawRate, found);
        }

        private static double[] rest(Car car, double speed, double yawRate, double steer, double vy) {
            double[] state = state(Math.sqrt(speed * speed - vy * vy), vy, yawRate);
            double[] rate = new double[BicycleState.SIZE];
            new BicycleModel(car).rates(state, 0, controls(steer, 0), new WheelForces(), rate);
            return new double[] {rate[BicycleState.VY], rate[BicycleState.YAW_RATE]};
        }
    }

    private static double[] state(double vx, double vy, double yawRate) {
        double[] state = new double[BicycleState.SIZE];
        state[BicycleState.VX] = vx;
        state[BicycleState.VY] = vy;
        state[BicycleState.YAW_RATE] = yawRate;
        return state;
    }

    private static Controls controls(double steer, double brakeForce) {
        return new Controls(steer, brakeForce, 0, WheelLocks.NONE, 0, 0);
    }

    /** Slope of the steering angle over lateral acceleration, in steps of 0.5 m/s² on a circle, rad per m/s². */
    private static double circleUndersteer(Inputs in) {
        Car car = Bench.car(in);
        double radius = in.number("radius_m");
        double low = in.number("lateral_mps2");
        double high = low + 0.5;
        return (Circle.of(car, Math.sqrt(high * radius), radius).steer()
                        - Circle.of(car, Math.sqrt(low * radius), radius).steer())
                / 0.5;
    }

    /** Sum of the steering angles to the left and to the right, rad. */
    private static double circleAsymmetry(Inputs in) {
        Car car = Bench.car(in);
        double radius = in.number("radius_m");
        double speed = Math.sqrt(in.number("lateral_mps2") * radius);
        return Math.abs(Circle.of(car, speed, radius).steer()
                + Circle.of(car, speed, -radius).steer());
    }

    /** Largest lateral acceleration, m/s², for which a steady circle exists. */
    private static double circleLimit(Inputs in) {
        Car car = Bench.car(in);
        double radius = in.number("radius_m");
        double last = 0;
        for (double lateral = 0.5;
                Circle.of(car, Math.sqrt(lateral * radius), radius).found();
                lateral += 0.01) {
            last = lateral;
        }
        return last;
    }

    /**
     * Yaw rate after a second of braking with the wheel held, over the yaw rate that would keep the circle at the speed
     * then reached: above 1 the car has turned in, below 1 it has turned out.
     */
    private static double brakingTurnRatio(Inputs in) {
        Car car = Bench.car(in);
        double radius = in.number("radius_m");
        double speed = Math.sqrt(in.number("lateral_mps2") * radius);
        Circle circle = Circle.of(car, speed, radius);
        double force = car.chassis().mass() * in.number("deceleration_mps2");
        double[] state = state(Math.sqrt(speed * speed - circle.vy() * circle.vy()), circle.vy(), circle.yawRate());
        run(car, controls(circle.steer(), force), state, in.number("after_s", 1));
        double after = Math.hypot(state[BicycleState.VX], state[BicycleState.VY]);
        return state[BicycleState.YAW_RATE] / (after / radius);
    }

    private static void run(Car car, Controls controls, double[] state, double duration) {
        BicycleModel model = new BicycleModel(car);
        WheelForces wheels = new WheelForces();
        Rk4 rk4 = new Rk4(BicycleState.SIZE, (time, x, rate) -> model.rates(x, 0, controls, wheels, rate));
        long steps = Math.round(duration / STEP);
        for (int i = 0; i < steps; i++) {
            rk4.step(i * STEP, STEP, state);
        }
    }

    /** Yaw rate per steering angle, 1/s, a time after a small step of the wheel from straight running. */
    private static double stepSteerYaw(Inputs in) {
        Car car = Bench.car(in);
        double step = 1e-4;
        double[] state = state(in.number("speed_mps"), 0, 0);
        run(car, controls(step, 0), state, in.number("after_s"));
        return state[BicycleState.YAW_RATE] / step;
    }
}
