package org.foreload.examples.gallery;

import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.foreload.examples.answer.Words;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.ChartStack;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.XyChart;
import org.foreload.ideal.IdealProfile;
import org.foreload.path.Corner;
import org.foreload.vehicle.Car;

/** The fastest quasi-steady entry. */
public final class IdealPictures {

    private IdealPictures() {}

    /** Speed, deceleration and grip use of both axles over distance. */
    public static Picture of(Car car, Corner corner, IdealProfile profile) {
        Axis distance = Axis.of("distance along the line, 0 at turn-in", "m");
        double[] s = each(profile, profile::station);
        XyChart speed = XyChart.of(distance, Axis.of("speed", "m/s"))
                .line("", s, each(profile, profile::speed), Style.FIRST)
                .tall(190);
        XyChart deceleration = XyChart.of(distance, Axis.of("deceleration", "m/s²"))
                .line("", s, each(profile, profile::deceleration), Style.FIRST)
                .tall(170);
        XyChart use = XyChart.of(distance, Axis.of("grip used", "%").between(0, Double.NaN))
                .line("front axle", s, Say.times(100, each(profile, profile::frontUtilisation)), Style.FIRST)
                .line("rear axle", s, Say.times(100, each(profile, profile::rearUtilisation)), Style.SECOND)
                .markY(100, "limit")
                .tall(210);
        String brake = profile.brakePoint().isPresent()
                ? Say.of(
                        "Brake point %s, brake off %s; %.0f %% of the slowing is done while turning.",
                        Words.place(profile.brakePoint().getAsDouble()),
                        Words.place(profile.releaseEnd().orElse(0)),
                        100 * profile.trailShare())
                : "This corner needs no brake.";
        return Picture.of(
                "The fastest that perfect control could do: " + car.name() + " in " + corner.name(),
                Words.standstill(profile)
                        .orElseGet(() -> brake
                                + Say.of(
                                        " Slowest %.1f m/s at %.1f m, %.2f s in all. At every metre one axle is at its "
                                                + "limit, or the engine is.",
                                        profile.minimumSpeed(), profile.minimumSpeedAt(), profile.time())),
                ChartStack.of(marked(speed, profile), marked(deceleration, profile), marked(use, profile)));
    }

    private static XyChart marked(XyChart chart, IdealProfile profile) {
        XyChart more = chart;
        if (profile.brakePoint().isPresent()) {
            more = more.markX(profile.brakePoint().getAsDouble(), "brake point");
        }
        more = more.markX(0, "turn-in");
        if (profile.releaseEnd().isPresent()) {
            more = more.markX(profile.releaseEnd().getAsDouble(), "brake off");
        }
        return more.markX(profile.minimumSpeedAt(), "slowest point");
    }

    private static double[] each(IdealProfile profile, IntToDoubleFunction read) {
        return IntStream.range(0, profile.size()).mapToDouble(read).toArray();
    }
}
