package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.foreload.examples.output.Report;
import org.foreload.gap.LossToLimit;

/**
 * An entry beside perfect hands and feet.
 *
 * @param loss what it loses to them; empty if there is no such time
 * @param why there is none; empty if there is one
 */
public record AgainstLimit(Optional<LossToLimit> loss, String why) {

    /** Explains the limit, wherever it is shown. */
    static final String NOTE =
            "The limit: what perfect hands and feet take within 0.15 m of the line, with all lags of "
                    + "tyres, load and pedals and nothing in hand. It may lie below the ideal bound, which keeps to the line exactly.";

    /** Time, s, below which a part is not worth a word: sentences have hundredths. */
    private static final double WORTH_A_WORD = 0.005;

    /** What an entry loses. */
    public static AgainstLimit of(LossToLimit loss) {
        return new AgainstLimit(Optional.of(loss), "");
    }

    /** No limit, and the reason as the end of a sentence. */
    public static AgainstLimit none(String why) {
        return new AgainstLimit(Optional.empty(), why);
    }

    /** A report for programs with the numbers added; without a limit only that there is none. */
    Report on(Report report) {
        Report more = report.with("limit_converged", loss.isPresent());
        return loss.isEmpty()
                ? more
                : more.with("limit_time_s", loss.get().limitTime())
                        .with("above_limit", loss.get().share())
                        .with(
                                "lost_to_limit",
                                new Report()
                                        .with("to_turn_in_s", loss.get().toTurnIn())
                                        .with("to_apex_s", loss.get().toApex())
                                        .with("to_exit_s", loss.get().toExit()));
    }

    /** The same in one sentence. */
    public String sentence() {
        return loss.map(AgainstLimit::words)
                .orElse("What perfect hands and feet would take is not known: " + why + ".");
    }

    private static String words(LossToLimit loss) {
        List<String> losses = new ArrayList<>();
        List<String> gains = new ArrayList<>();
        sort(loss.toTurnIn(), "before turn-in", losses, gains);
        sort(loss.toApex(), "between turn-in and apex", losses, gains);
        sort(loss.toExit(), "on the exit", losses, gains);
        String whole = "Perfect hands and feet would take " + Words.seconds(loss.limitTime()) + ", "
                + Words.seconds(Math.abs(loss.total())) + (loss.total() >= 0 ? " less" : " more");
        String where = losses.isEmpty() ? "" : "; they are quicker by " + String.join(", ", losses);
        String but = gains.isEmpty() ? "" : "; slower by " + String.join(", ", gains);
        return whole + where + but + ".";
    }

    private static void sort(double part, String where, List<String> losses, List<String> gains) {
        if (Math.abs(part) >= WORTH_A_WORD) {
            (part > 0 ? losses : gains).add(Words.seconds(Math.abs(part)) + " " + where);
        }
    }
}
