package org.foreload.driver;

import org.foreload.bicycle.WheelForces;
import org.foreload.conventions.Bounds;
import org.foreload.load.RoadPlane;
import org.foreload.path.Path;
import org.foreload.vehicle.Car;

/**
 * What the line just ahead asks of the car: the lateral forces of the two axles that carry it round, the yaw rate, and
 * the sideslip that goes with them.
 *
 * <p>A car that follows curvature κ at speed v, slowing by d, needs v²κ across and the yaw acceleration v²κ′ − d·κ; the
 * front axle gives (m·a·b + Iz·ψ̈)/L of that, the rear axle (m·a·a − Iz·ψ̈)/L, with the distances a and b of the CG
 * from front and rear axle. The rear axle's slip angle follows from its force by the inverse tyre, and the sideslip
 * from that: β = b·κ + α_r. While it grows the car turns less than its line, by β̇ = b·v·κ′ − m·a/L·d(v²κ)/dt over the
 * slope of the rear axle; an axle in the air has no slip angle that could grow. Steady sideslip as part of the
 * feedforward: N. R. Kapania, J. C. Gerdes, Vehicle System Dynamics 53(12), 2015, 1687–1704 (from memory).
 */
final class Feedforward {

    private final Path path;
    private final Hands hands;
    private final double mass;
    private final double yawInertia;
    private final double toFront;
    private final double toRear;
    private final double perWheelbase;
    private final double relaxation;
    private final InverseTyre rear;

    private final Path.Place place = new Path.Place();

    private double rearStiffness;
    private double frontForce;
    private double rearForce;
    private double then;
    private double curvature;
    private double gradient;
    private double yawRate;
    private double sideslip;

    Feedforward(Car car, Path path, Hands hands, InverseTyre rear) {
        this.path = path;
        this.hands = hands;
        this.mass = car.chassis().mass();
        this.yawInertia = car.chassis().yawInertia();
        this.toFront = car.chassis().cgToFrontAxle();
        this.toRear = car.chassis().cgToRearAxle();
        this.perWheelbase = 1 / car.chassis().wheelbase();
        this.relaxation = car.frontTyre().relaxationLength();
        this.rear = rear;
    }

    /** Looks ahead by the lag of hands and steering and by the front tyre's relaxation length. */
    void look(DriverView view) {
        read(view, hands.lag() * view.speed + relaxation);
    }

    /** Whether the line that was looked at last is straight and level across: it asks nothing of any axle. */
    boolean asksNothing() {
        return frontForce == 0 && rearForce == 0 && gradient == 0;
    }

    /**
     * Works out how the car carries what it asks where {@link #look} looked last. The rear axle's forces are read from
     * the last {@link InverseTyre#feel}.
     */
    void carry(DriverView view, WheelForces wheels) {
        double perSecond = then * then * then * gradient - 2 * then * view.deceleration * curvature;
        rearStiffness = rear.stiffness(wheels);
        double slipping = rearStiffness > 0 ? toFront * perWheelbase * mass * perSecond / rearStiffness : 0;
        double sliding = toRear * then * gradient - slipping;
        yawRate = then * curvature - sliding;
        sideslip = toRear * curvature + rear.slipAngle(rearForce);
    }

    /**
     * Reads what the line asks at this distance ahead, m, if the car goes on to slow as it does; curvature and slopes
     * of the road are rounded off over the driver's window.
     */
    void read(DriverView view, double distance) {
        double speed = view.speed;
        double window = hands.curvatureWindow() * speed;
        double ahead = view.station + distance;
        path.at(ahead - window, place);
        double headingBefore = place.heading();
        double curvatureBefore = place.curvature();
        double gradeBefore = place.grade();
        double bankingBefore = place.banking();
        path.at(ahead + window, place);
        double perMetre = 0.5 / window;
        curvature = (place.heading() - headingBefore) * perMetre;
        gradient = (place.curvature() - curvatureBefore) * perMetre;
        then = Bounds.larger(speed - view.deceleration * distance / Bounds.larger(speed, 1), 1);
        double turning = then * then * curvature;
        double across =
                mass * lateral(turning, (gradeBefore + place.grade()) / 2, (bankingBefore + place.banking()) / 2);
        double yaw = yawInertia * (then * then * gradient - view.deceleration * curvature);
        frontForce = (toRear * across + yaw) * perWheelbase;
        rearForce = (toFront * across - yaw) * perWheelbase;
    }

    /** Lateral specific force, m/s²: on the flat, the acceleration itself. */
    private static double lateral(double acceleration, double grade, double banking) {
        return grade == 0 && banking == 0 ? acceleration : RoadPlane.lateral(acceleration, grade, banking);
    }

    /** Cornering stiffness of the rear axle as the driver felt it in the last {@link #carry}, N/rad. */
    double rearStiffness() {
        return rearStiffness;
    }

    /** Lateral force that the line asks of the front axle, N, positive to the left. */
    double frontForce() {
        return frontForce;
    }

    /** Lateral force that the line will soon ask of the front axle at the speed as it is, N, positive to the left. */
    double frontForceLater(DriverView view) {
        path.at(view.station + RIGHT_FOOT_LOOKS * view.speed, place);
        double turning = view.speed * view.speed * place.curvature();
        return toRear * mass * lateral(turning, place.grade(), place.banking()) * perWheelbase;
    }

    /** How far ahead the right foot looks, s: about the time in which a speed that is too high can be coasted off. */
    private static final double RIGHT_FOOT_LOOKS = 0.8;

    /** Lateral force that the line asks of the rear axle, N, positive to the left. */
    double rearForce() {
        return rearForce;
    }

    /** Yaw rate with which the car follows the line, rad/s. */
    double yawRate() {
        return yawRate;
    }

    /** Sideslip with which it does, rad, positive to the left. */
    double sideslip() {
        return sideslip;
    }
}
