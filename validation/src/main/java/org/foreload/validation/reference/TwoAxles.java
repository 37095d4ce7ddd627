package org.foreload.validation.reference;

import org.foreload.tyre.FrictionTyre;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Driveline.DrivenAxle;

/**
 * Level-1 limits as margins of one step of a line: positive inside, zero at the limit. Wheels of one axle get the same
 * longitudinal force; an axle's lateral reach is the sum of what its wheels have left of their friction ellipses.
 */
final class TwoAxles {

    private static final double GRAVITY = 9.81;

    /** Force in N over which the brake share passes into the drive share: a ten-thousandth of what tyres give. */
    private static final double BLEND = 1;

    final Car car;
    private final FrictionTyre front;
    private final FrictionTyre rear;

    TwoAxles(Car car) {
        this.car = car;
        this.front = (FrictionTyre) car.frontTyre();
        this.rear = (FrictionTyre) car.rearTyre();
    }

    /** Number of margins. */
    static final int MARGINS = 10;

    /**
     * Fills the margins, each over a force of the car's own size; false if a wheel is beyond its ellipse.
     *
     * @param w speed squared
     * @param acceleration along the line, positive when speeding up
     * @param k curvature
     * @param slope change of curvature per metre
     */
    boolean margins(double w, double acceleration, double k, double slope, double[] out) {
        double m = car.chassis().mass();
        double wheelbase = car.chassis().wheelbase();
        double a = car.chassis().cgToFrontAxle();
        double b = wheelbase - a;
        double h = car.chassis().cgHeight();
        double air = 0.5 * car.aerodynamics().airDensity() * w;
        double drag = air * car.aerodynamics().dragArea();

        double lateral = w * k;
        double yaw = w * slope + acceleration * k;
        double frontAsk = (m * lateral * b + car.chassis().yawInertia() * yaw) / wheelbase;
        double rearAsk = (m * lateral * a - car.chassis().yawInertia() * yaw) / wheelbase;

        double pitch =
                -m * acceleration * h / wheelbase - drag * car.aerodynamics().dragHeight() / wheelbase;
        double frontLoad =
                m * GRAVITY * b / wheelbase + air * car.aerodynamics().frontDownforceArea() + pitch;
        double rearLoad = m * GRAVITY * a / wheelbase + air * car.aerodynamics().rearDownforceArea() - pitch;

        double frontCenter = car.suspension().frontRollCenterHeight();
        double rearCenter = car.suspension().rearRollCenterHeight();
        double arm = h - (frontCenter * b + rearCenter * a) / wheelbase;
        double stiff = car.suspension().frontRollStiffnessShare();
        double frontShift = m
                * lateral
                * (stiff * arm + b / wheelbase * frontCenter)
                / car.chassis().frontTrack();
        double rearShift = m
                * lateral
                * ((1 - stiff) * arm + a / wheelbase * rearCenter)
                / car.chassis().rearTrack();

        // Force of the tyres along the line, positive forward, parted smoothly into drive and brake.
        double along = m * acceleration + drag;
        double drive = 0.5 * (along + Math.sqrt(along * along + BLEND * BLEND));
        double brake = drive - along;
        DrivenAxle driven = car.driveline().drivenAxle();
        double frontDrive = driven == DrivenAxle.FRONT ? 1 : driven == DrivenAxle.REAR ? 0 : 0.5;
        double frontForce = car.frontBrakeShare() * brake + frontDrive * drive;
        double rearForce = (1 - car.frontBrakeShare()) * brake + (1 - frontDrive) * drive;

        double size = m * GRAVITY;
        boolean inside = axle(front, frontLoad, frontShift, frontForce, frontAsk, size, out, 0);
        inside &= axle(rear, rearLoad, rearShift, rearForce, rearAsk, size, out, 4);
        out[8] = (car.driveline().power() / Math.sqrt(w) - drive) / size;
        out[9] = w / 100;
        return inside && out[8] > 0 && w > 0;
    }

    private static boolean axle(
            FrictionTyre tyre, double load, double shift, double force, double ask, double size, double[] out, int at) {
        double left = load / 2 - shift;
        double right = load / 2 + shift;
        double leftX = tyre.frictionX() * left * fall(tyre, left);
        double rightX = tyre.frictionX() * right * fall(tyre, right);
        double half = force / 2;
        double leftRest = 1 - half * half / (leftX * leftX);
        double rightRest = 1 - half * half / (rightX * rightX);
        if (!(left > 0 && right > 0 && leftRest > 0 && rightRest > 0)) {
            return false;
        }
        double ratio = tyre.frictionY() / tyre.frictionX();
        double reach = ratio * (leftX * Math.sqrt(leftRest) + rightX * Math.sqrt(rightRest));
        out[at] = (reach - ask) / size;
        out[at + 1] = (reach + ask) / size;
        out[at + 2] = leftRest;
        out[at + 3] = rightRest;
        return out[at] > 0 && out[at + 1] > 0;
    }

    private static double fall(FrictionTyre tyre, double load) {
        return 1 - tyre.loadSensitivity() * (load / tyre.referenceLoad() - 1);
    }
}
