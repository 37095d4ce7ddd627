package org.foreload.grip;

import java.util.Objects;
import java.util.Optional;
import org.foreload.conventions.Checks;
import org.foreload.load.LoadTransfer;
import org.foreload.load.RoadPlane;
import org.foreload.load.WheelLoads;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;

/**
 * What a car asks of its axles in a motion, and what it could do at most: two axles, four wheel loads, quasi-steady.
 *
 * <p>The front axle carries (m·f·b + Iz·ψ″)/L of lateral force, the rear axle (m·f·a − Iz·ψ″)/L, where f is the lateral
 * specific force in the road's plane and ψ″ the yaw acceleration (balance of forces and moments about the vertical
 * axis). Along the road the tyres give m·d − drag − m·g·sin γ: braking force shared by the brakes' front share where
 * positive, drive force shared by the driven wheels where negative. The drag of an engine with a closed throttle is
 * left out: it acts at the driven wheels only and would bend the shares at a deceleration of its own, and then the
 * feasible motions need no longer form a convex set ({@link LocalGrip}). Anti-lock brakes hold each wheel as hard as it
 * can be held and no harder: what one axle has not, the other may give, and no axle uses more than the whole car does.
 */
public final class GripLimits {

    private final Car car;
    private final LoadTransfer transfer;

    private GripLimits(Car car) {
        this.car = Objects.requireNonNull(car, "car");
        this.transfer = LoadTransfer.of(car);
    }

    /** Limits of a car. */
    public static GripLimits of(Car car) {
        return new GripLimits(car);
    }

    /** The car. */
    public Car car() {
        return car;
    }

    /** What is asked of each axle in a motion, and what they have. */
    public GripUse use(Motion motion) {
        Objects.requireNonNull(motion, "motion");
        Chassis chassis = car.chassis();
        double mass = chassis.mass();
        double wheelbase = chassis.wheelbase();
        double speed = motion.speed();
        double lateral = RoadPlane.lateral(motion.lateralAcceleration(), motion.grade(), motion.banking());
        double yawMoment = chassis.yawInertia() * motion.yawAcceleration();
        double force = mass * (motion.deceleration() - RoadPlane.slowing(motion.grade()))
                - car.aerodynamics().drag(speed * speed);
        double frontShare =
                force > 0 ? car.frontBrakeShare() : car.driveline().drivenAxle().frontShare();
        WheelLoads loads = transfer.wheelLoads(
                speed, motion.deceleration(), motion.lateralAcceleration(), motion.grade(), motion.banking());
        double frontTransfer = transfer.frontLateral(lateral);
        double rearTransfer = transfer.rearLateral(lateral);
        double frontDemand = (mass * lateral * chassis.cgToRearAxle() + yawMoment) / wheelbase;
        double rearDemand = (mass * lateral * chassis.cgToFrontAxle() - yawMoment) / wheelbase;
        double most = Double.POSITIVE_INFINITY;
        if (car.antiLock() && force > 0) {
            double share = car.frontBrakeShare();
            most = AxleGrip.Held.of(car.frontTyre(), loads.frontAxle(), frontTransfer, frontDemand, share > 0)
                    .with(
                            AxleGrip.Held.of(car.rearTyre(), loads.rearAxle(), rearTransfer, rearDemand, share < 1),
                            force);
        }
        AxleUse front =
                axleUse(car.frontTyre(), loads.frontAxle(), frontTransfer, frontShare * force, frontDemand, most);
        AxleUse rear =
                axleUse(car.rearTyre(), loads.rearAxle(), rearTransfer, (1 - frontShare) * force, rearDemand, most);
        double drivePower = Math.max(0, -force) * speed;
        return new GripUse(
                loads,
                front,
                rear,
                lateral == 0 ? 0 : Math.abs(lateral) / transfer.tipping(loads.frontAxle(), loads.rearAxle()),
                drivePower == 0 ? 0 : drivePower / car.driveline().power());
    }

    private static AxleUse axleUse(
            Tyre tyre, double load, double transferred, double force, double demand, double most) {
        return new AxleUse(
                load,
                force,
                demand,
                AxleGrip.capacity(tyre, load, transferred, force),
                Math.min(most, AxleGrip.utilisation(tyre, load, transferred, force, demand)));
    }

    /**
     * Limits at one place of the road, for many questions about it.
     *
     * @param curvature κ, 1/m, positive to the left
     * @param curvatureGradient κ′, 1/m²
     * @param grade rad, positive uphill
     * @param banking rad, positive where it helps a left turn
     */
    public LocalGrip at(double curvature, double curvatureGradient, double grade, double banking) {
        Checks.number("curvature", curvature);
        Checks.number("curvature_gradient", curvatureGradient);
        Checks.number("grade", grade);
        Checks.number("banking", banking);
        return new LocalGrip(car, transfer, curvature, curvatureGradient, grade, banking);
    }

    /**
     * The longitudinal accelerations that tyres and engine allow at a place and a speed; empty where none is feasible.
     *
     * @param speedSquared m²/s²
     * @param curvature κ, 1/m, positive to the left
     * @param curvatureGradient κ′, 1/m²
     * @param grade rad, positive uphill
     * @param banking rad, positive where it helps a left turn
     */
    public Optional<AccelerationRange> accelerationRange(
            double speedSquared, double curvature, double curvatureGradient, double grade, double banking) {
        return at(curvature, curvatureGradient, grade, banking).accelerationRange(speedSquared, 1);
    }
}
