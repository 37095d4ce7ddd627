package org.foreload.strategy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import org.foreload.braking.Braking;
import org.foreload.conventions.Checks;
import org.foreload.entry.EntryResult;
import org.foreload.strategy.Exploration.Candidate;
import org.foreload.strategy.SweepMemory.Found;
import org.foreload.study.Sweep;

/**
 * Tries many releases in one corner, each from its own latest brake point, and compares them with the best
 * straight-line braking, which is the best of all where no release is quicker.
 *
 * <p>Each release is searched for by coarse runs alone and by itself, so that neither threads nor parts of a sweep
 * change what is found. Only what is quickest is driven with full accuracy, and only the plans worth a choice, those
 * that trade up to {@value BrakePointSearch#WORTH_A_CHOICE} s for having more in hand, are asked how much that is.
 *
 * <p>A sweep tries a grid and no more. The command line's main job goes on from there and refines the best of each
 * shape: that is {@link org.foreload.optimum.ShapeRanking#explore ShapeRanking.explore}.
 *
 * <p>A stop, or an interrupt of the thread that called, leaves out what was not begun; then the answer is not
 * {@link Exploration#complete() complete}, and after an interrupt that left some straight-line braking untried it has
 * no baseline.
 *
 * @param study car, corner, driver and margin
 * @param plan which releases
 */
public record ReleaseSweep(CornerStudy study, SweepPlan plan) {

    /**
     * Checks that both are there.
     *
     * @throws NullPointerException if an argument is null; its name is the message
     */
    public ReleaseSweep {
        Objects.requireNonNull(study, "study");
        Objects.requireNonNull(plan, "plan");
    }

    /** The releases of the sweep. */
    public List<Braking> releases() {
        return plan.releases(study.lockLimit(), study.apexes());
    }

    /** Tries them all; see {@link #run(Sweep, SweepMemory)}. */
    public Exploration run(Sweep sweep) {
        return run(sweep, SweepMemory.NONE);
    }

    /**
     * Tries the releases, but those that are remembered.
     *
     * @param sweep on how many threads, and who watches the progress
     * @param memory what an earlier run of the same sweep, with the same study, has found
     */
    public Exploration run(Sweep sweep, SweepMemory memory) {
        Objects.requireNonNull(sweep, "sweep");
        Objects.requireNonNull(memory, "memory");
        return refined(coarse(sweep, memory), List.of(), 0);
    }

    /**
     * The same, but what is in hand is not asked yet and no best is marked: what {@link #refined} goes on from. Where
     * no release keeps the margin from a brake point near its estimate, all are tried again from farther back.
     *
     * @param sweep on how many threads, and who watches the progress
     * @param memory what an earlier run of the same sweep, with the same study, has found
     */
    public Exploration coarse(Sweep sweep, SweepMemory memory) {
        Objects.requireNonNull(sweep, "sweep");
        Objects.requireNonNull(memory, "memory");
        List<Braking> releases = releases();
        List<Candidate> tried = all(sweep.run(releases, release -> candidate(release, memory)));
        if (tried.size() == releases.size() && tried.stream().noneMatch(Candidate::made)) {
            tried = all(
                    sweep.run(releases, release -> Candidate.of(study.search().latest(release))));
        }
        boolean compared = tried.stream().anyMatch(Candidate::made);
        Optional<Candidate> baseline =
                compared ? StraightLine.best(study, plan.buildUpTime(), sweep).map(Candidate::of) : Optional.empty();
        boolean lacking =
                compared && baseline.isEmpty() && Thread.currentThread().isInterrupted();
        return new Exploration(
                tried, Optional.empty(), baseline, study.bound().time(), releases.size() + (lacking ? 1 : 0));
    }

    private static List<Candidate> all(List<Optional<Candidate>> found) {
        return found.stream().flatMap(Optional::stream).toList();
    }

    /**
     * Searches a part of the releases: every {@code of}-th, from the {@code part}-th on. All parts together, as a
     * memory, make the whole sweep.
     *
     * @param part 1 to {@code of}
     * @param of number of parts
     * @param sweep on how many threads, and who watches the progress; a stop leaves out what was not begun
     * @param memory what an earlier run has found
     * @return what was found, in the order of the releases
     */
    public Map<Braking, Found> part(int part, int of, Sweep sweep, SweepMemory memory) {
        Objects.requireNonNull(sweep, "sweep");
        Objects.requireNonNull(memory, "memory");
        Checks.within("part", part, 1, of);
        List<Braking> all = releases();
        List<Braking> own = IntStream.range(0, all.size())
                .filter(i -> i % of == part - 1)
                .mapToObj(all::get)
                .toList();
        List<Optional<Found>> found = sweep.run(own, release -> found(release, memory));
        Map<Braking, Found> done = new LinkedHashMap<>();
        for (int i = 0; i < own.size(); i++) {
            Braking release = own.get(i);
            found.get(i).ifPresent(one -> done.put(release, one));
        }
        return done;
    }

    private Found found(Braking release, SweepMemory memory) {
        return memory.recall(release).orElseGet(() -> {
            Trial trial = searched(release, memory);
            return new Found(trial.point(), trial.met());
        });
    }

    private Trial searched(Braking release, SweepMemory memory) {
        Trial trial = study.search().quickest(release);
        memory.keep(release, new Found(trial.point(), trial.met()));
        return trial;
    }

    /**
     * A sweep together with more releases, found by looking on from what it found.
     *
     * @param done sweep of this study
     * @param more found with the same margin
     * @param left how many others a stop kept from being looked for, 0 or more
     */
    public Exploration refined(Exploration done, List<Finding> more, int left) {
        return marked(compared(done, more, left));
    }

    /**
     * The same best, but what other plans have in hand is not asked, and none is marked for it: for who goes on from
     * the best.
     *
     * @param done sweep of this study
     * @param more found with the same margin
     * @param left how many others a stop kept from being looked for, 0 or more
     */
    public Exploration compared(Exploration done, List<Finding> more, int left) {
        Objects.requireNonNull(done, "done");
        Objects.requireNonNull(more, "more");
        Checks.notNegative("left", left);
        List<Candidate> all = new ArrayList<>(done.candidates());
        more.stream().map(Candidate::of).map(Candidate::withoutProfile).forEach(all::add);
        return exploration(all, done.baseline(), done.planned() + more.size() + left);
    }

    /** Searches, or drives what is remembered. */
    private Candidate candidate(Braking release, SweepMemory memory) {
        Optional<Found> known = memory.recall(release);
        if (known.isEmpty()) {
            Trial trial = searched(release, memory);
            return Candidate.of(trial);
        }
        Trial again = study.search().trial(release.from(known.get().brakePoint()));
        return new Candidate(again.entry(), known.get().found(), Double.NaN, false);
    }

    private Exploration exploration(List<Candidate> tried, Optional<Candidate> baseline, int planned) {
        List<Candidate> candidates = new ArrayList<>(tried);
        Optional<Candidate> best = confirmed(candidates);
        boolean straight = baseline.isPresent() && !(best.isPresent() && quicker(best.get(), baseline.get()));
        if (straight) {
            candidates.add(baseline.get().withoutProfile());
            best = baseline;
        }
        // Who does not brake trails nothing, wherever the foot leaves the throttle.
        Optional<Candidate> compared = best.filter(one -> !one.entry().braked()).or(() -> baseline);
        return new Exploration(candidates, best, compared, study.bound().time(), straight ? planned + 1 : planned);
    }

    private static boolean quicker(Candidate one, Candidate other) {
        return one.entry().time() < other.entry().time();
    }

    /** The quickest, driven with full accuracy; what does not hold then is no candidate for it. */
    private Optional<Candidate> confirmed(List<Candidate> candidates) {
        while (true) {
            OptionalInt quickest = quickest(candidates);
            if (quickest.isEmpty()) {
                return Optional.empty();
            }
            Candidate one = candidates.get(quickest.getAsInt());
            if (!Double.isNaN(one.inHand())) {
                EntryResult whole = study.simulator().run(one.entry().plan());
                return Optional.of(new Candidate(whole, true, one.inHand(), one.onFront()));
            }
            BrakePointSearch search = study.search();
            Finding finding =
                    search.confirmed(quickestOfAll(search, study.allowance().trial(one.entry())));
            candidates.set(quickest.getAsInt(), Candidate.of(finding).withoutProfile());
        }
    }

    /** What the search by steps may have passed over: a brake point of the same release that is quicker still. */
    private static Trial quickestOfAll(BrakePointSearch search, Trial found) {
        Trial last = search.lastOfAll(found.entry().plan().braking());
        Trial quickest = last.met() ? search.quickestOfAll(last) : found;
        return quickest.entry().time() < found.entry().time() ? quickest : found;
    }

    private static OptionalInt quickest(List<Candidate> candidates) {
        return IntStream.range(0, candidates.size())
                .filter(i -> candidates.get(i).made())
                .boxed()
                .min(Comparator.comparingDouble(i -> candidates.get(i).entry().time()))
                .map(OptionalInt::of)
                .orElse(OptionalInt.empty());
    }

    /**
     * Marks the candidates that no other beats both in time and in what is in hand, and finds what these have: from the
     * quickest on, each is asked only for more than all before it.
     */
    private Exploration marked(Exploration done) {
        if (done.best().isEmpty()) {
            return done;
        }
        List<Candidate> candidates = new ArrayList<>(done.candidates());
        double most = done.best().get().entry().time() + BrakePointSearch.WORTH_A_CHOICE;
        // Compared with each other wherever they stand.
        Set<Candidate> compared = Collections.newSetFromMap(new IdentityHashMap<>());
        compared.addAll(Exploration.bestOfEachShape(candidates));
        List<Candidate> slower = candidates.stream()
                .filter(one -> one.made() && (one.entry().time() <= most || compared.contains(one)))
                .sorted(Comparator.comparingDouble(one -> one.entry().time()))
                .toList();
        Map<Candidate, Candidate> known = new IdentityHashMap<>();
        double last = Double.NEGATIVE_INFINITY;
        for (Candidate one : slower) {
            double here = inHand(one, compared.contains(one) ? Double.NEGATIVE_INFINITY : last);
            known.put(one, new Candidate(one.entry(), true, here, here > last));
            last = here > last ? here : last;
        }
        candidates.replaceAll(one -> known.getOrDefault(one, one));
        return new Exploration(candidates, done.best(), done.baseline(), done.boundTime(), done.planned());
    }

    /** Metres in hand; NaN where that is no more than another has; below zero for that, it is asked in any case. */
    private double inHand(Candidate one, double others) {
        if (!Double.isNaN(one.inHand())) {
            return one.inHand();
        }
        boolean asked =
                others < 0 || InHand.beats(study.simulator(), one.entry().plan(), others);
        return asked ? InHand.of(study.simulator(), one.entry().plan()) : Double.NaN;
    }
}
