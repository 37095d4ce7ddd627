package org.foreload.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.foreload.braking.BrakePlan;
import org.foreload.conventions.InvalidValueException;
import org.foreload.envelope.FrictionEnvelope;
import org.foreload.recording.Estimate;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;
import org.foreload.recording.Run;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Car;

/**
 * Looks for what a driver could do otherwise in a recorded corner. The corner is driven again in the simulator, on the
 * line that was recorded, with a car that has the limits that were recorded; if that comes close enough to the
 * recording, each {@link Change} is tried by some amounts, alone, and those that gain most without failing too often
 * are given; and with them the two that gain clearly more together, if there are such.
 */
public final class Adviser {

    private final Run run;
    private final List<RecordedCorner> corners;
    private final FrictionEnvelope limits;
    private final Optional<Car> car;
    private final AdviceSettings settings;

    /**
     * An adviser for one lap.
     *
     * @param run the lap
     * @param corners its corners
     * @param limits what its car has shown
     * @param car the car, where it is known; else one is fitted
     * @param settings when advice is given
     */
    public Adviser(
            Run run,
            List<RecordedCorner> corners,
            FrictionEnvelope limits,
            Optional<Car> car,
            AdviceSettings settings) {
        this.run = Objects.requireNonNull(run, "run");
        this.corners = List.copyOf(Objects.requireNonNull(corners, "corners"));
        this.limits = Objects.requireNonNull(limits, "limits");
        this.car = Objects.requireNonNull(car, "car");
        this.settings = Objects.requireNonNull(settings, "settings");
    }

    /**
     * Advice for a corner, on the calling thread.
     *
     * @param index of the corner in the list
     * @param habit of the driver there
     */
    public CornerAdvice of(int index, Habit habit) {
        return of(List.of(index), List.of(Objects.requireNonNull(habit, "habit")), new Sweep(1, Sweep.Progress.SILENT))
                .get(0);
    }

    /**
     * Advice for every corner.
     *
     * @param habits of the driver, one for each corner
     * @param sweep on how many threads; the answer is the same with any number. Its progress counts corners driven
     *     again, then changes tried by a little, then those tried by more, then changes driven by the driver who
     *     scatters, then corners where two are tried together
     * @return as many as there are corners; where a stop came first, the reason is that, and what was found stays
     */
    public List<CornerAdvice> all(List<Habit> habits, Sweep sweep) {
        Objects.requireNonNull(habits, "habits");
        Objects.requireNonNull(sweep, "sweep");
        return of(IntStream.range(0, corners.size()).boxed().toList(), habits, sweep);
    }

    private List<CornerAdvice> of(List<Integer> indices, List<Habit> habits, Sweep sweep) {
        List<Optional<Case>> cases = sweep.run(
                IntStream.range(0, indices.size()).boxed().toList(), i -> begun(indices.get(i), habits.get(i)));
        List<Case> open = cases.stream()
                .flatMap(Optional::stream)
                .filter(one -> one.advice() == null)
                .toList();
        weigh(open, sweep);
        List<CornerAdvice> all = new ArrayList<>();
        for (int i = 0; i < indices.size(); i++) {
            RecordedCorner did = corners.get(indices.get(i));
            DriverScatter scatter = habits.get(i).scatter();
            all.add(cases.get(i)
                    .map(one -> one.advice() == null ? one.answer() : one.advice())
                    .orElseGet(() -> none(did, scatter, Optional.empty(), STOPPED)));
        }
        return all;
    }

    /** The corner driven again, ready to be changed; or the advice, where there is none. */
    private Case begun(int index, Habit habit) {
        DriverScatter scatter = habit.scatter();
        RecordedCorner did = corners.get(index);
        double from = index == 0 ? run.first() : corners.get(index - 1).bend().end();
        double to = index + 1 == corners.size() ? run.last() : begins(corners.get(index + 1));
        if (!did.braked()) {
            boolean hole = run.holes().stream()
                    .anyMatch(one -> one.to() > from && one.from() < did.bend().end());
            String why = hole ? "the recording has a hole there" : "the brake was not used";
            return Case.closed(none(did, scatter, Optional.empty(), why));
        }
        if (!DrivenLine.possible(run, did, from, to)) {
            return Case.closed(
                    none(did, scatter, Optional.empty(), "there is no room before the brake point or behind the bend"));
        }
        DrivenLine line = DrivenLine.of(run, did, from, to);
        Car begun = car.orElseGet(() -> FittedCar.of(limits, run, line.first(), line.last()));
        ReplicaFit.Fitted fitted;
        try {
            fitted = ReplicaFit.of(run, did, begun, line);
        } catch (InvalidValueException e) {
            return Case.closed(none(did, scatter, Optional.empty(), "the fitted car cannot be slowed for this corner"));
        }
        Likeness likeness = fitted.likeness();
        return likeness.unlike(settings)
                .map(why -> Case.closed(none(did, scatter, Optional.of(likeness), why)))
                .orElseGet(() -> new Case(null, did, habit, fitted, new GainBand(did, fitted, limits)));
    }

    /** Why there is no advice, or no more of it, where a stop came first. */
    private static final String STOPPED = "the search for it was stopped";

    private static double begins(RecordedCorner corner) {
        double turnIn = corner.get(Measure.TURN_IN).value();
        return corner.braked() ? Math.min(turnIn, corner.get(Measure.BRAKE_ON).value()) : turnIn;
    }

    private static CornerAdvice none(
            RecordedCorner did, DriverScatter scatter, Optional<Likeness> likeness, String why) {
        return new CornerAdvice(did.bend().number(), scatter, likeness, List.of(), Optional.of(why));
    }

    /** Does some work, each piece for a corner, and notes which corners a stop kept from being searched to the end. */
    private static <A, R> List<Optional<R>> run(
            Sweep sweep, List<A> work, Function<A, Case> corner, Function<A, R> computation) {
        List<Optional<R>> results = sweep.run(work, computation);
        for (int i = 0; i < work.size(); i++) {
            corner.apply(work.get(i)).stopped |= results.get(i).isEmpty();
        }
        return results;
    }

    private record Tried(List<Step> steps, BrakePlan plan, double gain) {}

    /** A corner that is being worked on; its advice is null until there is a reason for none. */
    private static final class Case {

        private final CornerAdvice advice;
        private final RecordedCorner did;
        private final Habit habit;
        private final ReplicaFit.Fitted fitted;
        private final GainBand band;

        /** The amounts of each change that gain, best first; the change that may gain most first. */
        private final List<List<Tried>> changes = new ArrayList<>();

        private final List<Advice> items = new ArrayList<>();
        private int next;
        private boolean stopped;

        Case(CornerAdvice advice, RecordedCorner did, Habit habit, ReplicaFit.Fitted fitted, GainBand band) {
            this.advice = advice;
            this.did = did;
            this.habit = habit;
            this.fitted = fitted;
            this.band = band;
        }

        static Case closed(CornerAdvice advice) {
            return new Case(advice, null, null, null, null);
        }

        CornerAdvice advice() {
            return advice;
        }

        /** Puts the item that gains most first; says whether there is more than one. */
        boolean ranked() {
            items.sort(Comparator.comparingDouble(one -> -one.gain().value()));
            return items.size() > 1;
        }

        CornerAdvice answer() {
            Optional<String> waits = habit.atTheLimit() ? Optional.of(Habit.AT_THE_LIMIT) : Optional.empty();
            Optional<String> why = stopped ? Optional.of(STOPPED) : waits;
            return new CornerAdvice(did.bend().number(), habit.scatter(), Optional.of(fitted.likeness()), items, why)
                    .ordered(item -> false);
        }

        void tried(List<Tried> all) {
            for (Change change : Change.values()) {
                List<Tried> gains = new ArrayList<>(all.stream()
                        .filter(one -> one.steps().get(0).change() == change)
                        .toList());
                gains.sort(Comparator.comparingDouble(one -> -one.gain()));
                if (!gains.isEmpty()) {
                    changes.add(gains);
                }
            }
            changes.sort(Comparator.comparingDouble(gains -> -gains.get(0).gain()));
        }
    }

    /** A step that is tried in one corner. */
    private record Trial(Case of, Step step) {}

    /** The amounts of one change to one corner. */
    private record Round(Case of, List<Tried> gains) {}

    private void weigh(List<Case> open, Sweep sweep) {
        tryChanges(open, sweep);
        // As many changes at once as a corner lacks items: none is driven that one thread would not have driven.
        List<Round> rounds = rounds(open);
        while (!rounds.isEmpty()) {
            List<Optional<Optional<Advice>>> found = run(sweep, rounds, Round::of, this::safe);
            for (int i = 0; i < rounds.size(); i++) {
                found.get(i).flatMap(item -> item).ifPresent(rounds.get(i).of().items::add);
            }
            rounds = rounds(open);
        }
        List<Case> several = open.stream().filter(Case::ranked).toList();
        List<Optional<Optional<Advice>>> pairs = run(sweep, several, one -> one, this::both);
        for (int i = 0; i < several.size(); i++) {
            pairs.get(i).flatMap(pair -> pair).ifPresent(several.get(i).items::add);
        }
    }

    /** Drives each change by its smallest amounts, and by a larger one where the smaller one gains. */
    private void tryChanges(List<Case> open, Sweep sweep) {
        List<Trial> trials = new ArrayList<>();
        for (Case one : open) {
            for (Change change : judged(one)) {
                change.smallest().forEach(amount -> trials.add(new Trial(one, new Step(change, amount))));
            }
        }
        List<Optional<Optional<Tried>>> tried = new ArrayList<>(run(sweep, trials, Trial::of, this::tried));
        List<Trial> larger = new ArrayList<>();
        for (int i = 0; i < trials.size(); i++) {
            if (tried.get(i).flatMap(one -> one).filter(one -> one.gain() > 0).isPresent()) {
                Trial smaller = trials.get(i);
                smaller.step().otherAmounts().forEach(step -> larger.add(new Trial(smaller.of(), step)));
            }
        }
        tried.addAll(run(sweep, larger, Trial::of, this::tried));
        trials.addAll(larger);
        for (Case one : open) {
            one.tried(IntStream.range(0, trials.size())
                    .filter(i -> trials.get(i).of() == one)
                    .mapToObj(tried::get)
                    .flatMap(Optional::stream)
                    .flatMap(Optional::stream)
                    .filter(gained -> gained.gain() >= settings.leastGain())
                    .toList());
        }
    }

    /**
     * The changes that can be judged. What follows when the car comes faster to where it is at its limit no fitted car
     * knows; what another shape is worth hangs on how the car bears brake and cornering together, and a car that is
     * fitted to a single corner has not shown that.
     */
    private List<Change> judged(Case of) {
        if (of.habit.atTheLimit()) {
            return List.of(Change.LATER_AND_HARDER);
        }
        boolean shown = car.isPresent() || corners.size() > 1;
        return Stream.of(Change.values())
                .filter(change -> shown || change != Change.SHAPE)
                .toList();
    }

    private List<Round> rounds(List<Case> open) {
        List<Round> rounds = new ArrayList<>();
        for (Case one : open) {
            int until = Math.min(one.changes.size(), one.next + settings.most() - one.items.size());
            for (; one.next < until; one.next++) {
                rounds.add(new Round(one, one.changes.get(one.next)));
            }
        }
        return rounds;
    }

    /** Farthest off the line, m, that a change may carry the car beyond where it was. */
    private static final double MORE_DRIFT = 0.3;

    /**
     * How much more of the limits may be used where braking and cornering take alike than the driver has shown: no
     * recording says where a wheel stops before it does.
     */
    private static final double MIXED_MORE = 1.02;

    /**
     * Use there that is within what cars can do however their brakes are shared, shown or not: a little more than the
     * straight line from one limit to the other, which is at 0.71 half-way.
     */
    private static final double MIXED_SAFE = 0.8;

    private Optional<Tried> tried(Trial trial) {
        ReplicaFit.Fitted fitted = trial.of().fitted;
        Step step = trial.step();
        if (step.change() != Change.LATER_AND_HARDER) {
            return tried(trial.of(), List.of(step));
        }
        return fitted.replica()
                .harder(fitted.likeness().plan(), step.amount())
                .flatMap(harder -> tried(trial.of(), List.of(new Step(step.change(), step.amount(), harder))))
                .filter(one -> one.plan().peakDeceleration() <= FittedCar.borne(limits, trial.of().did));
    }

    private static Tried tried(Case of, List<Step> steps, BrakePlan plan) {
        Replica.Drive drive = of.fitted.replica().quickly(plan);
        Replica.Drive base = of.band.base();
        boolean kept = drive.made() && drive.drift() <= base.drift() + MORE_DRIFT;
        double gain = kept ? base.time() - drive.time() : Double.NEGATIVE_INFINITY;
        return new Tried(steps, plan, gain);
    }

    /** The amount that gains most among those that seldom fail. */
    private Optional<Advice> safe(Round round) {
        return round.gains().stream()
                .flatMap(one -> safe(round.of(), one).stream())
                .findFirst();
    }

    /** What was tried as advice, if it is certain to gain, stays within what was shown and seldom fails. */
    private Optional<Advice> safe(Case of, Tried one) {
        Replica replica = of.fitted.replica();
        if (replica.mixedUse(one.plan(), limits) > MIXED_MORE * Math.max(MIXED_SAFE, limits.mixedUse())) {
            return Optional.empty();
        }
        Estimate gain = of.band.of(one.steps(), one.gain());
        if (!(gain.low() > 0)) {
            return Optional.empty();
        }
        return replica.failures(one.plan(), of.habit.scatter().scatter(), settings)
                .map(failed -> new Advice(one.steps(), one.plan(), gain, failed));
    }

    /**
     * Two changes that belong together: the best pair of those that are advice alone, one of them by another amount if
     * that is better. The first of the two is always one that is advice alone, since it will be driven alone first.
     * What the pair gains more than the best single change is above zero even at the low end of its interval.
     */
    private Optional<Advice> both(Case of) {
        List<Tried> pairs = new ArrayList<>();
        List<Step> steps = of.items.stream()
                .map(item -> item.steps().get(0))
                .filter(step -> step.change() != Change.LATER_AND_HARDER)
                .toList();
        for (int i = 0; i < steps.size(); i++) {
            for (int j = i + 1; j < steps.size(); j++) {
                tried(of, List.of(steps.get(i), steps.get(j))).ifPresent(pairs::add);
            }
        }
        Comparator<Tried> mostFirst = Comparator.comparingDouble(one -> -one.gain());
        Optional<Tried> best = pairs.stream().min(mostFirst);
        best.ifPresent(pair -> {
            Step first = pair.steps().get(0);
            Step second = pair.steps().get(1);
            second.otherAmounts()
                    .forEach(other -> tried(of, List.of(first, other)).ifPresent(pairs::add));
            first.otherAmounts()
                    .forEach(other -> tried(of, List.of(second, other)).ifPresent(pairs::add));
        });
        Advice single = of.items.get(0);
        double alone = single.gain().value();
        return pairs.stream()
                .filter(one -> one.gain() > alone)
                .sorted(mostFirst)
                .filter(one -> of.band
                                .more(one.steps(), one.gain(), single.steps(), alone)
                                .low()
                        > 0)
                .flatMap(one -> safe(of, one).stream())
                .findFirst();
    }

    private static Optional<Tried> tried(Case of, List<Step> steps) {
        return Step.all(steps, of.fitted.likeness().plan()).map(plan -> tried(of, steps, plan));
    }
}
