package org.foreload.bicycle;

import org.foreload.load.LoadTransfer;
import org.foreload.load.RoadPlane;
import org.foreload.load.WheelLoads;
import org.foreload.tyre.Tyre;
import org.foreload.tyre.TyreForce;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Suspension.Response;

/**
 * The equations of {@link BicycleModel} in plain words, without regard for time or objects: the twin that the quick
 * ones are held to. Loads and forces of a rigid body are found by putting the one into the other until they agree.
 */
final class PlainBicycle {

    /** Rounds between loads and forces: each shrinks their difference to a third or less. */
    private static final int ROUNDS = 200;

    private final Car car;
    private final Controls controls;
    private final double[] x;

    /** Loads of the wheels, N. */
    final double[] load = new double[4];

    /** Force of each wheel along and across itself, N. */
    final double[][] force = new double[4][2];

    /** Most that each wheel could carry along itself, N; infinite for a stopped one. */
    final double[] most = new double[4];

    /** Rates per second. */
    final double[] rate = new double[BicycleState.SIZE];

    /** How far loads and forces of a rigid body are apart in the end, N. */
    double apart;

    PlainBicycle(Car car, Controls controls, double[] x) {
        this.car = car;
        this.controls = controls;
        this.x = x;
        evaluate();
    }

    private void evaluate() {
        Response pitch = car.suspension().pitch();
        Response roll = car.suspension().roll();
        double transfer = pitch.rigid() ? 0 : x[BicycleState.PITCH_TRANSFER];
        double lateral = roll.rigid() ? 0 : x[BicycleState.ROLL_ACCELERATION];
        double mass = car.chassis().mass();
        double toX = 0;
        double toY = 0;
        double settled = 0;
        for (int round = 0; round < ROUNDS; round++) {
            loads(transfer, lateral);
            toX = 0;
            toY = 0;
            for (int wheel = 0; wheel < 4; wheel++) {
                force(wheel);
                toX += bodyX(wheel);
                toY += bodyY(wheel);
            }
            // What the forces hold moved: all that slows the car at the road, and drag at its height over the CG.
            settled = (-(toX - drag()) * car.chassis().cgHeight()
                            - drag() * car.aerodynamics().dragHeight())
                    / car.chassis().wheelbase();
            apart = Math.max(
                    pitch.rigid() ? Math.abs(settled - transfer) : 0,
                    roll.rigid() ? Math.abs(toY / mass - lateral) * mass : 0);
            transfer = pitch.rigid() ? settled : transfer;
            lateral = roll.rigid() ? toY / mass : lateral;
        }
        double moment = 0;
        for (int wheel = 0; wheel < 4; wheel++) {
            moment += atX(wheel) * bodyY(wheel) - atY(wheel) * bodyX(wheel);
        }
        double vx = x[BicycleState.VX];
        double vy = x[BicycleState.VY];
        double yawRate = x[BicycleState.YAW_RATE];
        double bank = controls.banking();
        double gravityAcross = -RoadPlane.lateral(0, controls.grade(), bank);
        rate[BicycleState.VX] = (toX - drag()) / mass - RoadPlane.slowing(controls.grade()) + yawRate * vy;
        rate[BicycleState.VY] = toY / mass + gravityAcross - yawRate * vx * Math.cos(bank);
        rate[BicycleState.YAW_RATE] = moment / car.chassis().yawInertia();
        follow(pitch, BicycleState.PITCH_TRANSFER, settled);
        follow(roll, BicycleState.ROLL_ACCELERATION, toY / mass);
        relax(true, BicycleState.FRONT_SLIP);
        relax(false, BicycleState.REAR_SLIP);
    }

    private double drag() {
        return car.aerodynamics().drag(x[BicycleState.VX] * x[BicycleState.VX]);
    }

    private void loads(double transfer, double lateral) {
        LoadTransfer model = LoadTransfer.of(car);
        double vx = x[BicycleState.VX];
        double normal = RoadPlane.normal(vx * x[BicycleState.YAW_RATE], controls.grade(), controls.banking());
        WheelLoads loads = LoadTransfer.assemble(
                model.frontAxle(normal, vx * vx),
                model.rearAxle(normal, vx * vx),
                transfer,
                model.frontLateral(lateral),
                model.rearLateral(lateral));
        load[0] = loads.frontLeft();
        load[1] = loads.frontRight();
        load[2] = loads.rearLeft();
        load[3] = loads.rearRight();
    }

    private void force(int wheel) {
        boolean front = wheel < 2;
        Tyre tyre = tyre(front);
        double brake = controls.brakeForce() * (front ? car.frontBrakeShare() : 1 - car.frontBrakeShare()) / 2;
        double frontDrive = car.driveline().drivenAxle().frontShare();
        double drive = controls.driveForce() * (front ? frontDrive : 1 - frontDrive) / 2;
        if (controls.locks().locked(wheel)) {
            TyreForce sliding = tyre.lockedForce(slip(front), load[wheel]);
            force[wheel][0] = -sliding.longitudinal();
            force[wheel][1] = -sliding.lateral();
            most[wheel] = Double.POSITIVE_INFINITY;
            return;
        }
        double felt =
                tyre.relaxationLength() > 0 ? x[front ? BicycleState.FRONT_SLIP : BicycleState.REAR_SLIP] : slip(front);
        most[wheel] = tyre.rollingForceLimit(felt, load[wheel]);
        double carried = Math.max(-most[wheel], Math.min(most[wheel], drive - brake));
        force[wheel][0] = carried;
        force[wheel][1] = -tyre.lateralForce(felt, carried, load[wheel]);
    }

    /** Tangent of the angle between an axle's wheels and the way it really moves. */
    private double slip(boolean front) {
        double arm = front ? car.chassis().cgToFrontAxle() : -car.chassis().cgToRearAxle();
        double across = x[BicycleState.VY] + arm * x[BicycleState.YAW_RATE];
        return Math.tan(Math.atan2(across, x[BicycleState.VX]) - (front ? controls.steer() : 0));
    }

    private double bodyX(int wheel) {
        double angle = wheel < 2 ? controls.steer() : 0;
        return force[wheel][0] * Math.cos(angle) - force[wheel][1] * Math.sin(angle);
    }

    private double bodyY(int wheel) {
        double angle = wheel < 2 ? controls.steer() : 0;
        return force[wheel][0] * Math.sin(angle) + force[wheel][1] * Math.cos(angle);
    }

    private double atX(int wheel) {
        return wheel < 2 ? car.chassis().cgToFrontAxle() : -car.chassis().cgToRearAxle();
    }

    private double atY(int wheel) {
        double track = wheel < 2 ? car.chassis().frontTrack() : car.chassis().rearTrack();
        return wheel % 2 == 0 ? track / 2 : -track / 2;
    }

    private Tyre tyre(boolean front) {
        return front ? car.frontTyre() : car.rearTyre();
    }

    private void follow(Response response, int at, double target) {
        if (response.rigid()) {
            return;
        }
        double omega = 2 * Math.PI * response.frequency();
        rate[at] = x[at + 1];
        rate[at + 1] = omega * omega * (target - x[at]) - 2 * response.dampingRatio() * omega * x[at + 1];
    }

    private void relax(boolean front, int at) {
        double length = tyre(front).relaxationLength();
        if (length > 0) {
            rate[at] = Math.abs(x[BicycleState.VX]) / length * (slip(front) - x[at]);
        }
    }
}
