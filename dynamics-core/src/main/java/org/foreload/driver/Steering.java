package org.foreload.driver;

import java.util.Objects;
import org.foreload.bicycle.WheelForces;
import org.foreload.conventions.Angles;
import org.foreload.conventions.Bounds;
import org.foreload.path.Path;
import org.foreload.vehicle.Car;

/**
 * The driver's hands. The driver thinks in front axle force: what the line ahead asks ({@link Feedforward}), corrected
 * for where the car is and how it turns ({@link Feedback}); the {@link InverseTyre} turns that force into a slip angle;
 * and the wheels are set at that angle to the direction in which the front axle really moves. So the front is never
 * steered past its slip peak, and when the rear steps out, the direction turns and the driver countersteers.
 *
 * <p>The driver knows the lag of hands and steering, and corrects for where the car will be one such lag ahead.
 *
 * <p>One instance serves one run at a time.
 */
public final class Steering {

    private final Hands hands;
    private final double toFront;
    private final InverseTyre front;
    private final InverseTyre rear;
    private final Feedforward feedforward;
    private final Feedback feedback;
    private final Path path;

    /** A driver in this car on this line. */
    public Steering(Car car, Path path, Hands hands) {
        Objects.requireNonNull(car, "car");
        this.hands = Objects.requireNonNull(hands, "hands");
        this.path = Objects.requireNonNull(path, "path");
        this.toFront = car.chassis().cgToFrontAxle();
        this.front = new InverseTyre(car.frontTyre(), 0, hands.slipUse());
        this.rear = new InverseTyre(car.rearTyre(), 2, hands.slipUse());
        this.feedforward = new Feedforward(car, path, hands, rear);
        this.feedback = new Feedback(car, hands);
    }

    /**
     * The steering angle that the driver wants, rad, positive to the left.
     *
     * @param view what the driver sees and feels of the car
     * @param wheels loads and forces as they are
     */
    public double angle(DriverView view, WheelForces wheels) {
        feedforward.look(view);
        if (view.straight() && feedforward.asksNothing()) {
            // A quarter of the moments of an entry: there is nothing to correct, as what follows would find.
            feedback.rest();
            return 0;
        }
        front.feel(wheels);
        rear.feel(wheels);
        feedforward.carry(view, wheels);
        double lead = hands.lag();
        double speed = view.speed;
        double vy = view.vy + lead * view.lateralRate;
        double yawRate = view.yawRate + lead * view.yawAcceleration;
        double heading = view.headingError + lead * (view.yawRate - speed * path.curvature(view.station));
        double offset = view.offset + lead * speed * (view.headingError + view.vy / view.vx);
        double lean = heading + feedforward.sideslip();
        double turning = yawRate - feedforward.yawRate();
        double ahead = feedback.percussion();
        double asked = feedforward.frontForce()
                + feedback.force(
                        speed,
                        feedforward.rearStiffness(),
                        offset + ahead * lean,
                        speed * (heading + direction(vy, view.vx)) + ahead * turning,
                        lean,
                        turning);
        return turned(vy + toFront * yawRate, view.vx, front.slipAgainst(asked));
    }

    /** Direction of a speed across and one along, rad. */
    private static double direction(double across, double along) {
        return along > 0 ? Angles.atan(across / along) : Math.atan2(across, along);
    }

    /** That direction and the angle of a slip together, rad: by the tangent of a sum, where that has one branch. */
    private static double turned(double across, double along, double slip) {
        double rest = along - across * slip;
        return along > 0 && rest > 0
                ? Angles.atan((across + along * slip) / rest)
                : Math.atan2(across, along) + Angles.atan(slip);
    }

    /**
     * Reads what the axles must give when drive that is asked for now arrives.
     *
     * @param view what the driver sees and feels of the car
     * @param lag time in which the drive arrives, s
     */
    void lookForDrive(DriverView view, double lag) {
        feedforward.read(view, lag * view.speed);
    }

    /**
     * Lateral force, N, without sign, that the line, then and a little later, and the way back to it ask of the front
     * axle, without the quick corrections that calm the yaw.
     */
    double askedFront(DriverView view) {
        double now = feedforward.frontForce() + feedback.wayBack();
        return Bounds.larger(Math.abs(now), Math.abs(feedforward.frontForceLater(view)));
    }

    /** Lateral force, N, without sign, that the line then asks of the rear axle. */
    double askedRear() {
        return Math.abs(feedforward.rearForce());
    }
}
