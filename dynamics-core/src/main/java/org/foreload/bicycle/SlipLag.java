package org.foreload.bicycle;

import static org.foreload.bicycle.BicycleState.FRONT_SLIP;
import static org.foreload.bicycle.BicycleState.REAR_SLIP;
import static org.foreload.bicycle.BicycleState.VX;
import static org.foreload.bicycle.BicycleState.VY;
import static org.foreload.bicycle.BicycleState.YAW_RATE;

import org.foreload.vehicle.Car;

/**
 * A change of coordinates for integrators: in place of the slip y that a tyre feels, how far it lags behind the true
 * one, w = y − tan α. From dy/dt = (v/σ)(tan α − y) follows
 *
 * <pre>
 *   dw/dt = −(v/σ) w − d(tan α)/dt
 * </pre>
 *
 * <p>Both say the same, but y hangs on the quick relaxation and the speeds across alike, whereas w decays by itself at
 * v/σ and is driven by little: an integrator that treats the decay exactly takes steps many times as long.
 *
 * <p>A tyre without relaxation has no lag; its entry is left as it is.
 */
public final class SlipLag {

    private final double toFront;
    private final double toRear;
    private final double frontLength;
    private final double rearLength;

    /** For a car. */
    public SlipLag(Car car) {
        toFront = car.chassis().cgToFrontAxle();
        toRear = car.chassis().cgToRearAxle();
        frontLength = car.frontTyre().relaxationLength();
        rearLength = car.rearTyre().relaxationLength();
    }

    /**
     * Puts lags in the place of slips.
     *
     * @param x state, named by {@link BicycleState}, starting at {@code at}
     * @param at index of the first entry
     * @param steer angle of the front wheels, rad
     */
    public void toLag(double[] x, int at, double steer) {
        move(x, at, steer, -1);
    }

    /** Puts slips back in the place of lags; see {@link #toLag}. */
    public void toSlip(double[] x, int at, double steer) {
        move(x, at, steer, 1);
    }

    private void move(double[] x, int at, double steer, int sign) {
        if (frontLength > 0) {
            x[at + FRONT_SLIP] += sign * frontSlip(x, at, Math.sin(steer), Math.cos(steer));
        }
        if (rearLength > 0) {
            x[at + REAR_SLIP] += sign * (x[at + VY] - toRear * x[at + YAW_RATE]) / x[at + VX];
        }
    }

    private double frontSlip(double[] x, int at, double sin, double cos) {
        double across = x[at + VY] + toFront * x[at + YAW_RATE];
        return (across * cos - x[at + VX] * sin) / (x[at + VX] * cos + across * sin);
    }

    /**
     * Puts rates of lags in the place of rates of slips.
     *
     * @param x state with slips, not lags
     * @param at index of the first entry in {@code x} and {@code rate}
     * @param steer angle of the front wheels, rad
     * @param steerRate its rate, in the unit of {@code rate}
     * @param rate rates of all entries, per second or per metre
     */
    public void rates(double[] x, int at, double steer, double steerRate, double[] rate) {
        double vx = x[at + VX];
        if (frontLength > 0) {
            double slip = frontSlip(x, at, Math.sin(steer), Math.cos(steer));
            double across = x[at + VY] + toFront * x[at + YAW_RATE];
            double acrossRate = rate[at + VY] + toFront * rate[at + YAW_RATE];
            double turn = (acrossRate * vx - across * rate[at + VX]) / (vx * vx + across * across) - steerRate;
            rate[at + FRONT_SLIP] -= (1 + slip * slip) * turn;
        }
        if (rearLength > 0) {
            double across = x[at + VY] - toRear * x[at + YAW_RATE];
            double acrossRate = rate[at + VY] - toRear * rate[at + YAW_RATE];
            rate[at + REAR_SLIP] -= (acrossRate * vx - across * rate[at + VX]) / (vx * vx);
        }
    }

    /** Rate, 1/s, at which the front tyres' lag decays at a speed in m/s; zero for tyres without lag. */
    public double frontDecay(double speed) {
        return frontLength > 0 ? Math.abs(speed) / frontLength : 0;
    }

    /** The same for the rear tyres. */
    public double rearDecay(double speed) {
        return rearLength > 0 ? Math.abs(speed) / rearLength : 0;
    }
}
