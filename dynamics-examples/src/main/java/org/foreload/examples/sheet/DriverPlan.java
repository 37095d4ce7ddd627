package org.foreload.examples.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.foreload.entry.EntryResult;
import org.foreload.risk.Risk;
import org.foreload.risk.RiskStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.Exploration.Candidate;
import org.foreload.strategy.Finding;
import org.foreload.study.Sweep;

/**
 * The release of a sweep that a driver can repeat, beside the quickest of all.
 *
 * @param plan the quickest that this driver fails with no more often than accepted; if there is none, the one that this
 *     driver fails with least often
 * @param risk how often the driver fails with it
 * @param accepted whether that is no more often than accepted
 * @param quickest the quickest of all
 * @param quickestRisk how often the driver fails with that
 */
record DriverPlan(Finding plan, Risk risk, boolean accepted, Finding quickest, Risk quickestRisk) {

    /**
     * Looks among the best trade-offs of time against what is in hand, the quickest first.
     *
     * @param exploration with a best release
     * @return empty after a stop
     */
    static Optional<DriverPlan> of(RiskStudy risks, Exploration exploration, double accepted, Sweep sweep) {
        Candidate best = exploration.best().orElseThrow();
        List<Candidate> candidates = Stream.concat(
                        Stream.of(best),
                        exploration.candidates().stream()
                                .filter(one -> one.made()
                                        && one.onFront()
                                        && one.entry().braked()
                                        && one != best)
                                .sorted(Comparator.comparingDouble(
                                        one -> one.entry().time())))
                .toList();
        List<DriverPlan> tried = new ArrayList<>();
        for (Candidate candidate : candidates) {
            Optional<Risk> driven = risks.of(candidate.entry().plan(), sweep);
            if (driven.isEmpty()) {
                return Optional.empty();
            }
            Risk risk = driven.get();
            Risk quickest = tried.isEmpty() ? risk : tried.get(0).risk();
            boolean within = risk.failed().value() <= accepted;
            DriverPlan plan = new DriverPlan(found(risks, candidate), risk, within, found(risks, best), quickest);
            if (within) {
                return Optional.of(plan);
            }
            tried.add(plan);
        }
        return tried.stream()
                .min(Comparator.comparingDouble(plan -> plan.risk().failed().value()));
    }

    /** The finding of a candidate, with its profile. */
    private static Finding found(RiskStudy risks, Candidate candidate) {
        EntryResult entry = candidate.entry();
        EntryResult whole =
                entry.profile().isPresent() ? entry : risks.study().simulator().run(entry.plan());
        return new Finding(whole, true, candidate.inHand());
    }

    /** Time of the plan, s. */
    double time() {
        return plan.entry().time();
    }

    /** The same plan beside another quickest of all, if that is quicker. */
    DriverPlan orQuickest(Finding other, Risk otherRisk) {
        return other.entry().time() < quickest.entry().time()
                ? new DriverPlan(plan, risk, accepted, other, otherRisk)
                : this;
    }

    /** Another plan, with which the driver fails no more often than accepted. */
    DriverPlan instead(Finding other, Risk otherRisk) {
        return new DriverPlan(other, otherRisk, true, quickest, quickestRisk);
    }

    /** Whether the driver fails with the quickest of all no more often than accepted. */
    boolean quickestAccepted(double accepted) {
        return quickestRisk.failed().value() <= accepted;
    }

    /** Whether the plan is the quickest of all. */
    boolean isQuickest() {
        return plan.entry().plan().equals(quickest.entry().plan());
    }
}
