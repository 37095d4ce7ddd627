package org.foreload.examples.answer;

import java.util.Optional;
import org.foreload.entry.EntryResult;
import org.foreload.examples.output.Report;
import org.foreload.strategy.BrakePointSearch.Missed;
import org.foreload.strategy.CornerStudy;

/** Says where a plan's margin comes and goes with the brake point. */
record MissedBefore(Optional<Missed> missed) {

    /**
     * Looks before the brake point of an entry.
     *
     * @param kept whether the entry keeps its margin; otherwise there is nothing to say
     */
    static MissedBefore of(CornerStudy study, EntryResult entry, boolean kept) {
        return new MissedBefore(kept && entry.braked() ? study.search().missedBefore(entry.plan()) : Optional.empty());
    }

    /** A report for programs with {@code missed_before}, null where the margin does not come and go. */
    Report fields(Report report) {
        return missed.isPresent()
                ? report.with(
                        "missed_before",
                        new Report()
                                .with("from_m", missed.get().from())
                                .with("to_m", missed.get().to()))
                : report.with("missed_before", (String) null);
    }

    /** A report for people with a headline where the margin comes and goes. */
    Report on(Report report) {
        return missed.map(stretch -> report.headline("Braking earlier is not always safer: from "
                        + Words.place(stretch.from()) + " to " + Words.place(stretch.to())
                        + " the margin is missed, and before that it is kept again."))
                .orElse(report);
    }
}
