package org.foreload.examples.answer;

import java.util.List;
import java.util.Optional;
import org.foreload.entry.EntryResult;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;

/** Says where an earlier brake point than the latest is quicker, and by how much. */
record QuickerEarlier(Finding latest, Optional<EntryResult> quicker) {

    /** Looks before the latest brake point of a release. */
    static QuickerEarlier of(CornerStudy study, Finding latest) {
        return new QuickerEarlier(latest, study.quicker(latest).map(Finding::entry));
    }

    /** A report for programs with {@code quickest}, null where the latest brake point is the quickest. */
    Report fields(Report report) {
        return quicker.isPresent()
                ? report.with(
                        "quickest",
                        new Report()
                                .with("brake_point_m", quicker.get().plan().brakePoint())
                                .with("time_s", quicker.get().time()))
                : report.with("quickest", (String) null);
    }

    /** A verdict, and the sentence that goes after it where an earlier brake point is quicker. */
    List<String> after(String verdict) {
        return quicker.map(entry -> List.of(verdict, sentence(entry))).orElse(List.of(verdict));
    }

    private String sentence(EntryResult entry) {
        double earlier = latest.entry().plan().brakePoint() - entry.plan().brakePoint();
        return "The latest brake point is not the quickest: braking " + Numbers.rounded(earlier, 1) + " m earlier is "
                + Numbers.rounded(latest.entry().time() - entry.time(), 3) + " s quicker.";
    }
}
