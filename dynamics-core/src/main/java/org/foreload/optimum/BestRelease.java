package org.foreload.optimum;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.Checks;
import org.foreload.entry.EntryResult;
import org.foreload.optimum.Optimum.Family;
import org.foreload.optimum.Optimum.Restart;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.StraightLine;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Rounds;
import org.foreload.study.Search;
import org.foreload.study.Sweep;

/**
 * Searches for the best release of a car in a corner: peak, start, end and a free shape, each with its own brake point.
 *
 * <p>First the {@link SweepPlan#standard standard sweep} and the releases that ideal entries use, and the best of each
 * shape refined, as {@link ShapeRanking} does; then several searches over free shapes from the best of these, and as
 * many again from the best of those. Each fits surfaces to the entries that it has driven, and drives where they
 * promise most. Straight-line braking is the best where none of all that is quicker. The same numbers give the same
 * release, bit for bit, on any number of threads.
 *
 * @param seed of the places where a search looks because it knows little of them; each search has its own, made from
 *     this one
 * @param restarts searches over free shapes in each of two rounds, in turn from the best four starts; 0 to stay with
 *     the simple ones, which is several times quicker
 * @param evaluations entries tried by each of them
 * @param buildUpTime time in which a quick foot reaches the peak, s; where the line still bends at the brake point,
 *     slower feet are tried, too
 */
public record BestRelease(long seed, int restarts, int evaluations, double buildUpTime) {

    /** Four restarts of 300 entries in each of two rounds, a foot that takes a quarter of a second. */
    public static final BestRelease STANDARD = new BestRelease(1, 4, 300, 0.25);

    /** Simple shapes only. */
    public static final BestRelease SIMPLE_SHAPES = new BestRelease(1, 0, 300, 0.25);

    /** Rounds of searches over free shapes. */
    private static final int ROUNDS = 2;

    /** Shapes from which restarts begin: from worse ones they do not catch up. */
    private static final int STARTS_USED = 4;

    /** Free shapes from which the next round goes on. */
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
        List<EntryResult> own = simple(study, rounds);
        List<EntryResult> best = own;
        List<EntryResult> last = own;
        for (double time : slower) {
            last = ShapeRanking.best(study, withAnyPeak(study, last, time), rounds);
            best = quickest(last) < quickest(best) ? last : best;
        }
        if (best == own) {
            rounds.skip(ofSimpleShapes() + further);
            return find(study, own, buildUpTime, rounds);
        }
        BestRelease suited = withBuildUpTime(best.get(0).plan().buildUpTime());
        List<EntryResult> both = ShapeRanking.bestOfEach(
                Stream.of(best, suited.simple(study, rounds)).flatMap(List::stream));
        return suited.find(study, both, buildUpTime, rounds);
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
        return ofSimpleShapes() + ROUNDS * restarts * evaluations + (restarts > 0 ? KEPT * polishing() : 0);
    }

    private static int ofSimpleShapes() {
        return ofOneBend() + IdealRelease.MOST + refining(0);
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
        return find(study, simple(study, rounds), buildUpTime, rounds);
    }

    /** The best of each simple shape and of the ideal entries' releases, quickest first. */
    private List<EntryResult> simple(CornerStudy study, Rounds rounds) {
        SweepPlan plan = SweepPlan.standard().withBuildUpTime(buildUpTime);
        List<Braking> releases = new ArrayList<>(new ReleaseSweep(study, plan).releases());
        releases.removeIf(one -> one.release().shape() == ReleaseShapes.ABRUPT);
        releases.addAll(IdealRelease.all(study, buildUpTime, new LockReserve(study).hardest(buildUpTime)));
        return ShapeRanking.best(study, releases, rounds);
    }

    /**
     * Searches on from the best of each shape; the foot that was asked for takes {@code asked} to reach the peak, s.
     */
    private Optimum find(CornerStudy study, List<EntryResult> simple, double asked, Rounds rounds) {
        double hardest = new LockReserve(study).hardest(buildUpTime);
        List<Tried> starts = simple.stream()
                .map(entry -> new Tried(entry.plan().release().shape(), entry.plan(), entry.time(), 0))
                .toList();
        List<Tried> ranked = byTime(starts.stream()).limit(STARTS_USED).toList();
        List<Integer> numbers = IntStream.range(0, restarts).boxed().toList();
        List<Tried> all = new ArrayList<>(starts);
        List<Tried> round = ranked;
        List<Tried> last = List.of();
        for (int i = 0; i < ROUNDS && !ranked.isEmpty(); i++) {
            int first = i * restarts;
            List<Tried> from = round;
            List<Tried> to = rounds.run(
                    numbers,
                    number -> free(study, from.get(number % from.size()), hardest, draws(first + number), rounds));
            all.addAll(to);
            round = to.isEmpty() ? round : byTime(to.stream()).limit(KEPT).toList();
            last = to;
        }
        if (restarts > 0 && !(study.allowance().inHand() > 0)) {
            List<Tried> best = byTime(all.stream()).limit(KEPT).toList();
            List<Integer> places = IntStream.range(0, best.size()).boxed().toList();
            all.addAll(rounds.run(
                    places, i -> polished(study, best.get(i), hardest, draws(ROUNDS * restarts + i), rounds)));
        } else if (restarts > 0) {
            rounds.skip(KEPT * polishing());
        }
        Optional<Finding> straight = all.isEmpty() && rounds.stopped()
                ? Optional.empty()
                : straightLine(study, asked, new Sweep(rounds.threads(), Sweep.Progress.SILENT));
        return answer(study, simple, all, last, straight, rounds.complete());
    }

    /** The quickest straight-line braking, with the foot that was asked for or with this one. */
    private Optional<Finding> straightLine(CornerStudy study, double asked, Sweep sweep) {
        return DoubleStream.of(asked, buildUpTime)
                .distinct()
                .mapToObj(time -> StraightLine.best(study, time, sweep))
                .reduce(Optional.empty(), BestRelease::quicker);
    }

    /** Seed of one search, of its own for any two seeds. */
    private long draws(int search) {
        return seed * MOST_DRAWS + search;
    }

    private static final long MOST_DRAWS = 2001;

    private Optimum answer(
            CornerStudy study,
            List<EntryResult> simple,
            List<Tried> all,
            List<Tried> free,
            Optional<Finding> straight,
            boolean complete) {
        Map<BrakePlan, EntryResult> shapes = new LinkedHashMap<>();
        simple.stream()
                .filter(entry -> !entry.plan().release().shape().name().equals(IdealRelease.NAME))
                .forEach(entry -> shapes.put(entry.plan(), entry));
        Optional<Finding> best = Optional.empty();
        List<Restart> restarted = free.stream()
                .map(one -> new Restart(one.seed(), one.shape().name(), one.time()))
                .toList();
        for (Tried one : byTime(all.stream()).toList()) {
            if (best.isPresent() && best.get().entry().time() <= one.time()) {
                break;
            }
            Optional<Finding> checked = checked(study, one.plan());
            shapes.computeIfPresent(
                    one.plan(), (plan, entry) -> checked.map(Finding::entry).orElse(null));
            best = quicker(best, checked);
        }
        List<Family> families = shapes.values().stream()
                .sorted(Comparator.comparingDouble(EntryResult::time))
                .map(entry -> new Family(entry.plan().release().shape().name(), entry))
                .toList();
        best = quicker(straight, best.map(found -> study.quicker(found).orElse(found)));
        return new Optimum(best, straight, study.bound().time(), families, restarted, complete);
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
