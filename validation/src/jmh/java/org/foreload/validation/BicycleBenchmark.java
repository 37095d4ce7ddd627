package org.foreload.validation;

import java.util.concurrent.TimeUnit;
import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.Controls;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Cost of the equations of motion for one state: the work of every stage of every step of a simulated entry. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
@State(Scope.Thread)
public class BicycleBenchmark {

    /** States that are visited in turn, so that no branch and no search learns a single one by heart. */
    private static final int STATES = 256;

    /** Slip curve by name. */
    @Param({"linear", "brush", "magic-formula"})
    public String curve;

    /** Whether load follows the forces at once, which then have to be found together. */
    @Param({"false", "true"})
    public boolean rigid;

    private BicycleModel model;
    private final double[][] states = new double[STATES][BicycleState.SIZE];
    private final Controls[] controls = new Controls[STATES];
    private final WheelForces wheels = new WheelForces();
    private final double[] rate = new double[BicycleState.SIZE];
    private int next;

    /** A light car that turns in with the brake coming off, at 256 moments of it. */
    @Setup
    public void prepare() {
        SlipCurve shape = switch (curve) {
            case "linear" -> new SlipCurve.Linear();
            case "brush" -> new SlipCurve.Brush();
            case "magic-formula" -> new SlipCurve.MagicFormula(1.4, -0.4);
            default -> throw new IllegalArgumentException(curve);
        };
        Tyre front = new FrictionTyre(shape, 1.2, 1.15, 0.08, 1900, 0.36, 17, 21);
        Tyre rear = new FrictionTyre(shape, 1.2, 1.2, 0.08, 1900, 0.36, 20, 21);
        Response response = rigid ? Response.RIGID : new Response(1.8, 0.4);
        model = new BicycleModel(new Car(
                "light",
                new Chassis(780, 2.4, 1.25, 0.45, 980, 1.42, 1.44),
                new Suspension(0.6, 0.03, 0.07, response, response),
                new Aerodynamics(0.6, 0, 0, 1.2, 0),
                0.725,
                new Driveline(130_000, DrivenAxle.REAR),
                front,
                rear));
        for (int i = 0; i < STATES; i++) {
            double turned = (double) i / STATES;
            double[] x = states[i];
            x[BicycleState.VX] = 38 - 12 * turned;
            x[BicycleState.VY] = -0.6 * turned;
            x[BicycleState.YAW_RATE] = 0.4 * turned;
            x[BicycleState.PITCH_TRANSFER] = 1300 * (1 - turned);
            x[BicycleState.ROLL_ACCELERATION] = 10 * turned;
            x[BicycleState.FRONT_SLIP] = -0.07 * turned;
            x[BicycleState.REAR_SLIP] = -0.06 * turned;
            controls[i] = new Controls(0.06 * turned, 780 * 8.5 * (1 - turned), 0, WheelLocks.NONE, 0, 0);
        }
    }

    /** The rates of one state. */
    @Benchmark
    public double rates() {
        next = (next + 1) % STATES;
        model.rates(states[next], 0, controls[next], wheels, rate);
        return rate[BicycleState.YAW_RATE];
    }
}
