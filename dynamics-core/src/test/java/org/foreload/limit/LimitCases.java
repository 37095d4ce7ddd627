package org.foreload.limit;

import java.util.List;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;

/** Cars and corners of which an independent solution is known, and a point mass. */
final class LimitCases {

    static final Car LIGHT = new Car(
            "light",
            new Chassis(780, 2.4, 1.25, 0.45, 980, 1.42, 1.44),
            new Suspension(0.6, 0.03, 0.07, new Response(1.8, 0.4), new Response(1.8, 0.4)),
            new Aerodynamics(0.6, 0, 0, 1.2, 0),
            0.725,
            new Driveline(130e3, DrivenAxle.REAR),
            new FrictionTyre(new SlipCurve.MagicFormula(1.4, -0.4), 1.2, 1.15, 0.08, 1900, 0.36, 17, 21),
            new FrictionTyre(new SlipCurve.MagicFormula(1.4, -0.4), 1.2, 1.2, 0.08, 1900, 0.36, 20, 21));

    static final Car ROAD = new Car(
            "road",
            new Chassis(1480, 2.62, 1.06, 0.53, 2350, 1.54, 1.52),
            new Suspension(0.62, 0.05, 0.11, new Response(1.4, 0.35), new Response(1.4, 0.35)),
            new Aerodynamics(0.66, -0.05, -0.08, 1.2, 0),
            0.82,
            new Driveline(110e3, DrivenAxle.FRONT),
            new FrictionTyre(new SlipCurve.MagicFormula(1.4, -0.5), 1.02, 0.97, 0.1, 3600, 0.45, 14, 18),
            new FrictionTyre(new SlipCurve.MagicFormula(1.4, -0.5), 1.02, 1.02, 0.1, 3600, 0.45, 17, 18));

    private static final double STRAIGHT = Double.POSITIVE_INFINITY;

    private LimitCases() {}

    static Corner medium() {
        return new Corner(
                "medium",
                50,
                SegmentPath.of(
                        300,
                        List.of(
                                new Segment.Spiral(30, STRAIGHT, 60, Turn.LEFT),
                                new Segment.Arc(74.7, 60, Turn.LEFT),
                                new Segment.Spiral(30, 60, STRAIGHT, Turn.LEFT)),
                        200,
                        5));
    }

    static Corner hairpin() {
        return new Corner(
                "hairpin",
                45,
                SegmentPath.of(
                        350,
                        List.of(
                                new Segment.Spiral(20, STRAIGHT, 18, Turn.RIGHT),
                                new Segment.Arc(36.55, 18, Turn.RIGHT),
                                new Segment.Spiral(20, 18, STRAIGHT, Turn.RIGHT)),
                        150,
                        5));
    }

    /** A short corner, quick to solve. */
    static Corner bend(double radius, double halfWidth, Turn turn) {
        return new Corner(
                "bend",
                32,
                SegmentPath.of(
                        80,
                        List.of(
                                new Segment.Spiral(20, STRAIGHT, radius, turn),
                                new Segment.Arc(30, radius, turn),
                                new Segment.Spiral(20, radius, STRAIGHT, turn)),
                        60,
                        halfWidth));
    }
}
