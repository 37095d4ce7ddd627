package org.foreload.handling;

import org.foreload.load.Wheel;
import org.foreload.tyre.Tyre;
import org.foreload.tyre.TyreForce;
import org.foreload.vehicle.Car;

/**
 * Force of one wheel at an operating point, and how it changes with the lateral slip of its axle, at its load and with
 * its brake and drive force held.
 *
 * @param along force along the wheel, N, positive forward
 * @param across force across the wheel, N, positive to the left
 * @param alongSlope change of {@code along} per unit of slip (tangent of the slip angle), N
 * @param acrossSlope change of {@code across} per unit of slip, N; negative on the rising side of the tyre's curve
 */
record WheelSlope(double along, double across, double alongSlope, double acrossSlope) {

    /** Slip over which any tyre curve bends: about half a degree. */
    private static final double BEND = 0.01;

    static WheelSlope of(OperatingPoint point, Wheel wheel) {
        Car car = point.car();
        Tyre tyre = wheel.front() ? car.frontTyre() : car.rearTyre();
        double load = point.loads().of(wheel);
        if (point.locks().locked(wheel.ordinal())) {
            double sliding = wheel.front() ? Math.tan(point.frontSlipAngle()) : point.rearSlipTangent();
            TyreForce force = tyre.lockedForce(sliding, load);
            return new WheelSlope(
                    -force.longitudinal(),
                    -force.lateral(),
                    -Derivative.of(slip -> tyre.lockedForce(slip, load).longitudinal(), sliding, BEND),
                    -Derivative.of(slip -> tyre.lockedForce(slip, load).lateral(), sliding, BEND));
        }
        double asked = point.asked(wheel);
        double slip = point.slip(wheel);
        double limit = tyre.rollingForceLimit(slip, load);
        double share = point.mostShare(wheel);
        if (Math.abs(asked) < share * limit) {
            return new WheelSlope(
                    asked,
                    -tyre.lateralForce(slip, asked, load),
                    0,
                    -Derivative.of(y -> tyre.lateralForce(y, asked, load), slip, BEND));
        }
        double held = Math.copySign(share, asked);
        return new WheelSlope(
                held * limit,
                -tyre.lateralForce(slip, held * limit, load),
                Derivative.of(y -> held * tyre.rollingForceLimit(y, load), slip, BEND),
                -Derivative.of(y -> tyre.lateralForce(y, held * tyre.rollingForceLimit(y, load), load), slip, BEND));
    }
}
