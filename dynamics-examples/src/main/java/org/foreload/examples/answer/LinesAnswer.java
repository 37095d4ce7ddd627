package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.line.LineRun;

/**
 * Several lines beside each other.
 *
 * @param trailed each line with the brake trailed as far as it helps
 * @param straight each line with braking before its turn-in only
 */
public record LinesAnswer(List<LineRun> trailed, List<LineRun> straight) {

    /** Copies the lists. */
    public LinesAnswer {
        trailed = List.copyOf(trailed);
        straight = List.copyOf(straight);
    }

    /** The report with the lines added. */
    public Report add(Report report) {
        List<Report> rows = new ArrayList<>();
        trailed.forEach(run -> rows.add(row(run, "trailed")));
        straight.forEach(run -> rows.add(row(run, "before turn-in")));
        return report.with("lines", "The same corner on several lines; stations are those of the road", rows)
                .note(note());
    }

    private static Report row(LineRun run, String braking) {
        return new Report()
                .with("line", run.name())
                .with("braking", braking)
                .with("time_s", run.time())
                .with("turn_in_m", run.turnIn())
                .with("brake_point_m", orNone(run.brakePoint()))
                .with("release_end_m", orNone(run.brakeOff()))
                .with("trail_share", run.trailShare())
                .with("minimum_speed_mps", run.slowest())
                .with("minimum_speed_at_m", run.slowestAt())
                .with("pick_up_m", orNone(run.pickUp()))
                .with("converged", run.converged());
    }

    private static double orNone(OptionalDouble value) {
        return value.orElse(Double.NaN);
    }

    private String note() {
        StringBuilder note = new StringBuilder();
        for (int i = 0; i < trailed.size(); i++) {
            LineRun one = trailed.get(i);
            LineRun other = straight.get(i);
            if (one.converged() && other.converged()) {
                note.append(note.isEmpty() ? "Trailing is worth " : ", ")
                        .append(Numbers.rounded(other.time() - one.time(), 2))
                        .append(" s (")
                        .append(one.name())
                        .append(")");
            }
        }
        return note.isEmpty() ? "No line was solved both ways." : note + ".";
    }
}
