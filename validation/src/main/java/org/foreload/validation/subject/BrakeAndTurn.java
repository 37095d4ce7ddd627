package org.foreload.validation.subject;

import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Inputs;
import org.foreload.bicycle.SlipLag;
import org.foreload.bicycle.WheelForces;
import org.foreload.integrate.Accuracy;
import org.foreload.integrate.DecayingSystem;
import org.foreload.integrate.Integration;
import org.foreload.integrate.Stop;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;

/**
 * The manoeuvre of {@code validation/src/yardstick/bicycle.cpp} on the library's model: at 40 m/s on a flat straight an
 * invented light car brakes, and turns in while the brake comes off, over three seconds in the open loop.
 */
public final class BrakeAndTurn implements DecayingSystem {

    /** Duration, s. */
    public static final double END = 3;

    private static final double SPEED = 40;
    private static final double BRAKE = 6.5;
    private static final double STEER = 0.05;

    /** About as large as the states get: m/s, rad/s, N, N/s, m/s², m/s³, slips. */
    private static final double[] SIZES = {10, 1, 0.5, 780, 7800, 10, 100, 0.1, 0.1};

    private final Car car;
    private final BicycleModel model;
    private final SlipLag lag;
    private final Inputs inputs = new Inputs();
    private final WheelForces wheels = new WheelForces();
    private final double[] state = new double[BicycleState.SIZE];
    private final Integration integration;

    /**
     * The manoeuvre on tyres with a slip curve.
     *
     * @param tolerance relative error of each step
     */
    public BrakeAndTurn(SlipCurve curve, double tolerance) {
        Response response = new Response(1.8, 0.4);
        car = new Car(
                "light",
                new Chassis(780, 2.4, 1.25, 0.45, 980, 1.42, 1.44),
                new Suspension(0.6, 0.03, 0.07, response, response),
                new Aerodynamics(0.6, 0.2, 0.3, 1.2, 0.4),
                0.725,
                new Driveline(130e3, DrivenAxle.REAR),
                new FrictionTyre(curve, 1.2, 1.15, 0.08, 1900, 0.36, 17, 21),
                new FrictionTyre(curve, 1.2, 1.2, 0.08, 1900, 0.36, 20, 21));
        model = new BicycleModel(car);
        lag = new SlipLag(car);
        double[] tolerances = SIZES.clone();
        for (int i = 0; i < tolerances.length; i++) {
            tolerances[i] *= tolerance;
        }
        integration = new Integration(this, new Accuracy(tolerances, 1e-3, END, END, 1e-6, 1_000_000), step -> {});
    }

    /**
     * Drives from the start.
     *
     * @param until time, s
     * @return the states of {@link BicycleState} then
     * @throws IllegalStateException if the integration does not get there
     */
    public double[] run(double until) {
        double[] start = new double[BicycleState.SIZE];
        start[BicycleState.VX] = SPEED;
        integration.begin(0, start);
        if (integration.advance(until) != Stop.REACHED) {
            throw new IllegalStateException("stopped at " + integration.at() + " s");
        }
        integration.state(start);
        lag.toSlip(start, 0, steer(until));
        return start;
    }

    /** Evaluations of the equations in the last run. */
    public long evaluations() {
        return integration.evaluations();
    }

    private static double smooth(double part) {
        double u = Math.min(1, Math.max(0, part));
        return u * u * (3 - 2 * u);
    }

    private static double steer(double time) {
        return STEER * smooth((time - 0.8) / 0.8);
    }

    private static double steerRate(double time) {
        double u = Math.min(1, Math.max(0, (time - 0.8) / 0.8));
        return STEER * 6 * u * (1 - u) / 0.8;
    }

    private double brake(double time) {
        return car.chassis().mass() * BRAKE * smooth(time / 0.3) * (1 - smooth((time - 0.7) / 1.3));
    }

    @Override
    public int size() {
        return BicycleState.SIZE;
    }

    @Override
    public void rates(double time, double[] lagging, double[] rate) {
        double steer = steer(time);
        System.arraycopy(lagging, 0, state, 0, state.length);
        lag.toSlip(state, 0, steer);
        inputs.driver(steer, brake(time), 0);
        model.rates(state, 0, inputs, wheels, rate);
        lag.rates(state, 0, steer, steerRate(time), rate);
    }

    @Override
    public int[] decaying() {
        return new int[] {BicycleState.FRONT_SLIP, BicycleState.REAR_SLIP};
    }

    @Override
    public void decay(double time, double[] y, double[] decay) {
        decay[0] = lag.frontDecay(y[BicycleState.VX]);
        decay[1] = lag.rearDecay(y[BicycleState.VX]);
    }
}
