package org.foreload.driver;

import org.foreload.bicycle.BicycleState;

/** What a driver feels and sees of the car at one moment. A buffer that its owner fills anew for each moment. */
public final class DriverView {

    double station;
    double offset;
    double headingError;
    double vx;
    double vy;
    double speed;
    double yawRate;
    double lateralRate;
    double yawAcceleration;
    double deceleration;
    double steer;
    double slowing;

    /**
     * Takes in a moment.
     *
     * @param at station, m
     * @param offLine distance of the CG off the line, m, positive to the left
     * @param offHeading heading of the car less that of the line, rad, positive to the left
     * @param wheel angle of the front wheels, rad, positive to the left
     */
    public void where(double at, double offLine, double offHeading, double wheel) {
        station = at;
        offset = offLine;
        headingError = offHeading;
        steer = wheel;
    }

    /**
     * Takes in how steep the road is; it is level until then.
     *
     * @param gravity specific force with which gravity slows the car, m/s², positive uphill
     */
    public void slope(double gravity) {
        slowing = gravity;
    }

    /**
     * Takes in how the car moves.
     *
     * @param state named by {@link BicycleState}, starting at {@code from}
     * @param rate its rates per second, in the same places
     * @param from index of the first entry
     * @param slowing deceleration along the course, m/s², positive when slowing
     */
    public void motion(double[] state, double[] rate, int from, double slowing) {
        vx = state[from + BicycleState.VX];
        vy = state[from + BicycleState.VY];
        speed = Math.sqrt(vx * vx + vy * vy);
        yawRate = state[from + BicycleState.YAW_RATE];
        lateralRate = rate[from + BicycleState.VY];
        yawAcceleration = rate[from + BicycleState.YAW_RATE];
        deceleration = slowing;
    }

    /** Whether the car runs straight along the middle of its line, and nothing moves it off. */
    boolean straight() {
        return offset == 0
                && headingError == 0
                && steer == 0
                && vy == 0
                && yawRate == 0
                && lateralRate == 0
                && yawAcceleration == 0;
    }
}
