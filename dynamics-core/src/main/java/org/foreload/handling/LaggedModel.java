package org.foreload.handling;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
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
        int[] kept = kept(car).stream().mapToInt(Integer::intValue).toArray();
        WheelForces wheels = new WheelForces();
        double[] rate = new double[BicycleState.SIZE];
        return Linearisation.eigenvalues(
                moved -> {
                    double[] whole = state.clone();
                    for (int i = 0; i < kept.length; i++) {
                        whole[kept[i]] = moved[i];
                    }
                    model.rates(whole, 0, controls, wheels, rate);
                    return IntStream.of(kept).mapToDouble(i -> rate[i]).toArray();
                },
                IntStream.of(kept).mapToDouble(i -> state[i]).toArray(),
                IntStream.of(kept).mapToDouble(i -> BEND[i]).toArray());
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
