package org.foreload.examples.gallery;

import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.foreload.examples.answer.Words;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.ChartStack;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.Style.Dash;
import org.foreload.examples.picture.Style.Ink;
import org.foreload.examples.picture.Style.Marker;
import org.foreload.examples.picture.XyChart;
import org.foreload.limit.LimitPoint;
import org.foreload.limit.LimitResult;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.vehicle.Car;

/** What perfect hands and feet do. */
public final class LimitPictures {

    private static final double BEFORE = 20;
    private static final double STEP = 2;
    private static final double PLOT_WIDTH = 760;
    private static final double LEAST_HEIGHT = 150;
    private static final double MOST_HEIGHT = 460;
    private static final double AROUND = 86;
    private static final List<Style> STYLES = List.of(Style.FIRST, Style.SECOND, Style.THIRD, Style.FOURTH);

    private LimitPictures() {}

    /**
     * The ways on the road, speed, brake and drive, and grip used.
     *
     * @param runs by name; the first is the one asked for
     */
    public static Picture of(Car car, Corner corner, Map<String, LimitResult> runs) {
        LimitResult first = runs.values().iterator().next();
        double from = Math.min(0, first.brakePoint().orElse(0)) - BEFORE;
        double to = Math.min(corner.path().end(), lastBend(corner.path()) + 2 * BEFORE);
        String brake = first.brakePoint().isPresent()
                ? Say.of("Brake point %s. ", Words.place(first.brakePoint().getAsDouble()))
                : "";
        return Picture.of(
                "Perfect hands and feet: " + car.name() + " in " + corner.name(),
                brake
                        + Say.of(
                                "Slowest %.1f m/s at %.1f m, %.3f s in all. %s",
                                first.minimumSpeed(),
                                first.minimumSpeedAt(),
                                first.time(),
                                first.converged()
                                        ? "Brake and drive are forces over mass."
                                        : "No optimum was found; this is the last attempt.")
                        + (runs.size() > 1
                                ? " These numbers and the grip used are those of: "
                                        + runs.keySet().iterator().next() + "."
                                : ""),
                plan(corner.path(), runs, from, to),
                ChartStack.of(
                        overStation(runs, "speed", "m/s", from, to, LimitPoint::speed, 190),
                        overStation(runs, "brake", "m/s²", from, to, LimitPoint::brake, 170),
                        overStation(runs, "drive", "m/s²", from, to, LimitPoint::drive, 170),
                        marked(use(first, from, to), runs.values())));
    }

    static double lastBend(Path path) {
        return Arrays.stream(path.kinks()).max().orElse(0);
    }

    private static XyChart overStation(
            Map<String, LimitResult> runs,
            String what,
            String unit,
            double from,
            double to,
            ToDoubleFunction<LimitPoint> read,
            double height) {
        XyChart chart = XyChart.of(Axis.of("distance along the line, 0 at turn-in", "m"), Axis.of(what, unit));
        int i = 0;
        for (Map.Entry<String, LimitResult> run : runs.entrySet()) {
            List<LimitPoint> points = between(run.getValue(), from, to);
            chart = chart.line(
                    runs.size() > 1 ? run.getKey() : "",
                    points.stream().mapToDouble(LimitPoint::station).toArray(),
                    points.stream().mapToDouble(read).toArray(),
                    STYLES.get(i++));
        }
        return marked(chart, runs.values()).tall(height);
    }

    /** Turn-in, and where there is only one run its brake point and slowest point. */
    private static XyChart marked(XyChart chart, Collection<LimitResult> runs) {
        XyChart marked = chart.markX(0, "turn-in");
        if (runs.size() > 1) {
            return marked;
        }
        LimitResult run = runs.iterator().next();
        OptionalDouble brake = run.brakePoint();
        marked = brake.isPresent() ? marked.markX(brake.getAsDouble(), "brake point") : marked;
        return marked.markX(run.minimumSpeedAt(), "slowest point");
    }

    private static XyChart use(LimitResult first, double from, double to) {
        List<LimitPoint> points = between(first, from, to);
        double[] s = points.stream().mapToDouble(LimitPoint::station).toArray();
        return XyChart.of(
                        Axis.of("distance along the line, 0 at turn-in", "m"),
                        Axis.of("grip used", "%").between(0, Double.NaN))
                .line(
                        "front axle",
                        s,
                        points.stream()
                                .mapToDouble(point -> 100 * point.frontUtilisation())
                                .toArray(),
                        Style.FIRST)
                .line(
                        "rear axle",
                        s,
                        points.stream()
                                .mapToDouble(point -> 100 * point.rearUtilisation())
                                .toArray(),
                        Style.SECOND)
                .markY(100, "limit")
                .tall(210);
    }

    private static List<LimitPoint> between(LimitResult result, double from, double to) {
        return result.points().stream()
                .filter(point -> point.station() >= from && point.station() <= to)
                .toList();
    }

    private static XyChart plan(Path path, Map<String, LimitResult> runs, double from, double to) {
        Map<String, List<LimitPoint>> ways = new LinkedHashMap<>();
        runs.forEach((name, run) -> ways.put(name, between(run, from, to)));
        return ways(path, ways, from, to);
    }

    /** Ways on the road from above, by name, between two stations of the road. */
    static XyChart ways(Path path, Map<String, List<LimitPoint>> ways, double from, double to) {
        Style edge = new Style(Ink.BLACK, Dash.THIN, Marker.NONE);
        double[][] left = edge(path, from, to, 1);
        double[][] right = edge(path, from, to, -1);
        XyChart chart = XyChart.of(Axis.of("along the approach", "m"), Axis.of("to its left", "m"))
                .heading("The corner from above")
                .line("edge of the track", left[0], left[1], edge)
                .line("", right[0], right[1], edge);
        Path.Point origin = path.position(0);
        int i = 0;
        for (Map.Entry<String, List<LimitPoint>> way : ways.entrySet()) {
            List<LimitPoint> points = way.getValue();
            chart = chart.line(
                    way.getKey(),
                    points.stream().mapToDouble(point -> point.x() - origin.x()).toArray(),
                    points.stream().mapToDouble(point -> point.y() - origin.y()).toArray(),
                    STYLES.get(i++));
        }
        double wide = Math.max(width(left[0], right[0]), 1);
        double high = width(left[1], right[1]);
        return chart.equal()
                .tall(AROUND + Math.max(LEAST_HEIGHT, Math.min(MOST_HEIGHT, 1.07 * PLOT_WIDTH * high / wide)));
    }

    private static double[][] edge(Path path, double from, double to, int side) {
        double start = Math.max(from, path.start());
        int count = (int) Math.ceil((to - start) / STEP) + 1;
        double[][] points = new double[2][count];
        Path.Point origin = path.position(0);
        for (int i = 0; i < count; i++) {
            double s = start + (to - start) * i / (count - 1);
            double offset = side > 0 ? path.widthLeft(s) : -path.widthRight(s);
            Path.Point on = path.position(s);
            points[0][i] = on.x() - offset * Math.sin(path.heading(s)) - origin.x();
            points[1][i] = on.y() + offset * Math.cos(path.heading(s)) - origin.y();
        }
        return points;
    }

    private static double width(double[] one, double[] other) {
        double low = Math.min(
                Arrays.stream(one).min().orElse(0), Arrays.stream(other).min().orElse(0));
        double high = Math.max(
                Arrays.stream(one).max().orElse(0), Arrays.stream(other).max().orElse(0));
        return high - low;
    }
}
