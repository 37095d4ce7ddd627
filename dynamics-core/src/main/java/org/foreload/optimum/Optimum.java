package org.foreload.optimum;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.foreload.conventions.Checks;
import org.foreload.entry.EntryResult;
import org.foreload.strategy.Finding;

/**
 * The best release that was found, and how sure it is.
 *
 * @param best the quickest entry that makes the corner with the margin asked for, from its latest brake point;
 *     straight- line braking where no release is quicker; empty if none makes the corner
 * @param straightLine the quickest straight-line braking, with the foot that is asked for or with the best one's; empty
 *     if none makes the corner, or after a stop before anything was found
 * @param boundTime time of the ideal quasi-steady entry between the same markers, s
 * @param families the best of each simple shape, quickest first, as {@link ShapeRanking} finds it
 * @param restarts what each search over free shapes came to, quickest first; the first of them have gone on
 * @param complete whether every search ran to its end; false after a stop
 */
public record Optimum(
        Optional<Finding> best,
        Optional<Finding> straightLine,
        double boundTime,
        List<Family> families,
        List<Restart> restarts,
        boolean complete) {

    /** Copies the lists. */
    public Optimum {
        Objects.requireNonNull(best, "best");
        Objects.requireNonNull(straightLine, "straightLine");
        families = List.copyOf(Objects.requireNonNull(families, "families"));
        restarts = List.copyOf(Objects.requireNonNull(restarts, "restarts"));
    }

    /**
     * The best of a simple shape.
     *
     * @param shape name of the shape
     * @param entry the entry from its quickest brake point
     */
    public record Family(String shape, EntryResult entry) {

        /** Refuses null. */
        public Family {
            Objects.requireNonNull(shape, "shape");
            Objects.requireNonNull(entry, "entry");
        }
    }

    /**
     * One search over free shapes.
     *
     * @param seed of its random draws
     * @param from name of the shape that it started from
     * @param time s, that it came to
     */
    public record Restart(long seed, String from, double time) {

        /** Refuses null. */
        public Restart {
            Objects.requireNonNull(from, "from");
        }
    }

    /** The best entry; empty if no release makes the corner. */
    public Optional<EntryResult> entry() {
        return best.map(Finding::entry);
    }

    /**
     * The entry that the best is compared with: straight-line braking, or the best itself where nobody brakes; empty if
     * there is none.
     */
    public Optional<EntryResult> baseline() {
        return entry().filter(entry -> !entry.braked()).or(() -> straightLine.map(Finding::entry));
    }

    /**
     * The {@link #straightLine()}, if it was driven with a foot that takes this time, s, to reach the peak: that of
     * another foot may have been quicker, and then says nothing of this one's.
     */
    public Optional<Finding> straightLine(double buildUpTime) {
        Checks.number("build_up_time", buildUpTime);
        return straightLine.filter(found -> found.entry().plan().buildUpTime() == buildUpTime);
    }

    /** Time above the bound as a share of it; NaN without a best entry. */
    public double aboveBound() {
        return entry().map(entry -> entry.time() / boundTime - 1).orElse(Double.NaN);
    }

    /**
     * Time between the slowest and the quickest of the searches over free shapes, s; NaN with fewer than two. Each of
     * the first four sets out from another release, of a shape of its own: where they agree, one valley leads to the
     * best; where they do not, there are several, and another may hide a quicker release. So the spread says how far a
     * search depends on its start, and is no bound on what the best leaves open.
     */
    public double spread() {
        if (restarts.size() < 2) {
            return Double.NaN;
        }
        var times = restarts.stream().mapToDouble(Restart::time).summaryStatistics();
        return times.getMax() - times.getMin();
    }
}
