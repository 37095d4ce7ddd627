package org.foreload.validation.reference;

import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.foreload.vehicle.Suspension.Response;

/**
 * A car on a flat road in the plane of the earth, over time: position, heading, velocity, yaw rate, pitch and roll load
 * transfer, tyre slip. Steering, brake and drive force come from outside, as functions of time; no wheel may stop.
 *
 * <p>Integrated with the classic fourth-order Runge-Kutta method at a fixed step.
 */
public final class ReferenceCar {

    private static final double GRAVITY = 9.81;

    private static final int X = 0;
    private static final int Y = 1;
    private static final int HEADING = 2;
    private static final int VX = 3;
    private static final int VY = 4;
    private static final int YAW = 5;
    private static final int PITCH = 6;
    private static final int PITCH_RATE = 7;
    private static final int ROLL = 8;
    private static final int ROLL_RATE = 9;
    private static final int SLIP_FRONT = 10;
    private static final int SLIP_REAR = 11;
    private static final int SIZE = 12;

    /** Hands and feet over time: steering angle, rad; brake and drive force of all wheels, N. */
    public interface Pedals {
        /** Steering angle at a time, rad, positive to the left. */
        double steer(double time);

        /** Brake force of all wheels at a time, N. */
        double brake(double time);

        /** Drive force of all driven wheels at a time, N. */
        double drive(double time);
    }

    private final Car car;
    private final FrictionTyre front;
    private final FrictionTyre rear;
    private final Pedals pedals;
    private final double[] now = new double[SIZE];
    private double time;

    /**
     * A car at the origin, heading along x.
     *
     * @param speed m/s
     * @param shift load that braking and drag have moved to the front axle at the start, N
     */
    public ReferenceCar(Car car, Pedals pedals, double speed, double shift) {
        this.car = car;
        this.front = (FrictionTyre) car.frontTyre();
        this.rear = (FrictionTyre) car.rearTyre();
        this.pedals = pedals;
        now[VX] = speed;
        now[PITCH] = shift;
        if (car.suspension().pitch().rigid() || car.suspension().roll().rigid()) {
            throw new IllegalArgumentException("this reference knows sprung cars only");
        }
    }

    /** Goes on until a time, s, in steps of the length given, s. */
    public void runUntil(double end, double step) {
        while (time < end - step / 2) {
            double h = Math.min(step, end - time);
            double[] k1 = rates(time, now);
            double[] k2 = rates(time + h / 2, plus(now, h / 2, k1));
            double[] k3 = rates(time + h / 2, plus(now, h / 2, k2));
            double[] k4 = rates(time + h, plus(now, h, k3));
            for (int i = 0; i < SIZE; i++) {
                now[i] += h * (k1[i] + 2 * (k2[i] + k3[i]) + k4[i]) / 6;
            }
            time += h;
        }
    }

    private static double[] plus(double[] x, double h, double[] k) {
        double[] sum = new double[SIZE];
        for (int i = 0; i < SIZE; i++) {
            sum[i] = x[i] + h * k[i];
        }
        return sum;
    }

    private double[] rates(double t, double[] x) {
        double m = car.chassis().mass();
        double a = car.chassis().cgToFrontAxle();
        double wheelbase = car.chassis().wheelbase();
        double b = wheelbase - a;
        double h = car.chassis().cgHeight();
        double steer = pedals.steer(t);
        double air = car.aerodynamics().airDensity() / 2 * x[VX] * x[VX];
        double drag = air * car.aerodynamics().dragArea();

        double frontLoad =
                m * GRAVITY * b / wheelbase + air * car.aerodynamics().frontDownforceArea() + x[PITCH];
        double rearLoad = m * GRAVITY * a / wheelbase + air * car.aerodynamics().rearDownforceArea() - x[PITCH];
        double hf = car.suspension().frontRollCenterHeight();
        double hr = car.suspension().rearRollCenterHeight();
        double share = car.suspension().frontRollStiffnessShare();
        double arm = h - (b * hf + a * hr) / wheelbase;
        double frontShift =
                m * x[ROLL] * (share * arm + hf * b / wheelbase) / car.chassis().frontTrack();
        double rearShift = m
                * x[ROLL]
                * ((1 - share) * arm + hr * a / wheelbase)
                / car.chassis().rearTrack();

        DrivenAxle driven = car.driveline().drivenAxle();
        double toFront = driven == DrivenAxle.FRONT ? 1 : driven == DrivenAxle.REAR ? 0 : 0.5;
        double brake = Math.max(0, pedals.brake(t));
        double drive = Math.max(0, pedals.drive(t));
        double frontHalf = (toFront * drive - car.frontBrakeShare() * brake) / 2;
        double rearHalf = ((1 - toFront) * drive - (1 - car.frontBrakeShare()) * brake) / 2;

        double frontSlip = Math.tan(Math.atan((x[VY] + a * x[YAW]) / x[VX]) - steer);
        double rearSlip = (x[VY] - b * x[YAW]) / x[VX];
        double useFront = front.relaxationLength() > 0 ? x[SLIP_FRONT] : frontSlip;
        double useRear = rear.relaxationLength() > 0 ? x[SLIP_REAR] : rearSlip;
        double yfl = lateral(front, frontLoad / 2 - frontShift, frontHalf, useFront);
        double yfr = lateral(front, frontLoad / 2 + frontShift, frontHalf, useFront);
        double yrl = lateral(rear, rearLoad / 2 - rearShift, rearHalf, useRear);
        double yrr = lateral(rear, rearLoad / 2 + rearShift, rearHalf, useRear);

        double cos = Math.cos(steer);
        double sin = Math.sin(steer);
        double alongFront = 2 * frontHalf * cos - (yfl + yfr) * sin;
        double acrossFront = 2 * frontHalf * sin + (yfl + yfr) * cos;
        double along = alongFront + 2 * rearHalf;
        double across = acrossFront + yrl + yrr;
        // The two front wheels pull alike along themselves, but not across: with the wheels turned that is a moment,
        // too.
        double moment = a * acrossFront - b * (yrl + yrr) + car.chassis().frontTrack() / 2 * (yfl - yfr) * sin;

        double[] rate = new double[SIZE];
        rate[X] = x[VX] * Math.cos(x[HEADING]) - x[VY] * Math.sin(x[HEADING]);
        rate[Y] = x[VX] * Math.sin(x[HEADING]) + x[VY] * Math.cos(x[HEADING]);
        rate[HEADING] = x[YAW];
        rate[VX] = (along - drag) / m + x[YAW] * x[VY];
        rate[VY] = across / m - x[YAW] * x[VX];
        rate[YAW] = moment / car.chassis().yawInertia();
        double settled =
                h * (drag - along) / wheelbase - drag * car.aerodynamics().dragHeight() / wheelbase;
        second(car.suspension().pitch(), x, PITCH, settled, rate);
        second(car.suspension().roll(), x, ROLL, across / m, rate);
        rate[SLIP_FRONT] =
                front.relaxationLength() > 0 ? x[VX] / front.relaxationLength() * (frontSlip - x[SLIP_FRONT]) : 0;
        rate[SLIP_REAR] = rear.relaxationLength() > 0 ? x[VX] / rear.relaxationLength() * (rearSlip - x[SLIP_REAR]) : 0;
        return rate;
    }

    private static void second(Response response, double[] x, int at, double target, double[] rate) {
        double omega = 2 * Math.PI * response.frequency();
        rate[at] = x[at + 1];
        rate[at + 1] = omega * (omega * (target - x[at]) - 2 * response.dampingRatio() * x[at + 1]);
    }

    /**
     * Lateral force of a wheel with a longitudinal force imposed on it: the length of the scaled slip vector that
     * carries this force beside the lateral slip is found by halving.
     */
    private static double lateral(FrictionTyre tyre, double load, double imposed, double slip) {
        if (!(load > 0)) {
            return 0;
        }
        double fall = 1 - tyre.loadSensitivity() * (load / tyre.referenceLoad() - 1);
        double peakX = tyre.frictionX() * fall * load;
        double peakY = tyre.frictionY() * fall * load;
        double y = Math.abs(slip) * tyre.corneringStiffnessPerLoad() / tyre.frictionY();
        double wanted = Math.abs(imposed) / peakX;
        if (wanted >= 1) {
            throw new IllegalStateException("a wheel stops, which this reference does not know");
        }
        double low = 0;
        double high = 1e4;
        if (wanted > 0) {
            // Beyond its peak a curve may fall again: the first slip that carries the force is the one that rolls.
            double scan = 0.01;
            while (scan < high && carried(tyre.curve(), scan, y) < wanted) {
                low = scan;
                scan *= 1.05;
            }
            high = scan;
            for (int i = 0; i < 60; i++) {
                double middle = (low + high) / 2;
                if (carried(tyre.curve(), middle, y) < wanted) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
        } else {
            high = 0;
        }
        double length = Math.hypot(high, y);
        double force = length == 0 ? 0 : peakY * curve(tyre.curve(), length) * y / length;
        return slip > 0 ? -force : force;
    }

    private static double carried(SlipCurve curve, double x, double y) {
        double length = Math.hypot(x, y);
        return curve(curve, length) * x / length;
    }

    /** The curves, from their published formulas. */
    private static double curve(SlipCurve curve, double x) {
        if (curve instanceof SlipCurve.Brush) {
            return x >= 3 ? 1 : x - x * x / 3 + x * x * x / 27;
        }
        if (curve instanceof SlipCurve.MagicFormula magic) {
            double c = magic.shapeFactor();
            double e = magic.curvatureFactor();
            double bx = x / c;
            return Math.sin(c * Math.atan((1 - e) * bx + e * Math.atan(bx)));
        }
        return Math.min(1, x);
    }

    /** Time, s. */
    public double time() {
        return time;
    }

    /** Position along the first heading, m. */
    public double x() {
        return now[X];
    }

    /** Position across the first heading, m, positive to the left. */
    public double y() {
        return now[Y];
    }

    /** Speed, m/s. */
    public double speed() {
        return Math.hypot(now[VX], now[VY]);
    }

    /** Yaw rate, rad/s. */
    public double yawRate() {
        return now[YAW];
    }
}
