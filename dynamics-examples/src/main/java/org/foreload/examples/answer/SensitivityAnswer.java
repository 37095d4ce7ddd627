package org.foreload.examples.answer;

import java.util.List;
import org.foreload.entry.EntryResult;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.sensitivity.Sensitivity;
import org.foreload.sensitivity.Sensitivity.Row;
import org.foreload.strategy.CornerStudy;

/** Sensitivities as a report, with a tornado chart for people. */
public final class SensitivityAnswer {

    /** Half the width of the chart, in characters. */
    private static final int HALF_CHART = 20;

    private SensitivityAnswer() {}

    /** The report of the sensitivities around an entry. */
    public static Report of(CornerStudy study, EntryResult best, Sensitivity sensitivity) {
        Report programs = new Report(EntryAnswer.title(study))
                .with("time_s", best.time())
                .with("complete", sensitivity.complete())
                .with(
                        "rows",
                        "What one change does",
                        sensitivity.rows().stream().map(SensitivityAnswer::row).toList());
        double largest = sensitivity.rows().stream()
                .mapToDouble(row -> Math.abs(row.timeChange()))
                .filter(change -> !Double.isNaN(change))
                .max()
                .orElse(1);
        List<Report> chart = sensitivity.rows().stream()
                .map(row -> new Report()
                        .with("parameter", row.parameter())
                        .with("more by", (Numbers.shortest(row.change()) + " " + row.unit()).strip())
                        .with("slower  |  quicker", bar(row.timeChange(), largest))
                        .with("time change ms", milliseconds(row.timeChange()))
                        .with("front margin", row.frontMarginChange())
                        .with("rear margin", row.rearMarginChange())
                        .with("steady", row.steady()))
                .toList();
        return programs.shownAs(new Report(EntryAnswer.title(study))
                .headline("Best time " + Numbers.rounded(best.time(), 3) + " s, with this plan: "
                        + Words.brake(best.plan()) + ".")
                .withAll("rows", "What a little more of each number does", chart)
                .note("Minus is quicker. Numbers of the plan are changed with all else kept; for all others the best "
                        + "release is searched for anew."));
    }

    private static Report row(Row row) {
        return new Report()
                .with("parameter", row.parameter())
                .with("unit", row.unit())
                .with("change", row.change())
                .with("time_change_s", row.timeChange())
                .with("front_margin_change", row.frontMarginChange())
                .with("rear_margin_change", row.rearMarginChange())
                .with("edge_margin_change_m", row.edgeMarginChange())
                .with("steady", row.steady());
    }

    private static String milliseconds(double seconds) {
        return Numbers.rounded(1000 * seconds, 1);
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
