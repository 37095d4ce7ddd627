package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.examples.recording.MeasuredLap;
import org.foreload.examples.recording.Quantity;
import org.foreload.examples.recording.RecordedFile;
import org.foreload.recording.Estimate;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;
import org.foreload.recording.RecordedCorners;
import org.foreload.recording.Recording;

/** A measured recording as a report. */
public final class RecordingAnswer {

    private RecordingAnswer() {}

    /** What was read, and what the driver did in each corner. */
    public static Report of(RecordedFile file, List<MeasuredLap> laps) {
        List<Report> corners = new ArrayList<>();
        List<Report> places = new ArrayList<>();
        List<Report> manners = new ArrayList<>();
        for (MeasuredLap lap : laps) {
            for (RecordedCorner corner : lap.corners()) {
                corners.add(row(lap, corner).with("measures", measures(corner)));
                places.add(places(lap, corner));
                manners.add(manners(lap, corner));
            }
        }
        double rate = laps.get(0).run().rate();
        double lag = laps.get(0).run().brakeLag();
        Report report = new Report(file.name())
                .with("corners", "Corners", corners)
                .with("channels", "Channels", channels(file))
                .with("columns_ignored", "Ignored", ignored(file))
                .withCount("rows_read", file.rows())
                .with("rows_left_out", "Left out", leftOut(file))
                .with("holes", "Holes", holes(laps))
                .with("corners_cut", "Cut", cut(laps))
                .with("rate_hz", rate)
                .with("speed_delay_s", laps.get(0).run().speedDelay())
                .with("brake_lag_s", lag);
        Report people = new Report(file.name())
                .withCount("rows_read", file.rows())
                .with("rate_hz", rate)
                .with("channels", "Channels", channels(file))
                .withAll("columns_ignored", "Columns that are not used", ignored(file))
                .with("rows_left_out", "Lines, or cells in them, that could not be used", gathered(file))
                .with(
                        "holes",
                        "Holes: what lies in one, or next to it, is not given, or only to its length",
                        holes(laps))
                .withAll("places", "Where: turn-in along the lap, all else from turn-in", places)
                .withAll("manners", "How", manners);
        people = corners.isEmpty()
                ? people.note("No corner was found: nowhere does the course bend clearly and turn by 15 degrees.")
                : people.note("± is half the interval that holds the true number nine times in ten.");
        List<String> cut = laps.stream()
                .flatMap(lap -> ReadWords.cut(file, lap).stream())
                .limit(ReadWords.MOST)
                .toList();
        for (String sentence : cut) {
            people = people.note(sentence);
        }
        if (lacks(file, Quantity.SPEED)) {
            people = people.note(
                    "No speed was recognised: it is worked out from distance or position, over time. " + NAMES_IT);
        }
        if (lacks(file, Quantity.BRAKE)) {
            people = people.note("No brake was recognised: its places are read from the deceleration. " + NAMES_IT);
        }
        double delay = laps.get(0).run().speedDelay();
        if (delay != 0) {
            people = people.note("The speed was " + Numbers.rounded(Math.abs(delay), 2) + " s "
                    + (delay > 0 ? "behind" : "ahead of") + " the accelerations; it was moved.");
        }
        if (lag < -KNOWN_TO || lag > LONGEST_LAG) {
            people = people.note("The deceleration comes " + Numbers.rounded(Math.abs(lag), 2) + " s "
                    + (lag < 0 ? "before" : "after") + " the brake. A car takes 0 to " + Numbers.shortest(LONGEST_LAG)
                    + " s: one of the two channels is delayed, and where the brake comes on and off is wrong by what it "
                    + "travels meanwhile.");
        }
        return report.shownAs(people.note(CAUTION));
    }

    /** Time, s, in which a car's brakes and tyres follow the pedal at most; common practice, no source. */
    private static final double LONGEST_LAG = 0.25;

    /** Time, s, to which a lag is known where nothing is delayed: by which channels of one logger may differ. */
    private static final double KNOWN_TO = 0.02;

    private static final String CAUTION = "It says what was done, not what to do: a closed track, local rules and "
            + "a qualified instructor come first.";

    private static Report row(MeasuredLap lap, RecordedCorner corner) {
        return new Report()
                .withCount("number", corner.bend().number())
                .withCount("lap", lap.number())
                .with("turn", corner.bend().left() ? "left" : "right");
    }

    /** Every measure with both ends of its interval, under the names that programs read. */
    static Report measures(RecordedCorner corner) {
        Report report = new Report();
        for (Measure measure : Measure.values()) {
            Estimate estimate = corner.get(measure);
            report = report.with(measure.field(), estimate.value())
                    .with(measure.field() + "_low", estimate.low())
                    .with(measure.field() + "_high", estimate.high());
        }
        return report.with("shape", corner.shape().map(shape -> shape.name()).orElse(null));
    }

    /** Lap and corner in one cell, so that each part of a wide table has both. */
    private static Report named(MeasuredLap lap, RecordedCorner corner) {
        String turn = corner.bend().left() ? " left" : " right";
        return new Report()
                .with("lap, corner", lap.number() + ", " + corner.bend().number() + turn);
    }

    private static Report places(MeasuredLap lap, RecordedCorner corner) {
        Report report = named(lap, corner).with("turn_in_along_lap_m", spread(corner.get(Measure.TURN_IN), 1));
        return report.with("brake_on_m", spread(corner.fromTurnIn(Measure.BRAKE_ON), 1))
                .with("first_ease_m", spread(corner.fromTurnIn(Measure.FIRST_EASE), 1))
                .with("release_end_m", spread(corner.fromTurnIn(Measure.RELEASE_END), 1))
                .with("apex_m", spread(corner.fromTurnIn(Measure.APEX), 1))
                .with("slowest_m", spread(corner.fromTurnIn(Measure.SLOWEST), 1))
                .with("pick_up_m", spread(corner.fromTurnIn(Measure.PICK_UP), 1));
    }

    private static Report manners(MeasuredLap lap, RecordedCorner corner) {
        return named(lap, corner)
                .with("turn_in_speed_mps", spread(corner.get(Measure.TURN_IN_SPEED), 1))
                .with("minimum_speed_mps", spread(corner.get(Measure.MINIMUM_SPEED), 1))
                .with("peak_deceleration_mps2", spread(corner.get(Measure.PEAK_DECELERATION), 1))
                .with("trail_share", spread(corner.get(Measure.TRAIL_SHARE), 2))
                .with("shape", corner.shape().map(shape -> shape.name()).orElse(null))
                .with("shape_error", spread(corner.get(Measure.SHAPE_ERROR), 2))
                .with("pressed_again", times(corner.get(Measure.REAPPLICATIONS)))
                .with("combined_use", spread(corner.get(Measure.COMBINED_USE), 2));
    }

    private static String times(Estimate estimate) {
        return estimate.known() ? String.valueOf(Math.round(estimate.value())) : null;
    }

    /** {@code -113.2 ± 0.6}. */
    static String spread(Estimate estimate, int decimals) {
        if (!estimate.known()) {
            return null;
        }
        double half = (estimate.high() - estimate.low()) / 2;
        return Numbers.rounded(estimate.value(), decimals) + " ± " + Numbers.rounded(half, decimals);
    }

    private static final String NAMES_IT = "--columns names the column that holds it.";

    private static boolean lacks(RecordedFile file, Quantity quantity) {
        return file.channels().stream().noneMatch(found -> found.name().equals(quantity.word()));
    }

    static List<Report> channels(RecordedFile file) {
        return file.channels().stream()
                .map(channel -> new Report()
                        .with("name", channel.name())
                        .with("column", channel.column())
                        .with("unit", channel.unit())
                        .with("guessed", channel.guessed())
                        .withCount("missing_values", channel.missing())
                        .withCount("unreadable_values", channel.unreadable()))
                .toList();
    }

    static List<Report> ignored(RecordedFile file) {
        return file.ignored().stream()
                .map(one -> new Report()
                        .with("name", one.name())
                        .with("column", one.column())
                        .with("reason", one.reason()))
                .toList();
    }

    private static List<Report> holes(List<MeasuredLap> laps) {
        return laps.stream()
                .flatMap(lap -> lap.run().holes().stream()
                        .map(hole -> new Report()
                                .withCount("lap", lap.number())
                                .with("from_m", hole.from())
                                .with("to_m", hole.to())
                                .with("lasts_s", hole.lasts())
                                .with("missing", missing(hole))))
                .toList();
    }

    /** Corners that a lap begins or ends in: they are not among those measured. */
    static List<Report> cut(List<MeasuredLap> laps) {
        return laps.stream()
                .flatMap(lap -> RecordedCorners.cut(lap.run()).stream()
                        .map(bend -> new Report()
                                .withCount("lap", lap.number())
                                .with("border", ReadWords.atStart(lap, bend) ? "start" : "end")
                                .with("from_m", bend.start())
                                .with("to_m", bend.end())))
                .toList();
    }

    /** {@code brake, yaw-rate}; {@code whole rows} where nothing is there. */
    static String missing(Recording.Hole hole) {
        return hole.whole()
                ? "whole rows"
                : hole.channels().stream()
                        .map(channel -> Quantity.of(channel).word())
                        .collect(Collectors.joining(", "));
    }

    /** Ranges of whole lines with one reason, from which on one row with their count says more than each. */
    private static final int MANY = 5;

    /** The same for people: a reason that recurs all over the file stands once. */
    private static List<Report> gathered(RecordedFile file) {
        Map<String, List<RecordedFile.Unused>> byReason = file.leftOut().stream()
                .filter(lines -> lines.column().isEmpty())
                .collect(Collectors.groupingBy(RecordedFile.Unused::reason, LinkedHashMap::new, Collectors.toList()));
        byReason.values().removeIf(ranges -> ranges.size() < MANY);
        List<Report> rows = new ArrayList<>();
        byReason.forEach((reason, ranges) -> rows.add(new Report()
                .withCount("first_line", ranges.get(0).firstLine())
                .withCount("last_line", ranges.get(ranges.size() - 1).lastLine())
                .with(
                        "reason",
                        reason + ": "
                                + ranges.stream()
                                        .mapToLong(one -> one.lastLine() - one.firstLine() + 1)
                                        .sum()
                                + " of these lines")
                .with("column", (String) null)
                .with("text", (String) null)));
        file.leftOut().stream()
                .filter(lines -> !lines.column().isEmpty() || !byReason.containsKey(lines.reason()))
                .forEach(lines -> rows.add(row(lines)));
        return rows;
    }

    static List<Report> leftOut(RecordedFile file) {
        return file.leftOut().stream().map(RecordingAnswer::row).toList();
    }

    private static Report row(RecordedFile.Unused lines) {
        return new Report()
                .withCount("first_line", lines.firstLine())
                .withCount("last_line", lines.lastLine())
                .with("reason", lines.reason())
                .with("column", lines.column().isEmpty() ? null : lines.column())
                .with("text", lines.text().isEmpty() ? null : lines.text());
    }
}
