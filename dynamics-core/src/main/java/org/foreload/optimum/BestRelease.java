package org.foreload.optimum;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.ReleaseShape;
import org.foreload.conventions.Checks;
import org.foreload.entry.EntryResult;
import org.foreload.optimum.Optimum.Family;
import org.foreload.optimum.Optimum.Restart;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.Exploration.Candidate;
import org.foreload.strategy.Finding;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.StraightLine;
import org.foreload.strategy.SweepMemory;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Rounds;
import org.foreload.study.Search;
import org.foreload.study.Sweep;

/**
 * Searches for the best release of a car in a corner: peak, start, end and a free shape, each with its own brake point.
 *
 * <p>First what {@link ShapeRanking#explore} does with the {@link SweepPlan#standard standard sweep}: its answer is the
 * first that the best is held against, so that the best is never slower. Beside it the releases that ideal entries use.
 * Then several searches over free shapes, each from another of the best simple ones; the two that come out quickest go
 * on from where they ended. Each fits surfaces to the entries that it has driven, and drives where they promise most.
 * Straight-line braking is the best where none of all that is quicker. The same numbers give the same release, bit for
 * bit, on any number of threads.
 *
 * @param seed of the places where a search looks because it knows little of them; each search has its own, made from
 *     this one
 * @param restarts searches over free shapes, in turn from the best four starts; 0 to stay with the simple ones, which
 *     is several times quicker
 * @param evaluations entries tried by each of them
 * @param buildUpTime time in which a quick foot reaches the peak, s; where the line still bends at the brake point,
 *     slower feet are tried, too
 */
public record BestRelease(long seed, int restarts, int evaluations, double buildUpTime) {

    /** Four restarts of 300 entries, a foot that takes a quarter of a second. */
    public static final BestRelease STANDARD = new BestRelease(1, 4, 300, 0.25);

    /** Simple shapes only. */
    public static final BestRelease SIMPLE_SHAPES = new BestRelease(1, 0, 300, 0.25);

    /** Seeds are counted as in so many rounds of searches over free shapes. */
    private static final int ROUNDS = 2;

    /** Shapes from which restarts begin: from worse ones they do not catch up. */
    private static final int STARTS_USED = 4;

    /** Free shapes from which a search goes on. */
    private static final int KEPT = 2;

    /** Times as many entries as one search drives, to polish one of the best. */
    private static final int POLISHING = 4;

    /** How far around it the first of them lie, in units of the space. */
    private static final double POLISHED_AROUND = 0.3;

    /** What an entry that does not make the corner counts as, s: more than any that does. */
    private static final double NOT_MADE = 1e3;

    private static final int LEAST_EVALUATIONS = 20;

    /** Checks the numbers. */
    public BestRelease {
        Checks.within("restarts", restarts, 0, 1000);
        Checks.within("evaluations", evaluations, LEAST_EVALUATIONS, 1_000_000);
        Checks.notNegative("build_up_time", buildUpTime);
    }

    /** The same search for a foot that takes another time, s, to reach the peak. */
    public BestRelease withBuildUpTime(double seconds) {
        return new BestRelease(seed, restarts, evaluations, seconds);
    }

    /** A release that a search came to, with its brake point, and that search's seed. */
    private record Tried(ReleaseShape shape, BrakePlan plan, double time, long seed) {}

    /** Searches on all processors, without a progress report. */
    public Optimum find(CornerStudy study) {
        return find(study, Runtime.getRuntime().availableProcessors(), Sweep.Progress.SILENT);
    }

    /**
     * Searches. Where the line still bends at the brake point the best of each simple shape is looked for with several
     * build-ups, and the whole search is that of the one which came out quickest.
     *
     * @param study car, corner, driver and margin
     * @param threads number of threads
     * @param progress hears of the releases tried, of about as many as there will be; a stop keeps what was found
     */
    public Optimum find(CornerStudy study, int threads, Sweep.Progress progress) {
        Objects.requireNonNull(study, "study");
        Objects.requireNonNull(progress, "progress");
        List<Double> slower = BuildUps.slower(study, buildUpTime);
        int further = (study.apexes().size() - 1) * ofOneBend();
        if (slower.isEmpty()) {
            return find(study, new Rounds(threads, progress, total() + further));
        }
        int again = slower.size() * refining(SweepPlan.standard().peaks().size() + 1);
        Rounds rounds = new Rounds(threads, progress, total() + again + ofSimpleShapes() + 2 * further);
        Simple own = simple(study, rounds);
        List<EntryResult> best = own.ofEach();
        List<EntryResult> last = best;
        for (double time : slower) {
            last = ShapeRanking.best(study, withAnyPeak(study, last, time), rounds);
            best = quickest(last) < quickest(best) ? last : best;
        }
        if (best == own.ofEach()) {
            rounds.skip(ofSimpleShapes() + further);
            return find(study, own, rounds);
        }
        BestRelease suited = withBuildUpTime(best.get(0).plan().buildUpTime());
        return suited.find(study, own.and(best, suited.simple(study, rounds)), rounds);
    }

    /** Time, s, of the first of some entries, which is the quickest. */
    private static double quickest(List<EntryResult> entries) {
        return entries.isEmpty() ? Double.POSITIVE_INFINITY : entries.get(0).time();
    }

    /** The releases of some entries, each with the peaks of the sweep and its own: a slower foot may brake harder. */
    static List<Braking> withAnyPeak(CornerStudy study, List<EntryResult> entries, double buildUpTime) {
        return entries.stream()
                .map(EntryResult::plan)
                .flatMap(plan -> Stream.concat(
                                Stream.of(plan.peakDeceleration()),
                                SweepPlan.standard().peaks().stream().map(share -> share * study.lockLimit()))
                        .map(peak -> Braking.of(peak, buildUpTime, plan.release())))
                .toList();
    }

    /** Releases and entries that it will look at, about, where the car slows for one bend. */
    int total() {
        return ofSimpleShapes()
                + (restarts + Math.min(KEPT, restarts)) * evaluations
                + (restarts > 0 ? KEPT * polishing() : 0);
    }

    private static int ofSimpleShapes() {
        return ofOneBend() + SweepPlan.standard().peaks().size() + IdealRelease.MOST + refining(0);
    }

    /** Releases of the sweep for each bend that the car slows for. */
    private static int ofOneBend() {
        SweepPlan plan = SweepPlan.standard();
        return plan.shapes().size()
                * plan.peaks().size()
                * plan.starts().size()
                * plan.ends().size();
    }

    /** The same for refining the best of each shape, after so many releases of each. */
    private static int refining(int releases) {
        int shapes = SweepPlan.standard().shapes().size() + 1;
        return shapes * releases + (shapes + ShapeRanking.MORE + ShapeRanking.AGAIN) * ShapeRanking.ENTRIES;
    }

    private int polishing() {
        return POLISHING * evaluations;
    }

    /** Searches with this build-up alone, as a part of several searches that are counted together. */
    Optimum find(CornerStudy study, Rounds rounds) {
        return find(study, simple(study, rounds), rounds);
    }

    /**
     * What searches over free shapes set out from.
     *
     * @param ofEach the best of each simple shape and of the ideal entries' releases, quickest first
     * @param best the quickest that a sweep finds, refined
     * @param straightLine the quickest straight-line braking
     */
    private record Simple(List<EntryResult> ofEach, Optional<Finding> best, Optional<Finding> straightLine) {

        /** Together with what was found with another foot. */
        Simple and(List<EntryResult> more, Simple other) {
            return new Simple(
                    ShapeRanking.bestOfEach(Stream.of(more, other.ofEach).flatMap(List::stream)),
                    quicker(best, other.best),
                    quicker(straightLine, other.straightLine));
        }
    }

    /** What {@code explore} finds, and the best of the ideal entries' releases. */
    private Simple simple(CornerStudy study, Rounds rounds) {
        SweepPlan plan = SweepPlan.standard().withBuildUpTime(buildUpTime);
        ReleaseSweep releases = new ReleaseSweep(study, plan);
        Exploration grid = releases.coarse(rounds.counting(1), SweepMemory.NONE);
        Exploration explored = ShapeRanking.compared(releases, grid, rounds);
        List<EntryResult> ideal = ShapeRanking.once(
                study, IdealRelease.all(study, buildUpTime, new LockReserve(study).hardest(buildUpTime)), rounds);
        Stream<EntryResult> swept = explored.candidates().stream()
                .filter(Candidate::made)
                .map(Candidate::entry)
                .filter(one -> !StraightLine.is(one.plan()));
        boolean untried = grid.baseline().isEmpty() && !rounds.stopped();
        return new Simple(
                ShapeRanking.bestOfEach(Stream.concat(swept, ideal.stream())),
                explored.best().map(BestRelease::finding),
                untried
                        ? StraightLine.best(study, buildUpTime, new Sweep(rounds.threads(), Sweep.Progress.SILENT))
                        : grid.baseline().map(BestRelease::finding));
    }

    private static Finding finding(Candidate one) {
        return new Finding(one.entry(), one.made(), one.inHand());
    }

    /** Searches on from the best of each shape. */
    private Optimum find(CornerStudy study, Simple simple, Rounds rounds) {
        double hardest = new LockReserve(study).hardest(buildUpTime);
        List<Tried> starts = simple.ofEach().stream()
                .map(entry -> new Tried(entry.plan().release().shape(), entry.plan(), entry.time(), 0))
                .toList();
        List<Tried> free = restarted(study, starts, hardest, rounds);
        List<Tried> all = new ArrayList<>(free);
        all.addAll(starts); // Those of ideal entries, and of a slower foot, are not among what explore answers.
        if (restarts > 0 && !(study.allowance().inHand() > 0)) {
            List<Tried> best = byTime(Stream.of(starts, free).flatMap(List::stream))
                    .limit(KEPT)
                    .toList();
            all.addAll(rounds.run(
                    numbers(best.size()),
                    i -> polished(study, best.get(i), hardest, draws(ROUNDS * restarts + i), rounds)));
        } else if (restarts > 0) {
            rounds.skip(KEPT * polishing());
        }
        return answer(study, simple, all, free, rounds.complete());
    }

    /** What searches over free shapes come to, each from one of the starts; the best of them have gone on. */
    private List<Tried> restarted(CornerStudy study, List<Tried> starts, double hardest, Rounds rounds) {
        if (starts.isEmpty()) {
            return List.of();
        }
        int used = Math.min(STARTS_USED, starts.size());
        List<Tried> ends = rounds.run(
                numbers(restarts), number -> free(study, starts.get(number % used), hardest, draws(number), rounds));
        List<Tried> ranked = byTime(ends.stream()).toList();
        List<Tried> kept = ranked.subList(0, Math.min(KEPT, ranked.size()));
        List<Tried> further = rounds.run(
                numbers(kept.size()),
                number -> free(study, kept.get(number), hardest, draws(restarts + number), rounds));
        return Stream.of(further, ranked.subList(further.size(), ranked.size()))
                .flatMap(List::stream)
                .toList();
    }

    private static List<Integer> numbers(int size) {
        return IntStream.range(0, size).boxed().toList();
    }

    /** Seed of one search, of its own for any two seeds. */
    private long draws(int search) {
        return seed * MOST_DRAWS + search;
    }

    private static final long MOST_DRAWS = 2001;

    /** The quickest of what a sweep finds, of what goes on from there, and of straight-line braking. */
    private static Optimum answer(
            CornerStudy study, Simple simple, List<Tried> more, List<Tried> free, boolean complete) {
        Optional<Finding> known = quicker(simple.straightLine(), simple.best());
        Optional<Finding> found = known;
        for (Tried one : byTime(more.stream()).toList()) {
            if (found.isPresent() && found.get().entry().time() <= one.time()) {
                break;
            }
            found = quicker(found, checked(study, one.plan()));
        }
        Optional<Finding> best = found.equals(known)
                ? known
                : found.map(one -> study.quicker(one).orElse(one));
        List<Family> families = simple.ofEach().stream()
                .map(entry -> new Family(entry.plan().release().shape().name(), entry))
                .filter(family -> !family.shape().equals(IdealRelease.NAME))
                .toList();
        List<Restart> restarted = free.stream()
                .map(one -> new Restart(one.seed(), one.shape().name(), one.time()))
                .toList();
        return new Optimum(best, simple.straightLine(), study.bound().time(), families, restarted, complete);
    }

    /**
     * The entry of a release with its margin: from its latest brake point, or from the one that the search found where
     * that is earlier and quicker, since a later brake point can cost more on the way than it gains.
     */
    static Optional<Finding> checked(CornerStudy study, BrakePlan found) {
        BrakePlan plan = found.rounded();
        Finding latest = study.latest(plan.braking(), plan.brakePoint());
        if (!latest.found()) {
            return Optional.empty();
        }
        if (plan.brakePoint() >= latest.entry().plan().brakePoint()) {
            return Optional.of(latest);
        }
        EntryResult own = study.simulator().run(plan);
        if (!study.allowance().met(own) || own.time() >= latest.entry().time()) {
            return Optional.of(latest);
        }
        double inHand = study.search().inHand(plan);
        return Optional.of(inHand < study.allowance().inHand() ? latest : new Finding(own, true, inHand));
    }

    /** The quicker of two; the first of equal ones. */
    private static Optional<Finding> quicker(Optional<Finding> a, Optional<Finding> b) {
        return Stream.of(a, b)
                .flatMap(Optional::stream)
                .min(Comparator.comparingDouble(one -> one.entry().time()));
    }

    private static Stream<Tried> byTime(Stream<Tried> tried) {
        return tried.sorted(Comparator.comparingDouble(Tried::time));
    }

    /** The best free shape near a release; that release itself if none is quicker. */
    private Tried free(CornerStudy study, Tried start, double hardest, long ownSeed, Rounds rounds) {
        ReleaseSpace space = ReleaseSpace.of(study, start.plan().release(), hardest, buildUpTime, Optional.empty());
        EntryAtPoint.Driver driver = new EntryAtPoint.Driver(study, space, rounds);
        Optional<EntryAtPoint> found = new SurfaceSearch(driver, evaluations, ownSeed, rounds)
                .from(RestOfRelease.of(start.plan()))
                .filter(one -> one.time() < start.time());
        return new Tried(
                start.shape(),
                found.map(one -> driver.plan(one.x())).orElse(start.plan()),
                found.map(EntryAtPoint::time).orElse(start.time()),
                ownSeed);
    }

    /** The best free shape close to one of the best; that release itself if none is quicker. */
    private Tried polished(CornerStudy study, Tried start, double hardest, long ownSeed, Rounds rounds) {
        ReleaseSpace space = ReleaseSpace.of(study, start.plan().release(), hardest, buildUpTime, Optional.empty());
        EntryAtPoint.Driver driver = new EntryAtPoint.Driver(study, space, rounds);
        double[] point = driver.point(RestOfRelease.of(start.plan()));
        return polished(driver, point, start.time(), polishing(), ownSeed, rounds)
                .map(found -> new Tried(start.shape(), driver.plan(found.x()), found.time(), ownSeed))
                .orElse(start);
    }

    /**
     * The quickest entry close to a point, with prices on what goes beyond a limit: surfaces end where a limit bends,
     * and a crowd of entries finds its way along the bend. Prices know nothing of errors that must be forgiven; where
     * there are any, this gains nothing. Empty if none is quicker than a time, s.
     */
    static Optional<EntryAtPoint> polished(
            EntryAtPoint.Source driver, double[] point, double time, int entries, long seed, Rounds rounds) {
        ReleaseSpace space = driver.space();
        double[] spread = new double[space.size()];
        Arrays.fill(spread, POLISHED_AROUND);
        EntryAtPoint[] best = {null};
        new Search(space.low(), space.high(), entries, rounds::stopped)
                .wide(
                        x -> {
                            double quickest = best[0] == null ? time : best[0].time();
                            EntryAtPoint entry = driver.at(x, quickest);
                            best[0] = entry.allowed() && entry.time() < quickest ? entry : best[0];
                            return priced(entry);
                        },
                        point,
                        spread,
                        seed);
        rounds.skip(Math.max(0, entries - driver.driven()));
        return Optional.ofNullable(best[0]);
    }

    /** Time, s, of an entry with a price on each limit that it goes beyond. */
    static double priced(EntryAtPoint entry) {
        if (!entry.made()) {
            return NOT_MADE;
        }
        double beyond = 0;
        for (double limit : entry.limits()) {
            beyond += Math.max(0, limit);
        }
        return entry.time() + EntryAtPoint.PRICE * Math.max(beyond, entry.verdict());
    }
}
