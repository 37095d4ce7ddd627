package org.foreload.optimum;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.conventions.Checks;
import org.foreload.strategy.BrakePointSearch;
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
    private final BrakePointSearch search;
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
    public record Best(BrakePlan plan, double time) {

        /** Refuses null. */
        public Best {
            Objects.requireNonNull(plan, "plan");
        }
    }

    /**
     * Looks around a release; peak, start, end, shape and brake point are free.
     *
     * @param study car, corner, driver and margin
     * @param plan a release with a brake point from which, or near which, it makes the corner
     * @param entries driven for each changed study, about at most; six times as many are driven here
     */
    public Neighbourhood(CornerStudy study, BrakePlan plan, int entries) {
        Objects.requireNonNull(study, "study");
        Objects.requireNonNull(plan, "plan");
        Checks.within("entries", entries, 1, 1_000_000);
        this.entries = entries;
        this.known = RestOfRelease.of(plan);
        this.search = study.search();
        this.limit = study.lockLimit();
        this.hardest = new LockReserve(study).hardest(known.buildUpTime());
        ReleaseSpace space = ReleaseSpace.of(study, known.release(), hardest, known.buildUpTime(), Optional.empty());
        Rounds rounds = rounds();
        EntryAtPoint.Driver driver = new EntryAtPoint.Driver(study, space, rounds);
        SurfaceSearch first = new SurfaceSearch(driver, FIRST_PART * entries, SEED, rounds);
        this.found = first.from(known);
        this.around = List.copyOf(first.known());
        this.best = found.map(one -> new Best(driver.plan(one.x()), one.time()))
                .orElseGet(() -> new Best(known, search.trial(known).entry().time()));
    }

    private Rounds rounds() {
        return new Rounds(1, Sweep.Progress.SILENT, FIRST_PART * entries);
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
        Objects.requireNonNull(there, "there");
        double share = new LockReserve(there).hardest(buildUpTime) / hardest;
        ReleaseSpace space = ReleaseSpace.of(there, known.release(), limit * share, hardest * share, buildUpTime);
        Rounds rounds = rounds();
        BrakePlan start = scaled(there, known, share, buildUpTime);
        BrakePlan bestStart = scaled(there, best.plan(), share, buildUpTime);
        Optional<Best> again = found.flatMap(one -> {
                    EntryAtPoint.Driver driver = new EntryAtPoint.Driver(there, space, rounds);
                    return new SurfaceSearch(driver, entries, SEED, rounds)
                            .near(around, one.x())
                            .map(to -> new Best(driver.plan(to.x()), to.time()));
                })
                .or(() -> whole(there, space, bestStart, rounds))
                .or(() -> whole(there, space, start, rounds));
        return again.orElseGet(
                () -> new Best(start, there.search().trial(start).entry().time()));
    }

    /** The whole search, where what is known of the first study does not help. */
    private Optional<Best> whole(CornerStudy there, ReleaseSpace space, BrakePlan start, Rounds rounds) {
        EntryAtPoint.Driver driver = new EntryAtPoint.Driver(there, space, rounds);
        return new SurfaceSearch(driver, FIRST_PART * entries, SEED, rounds)
                .from(start)
                .map(to -> new Best(driver.plan(to.x()), to.time()));
    }

    /** A plan of the first study with its peak as a share of the hardest, and as far from its estimate. */
    private BrakePlan scaled(CornerStudy there, BrakePlan plan, double share, double buildUpTime) {
        Braking braking = Braking.of(share * plan.peakDeceleration(), buildUpTime, plan.release());
        double shift = plan.brakePoint() - search.estimate(plan.braking());
        return braking.from(there.search().estimate(braking) + shift);
    }
}
