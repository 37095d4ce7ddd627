package org.foreload.examples.answer;

import java.util.Optional;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.line.LineRun;
import org.foreload.path.Corner;
import org.foreload.path.MeasuredPath;
import org.foreload.path.Path;

/**
 * Where turn-in, from which all stations count, lies on a centre line that was measured: without it nobody could find a
 * brake point on the map.
 *
 * @param fromFirstPoint distance along the centre line from its first point, m
 * @param x in the frame of its file, m
 * @param y in the frame of its file, m
 */
public record TurnIn(double fromFirstPoint, double x, double y) {

    /** That of a corner as it was read; empty where it was drawn, and begins with turn-in. */
    public static Optional<TurnIn> of(Corner corner) {
        return corner.path() instanceof MeasuredPath measured
                ? Optional.of(of(measured, 0, measured.position(0)))
                : Optional.empty();
    }

    /** That of another line through a corner, which has a turn-in of its own. */
    public static Optional<TurnIn> of(Corner corner, LineRun run) {
        return corner.path() instanceof MeasuredPath measured
                ? Optional.of(of(measured, run.line().roadStation(0), onRoad(run)))
                : Optional.empty();
    }

    /** Lines are laid through points in the frame of their road. */
    private static Path.Point onRoad(LineRun run) {
        MeasuredPath line = run.line().line();
        Path.Point turnIn = line.position(0);
        return line.inMeasuredFrame(turnIn.x(), turnIn.y());
    }

    private static TurnIn of(MeasuredPath measured, double station, Path.Point place) {
        Path.Point inFile = measured.inMeasuredFrame(place.x(), place.y());
        return new TurnIn(station - measured.firstPoint(), inFile.x(), inFile.y());
    }

    /** A report that says so. */
    public Report on(Report report) {
        return report.said("turn_in", part(), "Turn-in lies " + words() + ".");
    }

    /** The numbers, for programs. */
    Report part() {
        return new Report()
                .with("from_first_point_m", fromFirstPoint)
                .with("x_m", x)
                .with("y_m", y);
    }

    /** The same without a number, for one corner of several that was drawn. */
    static Report unknown() {
        return new TurnIn(Double.NaN, Double.NaN, Double.NaN).part();
    }

    /** {@code 216.3 m from the first point of the centre line, at x = 216.3 m, y = 0.0 m of its file}. */
    String words() {
        return Numbers.rounded(fromFirstPoint, 1) + " m from the first point of the centre line, at x = "
                + Numbers.rounded(x, 1) + " m, y = " + Numbers.rounded(y, 1) + " m of its file";
    }
}
