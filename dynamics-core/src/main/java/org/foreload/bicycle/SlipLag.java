package org.foreload.bicycle;

import static org.foreload.bicycle.BicycleState.FRONT_SLIP;
import static org.foreload.bicycle.BicycleState.REAR_SLIP;
import static org.foreload.bicycle.BicycleState.VX;
import static org.foreload.bicycle.BicycleState.VY;
import static org.foreload.bicycle.BicycleState.YAW_RATE;

import java.util.Objects;
import org.foreload.conventions.Angles;
import org.foreload.vehicle.Car;

/**
 * A change of coordinates for integrators: in place of the slip y that a tyre feels, how far it lags behind the true
 * one, w = y − tan α. From dy/dt = (v/σ)(tan α − y) follows
 *
 * <pre>
 *   dw/dt = −(v/σ) w − d(tan α)/dt
 * </pre>
 *
 * <p>Both say the same, but y depends on the quick relaxation and the speeds across alike, whereas w decays by itself
 * at v/σ and is driven by little: an integrator that treats the decay exactly takes steps many times as long.
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
        Objects.requireNonNull(car, "car");
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
            x[at + FRONT_SLIP] += sign * frontSlip(x, at, Angles.sin(steer), Angles.cos(steer));
        }
        if (rearLength > 0) {
            x[at + REAR_SLIP] += sign * rearSlip(x, at);
        }
    }

    private double frontSlip(double[] x, int at, double sin, double cos) {
        double across = x[at + VY] + toFront * x[at + YAW_RATE];
        return (across * cos - x[at + VX] * sin) / (x[at + VX] * cos + across * sin);
    }

    private double rearSlip(double[] x, int at) {
        return (x[at + VY] - toRear * x[at + YAW_RATE]) / x[at + VX];
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
        double front = frontSlip(x, at, Angles.sin(steer), Angles.cos(steer));
        rates(x, at, front, rearSlip(x, at), steerRate, rate);
    }

    /**
     * The same from a buffer that {@link BicycleModel#ratesFromLag} has just filled for this state: it knows the slips.
     *
     * @param x state, of which neither slips nor lags are read
     * @param at index of the first entry in {@code x} and {@code rate}
     * @param wheels filled for this state
     * @param steerRate rate of the angle of the front wheels, in the unit of {@code rate}
     * @param rate rates of all entries, per second or per metre
     */
    public void rates(double[] x, int at, WheelForces wheels, double steerRate, double[] rate) {
        rates(x, at, wheels.frontSlip, wheels.rearSlip, steerRate, rate);
    }

    private void rates(double[] x, int at, double front, double rear, double steerRate, double[] rate) {
        double vx = x[at + VX];
        double vxRate = rate[at + VX];
        if (frontLength > 0) {
            double across = x[at + VY] + toFront * x[at + YAW_RATE];
            double acrossRate = rate[at + VY] + toFront * rate[at + YAW_RATE];
            double turn = (acrossRate * vx - across * vxRate) / (vx * vx + across * across) - steerRate;
            rate[at + FRONT_SLIP] -= (1 + front * front) * turn;
        }
        if (rearLength > 0) {
            double acrossRate = rate[at + VY] - toRear * rate[at + YAW_RATE];
            rate[at + REAR_SLIP] -= (acrossRate - rear * vxRate) / vx;
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
