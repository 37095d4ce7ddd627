package org.foreload.grip;

import java.util.Optional;
import org.foreload.conventions.Gravity;
import org.foreload.load.LoadTransfer;
import org.foreload.load.RoadPlane;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;

/**
 * Limits of a car at one place of the road (curvature, its gradient, grade, banking), as functions of speed squared w
 * and deceleration d. The fast twin of {@link GripLimits#use}: same numbers, without objects.
 *
 * <p><b>Key fact.</b> At one place, wheel loads, brake force and lateral demands are all linear in (w, d); the friction
 * ellipse left by a wheel is concave in load and longitudinal force (as long as peak force is concave in load); so is
 * the sum over an axle. What an axle can do is therefore concave in (w, d), what is asked of it is convex, and the
 * feasible pairs (w, d) form a <em>convex</em> set (the limit of tipping over is linear on both sides): along any
 * straight line in (w, d) they are one interval, and the utilisation falls and then rises. (The power limit cuts this
 * set from the driving side; a wheel lifted by cornering bends the capacity the other way from there on, which the
 * searches tolerate.)
 */
public final class LocalGrip {

    /** Accelerations beyond this, m/s², are not considered: a hundred times gravity, more than any tyre gives. */
    private static final double FARTHEST = 1000;

    /**
     * Speed squared, m²/s², at which the power limit of a standing car is read, 1 mm/s; at a standstill it is infinite.
     */
    private static final double LOWEST = 1e-6;

    private final Tyre frontTyre;
    private final Tyre rearTyre;
    private final double mass;
    private final double frontBrakeShare;
    private final double frontDriveShare;
    private final double power;
    private final boolean antiLock;
    private final Plane frontLoad;
    private final Plane rearLoad;
    private final Plane frontTransfer;
    private final Plane rearTransfer;
    private final Plane frontDemand;
    private final Plane rearDemand;
    private final Plane lateral;
    private final Plane force;
    private final LoadTransfer transfer;

    /** A linear function of speed squared and deceleration. */
    private record Plane(double constant, double perSpeedSquared, double perDeceleration) {
        double at(double speedSquared, double deceleration) {
            return constant + perSpeedSquared * speedSquared + perDeceleration * deceleration;
        }
    }

    LocalGrip(
            Car car, LoadTransfer transfer, double curvature, double curvatureGradient, double grade, double banking) {
        this.transfer = transfer;
        Chassis chassis = car.chassis();
        frontTyre = car.frontTyre();
        rearTyre = car.rearTyre();
        mass = chassis.mass();
        frontBrakeShare = car.frontBrakeShare();
        frontDriveShare = car.driveline().drivenAxle().frontShare();
        power = car.driveline().power();
        antiLock = car.antiLock();
        // Lateral acceleration is w·κ, so its value per unit of w is κ; the parts at w = 0 are taken off.
        double normal = RoadPlane.normal(0, grade, banking);
        double normalRate = RoadPlane.normal(curvature, grade, banking) - normal;
        double still = RoadPlane.lateral(0, grade, banking);
        double lateralRate = RoadPlane.lateral(curvature, grade, banking) - still;
        double shift = transfer.longitudinal(0, 0, grade);
        double shiftPerSpeedSquared = transfer.longitudinal(0, 1, grade) - shift;
        double shiftPerDeceleration = transfer.longitudinal(1, 0, grade) - shift;
        frontLoad = new Plane(
                transfer.frontAxle(normal, 0) + shift,
                transfer.frontAxle(normalRate, 1) + shiftPerSpeedSquared,
                shiftPerDeceleration);
        rearLoad = new Plane(
                transfer.rearAxle(normal, 0) - shift,
                transfer.rearAxle(normalRate, 1) - shiftPerSpeedSquared,
                -shiftPerDeceleration);
        frontTransfer = new Plane(transfer.frontLateral(still), transfer.frontLateral(lateralRate), 0);
        rearTransfer = new Plane(transfer.rearLateral(still), transfer.rearLateral(lateralRate), 0);
        double wheelbase = chassis.wheelbase();
        double inertia = chassis.yawInertia() / wheelbase;
        double toFront = mass * chassis.cgToRearAxle() / wheelbase;
        double toRear = mass * chassis.cgToFrontAxle() / wheelbase;
        frontDemand =
                new Plane(toFront * still, toFront * lateralRate + inertia * curvatureGradient, -inertia * curvature);
        rearDemand = new Plane(toRear * still, toRear * lateralRate - inertia * curvatureGradient, inertia * curvature);
        lateral = new Plane(still, lateralRate, 0);
        force = new Plane(-mass * RoadPlane.slowing(grade), -car.aerodynamics().drag(1), mass);
    }

    /** Longitudinal force of all tyres, N, positive when braking, negative when driving. */
    public double force(double speedSquared, double deceleration) {
        return force.at(speedSquared, deceleration);
    }

    /** Deceleration, m/s², that neither brake nor engine has a part in: drag and grade alone. */
    public double coastingDeceleration(double speedSquared) {
        return -force.at(speedSquared, 0) / mass;
    }

    /** Utilisation of the front axle; see {@link AxleUse}. */
    public double frontUtilisation(double speedSquared, double deceleration) {
        double whole = force.at(speedSquared, deceleration);
        double alone = AxleGrip.utilisation(
                frontTyre,
                load(frontLoad, speedSquared, deceleration),
                frontTransfer.at(speedSquared, deceleration),
                whole * (whole > 0 ? frontBrakeShare : frontDriveShare),
                frontDemand.at(speedSquared, deceleration));
        return antiLock && whole > 0 ? Math.min(alone, together(speedSquared, deceleration)) : alone;
    }

    /** Utilisation of the rear axle; see {@link AxleUse}. */
    public double rearUtilisation(double speedSquared, double deceleration) {
        double whole = force.at(speedSquared, deceleration);
        double alone = AxleGrip.utilisation(
                rearTyre,
                load(rearLoad, speedSquared, deceleration),
                rearTransfer.at(speedSquared, deceleration),
                whole * (1 - (whole > 0 ? frontBrakeShare : frontDriveShare)),
                rearDemand.at(speedSquared, deceleration));
        return antiLock && whole > 0 ? Math.min(alone, together(speedSquared, deceleration)) : alone;
    }

    /** Load of an axle, N: an axle that would be pulled off the road carries nothing, and the other one the rest. */
    private double load(Plane axle, double speedSquared, double deceleration) {
        double total = Math.max(0, frontLoad.at(speedSquared, deceleration) + rearLoad.at(speedSquared, deceleration));
        return Math.max(0, Math.min(total, axle.at(speedSquared, deceleration)));
    }

    /** Utilisation of a car whose anti-lock brakes give each axle what it can hold. */
    private double together(double speedSquared, double deceleration) {
        double front = load(frontLoad, speedSquared, deceleration);
        double rear = load(rearLoad, speedSquared, deceleration);
        double toFront = frontTransfer.at(speedSquared, deceleration);
        double toRear = rearTransfer.at(speedSquared, deceleration);
        double askedFront = frontDemand.at(speedSquared, deceleration);
        double askedRear = rearDemand.at(speedSquared, deceleration);
        return AxleGrip.Held.of(frontTyre, front, toFront, askedFront, frontBrakeShare > 0)
                .with(
                        AxleGrip.Held.of(rearTyre, rear, toRear, askedRear, frontBrakeShare < 1),
                        force.at(speedSquared, deceleration));
    }

    /**
     * How near the car is to tipping over its outer wheels: lateral force over that at which it does, above 1 when it
     * must.
     */
    public double tippingUtilisation(double speedSquared, double deceleration) {
        double across = Math.abs(lateral.at(speedSquared, deceleration));
        if (across == 0) {
            return 0;
        }
        return across
                / transfer.tipping(
                        load(frontLoad, speedSquared, deceleration), load(rearLoad, speedSquared, deceleration));
    }

    /** The largest of the utilisations of both axles and that of tipping over. */
    public double utilisation(double speedSquared, double deceleration) {
        return Math.max(
                tippingUtilisation(speedSquared, deceleration),
                Math.max(frontUtilisation(speedSquared, deceleration), rearUtilisation(speedSquared, deceleration)));
    }

    /**
     * Load that an axle of infinite utilisation lacks to have both wheels on the road, as a share of the car's weight;
     * the larger of both axles, zero where there is none.
     */
    double lackingLoad(double speedSquared, double deceleration) {
        double front = frontUtilisation(speedSquared, deceleration) < Double.POSITIVE_INFINITY
                ? 0
                : Math.abs(frontTransfer.at(speedSquared, deceleration)) - frontLoad.at(speedSquared, deceleration) / 2;
        double rear = rearUtilisation(speedSquared, deceleration) < Double.POSITIVE_INFINITY
                ? 0
                : Math.abs(rearTransfer.at(speedSquared, deceleration)) - rearLoad.at(speedSquared, deceleration) / 2;
        return Math.max(0, Math.max(front, rear)) / (mass * Gravity.G);
    }

    /**
     * Highest longitudinal acceleration, m/s², for which the engine has the power; infinite at a standstill, unless it
     * has none: then what drag and slope make of the car, at any speed.
     */
    public double powerAcceleration(double speedSquared) {
        double drive = power == 0 ? 0 : power / Math.sqrt(speedSquared);
        return (drive + force.at(speedSquared, 0)) / mass;
    }

    /**
     * Highest longitudinal acceleration, m/s², for which the engine has the power, constant over a step and judged in
     * its middle, where w is w₀ + a·step.
     *
     * @param speedSquared w₀ at the start of the step, m²/s²
     * @param step length of the step, m
     */
    public double powerAccelerationOverStep(double speedSquared, double step) {
        // With v² for w in w = w₀ + step·(power/v + force(w))/mass, times v.
        double perMass = step / mass;
        double v = largestRoot(
                1 - perMass * force.perSpeedSquared(), -speedSquared - perMass * force.constant(), perMass * power);
        return powerAcceleration(Math.max(LOWEST, v * v));
    }

    /**
     * Highest speed squared, m²/s², at which the engine has the power for an acceleration in m/s²; infinite if always.
     */
    public double powerSpeedSquared(double acceleration) {
        // Power is speed times mass·acceleration − force.
        double v = largestRoot(-force.perSpeedSquared(), mass * acceleration - force.constant(), power);
        return v * v;
    }

    /** Largest v, zero or above, with cubic·v³ + linear·v = right, where cubic and right are zero or above. */
    private static double largestRoot(double cubic, double linear, double right) {
        if (cubic == 0) {
            return linear > 0 ? right / linear : Double.POSITIVE_INFINITY;
        }
        // Newton from above: the left side is convex where it rises, so each step falls short of the root, until
        // rounding takes over.
        double next = Math.sqrt(Math.max(0, -linear / cubic)) + Math.cbrt(right / cubic);
        double v;
        do {
            v = next;
            next = v - ((cubic * v * v + linear) * v - right) / (3 * cubic * v * v + linear);
        } while (next < v);
        return v;
    }

    /**
     * The accelerations at one speed, as a line through the feasible set; the parameter is the acceleration in m/s².
     */
    public Chord atSpeed(double speedSquared, double frictionScale) {
        return new Chord(this, frictionScale, speedSquared, 0, 0, 1);
    }

    /** The speeds squared at one acceleration, as a line through the feasible set; the parameter is w in m²/s². */
    public Chord atAcceleration(double acceleration, double frictionScale) {
        return new Chord(this, frictionScale, 0, 1, acceleration, 0);
    }

    /**
     * The middle of a step that starts at a speed, as a line through the feasible set; the parameter is the
     * acceleration a in m/s², constant over the step, and w in the middle is w₀ + a·step.
     *
     * @param speedSquared w₀ at the start of the step, m²/s²
     * @param step length of the step, m; negative for a step that <em>ends</em> at this speed
     * @param frictionScale factor on all friction
     */
    public Chord overStep(double speedSquared, double step, double frictionScale) {
        return new Chord(this, frictionScale, speedSquared, step, 0, 1);
    }

    /**
     * The longitudinal accelerations that tyres and engine allow at a speed; empty where none is feasible.
     *
     * @param speedSquared m²/s²
     * @param frictionScale factor on all friction; 1 for the car as it is
     */
    public Optional<AccelerationRange> accelerationRange(double speedSquared, double frictionScale) {
        Chord chord = atSpeed(speedSquared, frictionScale);
        double inside = chord.feasibleNear(0, 1, -FARTHEST, FARTHEST);
        if (Double.isNaN(inside)) {
            return Optional.empty();
        }
        double lowest = chord.edgeFrom(inside, -1, -FARTHEST);
        double highest = Math.min(chord.edgeFrom(inside, 1, FARTHEST), powerAcceleration(speedSquared));
        return highest >= lowest ? Optional.of(new AccelerationRange(lowest, highest)) : Optional.empty();
    }
}
