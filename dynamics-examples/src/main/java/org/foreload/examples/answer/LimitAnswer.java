package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.foreload.conventions.InvalidValueException;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.ideal.IdealEntry;
import org.foreload.limit.Band;
import org.foreload.limit.LimitPoint;
import org.foreload.limit.LimitResult;
import org.foreload.path.Corner;
import org.foreload.vehicle.Car;

/**
 * The limit of a car in a corner as a report.
 *
 * @param car what is driven
 * @param corner where
 * @param band where the car may go
 * @param mostSideslip bound on the sideslip at the CG, rad; infinite if none was asked for
 * @param result the limit
 * @param onLine the limit near the line; empty unless the whole road was free
 * @param straight the limit with straight-line braking, likewise
 */
public record LimitAnswer(
        Car car,
        Corner corner,
        Band band,
        double mostSideslip,
        LimitResult result,
        Optional<LimitResult> onLine,
        Optional<LimitResult> straight) {

    /** Use of the force at which a car rolls over from which on it counts as held there. */
    private static final double AT_THE_EDGE = 0.99;

    /** A limit with nothing beside it. */
    public static LimitAnswer of(Car car, Corner corner, Band band, double mostSideslip, LimitResult result) {
        return new LimitAnswer(car, corner, band, mostSideslip, result, Optional.empty(), Optional.empty());
    }

    /** The same beside the limit near the line, and that of straight-line braking on the free road. */
    public LimitAnswer beside(LimitResult nearLine, LimitResult straightLine) {
        return new LimitAnswer(
                car, corner, band, mostSideslip, result, Optional.of(nearLine), Optional.of(straightLine));
    }

    /** The limits by name, the one asked for first. */
    public Map<String, LimitResult> runs() {
        Map<String, LimitResult> runs = new LinkedHashMap<>();
        runs.put(onLine.isPresent() ? "line and release free" : "limit", result);
        onLine.ifPresent(other -> runs.put("near the line", other));
        straight.ifPresent(other -> runs.put("straight-line braking", other));
        return runs;
    }

    /** The report. */
    public Report report() {
        double idealTime = idealOnSameWay();
        Report report = new Report(car.name() + " in " + corner.name())
                .with("brake_point_m", orNone(result.brakePoint()))
                .with("release_end_m", orNone(result.releaseEnd()))
                .with("turn_in_speed_mps", result.turnInSpeed())
                .with("minimum_speed_mps", result.minimumSpeed())
                .with("minimum_speed_at_m", result.minimumSpeedAt())
                .with("top_speed_mps", result.topSpeed())
                .with("time_s", result.time())
                .with("trail_share", result.trailShare())
                .with("outcome", result.converged() ? "made it" : "no optimum found")
                .with("band_m", band instanceof Band.Within within ? within.metres() : Double.NaN)
                .with("most_sideslip_deg", Double.isFinite(mostSideslip) ? Math.toDegrees(mostSideslip) : Double.NaN)
                .with("lost_to_lags_s", result.time() - idealTime)
                .with("optimality", result.optimality())
                .with("converged", result.converged());
        if (onLine.isPresent() && straight.isPresent()) {
            report = report.with("gained_by_line_s", gain(onLine.get()))
                    .with("gained_by_release_s", gain(straight.get()));
        }
        return report.with("profile", "The run along the line", rows())
                .note(note(idealTime))
                .note(Handover.CAUTION);
    }

    /** Both must have converged, or the difference says nothing. */
    private double gain(LimitResult other) {
        return result.converged() && other.converged() ? other.time() - result.time() : Double.NaN;
    }

    private double idealOnSameWay() {
        try {
            return IdealEntry.solve(car, new Corner(corner.name(), corner.approachSpeed(), result.way()))
                    .time();
        } catch (InvalidValueException cannotBeDriven) {
            return Double.NaN;
        }
    }

    private static double orNone(OptionalDouble value) {
        return value.orElse(Double.NaN);
    }

    private List<Report> rows() {
        List<Report> rows = new ArrayList<>();
        for (LimitPoint point : result.points()) {
            rows.add(new Report()
                    .with("s_m", point.station())
                    .with("time_s", point.time())
                    .with("speed_mps", point.speed())
                    .with("deceleration_mps2", point.deceleration())
                    .with("front_utilisation", point.frontUtilisation())
                    .with("rear_utilisation", point.rearUtilisation())
                    .with("roll_over_utilisation", point.rollOverUtilisation())
                    .with("offset_m", point.offset())
                    .with("brake_mps2", point.brake())
                    .with("drive_mps2", point.drive())
                    .with("steer_deg", Math.toDegrees(point.steer()))
                    .with("sideslip_deg", Math.toDegrees(point.sideslip()))
                    .with("yaw_rate_degps", Math.toDegrees(point.yawRate()))
                    .with("front_axle_load_n", point.frontLoad())
                    .with("rear_axle_load_n", point.rearLoad())
                    .with("x_m", point.x())
                    .with("y_m", point.y()));
        }
        return rows;
    }

    private String note(double idealTime) {
        if (!result.converged()) {
            return "No optimum was found: the run is the last attempt, its residual "
                    + Numbers.shortest(result.optimality()) + ". More intervals or a narrower band may help.";
        }
        StringBuilder note = new StringBuilder("Perfect hands and feet take ")
                .append(Numbers.rounded(result.time(), 3))
                .append(" s");
        if (Double.isFinite(idealTime)) {
            note.append(", ")
                    .append(Numbers.rounded(result.time() - idealTime, 3))
                    .append(" s more than the same path would take without lags and with all the grip");
        }
        note.append('.').append(rollOver());
        if (onLine.isPresent() && straight.isPresent()) {
            note.append(worth(" The line", gain(onLine.get()), "keeping to the given one"));
            note.append(
                    worth(" Trailing the brake", gain(straight.get()), "straight-line braking, each on its best line"));
        }
        return note.toString();
    }

    /** Where the car is held from rolling over, from the first to the last such station. */
    private String rollOver() {
        List<LimitPoint> held = result.points().stream()
                .filter(point -> point.rollOverUtilisation() > AT_THE_EDGE)
                .toList();
        if (held.isEmpty()) {
            return "";
        }
        String from = Numbers.rounded(held.get(0).station(), 0);
        String to = Numbers.rounded(held.get(held.size() - 1).station(), 0);
        return (from.equals(to) ? " At " + from : " From " + from + " m to " + to)
                + " m it comes to the edge of rolling over.";
    }

    private static String worth(String what, double gain, String other) {
        return Double.isFinite(gain)
                ? what + " is worth " + Numbers.rounded(gain, 2) + " s compared with " + other + "."
                : what + ": for " + other + " no optimum was found.";
    }
}
