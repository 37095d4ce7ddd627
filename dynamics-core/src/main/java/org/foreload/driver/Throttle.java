package org.foreload.driver;

import org.foreload.bicycle.WheelForces;
import org.foreload.vehicle.Car;

/**
 * The driver's right foot when it is not braking: flat out on the approach, holding speed between the end of the brake
 * and the point where the throttle opens, then along the {@link ExitPlan}; always within the engine's power and what
 * the driven wheels have left.
 */
public final class Throttle {

    /** How firmly a speed is held, 1/s: an error halves in about a third of a second. */
    private static final double SPEED_GAIN = 2;

    /** How much acceleration the driver gives up per metre that the car is wide of the line, 1/s². */
    private static final double WIDE_GAIN = 6;

    /** Distance off the line, m, that the driver does not mind. */
    private static final double WIDE_TOLERANCE = 0.1;

    /** Share of the longitudinal force left at a driven wheel that the driver dares to use. */
    private static final double USE = 0.95;

    private final Car car;
    private final ExitPlan exit;

    /** A driver in this car with this plan for the exit. */
    public Throttle(Car car, ExitPlan exit) {
        this.car = car;
        this.exit = exit;
    }

    /** Drive force of a foot that is flat on the floor, N. */
    public double flatOut(double speed, WheelForces wheels) {
        return most(speed, wheels);
    }

    /**
     * Drive force that holds a speed, N.
     *
     * @param target m/s
     * @param speed m/s
     * @param steer angle of the front wheels, rad
     * @param wheels loads and forces as they are
     */
    public double hold(double target, double speed, double steer, WheelForces wheels) {
        return limited(SPEED_GAIN * (target - speed), speed, steer, wheels);
    }

    /**
     * Drive force on the way out, N.
     *
     * @param station m
     * @param wide distance to the outside of the line, m
     * @param speed m/s
     * @param steer angle of the front wheels, rad
     * @param wheels loads and forces as they are
     */
    public double exit(double station, double wide, double speed, double steer, WheelForces wheels) {
        double wanted = exit.acceleration(station)
                + SPEED_GAIN * (exit.speed(station) - speed)
                - WIDE_GAIN * Math.max(0, wide - WIDE_TOLERANCE);
        return limited(wanted, speed, steer, wheels);
    }

    private double limited(double acceleration, double speed, double steer, WheelForces wheels) {
        double resistance = car.aerodynamics().drag(speed * speed) + wheels.frontLateral() * Math.sin(steer);
        double force = car.chassis().mass() * acceleration + resistance;
        return Math.max(0, Math.min(force, most(speed, wheels)));
    }

    private double most(double speed, WheelForces wheels) {
        double frontShare = car.driveline().drivenAxle().frontShare();
        double most = car.driveline().power() / Math.max(speed, 1);
        for (int wheel = 0; wheel < 4; wheel++) {
            double share = (wheel < 2 ? frontShare : 1 - frontShare) / 2;
            if (share > 0) {
                most = Math.min(most, USE * left(wheel, wheels) / share);
            }
        }
        return most;
    }

    private double left(int wheel, WheelForces wheels) {
        var tyre = wheel < 2 ? car.frontTyre() : car.rearTyre();
        double load = wheels.load(wheel);
        double peakY = tyre.peakForceY(load);
        if (!(peakY > 0)) {
            return 0;
        }
        double used = wheels.lateral(wheel) / peakY;
        return tyre.peakForceX(load) * Math.sqrt(Math.max(0, 1 - used * used));
    }
}
