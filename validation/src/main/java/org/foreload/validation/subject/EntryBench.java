package org.foreload.validation.subject;

import java.util.List;
import org.foreload.conventions.Gravity;
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

/** Whole cars and corners for the checks that need them; invented. */
public final class EntryBench {

    /** A tyre that loses a little beyond its peak. */
    private static final SlipCurve FALLING = new SlipCurve.MagicFormula(1.4, -0.4);

    private EntryBench() {}

    /**
     * A car: {@code front-limited}, {@code rear-limited} or {@code neutral} by the grip of its axles;
     * {@code downforce}; {@code plain} without load sensitivity and air.
     *
     * @throws IllegalArgumentException for another name
     */
    public static Car car(String name) {
        return switch (name) {
            case "neutral" -> car(name, 1.10, 1.10, 0.08, 0.62, 0, 0.05);
            case "front-limited" -> car(name, 1.00, 1.15, 0.08, 0.66, 0, 0.05);
            case "rear-limited" -> car(name, 1.15, 1.04, 0.08, 0.70, 0, 0.05);
            case "downforce" -> car(name, 1.50, 1.55, 0.10, 0.64, 1.2, 0.05);
            case "plain" -> car(name, 1.10, 1.10, 0, 0.62, 0, 0);
            default -> throw new IllegalArgumentException("no car " + name);
        };
    }

    private static Car car(
            String name, double front, double rear, double sensitivity, double brakes, double wings, double air) {
        double drag = air > 0 ? 0.6 + wings / 3 : 0;
        return new Car(
                name,
                new Chassis(1200, 2.5, 1.22, 0.46, 1750, 1.5, 1.5),
                new Suspension(0.60, 0.03, 0.07, new Response(1.7, 0.4), new Response(2.0, 0.5)),
                new Aerodynamics(drag, wings, wings * 1.2, 1.2, 0),
                brakes,
                new Driveline(200_000, DrivenAxle.REAR),
                new FrictionTyre(FALLING, front * 1.03, front, sensitivity, 3000, 0.35, 15, 20),
                new FrictionTyre(FALLING, rear * 1.03, rear, sensitivity, 3000, 0.35, 19, 20));
    }

    /**
     * A corner to the left: {@code hairpin}, {@code medium} or {@code fast}.
     *
     * @throws IllegalArgumentException for another name
     */
    public static Corner corner(String name) {
        return switch (name) {
            case "hairpin" -> corner(name, 45, 18, 18, Math.PI, 250);
            case "medium" -> corner(name, 48, 60, 30, Math.toRadians(100), 250);
            case "fast" -> corner(name, 55, 150, 140, Math.toRadians(105), 250);
            default -> throw new IllegalArgumentException("no corner " + name);
        };
    }

    private static Corner corner(
            String name, double speed, double radius, double spiral, double angle, double straight) {
        return new Corner(
                name,
                speed,
                SegmentPath.of(
                        straight,
                        List.of(
                                Segment.spiralIn(spiral, radius, Turn.LEFT),
                                Segment.arc(radius * angle - spiral, radius, Turn.LEFT),
                                Segment.spiralOut(spiral, radius, Turn.LEFT)),
                        150,
                        5));
    }

    /** Largest acceleration, m/s², that all tyres of the plain car together can give. */
    static double plainLimit() {
        return 1.10 * 1.03 * Gravity.G;
    }
}
