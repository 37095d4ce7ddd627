package org.foreload.line;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.foreload.conventions.Rising;
import org.foreload.limit.LimitPoint;
import org.foreload.limit.LimitResult;
import org.foreload.path.Corner;

/**
 * Perfect hands and feet on one line. All stations are those of the road, so that lines can be compared: each starts
 * and ends at the same two places across it.
 *
 * @param name what the line is
 * @param line where it lies on the road
 * @param corner the line as a corner of its own, with its own stations
 * @param result the limit; its stations are those of the corner it was solved in
 * @param roadStations of the result's points, m
 * @param turnIn station of the road, m, at which the line begins to turn into the bend
 */
public record LineRun(
        String name, RoadLine line, Corner corner, LimitResult result, List<Double> roadStations, double turnIn) {

    /** Copies the list. */
    public LineRun {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(line, "line");
        Objects.requireNonNull(corner, "corner");
        Objects.requireNonNull(result, "result");
        roadStations = List.copyOf(Objects.requireNonNull(roadStations, "roadStations"));
    }

    /** Time from the start to the end of the road, s. */
    public double time() {
        return result.time();
    }

    /** Whether the conditions of an optimum hold. */
    public boolean converged() {
        return result.converged();
    }

    /** Station of the road, m, at which the foot begins to brake; empty if it never does. */
    public OptionalDouble brakePoint() {
        return onRoad(result.brakePoint());
    }

    /** Station of the road, m, at which the brake is off; empty if there is none. */
    public OptionalDouble brakeOff() {
        return onRoad(result.releaseEnd());
    }

    /** Station of the road, m, at which the throttle is first asked for after the brake; empty without one. */
    public OptionalDouble pickUp() {
        return onRoad(result.pickUp());
    }

    /** Station of the road, m, at which the car is slowest once it has braked. */
    public double slowestAt() {
        return road(result.minimumSpeedAt());
    }

    /** Lowest speed once the brake has come on, m/s. */
    public double slowest() {
        return result.minimumSpeed();
    }

    /** Speed shed after the line's turn-in over all speed shed; NaN if none is. */
    public double trailShare() {
        double shed = result.topSpeed() - slowest();
        double[] speeds =
                result.points().stream().mapToDouble(LimitPoint::speed).toArray();
        double[] stations = roadStations.stream().mapToDouble(s -> s).toArray();
        double atTurnIn = Rising.straight(stations, speeds, turnIn);
        double after = slowestAt() <= turnIn ? 0 : Math.min(shed, atTurnIn - slowest());
        return shed > 0 ? after / shed : Double.NaN;
    }

    private OptionalDouble onRoad(OptionalDouble station) {
        return station.isPresent() ? OptionalDouble.of(road(station.getAsDouble())) : station;
    }

    private double road(double station) {
        double[] own = result.points().stream().mapToDouble(LimitPoint::station).toArray();
        double[] stations = roadStations.stream().mapToDouble(s -> s).toArray();
        return Rising.straight(own, stations, station);
    }
}
