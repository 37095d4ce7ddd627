package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.List;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntryResult.Margins;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;

/** Why a verb that drives one release has none to drive: what its closest attempt lacks, and which options ask less. */
public final class NoBrakePoint {

    private NoBrakePoint() {}

    /** In one line: what the closest attempt came to, as {@code entry} has it, and what to change. */
    public static String why(CornerStudy study, Finding finding) {
        EntryResult entry = finding.entry();
        String attempt = entry.made()
                ? "made it" + EntryAnswer.missing(study, entry)
                : entry.outcome().words() + " (" + entry.cause() + ")";
        String less = entry.made() ? "ask for less with " + String.join(", ", lacking(study.allowance(), entry)) : "";
        return "no brake point makes the corner with this release and this margin; the closest attempt " + attempt
                + "; "
                + (less.isEmpty() ? "" : less + ", or ")
                + "try another --peak-deceleration or --release-end, or give a --brake-point";
    }

    /** The options of the margins that an entry lacks which made the corner. */
    private static List<String> lacking(Allowance allowance, EntryResult entry) {
        List<String> options = new ArrayList<>();
        Margins margins = entry.margins();
        if (entry.farthestOffset() > allowance.drift()) {
            options.add("--drift");
        }
        if (margins.edge() < allowance.edge()) {
            options.add("--edge-margin");
        }
        if (margins.front() < allowance.front()) {
            options.add("--front-margin");
        }
        if (margins.rear() < allowance.rear()) {
            options.add("--rear-margin");
        }
        return options.isEmpty() ? List.of("--in-hand") : options;
    }
}
