package org.foreload.driver;

import org.foreload.bicycle.WheelForces;
import org.foreload.load.RoadPlane;
import org.foreload.path.Path;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;

/**
 * The driver's hands: feedforward from the inverse tyre model and feedback on the path.
 *
 * <p>The driver thinks in front axle force. What the curvature just ahead needs, (m·a_y·b + Iz·ψ̈)/L with the braking
 * in it, is corrected for the distance off the line, the course error (heading and sideslip) and the yaw rate; the
 * inverse tyre model turns that force into a slip angle; and the wheels are set at that angle to the direction in which
 * the front axle really moves. So the front is never steered past its slip peak, and when the rear steps out, the
 * direction turns and the driver countersteers. Feedforward from an inverse tyre model with feedback that knows
 * sideslip: N. R. Kapania, J. C. Gerdes, Vehicle System Dynamics 53(12), 2015, 1687-1704 (from memory). That work feeds
 * back the steady sideslip; with the force as the command the true one can be used, and the line is held without the
 * offset that the steady one leaves while the brake comes off.
 *
 * <p>The driver knows the lag of hands and steering, and corrects for where the car will be one such lag ahead; without
 * that, the car swings at speed. Most of the lateral force that the rear axle still lacks, or has too much of, is made
 * up at the front.
 */
public final class Steering {

    /** Speed, m/s, above which the driver corrects more gently, since the car damps its own yaw less. */
    private static final double GENTLE_FROM = 30;

    /** Least share of the tracking bandwidth that is left at any speed. */
    private static final double GENTLEST = 0.65;

    /**
     * Share of the lateral force which the rear axle still lacks, or has too much of, that the driver makes up at the
     * front. At one, the sum would be exact and the yaw left to itself.
     */
    private static final double MAKE_UP = 0.8;

    /**
     * Hardest pull back to the line, m/s², however far off it the car is: a driver who is wide gathers the car first.
     */
    private static final double HARDEST = 6;

    private final Car car;
    private final Path path;
    private final DriverSettings settings;

    /** A driver in this car on this line. */
    public Steering(Car car, Path path, DriverSettings settings) {
        this.car = car;
        this.path = path;
        this.settings = settings;
    }

    /**
     * The steering angle that the driver wants, rad, positive to the left.
     *
     * @param station m
     * @param offset distance off the line, m, positive to the left
     * @param headingError heading of the car less that of the line, rad
     * @param vx speed along the car, m/s
     * @param vy speed across the car, m/s, positive to the left
     * @param yawRate rad/s
     * @param lateralRate rate of {@code vy}, m/s²
     * @param yawAcceleration rad/s²
     * @param deceleration of the car, m/s², positive when slowing
     * @param wheels loads and forces as they are
     */
    public double angle(
            double station,
            double offset,
            double headingError,
            double vx,
            double vy,
            double yawRate,
            double lateralRate,
            double yawAcceleration,
            double deceleration,
            WheelForces wheels) {
        double speed = Math.sqrt(vx * vx + vy * vy);
        double lead = settings.steeringLag();
        double nextVy = vy + lead * lateralRate;
        double nextYawRate = yawRate + lead * yawAcceleration;
        double nextHeading = headingError + lead * (yawRate - speed * path.curvature(station));
        double nextOffset = offset + lead * speed * (headingError + vy / vx);
        double preview = settings.steeringLag() * speed + car.frontTyre().relaxationLength();
        double window = settings.curvatureWindow() * speed;
        double ahead = station + preview;
        double curvature = (path.heading(ahead + window) - path.heading(ahead - window)) / (2 * window);
        double gradient = (path.curvature(ahead + window) - path.curvature(ahead - window)) / (2 * window);

        double previewSpeed = Math.max(1, speed - deceleration * preview / Math.max(speed, 1));
        double bandwidth = settings.trackingBandwidth()
                * Math.max(GENTLEST, Math.min(1, Math.sqrt(GENTLE_FROM / Math.max(speed, 1))));
        double course = nextHeading + Math.atan2(nextVy, vx);
        double correction = -HARDEST * Math.tanh(bandwidth * bandwidth * nextOffset / HARDEST)
                - 2 * settings.trackingDamping() * bandwidth * speed * course;
        double turning = previewSpeed * previewSpeed * curvature + correction;
        double lateral = car.chassis().mass() * RoadPlane.lateral(turning, path.grade(ahead), path.banking(ahead));
        double yawError = nextYawRate - speed * path.curvature(station + lead * speed);
        double yaw = car.chassis().yawInertia()
                * (previewSpeed * previewSpeed * gradient
                        - deceleration * curvature
                        - settings.yawDamping() * yawError);
        double force =
                (car.chassis().cgToRearAxle() * lateral + yaw) / car.chassis().wheelbase();
        force += MAKE_UP * (lateral - force - wheels.rearLateral());
        double frontCourse = Math.atan2(nextVy + car.chassis().cgToFrontAxle() * nextYawRate, vx);
        return frontCourse - frontSlip(wheels, force);
    }

    /** Slip angle, rad, that gives the front axle this lateral force with the loads and brake forces that it has. */
    private double frontSlip(WheelForces wheels, double force) {
        Tyre tyre = car.frontTyre();
        double left = forceLeft(tyre, wheels, 0) + forceLeft(tyre, wheels, 1);
        double peak = tyre.peakForceY(wheels.load(0)) + tyre.peakForceY(wheels.load(1));
        if (!(peak > 0)) {
            return 0;
        }
        double share = Math.max(left / peak, LEAST_SHARE);
        double fraction = Math.min(Math.abs(force) / (share * peak), settings.slipUse());
        double slip = tyre.lateralSlipFor(fraction, (wheels.load(0) + wheels.load(1)) / 2) * share;
        return -Math.copySign(Math.atan(slip), force);
    }

    /** Even with locked wheels the driver keeps some steering on: as if this share of the peak were left. */
    private static final double LEAST_SHARE = 0.3;

    /** Lateral force that the longitudinal force leaves a wheel, N. */
    private static double forceLeft(Tyre tyre, WheelForces wheels, int wheel) {
        double load = wheels.load(wheel);
        double peakX = tyre.peakForceX(load);
        if (!(peakX > 0)) {
            return 0;
        }
        double used = wheels.longitudinal(wheel) / peakX;
        return tyre.peakForceY(load) * Math.sqrt(Math.max(0, 1 - used * used));
    }
}
