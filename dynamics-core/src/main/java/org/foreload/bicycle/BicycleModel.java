package org.foreload.bicycle;

import static org.foreload.bicycle.BicycleState.FRONT_SLIP;
import static org.foreload.bicycle.BicycleState.PITCH_TRANSFER;
import static org.foreload.bicycle.BicycleState.REAR_SLIP;
import static org.foreload.bicycle.BicycleState.ROLL_ACCELERATION;
import static org.foreload.bicycle.BicycleState.VX;
import static org.foreload.bicycle.BicycleState.VY;
import static org.foreload.bicycle.BicycleState.YAW_RATE;

import org.foreload.conventions.Checks;
import org.foreload.load.LoadTransfer;
import org.foreload.load.RoadPlane;
import org.foreload.load.WheelLoads;
import org.foreload.tyre.Tyre;
import org.foreload.tyre.TyreForce;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Suspension.Response;

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
 * is rigid it follows at once: then forces and loads, which hang on each other, are found together. The relaxed slip y
 * follows the slip angle by dy/dt = (v/σ)(tan α − y).
 *
 * <p>One instance serves one run at a time: it fills the buffer that its caller hands in.
 */
public final class BicycleModel {

    private final Car car;
    private final double mass;
    private final double yawInertia;
    private final double toFront;
    private final double toRear;
    private final double wheelbase;
    private final double height;
    private final LoadTransfer transfer;
    private final boolean rigidPitch;
    private final boolean rigidRoll;

    /**
     * @throws org.foreload.conventions.InvalidValueException if the car has no yaw inertia: a transient model needs one
     */
    public BicycleModel(Car car) {
        this.car = car;
        this.mass = car.chassis().mass();
        this.yawInertia = Checks.positive("yaw_inertia_kg_m2", car.chassis().yawInertia());
        this.toFront = car.chassis().cgToFrontAxle();
        this.toRear = car.chassis().cgToRearAxle();
        this.wheelbase = car.chassis().wheelbase();
        this.height = car.chassis().cgHeight();
        this.transfer = LoadTransfer.of(car);
        this.rigidPitch = car.suspension().pitch().rigid();
        this.rigidRoll = car.suspension().roll().rigid();
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
        double vx = x[at + VX];
        double vy = x[at + VY];
        double yawRate = x[at + YAW_RATE];
        double steer = controls.steer();
        double sinSteer = Math.sin(steer);
        double cosSteer = Math.cos(steer);
        double cosBank = Math.cos(controls.banking());
        double turning = vx * yawRate;
        double steadyLateral = RoadPlane.lateral(turning, controls.grade(), controls.banking());
        double sideGravity = turning * cosBank - steadyLateral;
        double drag = car.aerodynamics().drag(vx * vx);

        double frontSlip = Math.tan(Math.atan2(vy + toFront * yawRate, vx) - steer);
        double rearSlip = (vy - toRear * yawRate) / vx;
        boolean frontLag = car.frontTyre().relaxationLength() > 0;
        boolean rearLag = car.rearTyre().relaxationLength() > 0;
        double normal = RoadPlane.normal(turning, controls.grade(), controls.banking());
        Agreement pitch = rigidPitch
                ? Agreement.from(askedTransfer(controls, drag, steadyLateral * sinSteer))
                : Agreement.fixed(x[at + PITCH_TRANSFER]);
        Agreement roll = rigidRoll ? Agreement.from(steadyLateral) : Agreement.fixed(x[at + ROLL_ACCELERATION]);
        double bodyX;
        double bodyY;
        double frontBodyY;
        double rearY;
        double pitchTarget;
        do {
            fill(wheels, vx * vx, normal, pitch.value(), roll.value());
            axleForces(0, frontLag ? x[at + FRONT_SLIP] : frontSlip, frontSlip, controls, wheels);
            axleForces(2, rearLag ? x[at + REAR_SLIP] : rearSlip, rearSlip, controls, wheels);
            double frontX = wheels.longitudinal[0] + wheels.longitudinal[1];
            double frontY = wheels.lateral[0] + wheels.lateral[1];
            double rearX = wheels.longitudinal[2] + wheels.longitudinal[3];
            rearY = wheels.lateral[2] + wheels.lateral[3];
            bodyX = frontX * cosSteer - frontY * sinSteer + rearX;
            frontBodyY = frontY * cosSteer + frontX * sinSteer;
            bodyY = frontBodyY + rearY;
            pitchTarget = pitchTransfer(-bodyX, drag);
        } while (!(pitch.reached(pitchTarget, TRANSFER_ACCURACY) & roll.reached(bodyY / mass, ROLL_ACCURACY)));
        double moment = toFront * frontBodyY
                - toRear * rearY
                + car.chassis().frontTrack() / 2 * alongBody(wheels, 1, 0, cosSteer, sinSteer)
                + car.chassis().rearTrack() / 2 * (wheels.longitudinal[3] - wheels.longitudinal[2]);

        double specificX = (bodyX - drag) / mass - RoadPlane.slowing(controls.grade());
        double specificY = bodyY / mass + sideGravity;
        wheels.accelerationX = specificX;
        wheels.accelerationY = specificY;
        rate[at + VX] = specificX + yawRate * vy;
        rate[at + VY] = specificY - yawRate * vx * cosBank;
        rate[at + YAW_RATE] = moment / yawInertia;

        wheels.pitchTarget = pitchTarget;
        follow(car.suspension().pitch(), x, at + PITCH_TRANSFER, pitchTarget, rate);
        follow(car.suspension().roll(), x, at + ROLL_ACCELERATION, bodyY / mass, rate);
        rate[at + FRONT_SLIP] =
                frontLag ? Math.abs(vx) / car.frontTyre().relaxationLength() * (frontSlip - x[at + FRONT_SLIP]) : 0;
        rate[at + REAR_SLIP] =
                rearLag ? Math.abs(vx) / car.rearTyre().relaxationLength() * (rearSlip - x[at + REAR_SLIP]) : 0;
    }

    private static double alongBody(WheelForces wheels, int right, int left, double cosSteer, double sinSteer) {
        return (wheels.longitudinal[right] - wheels.longitudinal[left]) * cosSteer
                - (wheels.lateral[right] - wheels.lateral[left]) * sinSteer;
    }

    /** Load, N, that a rigid body moves from the rear to the front axle if the wheels give what the pedals ask for. */
    private double askedTransfer(Controls controls, double drag, double lateralAlong) {
        double corneringDrag = mass * toRear / wheelbase * lateralAlong;
        return pitchTransfer(controls.brakeForce() - controls.driveForce() + corneringDrag, drag);
    }

    /** Load, N, that a slowing force at the road and the drag hold moved from the rear to the front axle. */
    private double pitchTransfer(double slowing, double drag) {
        return (height * (slowing + drag) - car.aerodynamics().dragHeight() * drag) / wheelbase;
    }

    private void fill(WheelForces wheels, double speedSquared, double normal, double pitch, double roll) {
        WheelLoads loads = LoadTransfer.assemble(
                transfer.frontAxle(normal, speedSquared),
                transfer.rearAxle(normal, speedSquared),
                pitch,
                transfer.frontLateral(roll),
                transfer.rearLateral(roll));
        wheels.load[0] = loads.frontLeft();
        wheels.load[1] = loads.frontRight();
        wheels.load[2] = loads.rearLeft();
        wheels.load[3] = loads.rearRight();
    }

    /**
     * Load, N, to which a rigid body's load transfer and the forces agree: so little that a run and its mirror image,
     * which round otherwise, stay together.
     */
    private static final double TRANSFER_ACCURACY = 1e-6;

    /** The same for roll, m/s². */
    private static final double ROLL_ACCURACY = 1e-9;

    private void axleForces(int left, double slip, double slidingSlip, Controls controls, WheelForces wheels) {
        boolean front = left == 0;
        Tyre tyre = front ? car.frontTyre() : car.rearTyre();
        double brake = controls.brakeForce() * (front ? car.frontBrakeShare() : 1 - car.frontBrakeShare()) / 2;
        double frontDrive = car.driveline().drivenAxle().frontShare();
        double drive = controls.driveForce() * (front ? frontDrive : 1 - frontDrive) / 2;
        for (int wheel = left; wheel < left + 2; wheel++) {
            double load = wheels.load[wheel];
            double asked = drive - brake;
            if (controls.locks().locked(wheel)) {
                TyreForce sliding = tyre.lockedForce(slidingSlip, load);
                wheels.longitudinal[wheel] = -sliding.longitudinal();
                wheels.lateral[wheel] = -sliding.lateral();
                wheels.lockMargin[wheel] = brake - UNLOCK_SHARE * sliding.longitudinal() - IDLE_FORCE;
            } else {
                double most = tyre.rollingForceLimit(slip, load);
                double carried = Math.max(-most, Math.min(most, asked));
                wheels.longitudinal[wheel] = carried;
                wheels.lateral[wheel] = -tyre.lateralForce(slip, carried, load);
                wheels.lockMargin[wheel] = most + Math.min(0, drive) - brake + IDLE_FORCE;
            }
        }
    }

    /**
     * A stopped wheel turns again when the brake asks for less than this share of the road's pull on it: the gap to one
     * keeps a wheel at its limit from stopping and turning without end, and stands for the torque that spins it up.
     */
    private static final double UNLOCK_SHARE = 0.9;

    /** Brake force, N, too small to stop even a wheel in the air. */
    private static final double IDLE_FORCE = 1;

    private static void follow(Response response, double[] x, int index, double target, double[] rate) {
        if (response.rigid()) {
            rate[index] = 0;
            rate[index + 1] = 0;
            return;
        }
        double omega = 2 * Math.PI * response.frequency();
        rate[index] = x[index + 1];
        rate[index + 1] = omega * omega * (target - x[index]) - 2 * response.dampingRatio() * omega * x[index + 1];
    }
}
