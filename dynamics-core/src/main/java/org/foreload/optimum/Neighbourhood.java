package org.foreload.optimum;

import java.util.List;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.conventions.Checks;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Rounds;
import org.foreload.study.Sweep;

/**
 * The releases near one that is known, and what is known of them. A study that is much like the first, with a number of
 * the car changed, sees the same hills and edges, a little moved: so its best release is found with few entries. Those
 * of the first study, moved to what its own first entry shows, stand in for those that it has not driven (N. M.
 * Alexandrov, J. E. Dennis, R. M. Lewis and V. Torczon, A trust-region framework for managing the use of approximation
 * models in optimization, Structural Optimization 15, 1998, from memory).
 */
public final class Neighbourhood {

    /** How many times the entries for a changed study are driven in the first one. */
    private static final int FIRST_PART = 6;

    private static final long SEED = 1;

    private final double hardest;
    private final double limit;
    private final BrakePlan known;
    private final double shift;
    private final int entries;
    private final Optional<EntryAtPoint> found;
    private final List<EntryAtPoint> around;
    private final Best best;

    /**
     * The best release of a study.
     *
     * @param plan the plan
     * @param time s
     */
    public record Best(BrakePlan plan, double time) {}

    /**
     * Looks around a release; peak, start, end, shape and brake point are free.
     *
     * @param study car, corner, driver and margin
     * @param plan a release with a brake point from which, or near which, it makes the corner
     * @param entries driven for each changed study, about at most; six times as many are driven here
     */
    public Neighbourhood(CornerStudy study, BrakePlan plan, int entries) {
        Checks.within("entries", entries, 1, 1_000_000);
        this.entries = entries;
        this.known = RestOfRelease.of(plan);
        this.shift = known.brakePoint() - study.search().estimate(known.braking());
        this.limit = study.lockLimit();
        this.hardest = new LockReserve(study).hardest(known.buildUpTime());
        ReleaseSpace space = ReleaseSpace.of(study, hardest, known.buildUpTime(), Optional.empty());
        Rounds rounds = rounds();
        EntryAtPoint.Driver driver = new EntryAtPoint.Driver(study, space, rounds);
        SurfaceSearch search = new SurfaceSearch(driver, FIRST_PART * entries, SEED, rounds);
        this.found = search.from(known);
        this.around = List.copyOf(search.known());
        this.best = best(study, driver, found, known);
    }

    private Rounds rounds() {
        return new Rounds(1, Sweep.Progress.SILENT, FIRST_PART * entries);
    }

    private static Best best(
            CornerStudy study, EntryAtPoint.Driver driver, Optional<EntryAtPoint> found, BrakePlan otherwise) {
        return found.map(one -> new Best(driver.plan(one.x()), one.time()))
                .orElseGet(() -> new Best(
                        otherwise, study.search().trial(otherwise).entry().time()));
    }

    /** The best release of the study itself; the known one if none is found that keeps all that is asked. */
    public Best best() {
        return best;
    }

    /**
     * The best release of a study much like the first; where none keeps all that is asked, the known one, its peak held
     * as a share of the hardest.
     *
     * @param there the study
     * @param buildUpTime time in which the foot reaches the peak there, s
     */
    public Best in(CornerStudy there, double buildUpTime) {
        double share = new LockReserve(there).hardest(buildUpTime) / hardest;
        ReleaseSpace space = ReleaseSpace.of(there, limit * share, hardest * share, buildUpTime);
        Rounds rounds = rounds();
        EntryAtPoint.Driver driver = new EntryAtPoint.Driver(there, space, rounds);
        Braking scaled = Braking.of(share * known.peakDeceleration(), buildUpTime, known.release());
        BrakePlan start = scaled.from(there.search().estimate(scaled) + shift);
        Optional<EntryAtPoint> again = found.isPresent()
                ? new SurfaceSearch(driver, entries, SEED, rounds)
                        .near(around, found.get().x())
                : new SurfaceSearch(driver, FIRST_PART * entries, SEED, rounds).from(start);
        return best(there, driver, again, start);
    }
}
