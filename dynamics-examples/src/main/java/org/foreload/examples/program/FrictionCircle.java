package org.foreload.examples.program;

import static org.foreload.examples.program.Story.each;
import static org.foreload.examples.program.Story.evenly;
import static org.foreload.examples.program.Story.say;

import org.foreload.conventions.Gravity;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.XyChart;
import org.foreload.grip.GgDiagram;
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

/** How much cornering does braking leave, if one number, the friction, is all that is known? */
public final class FrictionCircle {

    /** The one number: greatest force over load. */
    static final double FRICTION = 1.1;

    private FrictionCircle() {}

    /** What a braking share of the grip leaves for cornering, as a share of the grip: the circle. */
    static double left(double brakingShare) {
        return Math.sqrt(1 - brakingShare * brakingShare);
    }

    /** The car that has only this number: all its mass at the road, so that no load moves; brakes as the load lies. */
    static Car car() {
        Tyre tyre = new FrictionTyre(new SlipCurve.Brush(), FRICTION, FRICTION, 0, 3000, 0, 15, 15);
        return new Car(
                "one number",
                new Chassis(1000, 2.5, 1.25, 0, 0, 1.5, 1.5),
                new Suspension(0.5, 0, 0, Response.RIGID, Response.RIGID),
                Aerodynamics.NONE,
                0.5,
                new Driveline(1e7, DrivenAxle.ALL),
                tyre,
                tyre);
    }

    /**
     * Runs the program.
     *
     * @param args where to put the picture ({@code .svg} or {@code .png}); none is drawn where none is named
     */
    public static void main(String[] args) {
        double grip = FRICTION * Gravity.G;
        say("Friction %.2f: the tyres give %.2f m/s² in any direction, and no more.", FRICTION, grip);
        say("%nbraking, %% of grip  braking m/s²  left for cornering, %% of grip  cornering m/s²");
        for (double share : new double[] {0, 0.2, 0.5, 0.7, 0.9, 0.98, 1}) {
            say("%18.0f  %12.2f  %30.1f  %14.2f", 100 * share, share * grip, 100 * left(share), left(share) * grip);
        }
        say(
                "%nIt is a circle, not a straight line: with half the grip on the brake, %.0f %% is left for cornering. And coming",
                100 * left(0.5));
        say(
                "off the brake from full, the first tenth of the pedal gives back %.0f %% of the cornering at once.",
                100 * left(0.9));
        say("So the brake can be carried into the corner, but must be gone where the corner takes everything.");

        GgDiagram library = GgDiagram.of(car(), 20, 41);
        double[] braking = library.boundary().stream()
                .mapToDouble(point -> -point.deceleration())
                .toArray();
        double[] cornering = library.boundary().stream()
                .mapToDouble(GgDiagram.Point::lateral)
                .toArray();
        double[] angle = evenly(-Math.PI, Math.PI, 361);
        XyChart chart = XyChart.of(Axis.of("cornering", "m/s²"), Axis.of("driving above, braking below", "m/s²"))
                .line("circle", each(angle, a -> grip * Math.cos(a)), each(angle, a -> grip * Math.sin(a)), Style.FIRST)
                .line(
                        "library, a car with this one number",
                        cornering,
                        braking,
                        Style.points(Style.Ink.VERMILION, Style.Marker.RING))
                .line("", each(cornering, a -> -a), braking, Style.points(Style.Ink.VERMILION, Style.Marker.RING))
                .tall(460)
                .equal();
        String caption =
                "Whatever the car does is a point inside the circle; at the limit it is on the circle. Coming off the brake into a "
                        + "corner means moving along the circle, from its bottom to its side.";
        Story.draw(args, Picture.of("The friction circle with one number", caption, chart));
    }
}
