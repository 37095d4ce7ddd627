package org.foreload.optimum;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.entry.EntryResult;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.Exploration.Candidate;
import org.foreload.strategy.Finding;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.StraightLine;
import org.foreload.strategy.SweepMemory;
import org.foreload.strategy.Trial;
import org.foreload.study.Rounds;
import org.foreload.study.Sweep;

/**
 * Settles which release shape is quickest. A sweep tries a grid, and the grid may suit one shape and not the next: so
 * the best of each shape is refined, peak, start, end and brake point free, before shapes are compared. Time falls into
 * several valleys, of hard and gentle peaks and of early and late releases: so a few more descents begin in others than
 * these, and the quickest are refined once more from where they ended.
 */
public final class ShapeRanking {

    /** Entries tried for each shape, at most; most descents end sooner. */
    static final int ENTRIES = 160;

    /** How many descents begin elsewhere than at the best of each shape. */
    static final int MORE = 3;

    /** How many of the quickest shapes are refined once more, from where the first descent ended. */
    static final int AGAIN = 2;

    /**
     * Difference of time, s, below which two shapes tie: what the search leaves open. The best of a shape from the
     * standard sweep and from one of half its spacing, both refined, differ by that in the mean over demo cars and
     * corners.
     */
    public static final double TIE = 0.05;

    private ShapeRanking() {}

    /**
     * Finds the quickest release: tries those of a sweep, {@linkplain #refine refines} the best of each shape, and
     * compares all of them with the best straight-line braking. This is what the command line calls {@code explore}.
     * After a stop or an interrupt the answer is not {@linkplain Exploration#complete() complete}.
     *
     * @param releases car, corner, driver and margin, and the releases to begin with: the command line takes
     *     {@link org.foreload.strategy.SweepPlan#standard()}
     * @param sweep on how many threads, and who watches the progress: it hears of the releases to begin with, and is
     *     asked all along whether to go on
     * @throws org.foreload.conventions.InvalidValueException if the corner has no bend
     */
    public static Exploration explore(ReleaseSweep releases, Sweep sweep) {
        return explore(releases, sweep, SweepMemory.NONE);
    }

    /**
     * The same, going on from an earlier run: releases that it has tried are not searched for again.
     *
     * @param releases car, corner, driver and margin, and the releases to begin with
     * @param sweep on how many threads, and who watches the progress
     * @param memory what an earlier run of the same sweep, with the same study, has found
     */
    public static Exploration explore(ReleaseSweep releases, Sweep sweep, SweepMemory memory) {
        Objects.requireNonNull(releases, "releases");
        Objects.requireNonNull(sweep, "sweep");
        Objects.requireNonNull(memory, "memory");
        return refine(releases, releases.coarse(sweep, memory), sweep.unreported());
    }

    /**
     * The sweep with the refined best of each shape added to it. After a stop or an interrupt that left out a shape it
     * is not complete.
     *
     * @param releases the sweep that found it
     * @param grid what it found, {@link ReleaseSweep#coarse coarse} or whole; nothing is added if it was stopped
     * @param sweep on how many threads, and who watches the progress
     */
    public static Exploration refine(ReleaseSweep releases, Exploration grid, Sweep sweep) {
        Objects.requireNonNull(releases, "releases");
        Objects.requireNonNull(grid, "grid");
        Objects.requireNonNull(sweep, "sweep");
        Quicker quicker = quicker(releases.study(), grid, sweep);
        return releases.refined(grid, quicker.found(), quicker.left());
    }

    /**
     * The same best as that of {@link #explore}, without what other plans have in hand.
     *
     * @param releases car, corner, driver and margin, and the releases to begin with
     * @param sweep on how many threads, and who watches the progress
     * @throws org.foreload.conventions.InvalidValueException if the corner has no bend
     */
    public static Exploration compared(ReleaseSweep releases, Sweep sweep) {
        Objects.requireNonNull(releases, "releases");
        Objects.requireNonNull(sweep, "sweep");
        Exploration grid = releases.coarse(sweep, SweepMemory.NONE);
        Quicker quicker = quicker(releases.study(), grid, sweep.unreported());
        return releases.compared(grid, quicker.found(), quicker.left());
    }

    /**
     * The same from a grid that is known: what the search for the best release goes on from, so that it never ends
     * behind.
     *
     * @param rounds counts the entries that refine the sweep
     */
    static Exploration compared(ReleaseSweep releases, Exploration grid, Rounds rounds) {
        Quicker quicker = quicker(releases.study(), grid, rounds.counting(ENTRIES));
        return releases.compared(grid, quicker.found(), quicker.left());
    }

    /** What refines a sweep, and how many descents a stop left out. */
    private record Quicker(List<Finding> found, int left) {}

    private static Quicker quicker(CornerStudy study, Exploration grid, Sweep sweep) {
        List<EntryResult> starts = grid.complete()
                ? starts(grid.candidates().stream()
                        .filter(Candidate::made)
                        .map(Candidate::entry)
                        .filter(one -> one.braked() && !StraightLine.is(one.plan()))
                        .toList())
                : List.of();
        List<Optional<Finding>> found = refined(study, starts, sweep);
        List<EntryResult> best =
                bestOfEach(Stream.concat(
                                starts.stream(),
                                found.stream().flatMap(Optional::stream).map(Finding::entry)))
                        .stream()
                        .limit(found.size() < starts.size() ? 0 : AGAIN)
                        .toList();
        List<Optional<Finding>> again = refined(study, best, sweep);
        List<Finding> quicker = Stream.of(found, again)
                .flatMap(List::stream)
                .flatMap(Optional::stream)
                .toList();
        return new Quicker(quicker, starts.size() - found.size() + best.size() - again.size());
    }

    private static List<Optional<Finding>> refined(CornerStudy study, List<EntryResult> starts, Sweep sweep) {
        return sweep.run(starts, start -> refined(study, start)).stream()
                .flatMap(Optional::stream)
                .toList();
    }

    /**
     * The quickest of some releases, each from its quickest brake point, one of each shape, refined as in
     * {@link #refine}; quickest first. A stop leaves out what was not begun.
     *
     * @param study car, corner, driver and margin
     * @param releases what is tried; none of them straight-line braking
     * @param rounds counts the releases and the entries that refine them
     */
    static List<EntryResult> best(CornerStudy study, List<Braking> releases, Rounds rounds) {
        List<EntryResult> once = refined(study, starts(tried(study, releases, rounds)), rounds);
        List<EntryResult> again = refined(study, once.stream().limit(AGAIN).toList(), rounds);
        return bestOfEach(Stream.concat(once.stream(), again.stream()));
    }

    /** The same, without descents from other valleys, and none that goes on where one has ended. */
    static List<EntryResult> once(CornerStudy study, List<Braking> releases, Rounds rounds) {
        return refined(study, bestOfEach(tried(study, releases, rounds).stream()), rounds);
    }

    private static List<EntryResult> tried(CornerStudy study, List<Braking> releases, Rounds rounds) {
        return rounds
                .run(releases, release -> {
                    Trial trial = study.search().quickest(release);
                    rounds.count();
                    return trial;
                })
                .stream()
                .filter(Trial::met)
                .map(Trial::entry)
                .toList();
    }

    /** The quickest of each shape among some entries and what refines them, quickest first. */
    private static List<EntryResult> refined(CornerStudy study, List<EntryResult> starts, Rounds rounds) {
        List<Optional<EntryResult>> found = rounds.run(starts, start -> {
            Optional<EntryResult> one = refined(study, start).map(Finding::entry);
            rounds.skip(ENTRIES);
            return one;
        });
        return bestOfEach(Stream.concat(starts.stream(), found.stream().flatMap(Optional::stream)));
    }

    /**
     * Where descents begin: the quickest of each shape, and the quickest few of those that ease from another peak at
     * another station than any of these.
     */
    private static List<EntryResult> starts(List<EntryResult> grid) {
        List<EntryResult> starts = new ArrayList<>(bestOfEach(grid.stream()));
        Set<List<Double>> valleys = starts.stream().map(ShapeRanking::valley).collect(Collectors.toSet());
        grid.stream()
                .sorted(Comparator.comparingDouble(EntryResult::time))
                .filter(one -> valleys.add(valley(one)))
                .limit(MORE)
                .forEach(starts::add);
        return starts;
    }

    private static List<Double> valley(EntryResult entry) {
        return List.of(entry.plan().peakDeceleration(), entry.plan().release().start());
    }

    /** The quickest of each shape, in that order. */
    static List<EntryResult> bestOfEach(Stream<EntryResult> entries) {
        Map<String, EntryResult> best = new LinkedHashMap<>();
        entries.sorted(Comparator.comparingDouble(EntryResult::time))
                .forEach(one -> best.putIfAbsent(one.plan().release().shape().name(), one));
        return List.copyOf(best.values());
    }

    /**
     * The same shape of release with peak, start, end and brake point looked for near those of an entry, driven with
     * full accuracy; empty where nothing near is quicker.
     *
     * @param study car, corner, driver and margin
     * @param start an entry that keeps the margin
     */
    public static Optional<Finding> refined(CornerStudy study, EntryResult start) {
        Objects.requireNonNull(study, "study");
        Objects.requireNonNull(start, "start");
        return new ReleaseDescent(study, start.plan(), ENTRIES)
                .quicker()
                .map(BrakePlan::rounded)
                .map(found -> study.latest(found.braking(), found.brakePoint()))
                .filter(Finding::found)
                .filter(finding -> finding.entry().time() < start.time());
    }

    /**
     * How many shapes, the quickest first, are no more than {@link #TIE} slower than the quickest; empty where no
     * release makes the corner.
     *
     * @param ranked the best of each shape, quickest first
     */
    public static OptionalInt tied(List<Candidate> ranked) {
        Objects.requireNonNull(ranked, "ranked");
        if (ranked.isEmpty()) {
            return OptionalInt.empty();
        }
        double quickest = ranked.get(0).entry().time();
        return OptionalInt.of((int) ranked.stream()
                .filter(one -> one.entry().time() - quickest <= TIE)
                .count());
    }
}
