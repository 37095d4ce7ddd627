package org.foreload.driver;

import org.foreload.bicycle.WheelForces;
import org.foreload.conventions.Gravity;
import org.foreload.path.Path;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;

/**
 * The driver's hands: feedforward from the inverse tyre model and feedback on the path ahead.
 *
 * <p>Feedforward asks which front and rear lateral forces the curvature just ahead will need, braking included, reads
 * the slip angles that give them off the tyres, and steers by δ = Lκ + α_r − α_f. Feedback weighs the offset and the
 * course error, heading plus sideslip, a look-ahead away. Source: N. R. Kapania, J. C. Gerdes, Vehicle System Dynamics
 * 53(12), 2015, 1687–1704 (from memory). Sideslip here is the mean of the steady one of that work and the true one: the
 * steady one alone leaves an offset while the brake comes off, the true one alone lets the car swing at the limit. The
 * result is held inside the front slip peak around the direction in which the front axle really moves; when the rear
 * steps out, that direction turns, and so the driver countersteers.
 */
public final class Steering {

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
            double deceleration,
            WheelForces wheels) {
        double speed = Math.sqrt(vx * vx + vy * vy);
        double preview = settings.steeringLag() * speed + car.frontTyre().relaxationLength();
        double window = settings.curvatureWindow() * speed;
        double ahead = station + preview;
        double curvature = (path.heading(ahead + window) - path.heading(ahead - window)) / (2 * window);
        double gradient = (path.curvature(ahead + window) - path.curvature(ahead - window)) / (2 * window);

        double wheelbase = car.chassis().wheelbase();
        double toFront = car.chassis().cgToFrontAxle();
        double toRear = car.chassis().cgToRearAxle();
        double banking = path.banking(ahead);
        double previewSpeed = Math.max(1, speed - deceleration * preview / Math.max(speed, 1));
        double lateral = car.chassis().mass()
                * (previewSpeed * previewSpeed * curvature * Math.cos(banking) - Gravity.G * Math.sin(banking));
        double yaw = car.chassis().yawInertia() * (previewSpeed * previewSpeed * gradient - deceleration * curvature);
        double frontSlip = slipFor(car.frontTyre(), wheels, 0, (toRear * lateral + yaw) / wheelbase);
        double rearSlip = slipFor(car.rearTyre(), wheels, 2, (toFront * lateral - yaw) / wheelbase);

        double sideslip = rearSlip + toRear * curvature;
        double lookAhead = Math.max(settings.lookAheadMinimum(), settings.lookAheadTime() * speed);
        double course = headingError + (sideslip + Math.atan2(vy, vx)) / 2;
        double feedback = -settings.offsetGain() * (offset + lookAhead * course);
        double wanted = wheelbase * curvature + rearSlip - frontSlip + feedback;

        double frontCourse = Math.atan2(vy + toFront * yawRate, vx);
        double most = Math.atan(largestSlip(car.frontTyre(), wheels, 0));
        return Math.max(frontCourse - most, Math.min(frontCourse + most, wanted));
    }

    /** Slip angle, rad, that gives an axle this lateral force with the loads and longitudinal forces that it has. */
    private double slipFor(Tyre tyre, WheelForces wheels, int first, double force) {
        double left = forceLeft(tyre, wheels, first);
        double right = forceLeft(tyre, wheels, first + 1);
        double peak = tyre.peakForceY(wheels.load(first)) + tyre.peakForceY(wheels.load(first + 1));
        if (!(left + right > 0)) {
            return 0;
        }
        double fraction = Math.min(Math.abs(force) / (left + right), settings.slipUse());
        double slip = tyre.lateralSlipFor(fraction, wheels.load(first) / 2 + wheels.load(first + 1) / 2)
                * (left + right)
                / peak;
        return -Math.copySign(Math.atan(slip), force);
    }

    private double largestSlip(Tyre tyre, WheelForces wheels, int first) {
        double left = forceLeft(tyre, wheels, first);
        double right = forceLeft(tyre, wheels, first + 1);
        double peak = tyre.peakForceY(wheels.load(first)) + tyre.peakForceY(wheels.load(first + 1));
        double pure = tyre.lateralSlipFor(settings.slipUse(), wheels.load(first) / 2 + wheels.load(first + 1) / 2);
        return peak > 0 ? pure * Math.max((left + right) / peak, LEAST_SLIP_SHARE) : pure;
    }

    /** Even with locked wheels the driver keeps some steering on: the share of the slip peak that is always allowed. */
    private static final double LEAST_SLIP_SHARE = 0.3;

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
