package org.foreload.limit;

import org.foreload.ideal.IdealProfile;
import org.foreload.load.LoadTransfer;
import org.foreload.load.RoadPlane;
import org.foreload.load.WheelLoads;
import org.foreload.path.Path;
import org.foreload.tyre.FrictionTyre;
import org.foreload.vehicle.Car;

/**
 * A first guess: the quasi-steady profile on the line, with the slips, angles and load transfers that would hold it if
 * everything had settled. It needs no driver, and it keeps all bounds or nearly so if the profile uses a little less
 * than all the grip.
 */
final class QuasiSteadyStart {

    /** Share of the slip at the peak that no wheel of the guess goes beyond. */
    private static final double MOST_SLIP = 0.7;

    private static final int HALVINGS = 40;

    private final Car car;
    private final Path path;
    private final IdealProfile profile;
    private final LoadTransfer transfer;
    private final SlipShape[] shapes;

    QuasiSteadyStart(Car car, Path path, IdealProfile profile) {
        this.car = car;
        this.path = path;
        this.profile = profile;
        this.transfer = LoadTransfer.of(car);
        this.shapes = new SlipShape[] {
            new SlipShape(((FrictionTyre) car.frontTyre()).curve()),
            new SlipShape(((FrictionTyre) car.rearTyre()).curve())
        };
    }

    /** Unknowns at a station, in SI units. */
    double[] at(double station) {
        double mass = car.chassis().mass();
        double wheelbase = car.chassis().wheelbase();
        double grade = path.grade(station);
        double banking = path.banking(station);
        double curvature = path.curvature(station);
        double speed = profile.speedAt(station);
        double square = speed * speed;
        double deceleration = profile.decelerationAt(station);
        double drag = car.aerodynamics().drag(square);
        double force = -mass * deceleration + drag + mass * RoadPlane.slowing(grade);
        double brake = Math.max(0, -force);
        double drive = Math.max(0, force);
        double lateral = RoadPlane.lateral(square * curvature, grade, banking);
        double yaw = car.chassis().yawInertia() * (square * path.curvatureGradient(station) - deceleration * curvature);
        double pitch =
                (car.chassis().cgHeight() * (drag - force) - car.aerodynamics().dragHeight() * drag) / wheelbase;
        double normal = RoadPlane.normal(square * curvature, grade, banking);
        WheelLoads loads = LoadTransfer.assemble(
                transfer.frontAxle(normal, square),
                transfer.rearAxle(normal, square),
                pitch,
                transfer.frontLateral(lateral),
                transfer.rearLateral(lateral));
        double share = car.frontBrakeShare();
        double frontDrive = car.driveline().drivenAxle().frontShare();
        double front = (car.chassis().cgToRearAxle() * mass * lateral + yaw) / wheelbase;
        double rear = (car.chassis().cgToFrontAxle() * mass * lateral - yaw) / wheelbase;
        double frontSlip =
                -slip(0, front, loads.frontLeft(), loads.frontRight(), (drive * frontDrive - brake * share) / 2);
        double rearSlip = -slip(
                1, rear, loads.rearLeft(), loads.rearRight(), (drive * (1 - frontDrive) - brake * (1 - share)) / 2);

        double yawRate = speed * curvature;
        double sideslip = Math.atan(rearSlip + car.chassis().cgToRearAxle() * curvature);
        double[] x = new double[Unknowns.ALL];
        x[Unknowns.HEADING_ERROR] = -sideslip;
        x[Unknowns.VX] = speed * Math.cos(sideslip);
        x[Unknowns.VY] = speed * Math.sin(sideslip);
        x[Unknowns.YAW_RATE] = yawRate;
        x[Unknowns.PITCH] = pitch;
        x[Unknowns.ROLL] = lateral;
        x[Unknowns.FRONT_SLIP] = frontSlip;
        x[Unknowns.REAR_SLIP] = rearSlip;
        x[Unknowns.STEER] = Math.atan2(x[Unknowns.VY] + car.chassis().cgToFrontAxle() * yawRate, x[Unknowns.VX])
                - Math.atan(frontSlip);
        x[Unknowns.BRAKE] = brake / mass;
        x[Unknowns.DRIVE] = drive / mass;
        x[Unknowns.BRAKE_ASKED] = brake / mass;
        x[Unknowns.DRIVE_ASKED] = drive / mass;
        return x;
    }

    /** Slip, tangent, of the axle's sign of force, at which it carries a lateral force, or nearly. */
    private double slip(int axle, double force, double left, double right, double along) {
        FrictionTyre tyre = (FrictionTyre) (axle == 0 ? car.frontTyre() : car.rearTyre());
        double low = 0;
        double high = MOST_SLIP * Math.sqrt(shapes[axle].peakSquare());
        for (int i = 0; i < HALVINGS; i++) {
            double slip = (low + high) / 2;
            if (lateral(axle, tyre, slip, left, along) + lateral(axle, tyre, slip, right, along) < Math.abs(force)) {
                low = slip;
            } else {
                high = slip;
            }
        }
        return Math.copySign(low * tyre.frictionY() / tyre.corneringStiffnessPerLoad(), force);
    }

    private double lateral(int axle, FrictionTyre tyre, double slip, double load, double along) {
        double peak = tyre.peakForceX(load);
        double used = peak > 0 ? Math.min(0.98, Math.abs(along) / peak) : 0;
        return tyre.peakForceY(load) * slip * shapes[axle].share(slip * slip, used * used);
    }
}
