package org.foreload.examples.answer;

import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.examples.output.Report;
import org.foreload.strategy.BrakePointSearch.Missed;
import org.foreload.strategy.CornerStudy;

/** Says where a plan's margin comes and goes with the brake point. */
final class MissedBefore {

    private MissedBefore() {}

    /** A report for programs with {@code missed_before}, null where the margin does not come and go. */
    static Report fields(Report report, CornerStudy study, BrakePlan plan) {
        Optional<Missed> missed = study.search().missedBefore(plan);
        return missed.isPresent()
                ? report.with(
                        "missed_before",
                        new Report()
                                .with("from_m", missed.get().from())
                                .with("to_m", missed.get().to()))
                : report.with("missed_before", (String) null);
    }

    /** A report for people with a headline where the margin comes and goes. */
    static Report on(Report report, CornerStudy study, BrakePlan plan) {
        return study.search()
                .missedBefore(plan)
                .map(missed -> report.headline("Braking earlier is not always safer: from "
                        + Words.place(missed.from()) + " to " + Words.place(missed.to())
                        + " the margin is missed, and before that it is kept again."))
                .orElse(report);
    }
}
