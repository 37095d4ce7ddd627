package org.foreload.validation.reference;

import org.foreload.tyre.FrictionTyre;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
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
    private final Axle front;
    private final Axle rear;
    private final double mass;
    private final double size;

    /** Shares of the wheelbase: CG to rear axle, CG to front axle, CG height, height of the drag. */
    private final double toRear;

    private final double toFront;
    private final double height;
    private final double dragHeight;

    private final double inertiaOverWheelbase;
    private final double dragPerSquare;
    private final double frontLiftPerSquare;
    private final double rearLiftPerSquare;

    /** Load from wheel to wheel for each unit of lateral acceleration. */
    private final double frontShift;

    private final double rearShift;

    private final double frontBrake;
    private final double frontDrive;
    private final double power;

    TwoAxles(Car car) {
        this.car = car;
        Chassis chassis = car.chassis();
        this.front = new Axle((FrictionTyre) car.frontTyre());
        this.rear = new Axle((FrictionTyre) car.rearTyre());
        this.mass = chassis.mass();
        this.size = mass * GRAVITY;
        double wheelbase = chassis.wheelbase();
        this.toFront = chassis.cgToFrontAxle() / wheelbase;
        this.toRear = 1 - toFront;
        this.height = chassis.cgHeight() / wheelbase;
        this.dragHeight = car.aerodynamics().dragHeight() / wheelbase;
        this.inertiaOverWheelbase = chassis.yawInertia() / wheelbase;
        double pressure = 0.5 * car.aerodynamics().airDensity();
        this.dragPerSquare = pressure * car.aerodynamics().dragArea();
        this.frontLiftPerSquare = pressure * car.aerodynamics().frontDownforceArea();
        this.rearLiftPerSquare = pressure * car.aerodynamics().rearDownforceArea();
        double frontCenter = car.suspension().frontRollCenterHeight();
        double rearCenter = car.suspension().rearRollCenterHeight();
        double arm = chassis.cgHeight() - frontCenter * toRear - rearCenter * toFront;
        double stiff = car.suspension().frontRollStiffnessShare();
        this.frontShift = mass * (stiff * arm + toRear * frontCenter) / chassis.frontTrack();
        this.rearShift = mass * ((1 - stiff) * arm + toFront * rearCenter) / chassis.rearTrack();
        DrivenAxle driven = car.driveline().drivenAxle();
        this.frontBrake = car.frontBrakeShare();
        this.frontDrive = driven == DrivenAxle.FRONT ? 1 : driven == DrivenAxle.REAR ? 0 : 0.5;
        this.power = car.driveline().power();
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
        double drag = dragPerSquare * w;
        double lateral = w * k;
        double yaw = inertiaOverWheelbase * (w * slope + acceleration * k);
        double frontAsk = mass * lateral * toRear + yaw;
        double rearAsk = mass * lateral * toFront - yaw;

        double pitch = -mass * acceleration * height - drag * dragHeight;
        double frontLoad = size * toRear + frontLiftPerSquare * w + pitch;
        double rearLoad = size * toFront + rearLiftPerSquare * w - pitch;

        // Force of the tyres along the line, positive forward, parted smoothly into drive and brake.
        double along = mass * acceleration + drag;
        double drive = 0.5 * (along + Math.sqrt(along * along + BLEND * BLEND));
        double brake = drive - along;
        double frontForce = frontBrake * brake + frontDrive * drive;
        double rearForce = (1 - frontBrake) * brake + (1 - frontDrive) * drive;

        out[8] = (power / Math.sqrt(w) - drive) / size;
        out[9] = w / 100;
        return w > 0
                && out[8] > 0
                && front.margins(frontLoad, frontShift * lateral, frontForce, frontAsk, size, out, 0)
                && rear.margins(rearLoad, rearShift * lateral, rearForce, rearAsk, size, out, 4);
    }

    /** Two tyres of a kind. */
    private static final class Axle {

        private final double frictionX;
        private final double ratio;
        private final double sensitivity;
        private final double perReference;

        Axle(FrictionTyre tyre) {
            frictionX = tyre.frictionX();
            ratio = tyre.frictionY() / tyre.frictionX();
            sensitivity = tyre.loadSensitivity();
            perReference = 1 / tyre.referenceLoad();
        }

        boolean margins(double load, double shift, double force, double ask, double size, double[] out, int at) {
            double left = load / 2 - shift;
            double right = load / 2 + shift;
            double leftX = peak(left);
            double rightX = peak(right);
            double half = force / 2;
            double leftRest = 1 - half * half / (leftX * leftX);
            double rightRest = 1 - half * half / (rightX * rightX);
            if (!(left > 0 && right > 0 && leftRest > 0 && rightRest > 0)) {
                return false;
            }
            double reach = ratio * (leftX * Math.sqrt(leftRest) + rightX * Math.sqrt(rightRest));
            out[at] = (reach - ask) / size;
            out[at + 1] = (reach + ask) / size;
            out[at + 2] = leftRest;
            out[at + 3] = rightRest;
            return out[at] > 0 && out[at + 1] > 0;
        }

        /** Longitudinal peak of a wheel. */
        private double peak(double load) {
            return frictionX * load * (1 - sensitivity * (load * perReference - 1));
        }
    }
}
