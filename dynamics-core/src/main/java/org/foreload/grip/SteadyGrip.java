package org.foreload.grip;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.foreload.conventions.Gravity;
import org.foreload.load.LoadTransfer;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;

/** Axle utilisation in a steady corner (no yaw acceleration) on a flat road at one speed, against (d, lateral a). */
final class SteadyGrip {

    /** Acceleration in m/s² beyond which an axle that carries no part of the longitudinal force counts as unlimited. */
    private static final double LIMIT = 1000;

    /** Lateral acceleration in m/s² beyond which nobody looks: some cars of impossible numbers have no limit at all. */
    private static final double UNLIMITED = 1e9;

    /** Accuracy of the best deceleration, in m/s² and relative; capacity is flat there. */
    private static final double ACCURACY = 1e-8;

    private final Car car;
    private final LoadTransfer transfer;
    private final double speed;
    private final double drag;
    private final double frontLoad;
    private final double rearLoad;

    SteadyGrip(Car car, double speed) {
        this.car = car;
        this.transfer = LoadTransfer.of(car);
        this.speed = speed;
        double speedSquared = speed * speed;
        this.drag = car.aerodynamics().drag(speedSquared);
        this.frontLoad = transfer.frontAxle(Gravity.G, speedSquared);
        this.rearLoad = transfer.rearAxle(Gravity.G, speedSquared);
    }

    /** Lateral force that an axle must give per unit of lateral acceleration, N per m/s². */
    double demandRate(Axle axle) {
        Chassis chassis = car.chassis();
        double arm = axle == Axle.FRONT ? chassis.cgToRearAxle() : chassis.cgToFrontAxle();
        return chassis.mass() * arm / chassis.wheelbase();
    }

    /**
     * Utilisation of an axle, which anti-lock brakes keep from more than that of the whole car; see {@link AxleUse}.
     */
    double utilisation(Axle axle, double deceleration, double lateral) {
        double alone = alone(axle, deceleration, lateral);
        return held(deceleration) ? Math.min(alone, together(deceleration, lateral)) : alone;
    }

    /** Whether anti-lock brakes have a say. */
    private boolean held(double deceleration) {
        return car.antiLock() && force(deceleration) > 0;
    }

    /** Utilisation of an axle that takes its share of the force. */
    private double alone(Axle axle, double deceleration, double lateral) {
        double force = force(deceleration);
        Driveline driveline = car.driveline();
        double frontShare =
                force > 0 ? car.frontBrakeShare() : driveline.drivenAxle().frontShare();
        double front = frontLoad(deceleration);
        double demand = demandRate(axle) * lateral;
        return axle == Axle.FRONT
                ? AxleGrip.utilisation(
                        car.frontTyre(), front, transfer.frontLateral(lateral), frontShare * force, demand)
                : AxleGrip.utilisation(
                        car.rearTyre(),
                        load() - front,
                        transfer.rearLateral(lateral),
                        (1 - frontShare) * force,
                        demand);
    }

    /** Utilisation of a car whose anti-lock brakes give each axle what it can hold. */
    private double together(double deceleration, double lateral) {
        double front = frontLoad(deceleration);
        double rear = load() - front;
        double share = car.frontBrakeShare();
        double toFront = demandRate(Axle.FRONT) * lateral;
        double toRear = demandRate(Axle.REAR) * lateral;
        return AxleGrip.Held.of(car.frontTyre(), front, transfer.frontLateral(lateral), toFront, share > 0)
                .with(
                        AxleGrip.Held.of(car.rearTyre(), rear, transfer.rearLateral(lateral), toRear, share < 1),
                        force(deceleration));
    }

    /** Longitudinal force of all tyres, N, positive when braking. */
    private double force(double deceleration) {
        return car.chassis().mass() * deceleration - drag;
    }

    private double load() {
        return Math.max(0, frontLoad + rearLoad);
    }

    private double frontLoad(double deceleration) {
        return Math.max(0, Math.min(load(), frontLoad + transfer.longitudinal(deceleration, speed * speed, 0)));
    }

    /** Lateral acceleration, m/s², at which the car rolls over. */
    double tipping(double deceleration) {
        double front = frontLoad(deceleration);
        return transfer.tipping(front, load() - front);
    }

    /** Largest lateral acceleration, m/s², that one axle carries; zero if braking or driving alone is too much. */
    double lateralLimit(Axle axle, double deceleration) {
        return edge(lateral -> utilisation(axle, deceleration, lateral));
    }

    /** Largest lateral acceleration, m/s², of the car: that of its weaker axle, or that at which it rolls over. */
    double lateralLimit(double deceleration) {
        return Math.min(
                tipping(deceleration),
                Math.min(lateralLimit(Axle.FRONT, deceleration), lateralLimit(Axle.REAR, deceleration)));
    }

    /**
     * The axle that gives way first at a deceleration in m/s²; the front one if both do together, empty where the car
     * rolls over before.
     */
    Optional<Axle> limitingAxle(double deceleration) {
        double front = lateralLimit(Axle.FRONT, deceleration);
        double rear = lateralLimit(Axle.REAR, deceleration);
        return tipping(deceleration) < Math.min(front, rear)
                ? Optional.empty()
                : Optional.of(front <= rear ? Axle.FRONT : Axle.REAR);
    }

    /**
     * Deceleration, m/s², zero or above, at which one axle carries most lateral acceleration. What it carries rises and
     * then falls with deceleration (see {@link LocalGrip}), and may end in a step: so does what it carries with its
     * share of the brake, and what the car carries with anti-lock brakes that share out the force.
     */
    double bestDeceleration(Axle axle) {
        double shared = best(
                straightLimit(deceleration -> alone(axle, deceleration, 0), 1),
                deceleration -> edge(lateral -> alone(axle, deceleration, lateral)));
        double held = car.antiLock()
                ? best(
                        straightLimit(deceleration -> together(deceleration, 0), 1),
                        deceleration -> edge(lateral -> together(deceleration, lateral)))
                : 0;
        double better = lateralLimit(axle, held) > lateralLimit(axle, shared) ? held : shared;
        return lateralLimit(axle, better) > lateralLimit(axle, 0) ? better : 0;
    }

    private static double best(double hardest, DoubleUnaryOperator lateral) {
        if (!(hardest > 0 && hardest < Double.POSITIVE_INFINITY)) {
            return 0;
        }
        return new BrentOptimizer(ACCURACY, ACCURACY)
                .optimize(
                        new UnivariateObjectiveFunction(lateral::applyAsDouble),
                        GoalType.MAXIMIZE,
                        new SearchInterval(0, hardest),
                        MaxEval.unlimited())
                .getPoint();
    }

    /** Largest lateral acceleration, m/s², at which a utilisation is not above 1. */
    private static double edge(DoubleUnaryOperator utilisation) {
        return LimitSearch.edgeFrom(
                lateral -> LimitSearch.level(utilisation.applyAsDouble(lateral) - 1), 0, Gravity.G, UNLIMITED);
    }

    /** Hardest deceleration, m/s², that both axles stand in a straight line. */
    double brakingLimit() {
        return Math.min(
                straightLimit(deceleration -> utilisation(Axle.FRONT, deceleration, 0), 1),
                straightLimit(deceleration -> utilisation(Axle.REAR, deceleration, 0), 1));
    }

    /**
     * Hardest acceleration, m/s², that both axles and the engine stand in a straight line; zero if even drag is too
     * much.
     */
    double drivingLimit() {
        double coasting = drag / car.chassis().mass();
        double byTyres = -Math.max(
                straightLimit(deceleration -> utilisation(Axle.FRONT, deceleration, 0), -1),
                straightLimit(deceleration -> utilisation(Axle.REAR, deceleration, 0), -1));
        return Math.min(
                byTyres, car.driveline().power() / (speed * car.chassis().mass()) - coasting);
    }

    /**
     * Where, from coasting on, a utilisation in a straight line comes to 1: braking, or driving with a negative sign.
     */
    private double straightLimit(DoubleUnaryOperator utilisation, int sign) {
        double coasting = drag / car.chassis().mass();
        return LimitSearch.edgeFrom(
                deceleration -> LimitSearch.level(utilisation.applyAsDouble(deceleration) - 1),
                coasting,
                sign * Gravity.G,
                coasting + sign * LIMIT);
    }
}
