package org.foreload.handling;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.vehicle.Car;

/**
 * The lateral motion about a trim with the lags that the car has: speed across, yaw rate, and as far as they are there
 * roll and the relaxation of the tyres. The matrix is taken off the equations of motion by differences.
 */
final class LaggedModel {

    /** Changes over which the equations surely bend, by state: m/s, rad/s, N, N/s, m/s², m/s³, slips. */
    private static final double[] BEND = {0.1, 0.1, 0.01, 100, 1000, 0.5, 5, 0.01, 0.01};

    /** The same for the steer angle, rad. */
    private static final double STEER_BEND = 0.005;

    /** Speed across and yaw rate come first; the lags follow them. */
    private static final int LAGS = 2;

    private final Trim trim;

    /** A row for each state; a column for each state, and one for the steer angle at the end. */
    private final double[][] slopes;

    private LaggedModel(Trim trim, double[][] slopes) {
        this.trim = trim;
        this.slopes = slopes;
    }

    static LaggedModel of(Trim trim) {
        Car car = trim.car();
        BicycleModel model = new BicycleModel(car);
        double[] state = trim.state();
        int[] kept = kept(car).stream().mapToInt(Integer::intValue).toArray();
        WheelForces wheels = new WheelForces();
        double[] rate = new double[BicycleState.SIZE];
        double[] point =
                Arrays.copyOf(IntStream.of(kept).mapToDouble(i -> state[i]).toArray(), kept.length + 1);
        double[] bend =
                Arrays.copyOf(IntStream.of(kept).mapToDouble(i -> BEND[i]).toArray(), kept.length + 1);
        point[kept.length] = trim.steer();
        bend[kept.length] = STEER_BEND;
        return new LaggedModel(
                trim,
                Derivative.matrix(
                        moved -> {
                            double[] whole = state.clone();
                            for (int i = 0; i < kept.length; i++) {
                                whole[kept[i]] = moved[i];
                            }
                            Controls controls = new Controls(
                                    moved[kept.length], trim.brakeForce(), trim.driveForce(), WheelLocks.NONE, 0, 0);
                            model.rates(whole, 0, controls, wheels, rate);
                            return IntStream.of(kept).mapToDouble(i -> rate[i]).toArray();
                        },
                        point,
                        bend));
    }

    /** Eigenvalues, the least stable first. */
    List<Eigenvalue> eigenvalues() {
        return Linear.eigenvalues(Arrays.stream(slopes)
                .map(row -> Arrays.copyOf(row, slopes.length))
                .toArray(double[][]::new));
    }

    /**
     * Speed across and yaw rate alone, for motions so slow that the lags have run out: the wheel loads are those of the
     * lateral acceleration, and the tyres feel the slip that there is. It diverges where the lagged model does, since
     * the determinant of that one is the product of this one's and of the lags'. Source: reduction of a linear system
     * by its steady part (residualisation; P. Kokotović, H. Khalil, J. O'Reilly, Singular Perturbation Methods in
     * Control, ch. 1, from memory).
     */
    LateralModel settled() {
        double[][] a = new double[LAGS][];
        for (int row = 0; row < LAGS; row++) {
            a[row] = new double[] {slopes[row][0], slopes[row][1], slopes[row][slopes.length]};
        }
        if (slopes.length > LAGS) {
            double[][] lags = Arrays.stream(slopes)
                    .skip(LAGS)
                    .map(row -> Arrays.copyOfRange(row, LAGS, slopes.length))
                    .toArray(double[][]::new);
            int[] causes = {0, 1, slopes.length};
            for (int cause = 0; cause < causes.length; cause++) {
                int from = causes[cause];
                double[] followed = Linear.solve(
                        lags,
                        Arrays.stream(slopes)
                                .skip(LAGS)
                                .mapToDouble(row -> -row[from])
                                .toArray());
                for (int row = 0; row < LAGS; row++) {
                    for (int lag = 0; lag < followed.length; lag++) {
                        a[row][cause] += slopes[row][LAGS + lag] * followed[lag];
                    }
                }
            }
        }
        LateralModel held = LateralModel.at(trim.point());
        return new LateralModel(
                a[0][0],
                a[0][1],
                a[1][0],
                a[1][1],
                a[0][2],
                a[1][2],
                held.frontStiffness(),
                held.rearStiffness(),
                held.speed());
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
