package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryResult;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.Exploration.Candidate;

/**
 * Examples from a sweep of what happens away from the best release: trailed too short, too long, braked too hard. Each
 * is the release that differs most from the best in that one way; where the sweep has none that is slower or fails,
 * there is no example.
 */
final class Examples {

    /** Lengths and decelerations closer than this are the same. */
    private static final double SAME = 1e-9;

    /** Differences smaller than this, m and m/s, are not worth a word. */
    private static final double WORTH_TELLING = 0.5;

    private final CornerStudy study;
    private final Exploration sweep;
    private final Candidate best;

    /** Examples from a sweep with a best release. */
    Examples(CornerStudy study, Exploration sweep) {
        this.study = study;
        this.sweep = sweep;
        this.best = sweep.best().orElseThrow();
    }

    List<Report> rows() {
        List<Report> rows = new ArrayList<>();
        Comparator<Candidate> byEnd = Comparator.comparingDouble(
                candidate -> candidate.entry().plan().release().end());
        Comparator<Candidate> byPeak =
                Comparator.comparingDouble(candidate -> candidate.entry().plan().peakDeceleration());
        add(rows, "too short", find(one -> end(one) < end(best) - SAME && peak(one) == peak(best), byEnd.reversed()));
        add(rows, "too long", find(one -> end(one) > end(best) + SAME && peak(one) == peak(best), byEnd));
        add(rows, "too hard", tooHard(byPeak));
        return rows;
    }

    /** Harder with the same release; else the hardest and longest that fails, with any release. */
    private Optional<Candidate> tooHard(Comparator<Candidate> byPeak) {
        Comparator<Candidate> byLength = Comparator.comparingDouble(Examples::end);
        return find(one -> peak(one) > peak(best) + SAME && Math.abs(end(one) - end(best)) < SAME, byPeak)
                .or(() -> sweep.candidates().stream()
                        .filter(one -> !one.made() && peak(one) >= peak(best))
                        .max(byPeak.thenComparing(byLength)));
    }

    /** Of the best one's shape and start, those that are slower or fail. */
    private Optional<Candidate> find(Predicate<Candidate> which, Comparator<Candidate> most) {
        return sweep.candidates().stream()
                .filter(one -> one.entry().plan().release().shape()
                        == best.entry().plan().release().shape())
                .filter(one -> Math.abs(start(one) - start(best)) < SAME)
                .filter(which)
                .filter(one -> !one.made() || one.entry().time() > best.entry().time())
                .max(most);
    }

    private static double start(Candidate candidate) {
        return candidate.entry().plan().release().start();
    }

    private static double end(Candidate candidate) {
        return candidate.entry().plan().release().end();
    }

    private static double peak(Candidate candidate) {
        return candidate.entry().plan().peakDeceleration();
    }

    private void add(List<Report> rows, String what, Optional<Candidate> example) {
        example.ifPresent(candidate -> {
            EntryResult entry = candidate.entry();
            BrakePlan plan = entry.plan();
            rows.add(new Report()
                    .with("example", what)
                    .with("shape", plan.release().shape().name())
                    .with("peak_mps2", plan.peakDeceleration())
                    .with("brake_m", plan.brakePoint())
                    .with("off_m", plan.release().end())
                    .with("lost_s", entry.time() - best.entry().time())
                    .with("outcome", entry.outcome().words())
                    .with("why", candidate.made() ? difference(entry, best.entry()) : why(entry)));
        });
    }

    private String why(EntryResult entry) {
        return entry.made() ? "made it" + EntryAnswer.missing(study.allowance(), entry) : entry.cause();
    }

    /** What a slower entry does otherwise than the best. */
    private static String difference(EntryResult entry, EntryResult best) {
        List<String> words = new ArrayList<>();
        tell(words, best.plan().brakePoint() - entry.plan().brakePoint(), "m", "brakes", "earlier", "later");
        tell(words, entry.turnInSpeed() - best.turnInSpeed(), "m/s", "turns in", "faster", "slower");
        tell(words, entry.minimumSpeed() - best.minimumSpeed(), "m/s", "at its slowest", "faster", "slower");
        tell(words, entry.minimumSpeedAt() - best.minimumSpeedAt(), "m", "is slowest", "later", "earlier");
        return words.isEmpty() ? "hardly different" : String.join(", ", words);
    }

    private static void tell(List<String> words, double more, String unit, String what, String up, String down) {
        if (Math.abs(more) >= WORTH_TELLING) {
            words.add(what + " " + Numbers.rounded(Math.abs(more), 1) + " " + unit + " " + (more > 0 ? up : down));
        }
    }
}
