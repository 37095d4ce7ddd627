package org.foreload.handling;

import org.foreload.conventions.Gravity;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;

/** Cars of the textbooks: linear tyres, no CG height, no air. */
final class LinearCars {

    private LinearCars() {}

    /**
     * A car with these cornering stiffnesses of its axles, N/rad.
     *
     * @param a CG to front axle, m
     * @param b CG to rear axle, m
     */
    static Car of(double mass, double inertia, double a, double b, double front, double rear) {
        double weight = mass * Gravity.G;
        return new Car(
                "textbook",
                new Chassis(mass, a + b, a, 0, inertia, 1.5, 1.5),
                new Suspension(0.5, 0, 0, Response.RIGID, Response.RIGID),
                Aerodynamics.NONE,
                0.6,
                new Driveline(1e5, Driveline.DrivenAxle.REAR),
                tyre(front / (weight * b / (a + b))),
                tyre(rear / (weight * a / (a + b))));
    }

    private static Tyre tyre(double stiffnessPerLoad) {
        return new FrictionTyre(new SlipCurve.Linear(), 1, 1, 0, 4000, 0, stiffnessPerLoad, stiffnessPerLoad);
    }

    /** The set of R. Rajamani, Vehicle Dynamics and Control (from memory). */
    static Car rajamani() {
        return of(1573, 2873, 1.10, 1.58, 160_000, 160_000);
    }
}
