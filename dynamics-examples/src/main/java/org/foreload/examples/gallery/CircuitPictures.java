package org.foreload.examples.gallery;

import java.util.ArrayList;
import java.util.List;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.CircuitAnswer;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.BarChart;
import org.foreload.examples.picture.BarChart.Bar;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style.Ink;
import org.foreload.lap.Circuit;
import org.foreload.lap.Lap;
import org.foreload.lap.Lap.CornerGain;
import org.foreload.vehicle.Car;

/** Where a lap gains. */
public final class CircuitPictures {

    private CircuitPictures() {}

    /** Time gained in each corner, and the trail share that gains it, in driving order. */
    public static Picture of(Car car, Circuit circuit, Lap lap) {
        List<Bar> gains = new ArrayList<>();
        List<Bar> shares = new ArrayList<>();
        for (int i = 0; i < lap.corners().size(); i++) {
            CornerGain corner = lap.corners().get(i);
            double trail = 100 * corner.best().map(EntryResult::trailShare).orElse(Double.NaN);
            boolean coasts = corner.best().isPresent() && !corner.best().get().braked();
            String none = coasts ? "no braking" : "none makes it";
            gains.add(
                    Bar.of(i + 1 + " " + corner.name(), corner.gain(), words("%.2f s", corner.gain(), none), Ink.BLUE));
            shares.add(Bar.of(i + 1 + " " + corner.name(), trail, words("%.0f %%", trail, none), Ink.ORANGE));
        }
        String most = lap.ranked().stream()
                .filter(corner -> !Double.isNaN(corner.gain()))
                .findFirst()
                .map(corner -> Say.of(" Most is to be gained in %s: %.2f s.", corner.name(), corner.gain()))
                .orElse("");
        return new Picture(
                "Where the lap gains: " + car.name() + " on " + circuit.name(),
                CircuitAnswer.gain(lap) + most,
                List.of(
                        List.of(new BarChart("Quicker than straight-line braking by", Axis.of("time", "s"), gains)),
                        List.of(new BarChart(
                                "Slowing that is done while turning", Axis.of("trail share", "%"), shares))));
    }

    private static String words(String pattern, double value, String none) {
        return Double.isNaN(value) ? none : Say.of(pattern, value);
    }
}
