package org.foreload.grip;

import org.foreload.conventions.Gravity;
import org.foreload.load.LoadTransfer;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;

/** Axle utilisation in a steady corner (no yaw acceleration) on a flat road at one speed, against (d, lateral a). */
final class SteadyGrip {

    /** Acceleration in m/s² beyond which an axle that carries no part of the longitudinal force counts as unlimited. */
    private static final double LIMIT = 1000;

    /** Lateral acceleration in m/s² beyond which nobody looks: some cars of impossible numbers have no limit at all. */
    private static final double UNLIMITED = 1e9;

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

    double utilisation(Axle axle, double deceleration, double lateral) {
        double force = car.chassis().mass() * deceleration - drag;
        Driveline driveline = car.driveline();
        double frontShare =
                force > 0 ? car.frontBrakeShare() : driveline.drivenAxle().frontShare();
        double total = Math.max(0, frontLoad + rearLoad);
        double front = Math.max(0, Math.min(total, frontLoad + transfer.longitudinal(deceleration, speed * speed, 0)));
        double demand = demandRate(axle) * lateral;
        return axle == Axle.FRONT
                ? AxleGrip.utilisation(
                        car.frontTyre(), front, transfer.frontLateral(lateral), frontShare * force, demand)
                : AxleGrip.utilisation(
                        car.rearTyre(), total - front, transfer.rearLateral(lateral), (1 - frontShare) * force, demand);
    }

    /** Largest lateral acceleration, m/s², that one axle carries; zero if braking or driving alone is too much. */
    double lateralLimit(Axle axle, double deceleration) {
        return LimitSearch.edgeFrom(
                lateral -> LimitSearch.level(utilisation(axle, deceleration, lateral) - 1), 0, Gravity.G, UNLIMITED);
    }

    /** Hardest deceleration, m/s², that one axle stands in a straight line. */
    double brakingLimit(Axle axle) {
        return straightLimit(axle, drag / car.chassis().mass(), 1);
    }

    /**
     * Hardest acceleration, m/s², that both axles and the engine stand in a straight line; zero if even drag is too
     * much.
     */
    double drivingLimit() {
        double coasting = drag / car.chassis().mass();
        double byTyres = -Math.max(straightLimit(Axle.FRONT, coasting, -1), straightLimit(Axle.REAR, coasting, -1));
        return Math.min(
                byTyres, car.driveline().power() / (speed * car.chassis().mass()) - coasting);
    }

    private double straightLimit(Axle axle, double coasting, int sign) {
        return LimitSearch.edgeFrom(
                deceleration -> LimitSearch.level(utilisation(axle, deceleration, 0) - 1),
                coasting,
                sign * Gravity.G,
                coasting + sign * LIMIT);
    }
}
