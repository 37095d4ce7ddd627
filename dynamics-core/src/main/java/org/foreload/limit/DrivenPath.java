package org.foreload.limit;

import java.util.List;
import org.foreload.conventions.Rising;
import org.foreload.path.Path;

/**
 * The way that the centre of gravity takes in a solution, as a line of its own: curvature runs linearly between the
 * points of the mesh. Grade, banking and widths are those of the road beside it.
 */
final class DrivenPath implements Path {

    private final Path road;
    private final double[] stations;
    private final double[] roadStations;
    private final double[] curvatures;
    private final double[] headings;
    private final List<LimitPoint> points;

    /**
     * @param points of the solution, by station
     * @param curvatures of the way at the points, 1/m
     */
    DrivenPath(Path road, List<LimitPoint> points, double[] curvatures) {
        int count = points.size();
        this.road = road;
        this.points = points;
        this.curvatures = curvatures.clone();
        this.stations = new double[count];
        this.roadStations = new double[count];
        this.headings = new double[count];
        for (int i = 0; i < count; i++) {
            LimitPoint point = points.get(i);
            roadStations[i] = point.station();
            if (i > 0) {
                LimitPoint before = points.get(i - 1);
                stations[i] = stations[i - 1] + (point.time() - before.time()) * (point.speed() + before.speed()) / 2;
                headings[i] =
                        headings[i - 1] + (stations[i] - stations[i - 1]) * (curvatures[i] + curvatures[i - 1]) / 2;
            }
        }
        double turnIn = Rising.straight(roadStations, stations, 0);
        for (int i = 0; i < count; i++) {
            stations[i] -= turnIn;
        }
    }

    private double beside(double s) {
        return Rising.straight(stations, roadStations, s);
    }

    @Override
    public double start() {
        return stations[0];
    }

    @Override
    public double end() {
        return stations[stations.length - 1];
    }

    @Override
    public double curvature(double s) {
        return Rising.straight(stations, curvatures, s);
    }

    @Override
    public double curvatureGradient(double s) {
        int i = Rising.cell(stations, s);
        return (curvatures[i + 1] - curvatures[i]) / (stations[i + 1] - stations[i]);
    }

    @Override
    public double heading(double s) {
        return Rising.straight(stations, headings, s);
    }

    @Override
    public Point position(double s) {
        double at = beside(s);
        int i = Rising.cell(roadStations, at);
        double share = (at - roadStations[i]) / (roadStations[i + 1] - roadStations[i]);
        LimitPoint a = points.get(i);
        LimitPoint b = points.get(i + 1);
        return new Point(a.x() + share * (b.x() - a.x()), a.y() + share * (b.y() - a.y()));
    }

    @Override
    public double grade(double s) {
        return road.grade(beside(s));
    }

    @Override
    public double banking(double s) {
        return road.banking(beside(s));
    }

    @Override
    public double widthLeft(double s) {
        return road.widthLeft(beside(s));
    }

    @Override
    public double widthRight(double s) {
        return road.widthRight(beside(s));
    }

    @Override
    public double[] kinks() {
        return new double[0];
    }
}
