package org.foreload.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
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
import org.foreload.vehicle.Car;

/**
 * The same car and corner on several lines, each driven by the same perfect hands and feet.
 *
 * @param car what is driven
 * @param corner the road and its own line
 * @param hands what hands and feet can do; one that may brake up to a station may do so up to the turn-in of each line
 * @param options settings of the solutions
 * @param watcher follows each step of each solution; what it throws ends the study, and so does an interrupt of the
 *     thread that calls, by a {@link java.util.concurrent.CancellationException}
 */
public record LineStudy(Car car, Corner corner, Hands hands, LimitOptions options, Progress watcher) {

    /** Refuses null. */
    public LineStudy {
        Objects.requireNonNull(car, "car");
        Objects.requireNonNull(corner, "corner");
        Objects.requireNonNull(hands, "hands");
        Objects.requireNonNull(options, "options");
        Objects.requireNonNull(watcher, "watcher");
    }

    /**
     * Rounds in which a foot that brakes before turn-in only is held to the turn-in of the line that was found for it:
     * after the second it moves by less than the road is looked at.
     */
    private static final int ROUNDS = 2;

    /** Distance, m, by which a turn-in may still move that stays: what the brake's lag takes at these speeds. */
    private static final double STAYS = 2;

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
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(line, "line");
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
    public LineRun quickest() {
        List<Supplier<LineRun>> searches = new ArrayList<>();
        searches.add(() -> settled(Limit.solve(car, corner, Band.road(), hands, options, watcher)));
        searches.add(() -> from(RoadLines.constantRadius(corner.path(), halfCar())));
        searches.add(() -> from(RoadLines.lateApex(corner.path(), halfCar())));
        LineRun best = null;
        for (Supplier<LineRun> search : searches) {
            LineRun found;
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
        return best;
    }

    private LineRun from(RoadLine line) {
        return settled(held(line));
    }

    /** From a line on which the search begins, and to whose turn-in the foot is held. */
    private LimitResult held(RoadLine line) {
        Hands own = Double.isFinite(hands.brakeUntil())
                ? hands.withBrakeUntil(line.roadStation(hands.brakeUntil()))
                : hands;
        return Limit.solve(car, corner, Band.road(), own, options, line, watcher);
    }

    /**
     * The run on the line that was found; a foot that may brake up to a station is held to the turn-in of that line,
     * until the turn-in stays where it is.
     */
    private LineRun settled(LimitResult result) {
        LineRun run = onRoad("quickest", result, Double.NaN);
        double before = Double.NaN;
        for (int round = 0; round < ROUNDS && Double.isFinite(hands.brakeUntil()) && run.converged(); round++) {
            if (Math.abs(run.turnIn() - before) < STAYS) {
                break;
            }
            before = run.turnIn();
            run = onRoad("quickest", held(run.line()), Double.NaN);
        }
        return run;
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
