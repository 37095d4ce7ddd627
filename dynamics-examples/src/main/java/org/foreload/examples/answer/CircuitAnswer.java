package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.foreload.entry.EntryResult;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.lap.Circuit;
import org.foreload.lap.Lap;
import org.foreload.lap.Lap.CornerGain;
import org.foreload.vehicle.Car;

/** A lap as a report. */
public final class CircuitAnswer {

    private CircuitAnswer() {}

    /** The report of a lap. */
    public static Report of(Car car, Circuit circuit, Lap lap) {
        Report programs = new Report(car.name() + " on " + circuit.name())
                .with("lap_gain_s", lap.gain())
                .withCount("corners_counted", counted(lap))
                .with("complete", lap.complete())
                .with("corners_not_counted", String.join(", ", uncounted(lap)))
                .with("corners", "Corner by corner", rows(lap, lap.corners(), placed(circuit)));
        Report people = new Report(car.name() + " on " + circuit.name())
                .headline(gain(lap))
                .with("lap_gain_s", lap.gain())
                .withAll("corners", "Most to be gained first", rows(lap, lap.ranked(), Map.of()))
                .note(Words.TRAIL_SHARE);
        if (!lap.uncounted().isEmpty()) {
            people = people.headline("Not counted, because no release or no straight-line braking was found that makes "
                    + "them: " + String.join(", ", uncounted(lap)) + ".");
        }
        List<CornerGain> unbraked = lap.corners().stream()
                .filter(corner -> corner.best().isPresent() && !braked(corner))
                .toList();
        if (!unbraked.isEmpty()) {
            people = people.headline(
                    "No brake is needed in " + String.join(", ", names(lap, unbraked))
                            + ": how it is released gains nothing there; a gain there is speed that the corner before hands on.");
        }
        if (!lap.complete()) {
            people = people.headline("Stopped early: " + lap.corners().size() + " of "
                    + circuit.corners().size()
                    + " corners were looked at, and in the last of these a longer search may find more.");
        }
        for (var place : placed(circuit).entrySet()) {
            people = people.note("Turn-in of corner " + place.getKey() + " lies "
                    + place.getValue().words() + ".");
        }
        return programs.shownAs(people.note(Handover.CAUTION));
    }

    /** Where turn-in lies in the corners that were measured, by their number. */
    private static Map<Integer, TurnIn> placed(Circuit circuit) {
        Map<Integer, TurnIn> placed = new TreeMap<>();
        for (int i = 0; i < circuit.corners().size(); i++) {
            int number = i + 1;
            TurnIn.of(circuit.corners().get(i)).ifPresent(place -> placed.put(number, place));
        }
        return placed;
    }

    /** What the lap gains; where corners are missing it says so, and where all are, that nothing is known. */
    public static String gain(Lap lap) {
        long counted = counted(lap);
        if (counted == 0) {
            return "No gain is known: in no corner were both a best release and straight-line braking found.";
        }
        String gain = Numbers.rounded(lap.gain(), 2) + " s";
        return lap.complete() && lap.uncounted().isEmpty()
                ? "The best releases are " + gain + " a lap quicker than straight-line braking."
                : "In " + (counted == 1 ? "one corner" : counted + " corners") + " the best releases are " + gain
                        + " quicker than straight-line braking; for the whole lap no sum is known.";
    }

    private static long counted(Lap lap) {
        return lap.corners().size() - lap.uncounted().size();
    }

    private static List<String> uncounted(Lap lap) {
        return names(lap, lap.uncounted());
    }

    private static boolean braked(CornerGain corner) {
        return corner.best().map(EntryResult::braked).orElse(false);
    }

    private static List<String> names(Lap lap, List<CornerGain> corners) {
        return corners.stream()
                .map(corner -> (lap.corners().indexOf(corner) + 1) + " (" + corner.name() + ")")
                .toList();
    }

    private static List<Report> rows(Lap lap, List<CornerGain> corners, Map<Integer, TurnIn> placed) {
        List<Report> rows = new ArrayList<>();
        for (CornerGain corner : corners) {
            int number = lap.corners().indexOf(corner) + 1;
            Report row = row(corner, number);
            rows.add(placed.isEmpty() ? row : row.with("turn_in", part(placed.get(number))));
        }
        return rows;
    }

    private static Report part(TurnIn place) {
        return place == null ? TurnIn.unknown() : place.part();
    }

    private static Report row(CornerGain corner, int number) {
        return new Report()
                .with("corner", String.valueOf(number))
                .with("name", corner.name())
                .with("gain_s", corner.gain())
                .with("trail_share", value(corner, EntryResult::trailShare))
                .with(
                        "brake_point_m",
                        value(corner, best -> best.braked() ? best.plan().brakePoint() : Double.NaN))
                .with("turn_in_speed_mps", value(corner, EntryResult::turnInSpeed))
                .with("minimum_speed_mps", value(corner, EntryResult::minimumSpeed))
                .with("approach_speed_mps", corner.approachSpeed())
                .with("time_s", value(corner, EntryResult::time))
                .with(
                        "baseline_time_s",
                        corner.baseline().map(EntryResult::time).orElse(Double.NaN));
    }

    private static double value(CornerGain corner, java.util.function.ToDoubleFunction<EntryResult> read) {
        return corner.best().map(read::applyAsDouble).orElse(Double.NaN);
    }
}
