package org.foreload.load;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;

/** Cars for tests: a plausible one, a point mass, and random possible ones. */
public final class SampleCars {

    /** A plausible road car on good tyres. */
    public static final Car ROAD_CAR = new Car(
            "road car",
            new Chassis(1400, 2.6, 1.22, 0.50, 2200, 1.52, 1.52),
            new Suspension(0.55, 0.03, 0.06, Response.RIGID, Response.RIGID),
            new Aerodynamics(0.68, 0.05, 0.10, 1.2, 0),
            0.66,
            new Driveline(180_000, DrivenAxle.REAR),
            tyre(1.15, 1.10, 0.08),
            tyre(1.17, 1.12, 0.08));

    private SampleCars() {}

    /** A tyre with these frictions and this load sensitivity over 4000 N. */
    public static Tyre tyre(double frictionX, double frictionY, double loadSensitivity) {
        return new FrictionTyre(new SlipCurve.Brush(), frictionX, frictionY, loadSensitivity, 4000, 0.3, 22, 30);
    }

    /** A car that is a point mass with this friction: no CG height, no yaw inertia, all axles used alike. */
    public static Car pointMass(double friction) {
        Tyre tyre = tyre(friction, friction, 0);
        return new Car(
                "point mass",
                new Chassis(1200, 2.5, 1.25, 0, 0, 1.5, 1.5),
                new Suspension(0.5, 0, 0, Response.RIGID, Response.RIGID),
                Aerodynamics.NONE,
                0.5,
                new Driveline(1e9, DrivenAxle.ALL),
                tyre,
                tyre);
    }

    /** Cars that could be built: braked and driven on all kinds of axles, with and without aerodynamics. */
    public static Arbitrary<Car> possible() {
        Arbitrary<Chassis> chassis = Combinators.combine(
                        number(600, 2500),
                        number(2.2, 3.2),
                        number(0.35, 0.65),
                        number(0, 0.6),
                        number(0.6, 1.3),
                        number(1.3, 1.8),
                        number(1.3, 1.8))
                .as((mass, wheelbase, portion, height, inertia, front, rear) -> new Chassis(
                        mass,
                        wheelbase,
                        portion * wheelbase,
                        height,
                        inertia * mass * wheelbase * wheelbase / 4,
                        front,
                        rear));
        Arbitrary<Suspension> suspension = Combinators.combine(number(0.3, 0.7), number(-0.05, 0.15), number(0, 0.2))
                .as((share, front, rear) -> new Suspension(share, front, rear, Response.RIGID, Response.RIGID));
        Arbitrary<Aerodynamics> aerodynamics = Combinators.combine(
                        number(0, 1.2), number(-0.1, 1), number(-0.1, 1.5), number(0, 0.6))
                .as((drag, front, rear, height) -> new Aerodynamics(drag, front, rear, 1.2, height));
        Arbitrary<Driveline> driveline = Combinators.combine(
                        number(40_000, 500_000), Arbitraries.of(DrivenAxle.values()))
                .as(Driveline::new);
        Arbitrary<Tyre> tyres = Combinators.combine(number(0.5, 1.6), number(0.5, 1.6), number(0, 0.15))
                .as(SampleCars::tyre);
        return Combinators.combine(chassis, suspension, aerodynamics, number(0.5, 0.8), driveline, tyres, tyres)
                .as((body, springs, aero, share, drive, front, rear) ->
                        new Car("possible", body, springs, aero, share, drive, front, rear));
    }

    private static Arbitrary<Double> number(double low, double high) {
        return Arbitraries.doubles().between(low, high).ofScale(4);
    }
}
