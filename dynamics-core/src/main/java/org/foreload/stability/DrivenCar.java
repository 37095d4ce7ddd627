package org.foreload.stability;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.driver.DriverView;
import org.foreload.driver.Hands;
import org.foreload.driver.Steering;
import org.foreload.handling.Eigenvalue;
import org.foreload.handling.Linearisation;
import org.foreload.handling.Trim;
import org.foreload.vehicle.Car;

/**
 * Car and driver as one system, near a steady motion on a bend: does the driver hold the line, or swing about it?
 *
 * <p>States are the distance off the line, the heading error, the car's own lateral motion with its lags, and the steer
 * angle. Speed along the car, brake and drive force, and the load that braking has moved are held, as in every linear
 * model of handling; so the driver expects the yaw rate to stay, too.
 */
public final class DrivenCar {

    /** Changes over which the equations surely bend, m and rad, and of the car's states as named there. */
    private static final double[] BEND = {0.05, 0.005, 0.1, 0.05, 0.02, 100, 1000, 0.3, 3, 0.005, 0.005, 0.005};

    private static final int OFFSET = 0;
    private static final int HEADING = 1;
    private static final int CAR = 2;
    private static final int STEER = CAR + BicycleState.SIZE;

    private final BicycleModel model;
    private final Steering steering;
    private final Hands hands;
    private final Controls controls;
    private final double curvature;
    private final double[] state = new double[STEER + 1];
    private final DriverView view = new DriverView();
    private final WheelForces wheels = new WheelForces();

    private DrivenCar(Trim trim, Hands hands) {
        this.model = new BicycleModel(trim.car());
        this.hands = hands;
        this.curvature = trim.curvature();
        this.steering = new Steering(trim.car(), new EndlessBend(curvature), hands);
        this.controls = new Controls(trim.steer(), trim.brakeForce(), trim.driveForce(), WheelLocks.NONE, 0, 0);
        System.arraycopy(trim.state(), 0, state, CAR, BicycleState.SIZE);
        state[HEADING] = -trim.sideslip();
        state[STEER] = trim.steer();
    }

    /**
     * The natural motions of car and driver, the least stable first; of a conjugate pair the one with the positive
     * imaginary part.
     *
     * @param trim the steady motion
     * @param hands the driver's
     * @throws ArithmeticException if the eigenvalues are not found
     */
    public static List<Eigenvalue> motions(Trim trim, Hands hands) {
        Objects.requireNonNull(trim, "trim");
        Objects.requireNonNull(hands, "hands");
        return new DrivenCar(trim, hands).motions();
    }

    private List<Eigenvalue> motions() {
        int[] kept = kept(model.car());
        double[] point = IntStream.of(kept).mapToDouble(i -> state[i]).toArray();
        double[] bend = IntStream.of(kept).mapToDouble(i -> BEND[i]).toArray();
        return Linearisation.eigenvalues(
                moved -> {
                    double[] whole = state.clone();
                    for (int i = 0; i < kept.length; i++) {
                        whole[kept[i]] = moved[i];
                    }
                    double[] rate = rates(whole);
                    return IntStream.of(kept).mapToDouble(i -> rate[i]).toArray();
                },
                point,
                bend);
    }

    private double[] rates(double[] x) {
        double[] rate = new double[x.length];
        Controls steered = new Controls(x[STEER], controls.brakeForce(), controls.driveForce(), controls.locks(), 0, 0);
        model.rates(x, CAR, steered, wheels, rate);
        double vx = x[CAR + BicycleState.VX];
        double vy = x[CAR + BicycleState.VY];
        double sin = Math.sin(x[HEADING]);
        double cos = Math.cos(x[HEADING]);
        double progress = (vx * cos - vy * sin) / (1 - x[OFFSET] * curvature);
        rate[OFFSET] = vx * sin + vy * cos;
        rate[HEADING] = x[CAR + BicycleState.YAW_RATE] - curvature * progress;
        view.where(0, x[OFFSET], x[HEADING], x[STEER]);
        view.motion(x, rate, CAR, 0);
        double wanted = steering.angle(view, wheels);
        rate[STEER] = (wanted - x[STEER]) / hands.lag();
        return rate;
    }

    /** Angle, rad, by which the driver wants to steer otherwise than the steady motion does. */
    static double disagreement(Trim trim, Hands hands) {
        DrivenCar driven = new DrivenCar(trim, hands);
        return driven.rates(driven.state)[STEER] * hands.lag();
    }

    private static int[] kept(Car car) {
        List<Integer> kept =
                new ArrayList<>(List.of(OFFSET, HEADING, CAR + BicycleState.VY, CAR + BicycleState.YAW_RATE, STEER));
        if (!car.suspension().roll().rigid()) {
            kept.add(CAR + BicycleState.ROLL_ACCELERATION);
            kept.add(CAR + BicycleState.ROLL_ACCELERATION_RATE);
        }
        if (car.frontTyre().relaxationLength() > 0) {
            kept.add(CAR + BicycleState.FRONT_SLIP);
        }
        if (car.rearTyre().relaxationLength() > 0) {
            kept.add(CAR + BicycleState.REAR_SLIP);
        }
        return kept.stream().mapToInt(Integer::intValue).toArray();
    }
}
