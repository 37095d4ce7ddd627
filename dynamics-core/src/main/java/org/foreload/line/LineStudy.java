package org.foreload.line;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.foreload.collocation.Progress;
import org.foreload.conventions.InvalidValueException;
import org.foreload.limit.Band;
import org.foreload.limit.Hands;
import org.foreload.limit.Limit;
import org.foreload.limit.LimitOptions;
import org.foreload.limit.LimitPoint;
import org.foreload.limit.LimitResult;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.vehicle.Car;

/**
 * The same car and corner on several lines, each driven by the same perfect hands and feet.
 *
 * @param car what is driven
 * @param corner the road and its own line
 * @param hands what hands and feet can do; one that may brake up to a station may do so up to the turn-in of each line
 * @param options settings of the solutions
 * @param watcher is told of each step of each solution
 */
public record LineStudy(Car car, Corner corner, Hands hands, LimitOptions options, Progress watcher) {

    /**
     * Rounds in which a foot that brakes before turn-in only is held to the turn-in of the line that was found for it:
     * after the second it moves by less than the road is looked at.
     */
    private static final int ROUNDS = 2;

    /** How far from a line, m, perfect hands may go. */
    private static final double BAND = 0.15;

    /** Half of the car's width, as the widths between its wheels say it, m. */
    private double halfCar() {
        return Math.max(car.chassis().frontTrack(), car.chassis().rearTrack()) / 2;
    }

    /** On the road's own line. */
    public LineRun given() {
        LimitResult result = Limit.solve(car, corner, Band.within(BAND), hands, options, watcher);
        return onRoad("given", result, 0);
    }

    /** On the line of constant radius; see {@link RoadLines#constantRadius}. */
    public LineRun constantRadius() {
        return along("constant radius", RoadLines.constantRadius(corner.path(), halfCar()));
    }

    /** On the line with a late apex; see {@link RoadLines#lateApex}. */
    public LineRun lateApex() {
        return along("late apex", RoadLines.lateApex(corner.path(), halfCar()));
    }

    /** On any line of the road. */
    public LineRun along(String name, RoadLine line) {
        Corner own = new Corner(corner.name() + ", " + name, corner.approachSpeed(), line.line());
        LimitResult result = Limit.solve(car, own, Band.within(BAND), hands, options, watcher);
        List<Double> stations = result.points().stream()
                .map(point -> line.roadStation(point.station()))
                .toList();
        return new LineRun(name, line, own, result, stations, line.roadStation(0));
    }

    /**
     * On the quickest line that is found: the whole road is free, and the search begins on the road's own line, on that
     * of constant radius and on that with a late apex. If none of them ends at an optimum, the first is returned as it
     * is. A foot that brakes up to a station only is held to it from the turn-in of the line that is found.
     */
    public LineRun optimal() {
        Path road = corner.path();
        List<Supplier<LimitResult>> searches = new ArrayList<>();
        searches.add(() -> Limit.solve(car, corner, Band.road(), hands, options, watcher));
        searches.add(() -> from(RoadLines.constantRadius(road, halfCar())));
        searches.add(() -> from(RoadLines.lateApex(road, halfCar())));
        LimitResult best = null;
        for (Supplier<LimitResult> search : searches) {
            LimitResult found;
            try {
                found = search.get();
            } catch (InvalidValueException noSuchLine) {
                if (best == null) {
                    throw noSuchLine;
                }
                continue;
            }
            boolean better = best == null || found.converged() && (!best.converged() || found.time() < best.time());
            best = better ? found : best;
        }
        LineRun run = onRoad("optimal", best, Double.NaN);
        for (int round = 0; round < ROUNDS && Double.isFinite(hands.brakeUntil()) && run.converged(); round++) {
            RoadLine line = run.line();
            Hands held = hands.withBrakeUntil(line.roadStation(hands.brakeUntil()));
            LimitResult again = Limit.solve(car, corner, Band.road(), held, options, line, watcher);
            run = onRoad("optimal", again, Double.NaN);
        }
        return run;
    }

    private LimitResult from(RoadLine line) {
        return Limit.solve(car, corner, Band.road(), hands, options, line, watcher);
    }

    /** A run whose stations are those of the road. */
    private LineRun onRoad(String name, LimitResult result, double turnIn) {
        RoadLine line = RoadLine.driven(corner.path(), result);
        List<Double> stations =
                result.points().stream().map(LimitPoint::station).toList();
        double turns = Double.isNaN(turnIn) ? line.roadStation(0) : turnIn;
        return new LineRun(
                name,
                line,
                new Corner(corner.name() + ", " + name, corner.approachSpeed(), line.line()),
                result,
                stations,
                turns);
    }
}
