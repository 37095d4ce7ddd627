package org.foreload.driver;

import java.util.Objects;
import org.foreload.bicycle.WheelForces;
import org.foreload.conventions.Angles;
import org.foreload.conventions.Bounds;
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
 * once the load has moved: F_z(a) = F_z(0) − m·a·h/L. What drag, the steered wheels and the slope of the road take from
 * the speed the foot makes up for. All of this is taken where the car will be when the drive arrives, one lag of the
 * foot ahead; and what the steering asks is the way back to the line as it is being taken: a car that is a hand's
 * breadth wide and already coming back is no reason to wait.
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
        this.car = Objects.requireNonNull(car, "car");
        this.exit = Objects.requireNonNull(exit, "exit");
        this.foot = Objects.requireNonNull(foot, "foot");
        this.transfer = LoadTransfer.of(car);
        this.mass = car.chassis().mass();
        this.wheelbase = car.chassis().wheelbase();
        this.height = car.chassis().cgHeight();
        this.frontShare = car.driveline().drivenAxle().frontShare();
    }

    /** Drive force of a foot that is flat on the floor, N, as far as the driven wheels hold it. */
    public double flatOut(double speed, WheelForces wheels) {
        return Bounds.smaller(
                power(speed), traction(wheels, Math.abs(wheels.frontLateral()), Math.abs(wheels.rearLateral())));
    }

    /** Drive force of a foot that is off the throttle, N: below zero, the engine's drag. */
    public double closed() {
        return -car.driveline().closedThrottleDrag();
    }

    /**
     * Drive force after the pick-up point where the corner does not open yet, N: that of {@link #exit}, and no more
     * than closes up to the speed with which the rest of the corner can be driven.
     *
     * @param view what the driver sees and feels of the car
     * @param wheels loads and forces as they are
     * @param hands what the line and the corrections ask of the axles at this moment
     */
    public double pickUp(DriverView view, WheelForces wheels, Steering hands) {
        return drive(SPEED_GAIN * (exit.speed(view.station) - view.speed), view, wheels, hands);
    }

    /**
     * Drive force where the corner opens, N; that of a closed throttle where the grip leaves nothing.
     *
     * @param view what the driver sees and feels of the car
     * @param wheels loads and forces as they are
     * @param hands what the line and the corrections ask of the axles at this moment
     */
    public double exit(DriverView view, WheelForces wheels, Steering hands) {
        return drive(Double.POSITIVE_INFINITY, view, wheels, hands);
    }

    private double drive(double most, DriverView view, WheelForces wheels, Steering hands) {
        double speed = view.speed;
        hands.lookForDrive(view, foot.lag());
        double front = hands.askedFront(view);
        double rear = hands.askedRear();
        double resistance = car.aerodynamics().drag(speed * speed) + wheels.frontLateral() * Angles.sin(view.steer);
        double wanted = mass * Bounds.smaller(most + view.slowing, frontLeaves(speed, wheels, front)) + resistance;
        double held = Bounds.smaller(power(speed), traction(wheels, front, rear));
        return Bounds.larger(closed(), Bounds.smaller(wanted, held));
    }

    private double power(double speed) {
        return car.driveline().power() / Bounds.larger(speed, 1);
    }

    /**
     * Acceleration, m/s², at which the front axle still has this lateral force once the load has moved; on a slope that
     * of the car and what gravity takes, for what the wheels push moves the load.
     */
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
            most = Bounds.smaller(most, axle(wheels, 2, rear) / (1 - frontShare));
        }
        return most;
    }

    /**
     * Drive force, N, of an axle whose wheels drive alike and keep a lateral force n: with X = P_x·sin φ at the weaker
     * wheel, A = use·P_y there, B of the other wheel, and k the ratio of their P_x, the root of A cos φ + B √(1 − (k
     * sin φ)²) = n. For p = A cos φ that is (1 − (Bk/A)²)p² − 2np + n² − B²(1 − k²) = 0, of whose roots the one counts
     * that stays finite where the wheels differ in load alone.
     */
    private double axle(WheelForces wheels, int left, double needed) {
        int weak = wheels.peakX(left) <= wheels.peakX(left + 1) ? left : left + 1;
        int strong = 2 * left + 1 - weak;
        double along = wheels.peakX(weak);
        double inner = foot.gripUse() * wheels.peakY(weak);
        double outer = foot.gripUse() * wheels.peakY(strong);
        if (!(along > 0) || !(needed < inner + outer)) {
            return 0;
        }
        double most = 2 * along * foot.gripUse();
        double k = along / wheels.peakX(strong);
        double rest = needed * needed - outer * outer * (1 - k * k);
        if (!(rest > 0)) {
            return most;
        }
        double ratio = outer * k / inner;
        double root = Math.sqrt(Bounds.larger(needed * needed - (1 - ratio * ratio) * rest, 0));
        double cos = Bounds.smaller(rest / ((needed + root) * inner), 1);
        return Bounds.smaller(most, 2 * along * Math.sqrt(1 - cos * cos));
    }
}
