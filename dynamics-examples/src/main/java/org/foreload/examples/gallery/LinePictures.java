package org.foreload.examples.gallery;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.ChartStack;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.XyChart;
import org.foreload.limit.LimitPoint;
import org.foreload.line.LineRun;
import org.foreload.path.Corner;
import org.foreload.vehicle.Car;

/** The same corner on several lines. */
public final class LinePictures {

    private static final double BEFORE = 20;
    private static final List<Style> STYLES = List.of(Style.FIRST, Style.SECOND, Style.THIRD, Style.FOURTH);

    private LinePictures() {}

    /** The lines in the road, and brake, speed and drive along them. */
    public static Picture of(Car car, Corner corner, List<LineRun> runs) {
        LineRun quickest = Collections.min(runs, Comparator.comparingDouble(LineRun::time));
        return drawn(
                "The same corner, several lines: " + car.name() + " in " + corner.name(),
                Say.of("Perfect hands and feet on each line: %s. Quickest: %s.", times(runs), quickest.name()),
                corner,
                runs);
    }

    /**
     * The quickest line of each of several roads, and brake, speed and drive along it.
     *
     * @param name of the corner that all of them are
     * @param last the road of the last run, whose edges are drawn
     * @param runs each on its own road
     */
    public static Picture roads(Car car, String name, Corner last, List<LineRun> runs) {
        return drawn(
                "The quickest line of each road: " + car.name() + " in " + name,
                Say.of(
                        "Perfect hands and feet on the quickest line of each road: %s. The edges drawn are those of the last, %s.",
                        times(runs), runs.get(runs.size() - 1).name()),
                last,
                runs);
    }

    private static String times(List<LineRun> runs) {
        return runs.stream()
                .map(run -> Say.of("%s %.2f s", run.name(), run.time()))
                .collect(Collectors.joining(", "));
    }

    private static Picture drawn(String title, String caption, Corner corner, List<LineRun> runs) {
        double first = 0;
        for (LineRun run : runs) {
            first = Math.min(first, run.brakePoint().orElse(0));
        }
        double from = first - BEFORE;
        double to = Math.min(corner.path().end(), LimitPictures.lastBend(corner.path()) + 2 * BEFORE);
        Map<String, List<LimitPoint>> ways = new LinkedHashMap<>();
        for (LineRun run : runs) {
            ways.put(run.name(), between(run, from, to));
        }
        return Picture.of(
                title,
                caption,
                LimitPictures.ways(corner.path(), ways, from, to),
                ChartStack.of(
                        chart(runs, "brake", "m/s²", from, to, LimitPoint::brake),
                        chart(runs, "speed", "m/s", from, to, LimitPoint::speed),
                        chart(runs, "drive", "m/s²", from, to, LimitPoint::drive)));
    }

    private static List<LimitPoint> between(LineRun run, double from, double to) {
        List<LimitPoint> points = new ArrayList<>();
        for (int i = 0; i < run.roadStations().size(); i++) {
            double s = run.roadStations().get(i);
            if (s >= from && s <= to) {
                points.add(run.result().points().get(i));
            }
        }
        return points;
    }

    private static XyChart chart(
            List<LineRun> runs, String what, String unit, double from, double to, ToDoubleFunction<LimitPoint> read) {
        XyChart chart =
                XyChart.of(Axis.of("distance along the road, 0 where it begins to bend", "m"), Axis.of(what, unit));
        for (int i = 0; i < runs.size(); i++) {
            LineRun run = runs.get(i);
            chart = chart.line(
                    run.name(),
                    run.roadStations().stream()
                            .mapToDouble(s -> s)
                            .filter(s -> s >= from && s <= to)
                            .toArray(),
                    between(run, from, to).stream().mapToDouble(read).toArray(),
                    STYLES.get(i));
        }
        return chart.markX(0, "bend begins").tall(170);
    }
}
