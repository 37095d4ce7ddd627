package org.foreload.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;
import org.foreload.conventions.Rising;
import org.foreload.limit.Limit;
import org.foreload.limit.LimitPoint;
import org.foreload.limit.LimitResult;
import org.foreload.path.MeasuredLine;
import org.foreload.path.MeasuredPath;
import org.foreload.path.Path;

/**
 * A line on a road: how far it is from the road's own line, in which direction it goes and how much it is bent, at some
 * stations of the road. Between them the offset is the polynomial of fifth order that has all three at both ends, so
 * place, direction and curvature are continuous: points read off it can be differentiated twice. Immutable.
 *
 * <p>Points read off a solution in a cruder way, say with straight pieces between them, would not do: who drives by a
 * file of points sees their second differences as curvature, where a millimetre over three metres is a radius of two
 * kilometres.
 */
public final class RoadLine implements Limit.Start {

    /** Distance between the points through which {@link #line} is laid, m: finer than its joints. */
    private static final double POINT_STEP = 1;

    /**
     * Greatest root mean square distance between these points and the path laid through them, m; clean points are
     * followed much more closely.
     */
    private static final double FIT = 0.01;

    /** Directions, rad, beyond which a line no longer goes along the road. */
    private static final double MOST_DIRECTION = 1.5;

    /** Distance from a kink of the road, m, at which its near side is read. */
    private static final double BESIDE = 1e-9;

    private final Path road;
    private final double[] station;
    private final double[] offset;
    private final double[] direction;
    private final double[] curvature;
    private final MeasuredPath line;
    private final double[] roadStations;
    private final double[] lineStations;

    /**
     * @param road with its own line
     * @param station rising, m
     * @param offset to the left of the road's line, m
     * @param direction of the line less that of the road, rad, positive to the left
     * @param curvature of the line, 1/m, positive to the left
     * @throws InvalidValueException if the stations do not rise or the line does not go along the road
     */
    public RoadLine(Path road, double[] station, double[] offset, double[] direction, double[] curvature) {
        this.road = Objects.requireNonNull(road, "road");
        this.station = Objects.requireNonNull(station, "station").clone();
        this.offset = Objects.requireNonNull(offset, "offset").clone();
        this.direction = Objects.requireNonNull(direction, "direction").clone();
        this.curvature = Objects.requireNonNull(curvature, "curvature").clone();
        int count = station.length;
        if (!(count >= 2 && offset.length == count && direction.length == count && curvature.length == count)) {
            throw new InvalidValueException("station", count + " values", "two or more, as many as of the others");
        }
        for (int i = 0; i < count; i++) {
            Checks.within("direction", direction[i], -MOST_DIRECTION, MOST_DIRECTION);
            if (i > 0 && !(station[i] > station[i - 1])) {
                throw new InvalidValueException("station", station[i], "above the one before");
            }
            Checks.within("offset_times_curvature", offset[i] * road.curvature(station[i]), -1, 1);
            Checks.finite("curvature", curvature[i]);
        }
        List<LinePoint> points = points(POINT_STEP);
        this.line = fit(points);
        this.roadStations = new double[points.size()];
        this.lineStations = new double[points.size()];
        double length = 0;
        for (int i = 0; i < points.size(); i++) {
            roadStations[i] = points.get(i).roadStation();
            if (i > 0) {
                length += Math.hypot(
                        points.get(i).x() - points.get(i - 1).x(),
                        points.get(i).y() - points.get(i - 1).y());
            }
            lineStations[i] = length;
        }
        for (int i = 0; i < points.size(); i++) {
            lineStations[i] = line.start() + lineStations[i] / length * (line.end() - line.start());
        }
    }

    /** The line that the centre of gravity takes in a solution. */
    public static RoadLine driven(Path road, LimitResult result) {
        Objects.requireNonNull(road, "road");
        Objects.requireNonNull(result, "result");
        List<LimitPoint> points = new ArrayList<>();
        for (int i = 0; i < result.points().size(); i += 2) {
            points.add(result.points().get(i));
        }
        return new RoadLine(
                road,
                points.stream().mapToDouble(LimitPoint::station).toArray(),
                points.stream().mapToDouble(LimitPoint::offset).toArray(),
                points.stream()
                        .mapToDouble(point -> point.headingError() + point.sideslip())
                        .toArray(),
                points.stream().mapToDouble(LimitPoint::curvature).toArray());
    }

    @Override
    public double offset(double s) {
        return at(s)[0];
    }

    @Override
    public double direction(double s) {
        double[] n = at(s);
        return Math.atan2(n[1], 1 - n[0] * road.curvature(s));
    }

    /**
     * Points at even distances.
     *
     * @param step about, along the line, m
     */
    public List<LinePoint> points(double step) {
        Checks.positive("step_m", step);
        List<LinePoint> points = new ArrayList<>();
        double s = station[0];
        double last = station[station.length - 1];
        while (s < last - step / 2) {
            LinePoint point = point(s);
            points.add(point);
            double stretch = 1 - offset(s) * road.curvature(s);
            s += step * Math.cos(point.heading() - road.heading(s)) / stretch;
        }
        points.add(point(last));
        return List.copyOf(points);
    }

    /** The line as one to be driven along, with stations of its own and the edges of the road beside it. */
    @Override
    public MeasuredPath line() {
        return line;
    }

    @Override
    public double lineStation(double roadStation) {
        return Rising.straight(roadStations, lineStations, roadStation);
    }

    /** Station of the road, m, beside a station of the line. */
    public double roadStation(double lineStation) {
        return Rising.straight(lineStations, roadStations, lineStation);
    }

    private static MeasuredPath fit(List<LinePoint> points) {
        MeasuredLine line = MeasuredLine.of(
                        points.stream().mapToDouble(LinePoint::x).toArray(),
                        points.stream().mapToDouble(LinePoint::y).toArray(),
                        1)
                .withWidths(
                        points.stream().mapToDouble(LinePoint::widthLeft).toArray(),
                        points.stream().mapToDouble(LinePoint::widthRight).toArray())
                .withBankingAngles(
                        points.stream().mapToDouble(LinePoint::banking).toArray())
                .withGradeFractions(points.stream()
                        .mapToDouble(point -> Math.tan(point.grade()))
                        .toArray());
        return MeasuredPath.fit(line, FIT);
    }

    /** The point beside a station of the road. */
    public LinePoint point(double s) {
        double[] n = at(s);
        double bend = road.curvature(s);
        double along = 1 - n[0] * bend;
        double course = Math.atan2(n[1], along);
        double cos = Math.cos(course);
        double turned = (n[2] * along + n[1] * (n[1] * bend + n[0] * road.curvatureGradient(s)))
                / (along * along + n[1] * n[1]);
        double heading = road.heading(s);
        Path.Point place = road.position(s);
        return new LinePoint(
                s,
                place.x() - n[0] * Math.sin(heading),
                place.y() + n[0] * Math.cos(heading),
                heading + course,
                (bend + turned) * cos / along,
                Math.max(0, road.widthLeft(s) - n[0]) / cos,
                Math.max(0, road.widthRight(s) + n[0]) / cos,
                road.grade(s),
                road.banking(s));
    }

    /** Offset and its first and second derivative over the road's station. */
    private double[] at(double s) {
        int i = Rising.cell(station, s);
        double h = station[i + 1] - station[i];
        double[] from = ends(i, station[i]);
        double[] to = ends(i + 1, station[i + 1] - BESIDE);
        double t = Math.max(0, Math.min(1, (s - station[i]) / h));
        double d = to[0] - from[0] - h * from[1] - h * h * from[2] / 2;
        double e = h * (to[1] - from[1] - h * from[2]);
        double f = h * h * (to[2] - from[2]);
        double c3 = 10 * d - 4 * e + f / 2;
        double c4 = -15 * d + 7 * e - f;
        double c5 = 6 * d - 3 * e + f / 2;
        return new double[] {
            from[0] + t * (h * from[1] + t * (h * h * from[2] / 2 + t * (c3 + t * (c4 + t * c5)))),
            from[1] + t * (h * from[2] + t * (3 * c3 + t * (4 * c4 + t * 5 * c5)) / h),
            from[2] + t * (6 * c3 + t * (12 * c4 + t * 20 * c5)) / (h * h)
        };
    }

    /** Offset and its derivatives at a given station; the road is read beside it. */
    private double[] ends(int i, double s) {
        double bend = road.curvature(s);
        double along = 1 - offset[i] * bend;
        double tan = Math.tan(direction[i]);
        double slope = tan * along;
        double turned = curvature[i] * along / Math.cos(direction[i]) - bend;
        double second = (1 + tan * tan) * turned * along - tan * (slope * bend + offset[i] * road.curvatureGradient(s));
        return new double[] {offset[i], slope, second};
    }
}
