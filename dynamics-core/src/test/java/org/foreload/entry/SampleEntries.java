package org.foreload.entry;

import java.util.List;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
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

/** Cars and corners for tests of the simulator: invented, plausible, of three kinds each. */
public final class SampleEntries {

    /** Front-heavy, front driven, on brush tyres. */
    public static final Car ROAD = new Car(
            "road",
            new Chassis(1380, 2.62, 1.08, 0.52, 2150, 1.52, 1.50),
            new Suspension(0.55, 0.05, 0.10, new Response(1.6, 0.35), new Response(1.8, 0.4)),
            new Aerodynamics(0.65, 0, 0, 1.2, 0),
            0.78,
            new Driveline(110e3, DrivenAxle.FRONT),
            new FrictionTyre(new SlipCurve.Brush(), 1.05, 1.00, 0.08, 3600, 0.4, 15, 18),
            new FrictionTyre(new SlipCurve.Brush(), 1.08, 1.04, 0.08, 3600, 0.4, 17, 18));

    /** Light, rear driven, on Magic Formula tyres. */
    public static final Car LIGHT = new Car(
            "light",
            new Chassis(780, 2.35, 1.22, 0.44, 820, 1.42, 1.40),
            new Suspension(0.52, 0.04, 0.08, new Response(2.0, 0.4), new Response(2.2, 0.4)),
            new Aerodynamics(0.6, 0, 0, 1.2, 0),
            0.66,
            new Driveline(115e3, DrivenAxle.REAR),
            new FrictionTyre(new SlipCurve.MagicFormula(1.45, -0.3), 1.35, 1.30, 0.07, 2500, 0.35, 17, 20),
            new FrictionTyre(new SlipCurve.MagicFormula(1.40, -0.3), 1.40, 1.36, 0.07, 2500, 0.35, 19, 20));

    /** With downforce, rear driven. */
    public static final Car WINGED = new Car(
            "winged",
            new Chassis(820, 2.75, 1.5, 0.31, 1000, 1.55, 1.50),
            new Suspension(0.55, 0.02, 0.05, new Response(3.0, 0.5), new Response(3.2, 0.5)),
            new Aerodynamics(1.1, 1.15, 1.6, 1.2, 0),
            0.60,
            new Driveline(330e3, DrivenAxle.REAR),
            new FrictionTyre(new SlipCurve.Brush(), 1.75, 1.70, 0.08, 3500, 0.3, 24, 26),
            new FrictionTyre(new SlipCurve.Brush(), 1.78, 1.74, 0.08, 3500, 0.3, 26, 26));

    private static final double STRAIGHT = Double.POSITIVE_INFINITY;

    private SampleEntries() {}

    /** A hairpin after a long straight. */
    public static Corner hairpin(double approachSpeed) {
        return new Corner("hairpin", approachSpeed, turn(260, 12, 18, 44, 120, 4.5));
    }

    /** A medium corner. */
    public static Corner medium(double approachSpeed) {
        return new Corner("medium", approachSpeed, turn(200, 30, 60, 75, 150, 4.5));
    }

    /** A fast long corner. */
    public static Corner fast(double approachSpeed) {
        return new Corner("fast", approachSpeed, turn(200, 90, 130, 60, 200, 5));
    }

    /** A very long corner: the curvature grows over 150 m. */
    public static Corner sweeper(double approachSpeed) {
        return new Corner("sweeper", approachSpeed, turn(150, 150, 140, 60, 200, 5));
    }

    private static Path turn(double approach, double spiral, double radius, double arc, double exit, double halfWidth) {
        return SegmentPath.of(
                approach,
                List.of(
                        new Segment.Spiral(spiral, STRAIGHT, radius, Turn.LEFT),
                        new Segment.Arc(arc, radius, Turn.LEFT),
                        new Segment.Spiral(spiral, radius, STRAIGHT, Turn.LEFT)),
                exit,
                halfWidth);
    }

    /** The same car, its body rigid and its tyres without lag. */
    public static Car withoutLags(Car car) {
        return car.with(car.suspension().withPitch(Response.RIGID).withRoll(Response.RIGID))
                .withTyres(withoutLag(car.frontTyre()), withoutLag(car.rearTyre()));
    }

    private static Tyre withoutLag(Tyre tyre) {
        return ((FrictionTyre) tyre).withRelaxationLength(0);
    }
}
