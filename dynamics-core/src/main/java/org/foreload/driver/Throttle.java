package org.foreload.driver;

import org.foreload.bicycle.WheelForces;
import org.foreload.load.LoadTransfer;
import org.foreload.vehicle.Car;

/**
 * The driver's right foot: flat out on the approach; off the throttle while braking and coasting; from the pick-up
 * point on, as much drive as the engine gives and the grip leaves; as long as the corner does not open yet, only up to
 * the speed with which the rest of it can be driven ({@link SpeedPlan}).
 *
 * <p>Drive and steering share the grip. A driven axle must keep the lateral force that the line asks of it: its two
 * wheels get the same drive force X, and what they keep is Σ P_y √(1 − (X/P_x)²), the friction ellipse of each wheel.
 * So an unloaded inner wheel may spend most of its grip on driving as long as the outer one carries the corner. And
 * since driving takes load off the front axle, no more is asked than leaves the front what the steering asks of it,
 * once the load has moved: F_z(a) = F_z(0) − m·a·h/L.
 *
 * <p>One instance serves one run at a time.
 */
public final class Throttle {

    /** How firmly the driver closes up to the speed aimed for, 1/s: an error halves in about a third of a second. */
    private static final double SPEED_GAIN = 2;

    private final Car car;
    private final SpeedPlan exit;
    private final RightFoot foot;
    private final LoadTransfer transfer;
    private final double mass;
    private final double wheelbase;
    private final double height;
    private final double frontShare;

    /** A driver in this car with this plan for the exit. */
    public Throttle(Car car, SpeedPlan exit, RightFoot foot) {
        this.car = car;
        this.exit = exit;
        this.foot = foot;
        this.transfer = LoadTransfer.of(car);
        this.mass = car.chassis().mass();
        this.wheelbase = car.chassis().wheelbase();
        this.height = car.chassis().cgHeight();
        this.frontShare = car.driveline().drivenAxle().frontShare();
    }

    /** Drive force of a foot that is flat on the floor, N, as far as the driven wheels hold it. */
    public double flatOut(double speed, WheelForces wheels) {
        return Math.min(
                power(speed), traction(wheels, Math.abs(wheels.frontLateral()), Math.abs(wheels.rearLateral())));
    }

    /** Drive force of a foot that is off the throttle, N: below zero, the engine's drag. */
    public double closed() {
        return -car.driveline().closedThrottleDrag();
    }

    /**
     * Drive force after the pick-up point, N; that of a closed throttle where the grip leaves nothing.
     *
     * @param view what the driver sees and feels of the car
     * @param wheels loads and forces as they are
     * @param hands what the line and the corrections ask of the axles at this moment
     */
    public double exit(DriverView view, WheelForces wheels, Steering hands) {
        double speed = view.speed;
        double front = hands.askedFront();
        double rear = Math.abs(hands.askedRear());
        double resistance = car.aerodynamics().drag(speed * speed) + wheels.frontLateral() * Math.sin(view.steer);
        double aimed = frontLeaves(speed, wheels, front);
        if (view.station < exit.opening()) {
            aimed = Math.min(aimed, SPEED_GAIN * (exit.speed(view.station) - speed));
        }
        double wanted = mass * aimed + resistance;
        double most = Math.min(power(speed), traction(wheels, front, rear));
        return Math.max(closed(), Math.min(wanted, most));
    }

    private double power(double speed) {
        return car.driveline().power() / Math.max(speed, 1);
    }

    /** Acceleration, m/s², at which the front axle still has this lateral force once the load has moved. */
    private double frontLeaves(double speed, WheelForces wheels, double needed) {
        double load = wheels.frontAxleLoad();
        double peak = wheels.peakY(0) + wheels.peakY(1);
        if (!(height > 0) || !(load > 0) || !(peak > 0)) {
            return Double.POSITIVE_INFINITY;
        }
        double square = speed * speed;
        double pressed = load + wheels.rearAxleLoad() - transfer.frontAxle(0, square) - transfer.rearAxle(0, square);
        double drag = car.aerodynamics().dragHeight() * car.aerodynamics().drag(square) / wheelbase;
        double still = transfer.frontAxle(pressed / mass, square) - drag;
        return (still - needed / foot.gripUse() * load / peak) * wheelbase / (mass * height);
    }

    /** Drive force, N, that leaves the driven axles the lateral forces that they need. */
    private double traction(WheelForces wheels, double front, double rear) {
        double most = Double.POSITIVE_INFINITY;
        if (frontShare > 0) {
            most = axle(wheels, 0, front) / frontShare;
        }
        if (frontShare < 1) {
            most = Math.min(most, axle(wheels, 2, rear) / (1 - frontShare));
        }
        return most;
    }

    /** Newton steps from the ellipse of a whole axle to that of two unlike wheels; each squares the error. */
    private static final int STEPS = 4;

    /**
     * Drive force, N, of an axle whose wheels drive alike and keep a lateral force: with X = P_x,min·sin φ, the root of
     * use·(P_y cos φ + P_y′ √(1 − (k sin φ)²)) = needed.
     */
    private double axle(WheelForces wheels, int left, double needed) {
        int small = wheels.load(left) <= wheels.load(left + 1) ? left : left + 1;
        int large = 2 * left + 1 - small;
        double along = wheels.peakX(small);
        double k = along > 0 ? along / wheels.peakX(large) : 0;
        double inner = foot.gripUse() * wheels.peakY(small);
        double outer = foot.gripUse() * wheels.peakY(large);
        double most = inner + outer;
        if (!(along > 0) || !(needed < most)) {
            return 0;
        }
        double steepest = Math.asin(foot.gripUse());
        double phi = Math.acos(needed / most);
        for (int i = 0; i < STEPS; i++) {
            phi = Math.min(phi, steepest);
            double sin = Math.sin(phi);
            double cos = Math.cos(phi);
            double kept = Math.sqrt(1 - k * k * sin * sin);
            double excess = inner * cos + outer * kept - needed;
            double slope = -inner * sin - outer * k * k * sin * cos / kept;
            phi -= slope < 0 ? excess / slope : 0;
        }
        return 2 * along * Math.sin(Math.max(0, Math.min(phi, steepest)));
    }
}
