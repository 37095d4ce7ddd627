package org.foreload.stability;

import java.util.List;
import org.foreload.path.Corner;
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
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;

/** A light car, a front-heavy one and a corner, for tests; plausible, measured on nothing. */
public final class Scenes {

    private Scenes() {}

    /** Light, its engine over the rear wheels; pitches at 1.8 Hz. */
    public static Car light() {
        Tyre front = tyre(1.2, 1.15, 0.08, 1900, 0.36, 17, 21, -0.4);
        Tyre rear = tyre(1.2, 1.20, 0.08, 1900, 0.36, 20, 21, -0.4);
        return new Car(
                "light",
                new Chassis(780, 2.4, 1.25, 0.45, 980, 1.42, 1.44),
                new Suspension(0.6, 0.03, 0.07, new Response(1.8, 0.4), Response.RIGID),
                new Aerodynamics(0.6, 0, 0, 1.2, 0),
                0.725,
                new Driveline(130_000, Driveline.DrivenAxle.REAR),
                front,
                rear);
    }

    /** Front-heavy, with driven front wheels and slim front tyres. */
    public static Car frontHeavy() {
        return new Car(
                "front-heavy",
                new Chassis(1480, 2.62, 1.06, 0.53, 2350, 1.54, 1.52),
                new Suspension(0.58, 0.05, 0.11, new Response(1.4, 0.35), Response.RIGID),
                new Aerodynamics(0.66, -0.05, -0.08, 1.2, 0),
                0.82,
                new Driveline(110_000, Driveline.DrivenAxle.FRONT),
                tyre(1.02, 0.93, 0.1, 3600, 0.45, 14, 18, -0.5),
                tyre(1.02, 0.99, 0.1, 3600, 0.45, 17, 18, -0.5));
    }

    private static Tyre tyre(
            double x,
            double y,
            double sensitivity,
            double load,
            double relaxation,
            double stiffness,
            double slip,
            double e) {
        return new FrictionTyre(
                new SlipCurve.MagicFormula(1.4, e), x, y, sensitivity, load, relaxation, stiffness, slip);
    }

    /** A left turn of 60 m with spirals of 30 m, about 100°, from 50 m/s. */
    public static Corner medium() {
        return new Corner(
                "medium",
                50,
                SegmentPath.of(
                        300,
                        List.of(
                                new Segment.Spiral(30, Double.POSITIVE_INFINITY, 60, Turn.LEFT),
                                new Segment.Arc(74.7, 60, Turn.LEFT),
                                new Segment.Spiral(30, 60, Double.POSITIVE_INFINITY, Turn.LEFT)),
                        200,
                        5));
    }
}
