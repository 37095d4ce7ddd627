package org.foreload.handling;

import java.util.ArrayList;
import java.util.List;
import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.WheelForces;
import org.foreload.vehicle.Car;

/**
 * The lateral motion about a trim with the lags that the car has: speed across, yaw rate, and as far as they are there
 * roll and the relaxation of the tyres. The matrix is taken off the equations of motion by differences.
 */
final class LaggedModel {

    /** Changes over which the equations surely bend, by state: m/s, rad/s, N, N/s, m/s², m/s³, slips. */
    private static final double[] BEND = {0.1, 0.1, 0.01, 100, 1000, 0.5, 5, 0.01, 0.01};

    private LaggedModel() {}

    static List<Eigenvalue> eigenvalues(Trim trim) {
        Car car = trim.car();
        TrimEquations equations = new TrimEquations(car, trim.speed());
        double[] unknown = {
            trim.sideslip(),
            trim.steer(),
            (trim.brakeForce() - trim.driveForce()) / car.chassis().mass()
        };
        double[] state = equations.state(unknown, trim.lateralAcceleration(), trim.deceleration());
        Controls controls = equations.controls(unknown);
        BicycleModel model = equations.model();
        List<Integer> kept = kept(car);
        WheelForces wheels = new WheelForces();
        double[] rate = new double[BicycleState.SIZE];
        double[][] matrix = new double[kept.size()][kept.size()];
        for (int row = 0; row < matrix.length; row++) {
            for (int column = 0; column < matrix.length; column++) {
                int changed = kept.get(column);
                int seen = kept.get(row);
                matrix[row][column] = Derivative.of(
                        x -> {
                            double[] moved = state.clone();
                            moved[changed] = x;
                            model.rates(moved, 0, controls, wheels, rate);
                            return rate[seen];
                        },
                        state[changed],
                        BEND[changed]);
            }
        }
        return Linear.eigenvalues(matrix);
    }

    private static List<Integer> kept(Car car) {
        List<Integer> kept = new ArrayList<>(List.of(BicycleState.VY, BicycleState.YAW_RATE));
        if (!car.suspension().roll().rigid()) {
            kept.add(BicycleState.ROLL_ACCELERATION);
            kept.add(BicycleState.ROLL_ACCELERATION_RATE);
        }
        if (car.frontTyre().relaxationLength() > 0) {
            kept.add(BicycleState.FRONT_SLIP);
        }
        if (car.rearTyre().relaxationLength() > 0) {
            kept.add(BicycleState.REAR_SLIP);
        }
        return kept;
    }
}
