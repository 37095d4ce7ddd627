package org.foreload.handling;

import java.util.List;
import java.util.Objects;
import org.foreload.load.Wheel;
import org.foreload.vehicle.Car;

/**
 * The lateral motion of a car near an operating point as a linear system: d(vy, r)/dt = A·(vy, r) + B·δ for small
 * changes of speed across, yaw rate and steer. Speed along, wheel loads, brake and drive forces and stopped wheels are
 * held.
 *
 * <p>With equal tyres, no braking and no steer, A is the matrix of the textbooks: −(C_f + C_r)/(m V), −(a C_f − b
 * C_r)/(m V) − V; −(a C_f − b C_r)/(Iz V), −(a² C_f + b² C_r)/(Iz V). Source: H. B. Pacejka, Tyre and Vehicle Dynamics,
 * ch. 1 (from memory). Here the matrix is written out with steer angle, brake forces and wheel by wheel, so that the
 * two tracks of an axle pull apart; only the slopes of the tyre curves are differences.
 *
 * @param a11 1/s
 * @param a12 m/s per rad/s, less the speed
 * @param a21 rad/s² per m/s
 * @param a22 1/s
 * @param b1 m/s² per rad of steer
 * @param b2 1/s² per rad of steer
 * @param frontStiffness cornering stiffness of the front axle at the point, N/rad: 0 when saturated, negative beyond
 * @param rearStiffness the same of the rear axle
 * @param speed m/s along the car
 */
public record LateralModel(
        double a11,
        double a12,
        double a21,
        double a22,
        double b1,
        double b2,
        double frontStiffness,
        double rearStiffness,
        double speed) {

    /** Linearises about a point. */
    public static LateralModel at(OperatingPoint point) {
        Objects.requireNonNull(point, "point");
        Car car = point.car();
        WheelSlope[] wheel = new WheelSlope[4];
        for (Wheel one : Wheel.values()) {
            wheel[one.ordinal()] = WheelSlope.of(point, one);
        }
        double sin = Math.sin(point.steer());
        double cos = Math.cos(point.steer());
        double toFront = car.chassis().cgToFrontAxle();
        double toRear = car.chassis().cgToRearAxle();
        double frontArm = car.chassis().frontTrack() / 2;
        double rearArm = car.chassis().rearTrack() / 2;

        double frontAcross = wheel[0].acrossSlope() + wheel[1].acrossSlope();
        double frontAlong = wheel[0].alongSlope() + wheel[1].alongSlope();
        double frontForce = frontAcross * cos + frontAlong * sin;
        double frontMoment = toFront * frontForce
                + frontArm
                        * ((wheel[1].alongSlope() - wheel[0].alongSlope()) * cos
                                - (wheel[1].acrossSlope() - wheel[0].acrossSlope()) * sin);
        double rearForce = wheel[2].acrossSlope() + wheel[3].acrossSlope();
        double rearMoment = -toRear * rearForce + rearArm * (wheel[3].alongSlope() - wheel[2].alongSlope());

        // How the slips change with the state and with steer.
        double frontSpeed = point.vy() + toFront * point.yawRate();
        double frontTangent = Math.tan(point.frontSlipAngle());
        double stretch = 1 + frontTangent * frontTangent;
        double frontPerSpeed = stretch * point.vx() / (point.vx() * point.vx() + frontSpeed * frontSpeed);
        double rearPerSpeed = 1 / point.vx();

        // Steering also turns the direction of the forces that are there.
        double turnedForce =
                (wheel[0].along() + wheel[1].along()) * cos - (wheel[0].across() + wheel[1].across()) * sin;
        double turnedMoment = toFront * turnedForce
                - frontArm
                        * ((wheel[1].along() - wheel[0].along()) * sin + (wheel[1].across() - wheel[0].across()) * cos);

        double mass = car.chassis().mass();
        double inertia = car.chassis().yawInertia();
        return new LateralModel(
                (frontForce * frontPerSpeed + rearForce * rearPerSpeed) / mass,
                (frontForce * frontPerSpeed * toFront - rearForce * rearPerSpeed * toRear) / mass - point.vx(),
                (frontMoment * frontPerSpeed + rearMoment * rearPerSpeed) / inertia,
                (frontMoment * frontPerSpeed * toFront - rearMoment * rearPerSpeed * toRear) / inertia,
                (turnedForce - frontForce * stretch) / mass,
                (turnedMoment - frontMoment * stretch) / inertia,
                -frontAcross * (1 + point.frontSlip() * point.frontSlip()),
                -rearForce * (1 + point.rearSlip() * point.rearSlip()),
                point.vx());
    }

    /** Eigenvalues, the least stable first. */
    public List<Eigenvalue> eigenvalues() {
        return Linear.eigenvalues(new double[][] {{a11, a12}, {a21, a22}});
    }

    /**
     * How quickly the least stable motion grows, 1/s, negative when it decays: the larger real part of the eigenvalues,
     * in closed form.
     */
    public double growthRate() {
        double half = (a11 + a22) / 2;
        double square = half * half - determinant();
        return square > 0 ? half + Math.sqrt(square) : half;
    }

    private double determinant() {
        return a11 * a22 - a12 * a21;
    }

    /** Undamped natural frequency, rad/s: the root of the product of the eigenvalues; NaN where the car diverges. */
    public double naturalFrequency() {
        double square = determinant();
        return square > 0 ? Math.sqrt(square) : Double.NaN;
    }

    /** Damping ratio, plain number; above 1 where the motion does not swing; NaN where the car diverges. */
    public double dampingRatio() {
        return -(a11 + a22) / 2 / naturalFrequency();
    }

    /** Steady change of yaw rate per change of steer, 1/s, at constant speed. */
    public double yawRateGain() {
        return (a21 * b1 - a11 * b2) / determinant();
    }

    /** Steady change of the speed across, over speed along, per change of steer: plain number, at constant speed. */
    public double sideslipGain() {
        return (a12 * b2 - a22 * b1) / determinant() / speed;
    }
}
