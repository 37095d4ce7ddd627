package org.foreload.driver;

import org.foreload.bicycle.WheelForces;
import org.foreload.conventions.Angles;
import org.foreload.conventions.Bounds;
import org.foreload.tyre.Tyre;

/**
 * An axle as its driver knows it: which slip angle brings which lateral force, with the loads and longitudinal forces
 * that the wheels have at the moment.
 */
final class InverseTyre {

    /** Even with locked wheels the driver keeps some steering on: as if this share of the peak were left. */
    private static final double LEAST_SHARE = 0.3;

    /** Share of the peak so small that its square is below rounding. */
    private static final double NONE = 1e-9;

    private final Tyre tyre;
    private final int left;
    private final double mostUse;

    private double peak;
    private double most;
    private double perMost;
    private double share;
    private double meanLoad;

    /**
     * @param tyre of the axle
     * @param left buffer index of its left wheel; the right one follows
     * @param mostUse share of the peak beyond which no slip is asked for, below 1
     */
    InverseTyre(Tyre tyre, int left, double mostUse) {
        this.tyre = tyre;
        this.left = left;
        this.mostUse = mostUse;
    }

    /** Takes in what the wheels carry at the moment. */
    void feel(WheelForces wheels) {
        double leftLoad = wheels.load(left);
        double rightLoad = wheels.load(left + 1);
        double leftPeak = wheels.peakY(left);
        double rightPeak = wheels.peakY(left + 1);
        peak = leftPeak + rightPeak;
        meanLoad = (leftLoad + rightLoad) / 2;
        double open = leftPeak * open(wheels, left) + rightPeak * open(wheels, left + 1);
        most = Bounds.larger(open, LEAST_SHARE * peak);
        share = peak > 0 ? most / peak : 0;
        perMost = 1 / most;
    }

    /** Share of a wheel's lateral peak that its longitudinal force leaves: the friction ellipse. */
    private static double open(WheelForces wheels, int wheel) {
        double most = wheels.peakX(wheel);
        if (!(most > 0)) {
            return 0;
        }
        if (Math.abs(wheels.longitudinal(wheel)) <= NONE * most) {
            return 1;
        }
        double used = wheels.longitudinal(wheel) / most;
        return Math.sqrt(Bounds.larger(1 - used * used, 0));
    }

    /** Most lateral force that the axle has at the moment, N. */
    double most() {
        return most;
    }

    /**
     * Slip angle, rad, that gives the axle this lateral force, never past the use that the driver allows; the sign is
     * that of a wheel: force to the left, slip angle below zero.
     */
    double slipAngle(double force) {
        return peak > 0 ? -Angles.atan(slipAgainst(force)) : 0;
    }

    /** Tangent of that angle, with the sign of the force: of a slip to the other side. */
    double slipAgainst(double force) {
        if (!(peak > 0)) {
            return 0;
        }
        double fraction = Bounds.smaller(Math.abs(force) * perMost, mostUse);
        return Math.copySign(tyre.lateralSlipBeside(share, fraction, meanLoad), force);
    }

    /**
     * Slope of the axle's lateral force over its slip angle where it now works, N/rad: what a little more slip still
     * brings. Never less than a small part of the slope at small slip, so that a full axle does not ask for endless
     * corrections.
     */
    double stiffness(WheelForces wheels) {
        double whole = tyre.corneringStiffness(wheels.load(left)) + tyre.corneringStiffness(wheels.load(left + 1));
        if (!(share > 0)) {
            return LEAST_SLOPE * whole;
        }
        double now = Math.abs(wheels.lateral(left) + wheels.lateral(left + 1)) * perMost;
        double high = Bounds.smaller(mostUse, now + HALF);
        double low = Bounds.larger(high - 2 * HALF, 0);
        double slips = tyre.lateralSlipBeside(share, high, meanLoad) - tyre.lateralSlipBeside(share, low, meanLoad);
        return Bounds.larger(LEAST_SLOPE * whole, most * (high - low) / slips);
    }

    /** Half of the share of the peak over which the slope is taken. */
    private static final double HALF = 0.02;

    /** Least slope, as a share of that at small slip. */
    private static final double LEAST_SLOPE = 0.08;
}
