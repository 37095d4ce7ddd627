package org.foreload.strategy;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.foreload.entry.EntryResult;

/**
 * What a sweep found: a {@link ReleaseSweep}, or one whose best were {@linkplain org.foreload.optimum.ShapeRanking
 * refined}.
 *
 * @param candidates one per release tried, in the order of the sweep; their entries come without profile
 * @param best the quickest that makes the corner, with its profile: straight-line braking where no release is quicker;
 *     empty if none does
 * @param baseline the quickest straight-line braking, with its profile, or the best itself where nobody brakes; empty
 *     if none makes the corner, or if an interrupt left some of it untried
 * @param boundTime time of the ideal quasi-steady entry between the same markers, s
 * @param planned number of releases in the sweep, and of those that refine it or that it is compared with and that a
 *     stop left out; more than there are candidates after a stop
 */
public record Exploration(
        List<Candidate> candidates,
        Optional<Candidate> best,
        Optional<Candidate> baseline,
        double boundTime,
        int planned) {

    /** Copies the candidates. */
    public Exploration {
        Objects.requireNonNull(best, "best");
        Objects.requireNonNull(baseline, "baseline");
        candidates = List.copyOf(Objects.requireNonNull(candidates, "candidates"));
    }

    /** Whether everything was tried; false after a stop or an interrupt that left something out. */
    public boolean complete() {
        return candidates.size() == planned;
    }

    /**
     * Time that the best release gains on straight-line braking, s: zero where it is that, or where nobody brakes; NaN
     * where either is missing.
     */
    public double gain() {
        return best.isPresent() && baseline.isPresent()
                ? baseline.get().entry().time() - best.get().entry().time()
                : Double.NaN;
    }

    /**
     * The quickest of each shape, in that order, among the candidates that make the corner, and of those in which
     * nobody brakes, whatever their shape, the quickest.
     */
    public static List<Candidate> bestOfEachShape(List<Candidate> candidates) {
        Objects.requireNonNull(candidates, "candidates");
        Map<String, Candidate> best = new LinkedHashMap<>();
        candidates.stream()
                .filter(Candidate::made)
                .sorted(Comparator.comparingDouble(one -> one.entry().time()))
                .forEach(one -> best.putIfAbsent(one.shape().orElse(""), one));
        return List.copyOf(best.values());
    }

    /**
     * One release of the sweep.
     *
     * @param entry the entry from its latest brake point, or the attempt that came closest
     * @param made whether it makes the corner with the margin asked for
     * @param inHand what the plan has {@link InHand in hand}, m; NaN where it was not asked, as it is for plans that
     *     are slower and have no more in hand than another
     * @param onFront whether no other candidate is both quicker and has more in hand: the trade-off between time and
     *     margin
     */
    public record Candidate(EntryResult entry, boolean made, double inHand, boolean onFront) {

        /** Refuses null. */
        public Candidate {
            Objects.requireNonNull(entry, "entry");
        }

        /** Name of the shape of its release; empty where nobody brakes. */
        public Optional<String> shape() {
            return entry.braked() ? Optional.of(entry.plan().release().shape().name()) : Optional.empty();
        }

        static Candidate of(Finding finding) {
            return new Candidate(finding.entry(), finding.found(), finding.inHand(), false);
        }

        static Candidate of(Trial trial) {
            return new Candidate(trial.entry(), trial.met(), Double.NaN, false);
        }

        Candidate withoutProfile() {
            return new Candidate(entry.withoutProfile(), made, inHand, onFront);
        }
    }
}
