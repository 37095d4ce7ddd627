package org.foreload.examples.program;

import static org.foreload.examples.program.Story.say;

import java.util.List;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.XyChart;
import org.foreload.ideal.IdealEntry;
import org.foreload.ideal.IdealProfile;
import org.foreload.path.Corner;
import org.foreload.vehicle.Car;

/** How much of the slowing belongs into the corner: is it the same in a hairpin and in a fast corner? */
public final class HairpinAndFastCorner {

    private static final List<Style> STYLES = List.of(Style.FIRST, Style.THIRD, Style.SECOND);

    private HairpinAndFastCorner() {}

    static IdealProfile ideal(String corner) {
        Car car = Demos.car("car", "light").value();
        return IdealEntry.solve(car, Demos.corner("corner", corner).value());
    }

    /**
     * Runs the program.
     *
     * @param args where to put the picture ({@code .svg} or {@code .png}); none is drawn where none is named
     */
    public static void main(String[] args) {
        say(
                "%s: the fastest entry that its grip allows, into three corners.",
                Demos.car("car", "light").value().name());
        say("%ncorner   arrives m/s  turns in m/s  slowest m/s  braked in the straight  braked while turning");
        XyChart chart = XyChart.of(Axis.of("distance from turn-in", "m").between(-180, 320), Axis.of("speed", "m/s"));
        for (int i = 0; i < Demos.CORNERS.size(); i++) {
            String name = Demos.CORNERS.get(i);
            IdealProfile ideal = ideal(name);
            say(
                    "%-7s  %11.1f  %12.1f  %11.1f  %20.0f %%  %18.0f %%",
                    name,
                    ideal.topSpeed(),
                    ideal.turnInSpeed(),
                    ideal.minimumSpeed(),
                    100 * (1 - ideal.trailShare()),
                    100 * ideal.trailShare());
            chart = chart.line(name, stations(ideal), speeds(ideal), STYLES.get(i));
        }
        say(
                "%nThe hairpin asks for a speed far below that of the straight, and begins abruptly: most of the "
                        + "slowing has to be done before it. The fast corner tightens over a long way (its first spiral is %.0f m long): at turn-in the car needs "
                        + "hardly any grip for cornering, so the brake can have it. Rule of the trade: about 80 and 20 %% in "
                        + "the hairpin, about 20 and 80 %% in the fast corner. Both follow from the grip alone.",
                firstSpiral("fast"));
        String caption =
                "Left of 0 the car goes straight. For the hairpin it does most of its slowing there; for the fast corner, "
                        + "right of 0, while turning.";
        Story.draw(args, Picture.of("The hairpin and the fast corner", caption, chart.markX(0, "turn-in")));
    }

    /** Length, m, over which the corner tightens: up to where the curvature has its first largest value. */
    static double firstSpiral(String name) {
        Corner corner = Demos.corner("corner", name).value();
        double[] kinks = corner.path().kinks();
        for (double kink : kinks) {
            if (kink > 0) {
                return kink;
            }
        }
        throw new IllegalStateException(name + " has no spiral");
    }

    private static double[] stations(IdealProfile profile) {
        return java.util.stream.IntStream.range(0, profile.size())
                .mapToDouble(profile::station)
                .toArray();
    }

    private static double[] speeds(IdealProfile profile) {
        return java.util.stream.IntStream.range(0, profile.size())
                .mapToDouble(profile::speed)
                .toArray();
    }
}
