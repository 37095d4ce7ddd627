package org.foreload.validation;

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

/** What benchmarks drive: a light car with driven rear wheels in a right-angle corner. */
final class Scene {

    static final Corner CORNER = new Corner(
            "medium",
            50,
            SegmentPath.of(
                    300,
                    List.of(
                            Segment.spiralIn(30, 60, Turn.LEFT),
                            Segment.arc(74.7, 60, Turn.LEFT),
                            Segment.spiralOut(30, 60, Turn.LEFT)),
                    200,
                    5));

    private Scene() {}

    static Car car(SlipCurve curve) {
        return new Car(
                "light",
                new Chassis(780, 2.4, 1.25, 0.45, 980, 1.42, 1.44),
                new Suspension(0.6, 0.03, 0.07, new Response(1.8, 0.4), new Response(1.8, 0.4)),
                new Aerodynamics(0.6, 0, 0, 1.2, 0),
                0.725,
                new Driveline(130_000, DrivenAxle.REAR),
                new FrictionTyre(curve, 1.2, 1.15, 0.08, 1900, 0.36, 17, 21),
                new FrictionTyre(curve, 1.2, 1.2, 0.08, 1900, 0.36, 20, 21));
    }
}
