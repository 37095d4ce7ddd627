package org.foreload.bicycle;

import static org.foreload.bicycle.BicycleState.FRONT_SLIP;
import static org.foreload.bicycle.BicycleState.PITCH_TRANSFER;
import static org.foreload.bicycle.BicycleState.REAR_SLIP;
import static org.foreload.bicycle.BicycleState.ROLL_ACCELERATION;
import static org.foreload.bicycle.BicycleState.VX;
import static org.foreload.bicycle.BicycleState.VY;
import static org.foreload.bicycle.BicycleState.YAW_RATE;

import java.util.Objects;
import org.foreload.conventions.Angles;
import org.foreload.conventions.Bounds;
import org.foreload.conventions.Checks;
import org.foreload.conventions.Gravity;
import org.foreload.load.LoadTransfer;
import org.foreload.vehicle.Car;

/**
 * Equations of motion of a single-track car that carries its load on four wheels.
 *
 * <p>The two wheels of an axle share steer and slip angle and each has its own load; brake force is equal on the two
 * wheels of an axle. In the road's plane, with f the tyre forces in the car's axes, γ the grade and φ the banking,
 *
 * <pre>
 *   m (dvx/dt − r vy)        = Σ fx − drag − m g sin γ
 *   m (dvy/dt + r vx cos φ)  = Σ fy + m g sin φ cos γ
 *   Iz dr/dt                 = Σ (x fy − y fx)
 * </pre>
 *
 * <p>Source: the single-track equations in H. B. Pacejka, Tyre and Vehicle Dynamics, ch. 1 (from memory); load transfer
 * as in {@link LoadTransfer}. Load follows braking and cornering through a second-order response each. Where the body
 * is rigid it follows at once: then forces and loads, which depend on each other, are found together. The relaxed slip
 * y follows the slip angle by dy/dt = (v/σ)(tan α − y). With anti-lock brakes no wheel is slowed by more than a share
 * of what it carries rolling, and none stops.
 *
 * <p>An instance serves many threads, each with buffers of its own. The same equations in plain words, wheel by wheel
 * and object by object, stand in the tests, which hold these to them.
 */
public final class BicycleModel {

    private final Car car;
    private final double mass;
    private final double toFront;
    private final double toRear;
    private final double perMass;
    private final double perYawInertia;
    private final double perWheelbase;
    private final double dragHeight;
    private final double height;
    private final double halfFrontTrack;
    private final double halfRearTrack;
    private final LoadTransfer transfer;
    private final AxleForces front;
    private final AxleForces rear;
    private final Follower pitch;
    private final Follower roll;

    /**
     * @throws org.foreload.conventions.InvalidValueException if the car has no yaw inertia: a transient model needs one
     */
    public BicycleModel(Car car) {
        this.car = Objects.requireNonNull(car, "car");
        this.mass = car.chassis().mass();
        this.perYawInertia =
                1 / Checks.positive("yaw_inertia_kg_m2", car.chassis().yawInertia());
        this.toFront = car.chassis().cgToFrontAxle();
        this.toRear = car.chassis().cgToRearAxle();
        this.perMass = 1 / mass;
        this.perWheelbase = 1 / car.chassis().wheelbase();
        this.dragHeight = car.aerodynamics().dragHeight();
        this.height = car.chassis().cgHeight();
        this.halfFrontTrack = car.chassis().frontTrack() / 2;
        this.halfRearTrack = car.chassis().rearTrack() / 2;
        this.transfer = LoadTransfer.of(car);
        double brake = car.frontBrakeShare();
        double drive = car.driveline().drivenAxle().frontShare();
        this.front = new AxleForces(car.frontTyre(), 0, brake / 2, drive / 2, car.antiLock());
        this.rear = new AxleForces(car.rearTyre(), 2, (1 - brake) / 2, (1 - drive) / 2, car.antiLock());
        this.pitch = new Follower(car.suspension().pitch());
        this.roll = new Follower(car.suspension().roll());
    }

    /** The car. */
    public Car car() {
        return car;
    }

    /**
     * Rates of the state.
     *
     * @param x state, named by {@link BicycleState}, starting at {@code at}
     * @param at index of the first entry
     * @param controls what acts on the car
     * @param wheels filled with the loads and forces found
     * @param rate receives the rates per second, starting at {@code at}
     */
    public void rates(double[] x, int at, Controls controls, WheelForces wheels, double[] rate) {
        wheels.inputs.take(controls);
        rates(x, at, wheels.inputs, wheels, rate);
    }

    /**
     * The same from a buffer of inputs; makes no objects.
     *
     * @param x state, named by {@link BicycleState}, starting at {@code at}
     * @param at index of the first entry
     * @param inputs what acts on the car
     * @param wheels filled with the loads and forces found
     * @param rate receives the rates per second, starting at {@code at}
     */
    public void rates(double[] x, int at, Inputs inputs, WheelForces wheels, double[] rate) {
        rates(x, at, inputs, wheels, rate, false);
    }

    /**
     * The same of a state that holds lags in the place of slips, as {@link SlipLag#toLag} puts them. The rates are
     * those of the slips still: {@link SlipLag#rates(double[], int, WheelForces, double, double[])} turns them into
     * those of the lags, once it is known how quickly the front wheels are turned.
     *
     * @param x state, named by {@link BicycleState}, starting at {@code at}
     * @param at index of the first entry
     * @param inputs what acts on the car
     * @param wheels filled with the loads and forces found
     * @param rate receives the rates per second, starting at {@code at}
     */
    public void ratesFromLag(double[] x, int at, Inputs inputs, WheelForces wheels, double[] rate) {
        rates(x, at, inputs, wheels, rate, true);
    }

    private void rates(double[] x, int at, Inputs inputs, WheelForces wheels, double[] rate, boolean lag) {
        double vx = x[at + VX];
        double vy = x[at + VY];
        double yawRate = x[at + YAW_RATE];
        double sinSteer = Angles.sin(inputs.steer);
        double cosSteer = Angles.cos(inputs.steer);
        double turning = vx * yawRate;
        double sideGravity = Gravity.G * inputs.sinBanking * inputs.cosGrade;
        double normal = Gravity.G * inputs.cosBanking * inputs.cosGrade + turning * inputs.sinBanking;
        double speedSquared = vx * vx;
        double drag = car.aerodynamics().drag(speedSquared);
        double frontLoad = transfer.frontAxle(normal, speedSquared);
        double rearLoad = transfer.rearAxle(normal, speedSquared);

        // The front axle's velocity, turned into the frame of its wheels.
        double frontAcross = vy + toFront * yawRate;
        double frontSlip = (frontAcross * cosSteer - vx * sinSteer) / (vx * cosSteer + frontAcross * sinSteer);
        double rearSlip = (vy - toRear * yawRate) / vx;
        double frontFelt = front.felt(x[at + FRONT_SLIP], frontSlip, lag);
        double rearFelt = rear.felt(x[at + REAR_SLIP], rearSlip, lag);
        wheels.frontSlip = frontSlip;
        wheels.rearSlip = rearSlip;
        wheels.frontFelt = frontFelt;
        wheels.rearFelt = rearFelt;

        double steadyLateral = turning * inputs.cosBanking - sideGravity;
        wheels.pitch.begin(
                !pitch.rigid(),
                pitch.rigid() ? askedTransfer(inputs, drag, steadyLateral * sinSteer) : x[at + PITCH_TRANSFER]);
        wheels.roll.begin(!roll.rigid(), roll.rigid() ? steadyLateral : x[at + ROLL_ACCELERATION]);
        double bodyX;
        double bodyY;
        double frontBodyY;
        double rearY;
        double pitchTarget;
        do {
            double onFront = LoadTransfer.frontAxle(frontLoad, rearLoad, wheels.pitch.value());
            double onRear = Bounds.larger(frontLoad + rearLoad, 0) - onFront;
            front.forces(onFront, transfer.frontLateral(wheels.roll.value()), frontFelt, frontSlip, inputs, wheels);
            rear.forces(onRear, transfer.rearLateral(wheels.roll.value()), rearFelt, rearSlip, inputs, wheels);
            double frontX = wheels.longitudinal[0] + wheels.longitudinal[1];
            double frontY = wheels.lateral[0] + wheels.lateral[1];
            rearY = wheels.lateral[2] + wheels.lateral[3];
            bodyX = frontX * cosSteer - frontY * sinSteer + (wheels.longitudinal[2] + wheels.longitudinal[3]);
            frontBodyY = frontY * cosSteer + frontX * sinSteer;
            bodyY = frontBodyY + rearY;
            pitchTarget = pitchTransfer(-bodyX, drag);
        } while (!(wheels.pitch.reached(pitchTarget, TRANSFER_ACCURACY)
                & wheels.roll.reached(bodyY * perMass, ROLL_ACCURACY)));
        double acrossFront = (wheels.longitudinal[1] - wheels.longitudinal[0]) * cosSteer
                - (wheels.lateral[1] - wheels.lateral[0]) * sinSteer;
        double moment = toFront * frontBodyY
                - toRear * rearY
                + halfFrontTrack * acrossFront
                + halfRearTrack * (wheels.longitudinal[3] - wheels.longitudinal[2]);

        double felt = bodyY * perMass;
        double specificX = (bodyX - drag) * perMass - Gravity.G * inputs.sinGrade;
        double specificY = felt + sideGravity;
        wheels.accelerationX = specificX;
        wheels.accelerationY = specificY;
        wheels.pitchTarget = pitchTarget;
        rate[at + VX] = specificX + yawRate * vy;
        rate[at + VY] = specificY - turning * inputs.cosBanking;
        rate[at + YAW_RATE] = moment * perYawInertia;
        pitch.follow(x, at + PITCH_TRANSFER, pitchTarget, rate);
        roll.follow(x, at + ROLL_ACCELERATION, felt, rate);
        double speed = Math.abs(vx);
        rate[at + FRONT_SLIP] = front.slipRate(speed, frontSlip, frontFelt);
        rate[at + REAR_SLIP] = rear.slipRate(speed, rearSlip, rearFelt);
    }

    /**
     * Brake force, N, that all wheels together put on the road: what the pedal asks of them, or less where one stands
     * still or the anti-lock brakes hold it back.
     *
     * @param inputs what acts on the car
     * @param wheels with the forces that were found for these inputs
     */
    public double brakeOnRoad(Inputs inputs, WheelForces wheels) {
        return front.brakeOnRoad(inputs, wheels) + rear.brakeOnRoad(inputs, wheels);
    }

    /**
     * Most lateral force, N, that the friction ellipse leaves the front wheels beside the brake force that they put on
     * the road; one that stands still has none.
     *
     * @param inputs what acts on the car
     * @param wheels with the forces that were found for these inputs
     */
    public double frontBesideBrake(Inputs inputs, WheelForces wheels) {
        return front.besideBrake(inputs, wheels);
    }

    /** Load, N, that a rigid body moves from the rear to the front axle if the wheels give what the pedals ask for. */
    private double askedTransfer(Inputs inputs, double drag, double lateralAlong) {
        double corneringDrag = mass * toRear * perWheelbase * lateralAlong;
        return pitchTransfer(inputs.brakeForce - inputs.driveForce + corneringDrag, drag);
    }

    /** Load, N, that a slowing force at the road and the drag hold moved from the rear to the front axle. */
    private double pitchTransfer(double slowing, double drag) {
        return (height * (slowing + drag) - dragHeight * drag) * perWheelbase;
    }

    /**
     * Load, N, to which a rigid body's load transfer and the forces agree: so little that a run and its mirror image,
     * which round otherwise, stay together.
     */
    private static final double TRANSFER_ACCURACY = 1e-6;

    /** The same for roll, m/s². */
    private static final double ROLL_ACCURACY = 1e-9;
}
