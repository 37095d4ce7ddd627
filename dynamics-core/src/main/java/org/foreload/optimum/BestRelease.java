package org.foreload.optimum;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.Checks;
import org.foreload.entry.EntryResult;
import org.foreload.optimum.Optimum.Family;
import org.foreload.optimum.Optimum.Restart;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.LatestBrakePoint.Finding;
import org.foreload.study.Search;
import org.foreload.study.Sweep;

/**
 * Searches for the best release of a car in a corner: peak, start, end and a free shape, each release from its own
 * latest brake point.
 *
 * <p>In three rounds: a coarse sweep of the simple shapes and of the one that the ideal entry uses; the best of each
 * shape, searched nearby; then from the best of these several searches over free shapes, wide ones first and each then nearby. The same numbers give the same
 * release, bit for bit, on any number of threads.
 *
 * @param seed of the random draws; restart i draws with the seed plus i
 * @param restarts searches over free shapes, each with its own draws, in turn from the best two shapes; 0 to stay
 *     with the simple ones, which is several times quicker
 * @param evaluations releases looked at by each of them
 * @param buildUpTime time in which the foot reaches the peak, s
 */
public record BestRelease(long seed, int restarts, int evaluations, double buildUpTime) {

    /** Three restarts of 450 releases, a foot that takes a quarter of a second. */
    public static final BestRelease STANDARD = new BestRelease(1, 3, 450, 0.25);

    /** Simple shapes only. */
    public static final BestRelease SIMPLE_SHAPES = new BestRelease(1, 0, 450, 0.25);

    private static final List<ReleaseShape> SIMPLE = List.of(
            ReleaseShapes.LINEAR,
            ReleaseShapes.PROGRESSIVE,
            ReleaseShapes.LATE,
            ReleaseShapes.CIRCLE,
            ReleaseShapes.SMOOTH,
            ReleaseShapes.TWO_STAGE);

    private static final double[] PEAKS = {0.65, 0.86};
    private static final double[] STARTS = {-0.2, 0.1};
    private static final double[] ENDS = {0.35, 0.7, 1.2};

    /** Releases looked at in the search within a simple shape, which has three variables. */
    private static final int SIMPLE_EVALUATIONS = 80;

    /** Share of its releases that a restart looks at far and wide, before it searches nearby. */
    private static final double WIDE_SHARE = 0.6;

    /** Share of the drift allowed with which a search begins. */
    private static final double START_DRIFT = 0.7;

    /** Spread of the first generation, in the units of the space: around a start that is good already. */
    private static final double SPREAD = 0.5;

    /** Shapes from which restarts begin: from worse ones they do not catch up. */
    private static final int STARTS_USED = 2;

    /** Radii of the searches nearby, one after another; the second sets out anew where the first gave up. */
    private static final double[] RADII = {0.6, 0.25};

    /** Checks the numbers. */
    public BestRelease {
        Checks.within("restarts", restarts, 0, 1000);
        Checks.within("evaluations", evaluations, 20, 1_000_000);
        Checks.notNegative("build_up_time", buildUpTime);
    }

    /** A release that was looked at, from its latest brake point as far as the quick search knows. */
    private record Tried(ReleaseShape shape, BrakePlan plan, double driftShare, double time) {}

    /** Searches on all processors, without a progress report. */
    public Optimum find(CornerStudy study) {
        return find(study, Runtime.getRuntime().availableProcessors(), Sweep.Progress.SILENT);
    }

    /**
     * Searches.
     *
     * @param study car, corner, driver and margin
     * @param threads number of threads
     * @param progress told of the releases looked at, of about as many as there will be; a stop keeps what was found
     */
    public Optimum find(CornerStudy study, int threads, Sweep.Progress progress) {
        List<BrakePlan> coarse = coarse(study);
        IdealRelease.of(study, buildUpTime).ifPresent(coarse::add);
        Rounds rounds = new Rounds(
                threads, progress, coarse.size() + (SIMPLE.size() + 1) * SIMPLE_EVALUATIONS + restarts * evaluations);
        List<Tried> tried = rounds.run(coarse, plan -> first(study, plan, rounds));
        List<Tried> starts = tried.stream()
                .map(Tried::shape)
                .distinct()
                .flatMap(shape -> quickest(tried.stream().filter(one -> one.shape().equals(shape))).stream())
                .toList();
        List<Tried> simple = rounds.run(starts, one -> within(study, one, rounds));
        List<Tried> ranked = simple.stream()
                .sorted(Comparator.comparingDouble(Tried::time))
                .limit(STARTS_USED)
                .toList();
        List<Integer> numbers = ranked.isEmpty()
                ? List.of()
                : IntStream.range(0, restarts).boxed().toList();
        List<Tried> free = rounds.run(
                numbers, i -> free(study, ranked.get(i % ranked.size()), seed + i, rounds));
        return answer(study, simple.isEmpty() ? tried : simple, free, ranked, rounds.complete());
    }

    private Optimum answer(
            CornerStudy study, List<Tried> simple, List<Tried> free, List<Tried> ranked, boolean complete) {
        List<Family> families = new ArrayList<>();
        Optional<Finding> best = Optional.empty();
        for (ReleaseShape shape : SIMPLE) {
            Optional<Finding> finding = quickest(simple.stream().filter(one -> one.shape().equals(shape)))
                    .flatMap(one -> checked(study, one.plan()));
            finding.ifPresent(one -> families.add(new Family(shape.name(), one.entry())));
            best = quicker(best, finding);
        }
        families.sort(Comparator.comparingDouble(family -> family.entry().time()));
        List<Restart> restarted = new ArrayList<>();
        for (int i = 0; i < free.size(); i++) {
            restarted.add(new Restart(
                    seed + i,
                    ranked.get(i % ranked.size()).shape().name(),
                    free.get(i).time()));
        }
        List<Tried> byTime = Stream.concat(free.stream(), simple.stream())
                .filter(one -> !Double.isNaN(one.time()))
                .sorted(Comparator.comparingDouble(Tried::time)).toList();
        for (Tried one : byTime) {
            Optional<Finding> finding = checked(study, one.plan());
            if (finding.isPresent()) {
                best = quicker(best, finding);
                break;
            }
        }
        return new Optimum(best, study.bound().time(), families, restarted, complete);
    }

    /** The entry of a release by the full search, or from the brake point of the quick one if that is quicker. */
    private static Optional<Finding> checked(CornerStudy study, BrakePlan plan) {
        Finding latest = study.latest(plan);
        EntryResult own = study.simulator().run(plan.withBrakePoint(plan.brakePoint() - ON_THE_SAFE_SIDE));
        Optional<Finding> quick = study.allowance().met(own)
                ? Optional.of(new Finding(own, true, latest.inHand()))
                : Optional.empty();
        return quicker(Optional.of(latest).filter(Finding::found), quick);
    }

    /** The quick search reads brake points between trials; this much earlier, m, the margin is kept for certain. */
    private static final double ON_THE_SAFE_SIDE = 0.02;

    private static Optional<Finding> quicker(Optional<Finding> a, Optional<Finding> b) {
        return Stream.of(a, b)
                .flatMap(Optional::stream)
                .min(Comparator.comparingDouble(one -> one.entry().time()));
    }

    private static Optional<Tried> quickest(Stream<Tried> tried) {
        return tried.filter(one -> !Double.isNaN(one.time())).min(Comparator.comparingDouble(Tried::time));
    }

    private List<BrakePlan> coarse(CornerStudy study) {
        double limit = study.lockLimit();
        double apex = study.simulator().apex();
        List<BrakePlan> plans = new ArrayList<>();
        for (ReleaseShape shape : SIMPLE) {
            for (double peak : PEAKS) {
                for (double start : STARTS) {
                    for (double end : ENDS) {
                        plans.add(new BrakePlan(
                                0, peak * limit, buildUpTime, new Release(shape, start * apex, end * apex)));
                    }
                }
            }
        }
        return plans;
    }

    private static Tried first(CornerStudy study, BrakePlan plan, Rounds rounds) {
        QuickBrakePoint.Answer answer = new QuickBrakePoint(study).find(plan);
        rounds.count();
        return new Tried(plan.release().shape(), plan.withBrakePoint(answer.brakePoint()), 1, answer.time());
    }

    /** The best of one simple shape. */
    private static Tried within(CornerStudy study, Tried start, Rounds rounds) {
        ReleaseCost cost = new ReleaseCost(study, start.plan(), START_DRIFT, Optional.of(start.shape()));
        return nearby(cost, cost.start(), start.shape(), SIMPLE_EVALUATIONS, rounds);
    }

    private Tried free(CornerStudy study, Tried start, long ownSeed, Rounds rounds) {
        ReleaseCost cost = new ReleaseCost(study, start.plan(), start.driftShare(), Optional.empty());
        ReleaseSpace space = cost.space();
        double[] spread = new double[space.size()];
        java.util.Arrays.fill(spread, SPREAD);
        int wide = (int) (WIDE_SHARE * evaluations);
        Search.Found found = new Search(space.low(), space.high(), wide, rounds::stopped)
                .wide(rounds.counting(cost), cost.start(), spread, ownSeed);
        return nearby(cost, found.point(), start.shape(), evaluations - wide, rounds);
    }

    private static Tried nearby(ReleaseCost cost, double[] start, ReleaseShape shape, int most, Rounds rounds) {
        ReleaseSpace space = cost.space();
        double[] point = start;
        double time = Double.NaN;
        int left = most;
        for (int i = 0; i < RADII.length && left > 0; i++) {
            Search.Found found = new Search(space.low(), space.high(), left, rounds::stopped)
                    .nearby(rounds.counting(cost), point, RADII[i]);
            point = found.point();
            time = found.cost();
            left -= found.evaluations();
        }
        rounds.skip(Math.max(0, left));
        return new Tried(shape, cost.plan(point), ReleaseSpace.driftShare(point), time);
    }
}
