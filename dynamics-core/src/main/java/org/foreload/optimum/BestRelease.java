package org.foreload.optimum;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
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
import org.foreload.strategy.Trial;
import org.foreload.study.Rounds;
import org.foreload.study.Search;
import org.foreload.study.Sweep;

/**
 * Searches for the best release of a car in a corner: peak, start, end and a free shape, each with its own brake point.
 *
 * <p>First a coarse sweep of the simple shapes and of those that the ideal entry uses; then the best of each shape,
 * searched for from its best coarse release; then several searches over free shapes from the best of these, and as many
 * again from the best of those. Each fits surfaces to the entries that it has driven, and drives where they promise
 * most. The same numbers give the same release, bit for bit, on any number of threads.
 *
 * @param seed of the places where a search looks because it knows little of them; each search has its own, made from
 *     this one
 * @param restarts searches over free shapes in each of two rounds, in turn from the best four starts; 0 to stay with
 *     the simple ones, which is several times quicker
 * @param evaluations entries tried by each of them; each search within a simple shape looks at a third as many
 * @param buildUpTime time in which a quick foot reaches the peak, s; where the line still bends at the brake point,
 *     slower feet are tried, too
 */
public record BestRelease(long seed, int restarts, int evaluations, double buildUpTime) {

    /** Four restarts of 300 entries in each of two rounds, a foot that takes a quarter of a second. */
    public static final BestRelease STANDARD = new BestRelease(1, 4, 300, 0.25);

    /** Simple shapes only. */
    public static final BestRelease SIMPLE_SHAPES = new BestRelease(1, 0, 300, 0.25);

    private static final List<ReleaseShape> SIMPLE = List.of(
            ReleaseShapes.LINEAR,
            ReleaseShapes.PROGRESSIVE,
            ReleaseShapes.HELD,
            ReleaseShapes.CIRCLE,
            ReleaseShapes.SMOOTH,
            ReleaseShapes.TWO_STAGE);

    /** Part of a restart's entries that one search within a simple shape looks at, which has four variables. */
    private static final int SIMPLE_PART = 3;

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

    /** A release that was looked at, from its latest brake point as far as the quick search knows. */
    private record Tried(ReleaseShape shape, BrakePlan plan, double time, long seed) {}

    /** Searches on all processors, without a progress report. */
    public Optimum find(CornerStudy study) {
        return find(study, Runtime.getRuntime().availableProcessors(), Sweep.Progress.SILENT);
    }

    /**
     * Searches. Where the line still bends at the brake point the simple shapes are searched with several build-ups,
     * and the whole search is that of the one which came out quickest.
     *
     * @param study car, corner, driver and margin
     * @param threads number of threads
     * @param progress hears of the releases tried, of about as many as there will be; a stop keeps what was found
     */
    public Optimum find(CornerStudy study, int threads, Sweep.Progress progress) {
        List<Double> buildUps = BuildUps.worthTrying(study, buildUpTime);
        if (buildUps.size() == 1) {
            return find(study, new Rounds(threads, progress, total()));
        }
        BestRelease simple = new BestRelease(seed, 0, evaluations, buildUpTime);
        Rounds rounds = new Rounds(threads, progress, buildUps.size() * simple.total() + total());
        List<Optimum> found = buildUps.stream()
                .map(time -> simple.withBuildUpTime(time).find(study, rounds))
                .toList();
        double suited = quickest(found)
                .flatMap(Optimum::entry)
                .map(entry -> entry.plan().buildUpTime())
                .orElse(buildUpTime);
        Optimum last = withBuildUpTime(suited).find(study, rounds);
        return quickest(Stream.concat(Stream.of(last), found.stream()).toList()).orElse(last);
    }

    private static Optional<Optimum> quickest(List<Optimum> found) {
        return found.stream()
                .filter(one -> one.entry().isPresent())
                .min(Comparator.comparingDouble(one -> one.entry().get().time()));
    }

    /** Releases that it will look at, about. */
    int total() {
        int coarse = SIMPLE.size() * QuickStart.EACH_SHAPE + IdealRelease.MOST;
        return coarse
                + (SIMPLE.size() + IdealRelease.MOST) * simpleEvaluations()
                + ROUNDS * restarts * evaluations
                + (restarts > 0 ? KEPT * polishing() : 0);
    }

    private int polishing() {
        return POLISHING * evaluations;
    }

    private int simpleEvaluations() {
        return Math.max(LEAST_EVALUATIONS, evaluations / SIMPLE_PART);
    }

    /** Searches, as a part of several searches that are counted together. */
    Optimum find(CornerStudy study, Rounds rounds) {
        double hardest = new LockReserve(study).hardest(buildUpTime);
        List<Braking> coarse = QuickStart.coarse(study, SIMPLE, buildUpTime);
        coarse.addAll(IdealRelease.all(study, buildUpTime, hardest));
        QuickStart quick = new QuickStart(study);
        List<Tried> tried =
                new ArrayList<>(rounds.run(coarse, braking -> first(braking, quick.latestWorthwhile(braking), rounds)));
        List<Braking> without = coarse.stream()
                .filter(braking ->
                        quickest(of(braking.release().shape(), tried)).isEmpty())
                .toList();
        tried.addAll(rounds.run(without, braking -> first(braking, quick.latest(braking), rounds)));
        List<Tried> starts = tried.stream()
                .map(Tried::shape)
                .distinct()
                .flatMap(shape -> quickest(of(shape, tried)).stream())
                .toList();
        List<Tried> simple = found(rounds.run(
                starts,
                one -> within(study, one, hardest, rounds).or(() -> setBack(study, byTime(of(one.shape(), tried))))));
        List<Tried> ranked = quickestOfEachName(simple).stream()
                .sorted(Comparator.comparingDouble(Tried::time))
                .limit(STARTS_USED)
                .toList();
        List<Integer> numbers = ranked.isEmpty()
                ? List.of()
                : IntStream.range(0, restarts).boxed().toList();
        List<Tried> all = new ArrayList<>(simple);
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
        return answer(study, simple.isEmpty() ? tried : simple, all, last, rounds.complete());
    }

    private static List<Tried> found(List<Optional<Tried>> searched) {
        return searched.stream().flatMap(Optional::stream).toList();
    }

    /** Seed of one search, of its own for any two seeds. */
    private long draws(int search) {
        return seed * MOST_DRAWS + search;
    }

    private static final long MOST_DRAWS = 2001;

    private Optimum answer(CornerStudy study, List<Tried> simple, List<Tried> all, List<Tried> free, boolean complete) {
        List<Family> families = new ArrayList<>();
        Optional<Finding> best = Optional.empty();
        for (ReleaseShape shape : SIMPLE) {
            Optional<Finding> finding = quickest(of(shape, simple)).flatMap(one -> checked(study, one.plan()));
            finding.ifPresent(one -> families.add(new Family(shape.name(), one.entry())));
            best = quicker(best, finding);
        }
        families.sort(Comparator.comparingDouble(family -> family.entry().time()));
        List<Restart> restarted = free.stream()
                .map(one -> new Restart(one.seed(), one.shape().name(), one.time()))
                .toList();
        for (Tried one : byTime(all.stream()).toList()) {
            if (best.isPresent() && best.get().entry().time() <= one.time()) {
                break;
            }
            best = quicker(best, checked(study, one.plan()));
        }
        best = best.map(found -> study.quicker(found).orElse(found));
        return new Optimum(best, study.bound().time(), families, restarted, complete);
    }

    /**
     * The entry of a release with its margin: from its latest brake point, or from the one that the search found where
     * that is earlier and quicker, since a later brake point can cost more on the way than it gains.
     */
    private static Optional<Finding> checked(CornerStudy study, BrakePlan found) {
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

    private static Optional<Finding> quicker(Optional<Finding> a, Optional<Finding> b) {
        return Stream.of(a, b)
                .flatMap(Optional::stream)
                .min(Comparator.comparingDouble(one -> one.entry().time()));
    }

    /** Of the ideal entry's releases, which are alike, one: two searches should set out from two places. */
    private static List<Tried> quickestOfEachName(List<Tried> tried) {
        return tried.stream()
                .map(one -> one.shape().name())
                .distinct()
                .flatMap(name ->
                        quickest(tried.stream().filter(one -> one.shape().name().equals(name))).stream())
                .toList();
    }

    private static Stream<Tried> of(ReleaseShape shape, List<Tried> tried) {
        return tried.stream().filter(one -> one.shape().equals(shape));
    }

    private static Stream<Tried> byTime(Stream<Tried> tried) {
        return tried.filter(one -> !Double.isNaN(one.time())).sorted(Comparator.comparingDouble(Tried::time));
    }

    private static Optional<Tried> quickest(Stream<Tried> tried) {
        return tried.filter(one -> !Double.isNaN(one.time())).min(Comparator.comparingDouble(Tried::time));
    }

    private static Tried first(Braking braking, Neighbourhood.Best found, Rounds rounds) {
        rounds.count();
        return new Tried(braking.release().shape(), found.plan(), found.time(), 0);
    }

    /** The best of one simple shape; empty if none was found that keeps all that is asked. */
    private Optional<Tried> within(CornerStudy study, Tried start, double hardest, Rounds rounds) {
        ReleaseSpace space = ReleaseSpace.of(study, hardest, buildUpTime, Optional.of(start.shape()));
        EntryAtPoint.Driver driver = new EntryAtPoint.Driver(study, space, rounds);
        return new SurfaceSearch(driver, simpleEvaluations(), seed, rounds)
                .from(start.plan())
                .map(found -> new Tried(start.shape(), driver.plan(found.x()), found.time(), seed));
    }

    /**
     * The first of some releases, quickest first, that can be set back so far that it has in hand what is asked for.
     */
    private static Optional<Tried> setBack(CornerStudy study, Stream<Tried> releases) {
        return releases.limit(MOST_SET_BACK)
                .map(one ->
                        study.search().latest(one.plan().braking(), one.plan().brakePoint()))
                .filter(Trial::met)
                .map(trial -> trial.entry())
                .findFirst()
                .map(entry -> new Tried(entry.plan().release().shape(), entry.plan(), entry.time(), 0));
    }

    private static final int MOST_SET_BACK = 4;

    /** The best free shape near a release; that release itself if none is quicker. */
    private Tried free(CornerStudy study, Tried start, double hardest, long ownSeed, Rounds rounds) {
        ReleaseSpace space = ReleaseSpace.of(study, hardest, buildUpTime, Optional.empty());
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

    /**
     * The best free shape close to one of the best, with prices on what goes beyond a limit: surfaces end where a limit
     * bends, and a crowd of entries finds its way along the bend. Prices know nothing of errors that must be forgiven;
     * where there are any, this gains nothing. The release itself if none is quicker.
     */
    private Tried polished(CornerStudy study, Tried start, double hardest, long ownSeed, Rounds rounds) {
        ReleaseSpace space = ReleaseSpace.of(study, hardest, buildUpTime, Optional.empty());
        EntryAtPoint.Driver driver = new EntryAtPoint.Driver(study, space, rounds);
        Search search = new Search(space.low(), space.high(), polishing(), rounds::stopped);
        double[] spread = new double[space.size()];
        Arrays.fill(spread, POLISHED_AROUND);
        Tried[] best = {start};
        search.wide(
                x -> {
                    EntryAtPoint entry = driver.at(x, best[0].time());
                    if (entry.allowed() && entry.time() < best[0].time()) {
                        best[0] = new Tried(start.shape(), driver.plan(x), entry.time(), ownSeed);
                    }
                    return priced(entry);
                },
                driver.point(RestOfRelease.of(start.plan())),
                spread,
                ownSeed);
        rounds.skip(Math.max(0, polishing() - driver.driven()));
        return best[0];
    }

    private static double priced(EntryAtPoint entry) {
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
