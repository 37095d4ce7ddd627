package org.foreload.examples.answer;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.foreload.entry.EntryResult;
import org.foreload.optimum.Optimum;
import org.foreload.risk.Risk;
import org.foreload.risk.RiskStudy;
import org.foreload.study.Sweep;

/**
 * Where practice leads: the best release, or where a driver fails with that too often, the quickest of the simple
 * shapes that this driver can repeat.
 *
 * @param entry the plan to reach, driven; the best release where no other is repeated either
 * @param best the best release, driven
 * @param bestRisk how often the driver fails with that
 */
public record PracticeTarget(EntryResult entry, EntryResult best, Risk bestRisk) {

    /**
     * Looks among the best release and the best of each simple shape, the quickest first.
     *
     * @param optimum with a best entry
     * @param accepted failure probability, 0 to 1
     * @return empty after a stop
     */
    public static Optional<PracticeTarget> of(RiskStudy risks, Optimum optimum, double accepted, Sweep sweep) {
        EntryResult best = optimum.entry().orElseThrow();
        List<EntryResult> others = optimum.families().stream()
                .map(Optimum.Family::entry)
                .filter(entry -> entry.made() && !entry.plan().equals(best.plan()))
                .sorted(Comparator.comparingDouble(EntryResult::time))
                .toList();
        Optional<Risk> first = Optional.empty();
        for (EntryResult entry : Stream.concat(Stream.of(best), others.stream()).toList()) {
            Optional<Risk> risk = risks.of(entry.plan(), sweep);
            if (risk.isEmpty()) {
                return Optional.empty();
            }
            first = first.or(() -> risk);
            if (risk.get().failed().value() <= accepted) {
                return Optional.of(new PracticeTarget(entry, best, first.get()));
            }
        }
        return first.map(risk -> new PracticeTarget(best, best, risk));
    }

    /** Whether the steps lead to the best release itself. */
    boolean isBest() {
        return entry.plan().equals(best.plan());
    }

    /** Why the steps do not lead to the best release. */
    String instead(double accepted) {
        return "The best release, " + Words.seconds(best.time()) + ", fails in "
                + Words.percent(bestRisk.failed().value()) + " of this driver's entries, more than the "
                + Words.percent(accepted)
                + " accepted. The steps lead to the quickest of the simple shapes within that, "
                + Words.seconds(entry.time() - best.time()) + " slower ("
                + entry.plan().release().shape().name() + " release).";
    }
}
