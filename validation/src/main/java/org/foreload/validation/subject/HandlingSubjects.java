package org.foreload.validation.subject;

import java.util.Map;
import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.vehicle.Car;

/** The equations of motion near straight running: their derivatives, and what handling books make of them. */
final class HandlingSubjects {

    /** Disturbance for central differences, m/s, rad/s and rad: the tyres of these cars are linear there. */
    private static final double SMALL = 1e-5;

    private HandlingSubjects() {}

    static Map<String, Subject> all() {
        return Map.of("handling", HandlingSubjects::handling, "ackermann", HandlingSubjects::ackermann);
    }

    /** d(vy, r)/dt = A (vy, r) + B δ at a speed. */
    private record Linear(double speed, double wheelbase, double[][] a, double[] b) {

        static Linear of(Car car, double speed) {
            double[][] a = new double[2][2];
            for (int column = 0; column < 2; column++) {
                double[] up = rates(car, speed, column == 0 ? SMALL : 0, column == 1 ? SMALL : 0, 0);
                double[] down = rates(car, speed, column == 0 ? -SMALL : 0, column == 1 ? -SMALL : 0, 0);
                a[0][column] = (up[0] - down[0]) / (2 * SMALL);
                a[1][column] = (up[1] - down[1]) / (2 * SMALL);
            }
            double[] left = rates(car, speed, 0, 0, SMALL);
            double[] right = rates(car, speed, 0, 0, -SMALL);
            double[] b = {(left[0] - right[0]) / (2 * SMALL), (left[1] - right[1]) / (2 * SMALL)};
            return new Linear(speed, car.chassis().wheelbase(), a, b);
        }

        private static double[] rates(Car car, double speed, double vy, double yawRate, double steer) {
            double[] state = new double[BicycleState.SIZE];
            state[BicycleState.VX] = speed;
            state[BicycleState.VY] = vy;
            state[BicycleState.YAW_RATE] = yawRate;
            double[] rate = new double[BicycleState.SIZE];
            new BicycleModel(car)
                    .rates(state, 0, new Controls(steer, 0, 0, WheelLocks.NONE, 0, 0), new WheelForces(), rate);
            return new double[] {rate[BicycleState.VY], rate[BicycleState.YAW_RATE]};
        }

        double determinant() {
            return a[0][0] * a[1][1] - a[0][1] * a[1][0];
        }

        double naturalFrequency() {
            return Math.sqrt(determinant());
        }

        double damping() {
            return -(a[0][0] + a[1][1]) / (2 * naturalFrequency());
        }

        double yawGain() {
            return (a[1][0] * b[0] - a[0][0] * b[1]) / determinant();
        }

        double sideslipGain() {
            return (a[0][1] * b[1] - a[1][1] * b[0]) / determinant() / speed;
        }

        /** K in δ = L/R + K·ay. */
        double understeer() {
            return (speed / yawGain() - wheelbase) / (speed * speed);
        }
    }

    private static double handling(Inputs in) {
        Linear linear = Linear.of(Bench.car(in), in.number("speed_mps"));
        return switch (in.word("give")) {
            case "understeer" -> linear.understeer();
            case "understeer-per-g" -> linear.understeer() * 9.81;
            case "characteristic-speed" -> Math.sqrt(linear.wheelbase() / linear.understeer());
            case "yaw-gain" -> linear.yawGain();
            case "sideslip-gain" -> linear.sideslipGain();
            case "natural-frequency" -> linear.naturalFrequency();
            case "damping" -> linear.damping();
            case "real-part" -> -linear.damping() * linear.naturalFrequency();
            case "imaginary-part" -> linear.naturalFrequency() * Math.sqrt(1 - linear.damping() * linear.damping());
            default -> throw new IllegalArgumentException("give what?");
        };
    }

    /** Steering angle, degrees, for a radius at a crawl. */
    private static double ackermann(Inputs in) {
        double crawl = 0.05;
        return Math.toDegrees(
                crawl / in.number("radius_m") / Linear.of(Bench.car(in), crawl).yawGain());
    }
}
