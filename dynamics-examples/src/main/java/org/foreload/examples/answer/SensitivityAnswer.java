package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Quantity;
import org.foreload.examples.output.Report;
import org.foreload.sensitivity.Knob;
import org.foreload.sensitivity.Sensitivity;
import org.foreload.sensitivity.Sensitivity.Row;
import org.foreload.sensitivity.Sensitivity.Side;
import org.foreload.strategy.CornerStudy;

/** Sensitivities as a report, with a tornado chart for people. */
public final class SensitivityAnswer {

    /** Half the width of the chart, in characters. */
    private static final int HALF_CHART = 12;

    private SensitivityAnswer() {}

    /** The report of the sensitivities around an entry. */
    public static Report of(CornerStudy study, EntryResult best, Sensitivity sensitivity, Units units) {
        Report programs = new Report(EntryAnswer.title(study))
                .with("time_s", best.time())
                .with("complete", sensitivity.complete())
                .with(
                        "rows",
                        "What one change does",
                        sensitivity.rows().stream().map(SensitivityAnswer::row).toList());
        List<Row> world = sensitivity.rows(Knob.Kind.WORLD);
        double largest = world.stream()
                .mapToDouble(row -> Math.abs(row.timeChange()))
                .filter(change -> !Double.isNaN(change))
                .max()
                .orElse(1);
        Report people = new Report(EntryAnswer.title(study))
                .headline("Best time " + Numbers.rounded(best.time(), 3) + " s, with this plan: "
                        + Words.brake(best.plan(), units) + ".")
                .withAll(
                        "plan",
                        "What it costs to miss the plan, ms, all else kept",
                        sensitivity.rows(Knob.Kind.PLAN).stream()
                                .map(SensitivityAnswer::missed)
                                .toList())
                .withAll(
                        "rows",
                        "What a little more of each number does, with its own best release",
                        world.stream().map(row -> worth(row, largest)).toList())
                .note(
                        "Minus is quicker. Not proportional by: how far twice the effect of half the change is from the effect "
                                + "of the whole change; so much is not proportional, or lies within the accuracy of the searches.");
        if (!sensitivity.complete()) {
            people = people.headline(stopped(sensitivity));
        }
        Report explained = quickerSides(sensitivity).map(people::note).orElse(people);
        return programs.shownAs(explained.note(Handover.CAUTION));
    }

    /** What a stop has left. */
    static String stopped(Sensitivity sensitivity) {
        int changed = sensitivity.rows().size();
        return "Stopped early: "
                + (changed == 0
                        ? "no number was changed yet, and a longer search may find a better plan."
                        : changed + (changed == 1 ? " number was" : " numbers were")
                                + " changed, the others are missing.");
    }

    /** What it means that missing the plan is quicker, where one side is. */
    public static Optional<String> quickerSides(Sensitivity sensitivity) {
        boolean quicker = sensitivity.rows(Knob.Kind.PLAN).stream()
                .flatMap(row -> Stream.of(row.less(), row.more()))
                .anyMatch(SensitivityAnswer::quicker);
        return quicker
                ? Optional.of(
                        "A side that is quicker than the plan makes the corner but no longer keeps the margin: that is "
                                + "why it is not the plan.")
                : Optional.empty();
    }

    private static Report missed(Row row) {
        return new Report()
                .with("number", Quantity.of(row.parameter()).label())
                .with("by", by(row))
                .with("less_ms", change(row.less()))
                .with("more_ms", change(row.more()))
                .with("quicker", quicker(row))
                .with("fails", failures(row));
    }

    private static Report worth(Row row, double largest) {
        return new Report()
                .with("number", Quantity.of(row.parameter()).label())
                .with("more by", by(row))
                .with("slower  |  quicker", bar(row.timeChange(), largest))
                .with("time_change_ms", 1000 * row.timeChange())
                .with("not_proportional_by_ms", 1000 * row.doubt())
                .with("front margin", row.each().frontMarginChange())
                .with("rear margin", row.each().rearMarginChange());
    }

    private static String by(Row row) {
        return (Numbers.shortest(row.change()) + " " + row.unit()).strip();
    }

    private static Report row(Row row) {
        return new Report()
                .with("parameter", row.parameter())
                .with("unit", row.unit())
                .with("change", row.change())
                .with("time_change_s", row.timeChange())
                .with("front_margin_change", row.each().frontMarginChange())
                .with("rear_margin_change", row.each().rearMarginChange())
                .with("edge_margin_change_m", row.each().edgeMarginChange())
                .with("apart_s", row.doubt())
                .with("steady", row.steady())
                .with("searched_anew", row.kind() == Knob.Kind.WORLD)
                .with("less_time_change_s", row.less().timeChange())
                .with("less_outcome", outcome(row.less()))
                .with("more_time_change_s", row.more().timeChange())
                .with("more_outcome", outcome(row.more()));
    }

    private static double change(Side side) {
        return side.made() ? 1000 * side.timeChange() : Double.NaN;
    }

    /** Which side is quicker than the plan; null where neither is. */
    static String quicker(Row row) {
        List<String> quicker = new ArrayList<>();
        if (quicker(row.less())) {
            quicker.add("less");
        }
        if (quicker(row.more())) {
            quicker.add("more");
        }
        return quicker.isEmpty() ? null : String.join(", ", quicker);
    }

    private static boolean quicker(Side side) {
        return side.made() && side.timeChange() < 0;
    }

    /** Which side fails, and how; null where both make the corner. */
    private static String failures(Row row) {
        List<String> fails = new ArrayList<>();
        if (!row.less().made()) {
            fails.add("less: " + outcomeOrNone(row.less()));
        }
        if (!row.more().made()) {
            fails.add("more: " + outcomeOrNone(row.more()));
        }
        return fails.isEmpty() ? null : String.join("; ", fails);
    }

    private static String outcomeOrNone(Side side) {
        return side.outcome().map(Outcome::words).orElse("no such plan");
    }

    private static String outcome(Side side) {
        return side.outcome().map(Outcome::words).orElse(null);
    }

    /** A bar to the left for slower, to the right for quicker. */
    private static String bar(double change, double largest) {
        if (Double.isNaN(change)) {
            return " ".repeat(HALF_CHART) + "|";
        }
        int length = (int) Math.round(HALF_CHART * Math.abs(change) / largest);
        String left = change > 0 ? "#".repeat(length) : "";
        String right = change < 0 ? "#".repeat(length) : "";
        return " ".repeat(HALF_CHART - left.length()) + left + "|" + right;
    }
}
