package org.foreload.balance;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.foreload.braking.BrakePlan;
import org.foreload.driver.Reaction;
import org.foreload.driver.SpeedPlan;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.optimum.ShapeRanking;
import org.foreload.pedal.LockingRamp;
import org.foreload.risk.Risk;
import org.foreload.risk.RiskStudy;
import org.foreload.risk.Scatter;
import org.foreload.stability.EntryStability;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.Exploration.Candidate;
import org.foreload.strategy.Finding;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Car;

/**
 * What a number of the car's balance does to its entries: for each value the best release, with its own brake point, as
 * {@link ShapeRanking#explore explore} finds it for that car; which axle locks first, and what becomes of the entry
 * when the foot is harder or later than planned.
 *
 * <p>Every value is then driven with the same small scatter, and brakes so much earlier that no more of its entries
 * fail than accepted: values are compared at equal risk, and one trial that happens to fail decides nothing.
 *
 * @param releases what the search for each value begins with
 */
public record BalanceStudy(SweepPlan releases) {

    /** How much harder a driver brakes by mistake. */
    public static final double HARDER = 1.05;

    /** How much later a driver brakes by mistake, m. */
    public static final double LATER = 10;

    /** Share of the entries with a small scatter that may fail. */
    public static final double ACCEPTED = 0.1;

    /** The small scatter: what a driver cannot help, however good. */
    static final Scatter SCATTER = Scatter.EXPERT;

    /** Entries driven with it from each brake point, and the seed of their draws: the same for every value. */
    private static final int SAMPLES = 32;

    private static final long SEED = 1;

    /** How much earlier, m at a time and at most, a value may brake to keep failures within what is accepted. */
    private static final double BACK_STEP = 1;

    private static final double FARTHEST_BACK = 8;

    /** Refuses null. */
    public BalanceStudy {
        Objects.requireNonNull(releases, "releases");
    }

    /** With the releases of the {@link SweepPlan#standard standard sweep}. */
    public static BalanceStudy standard() {
        return new BalanceStudy(SweepPlan.standard());
    }

    /**
     * Sweeps one axis with a driver whose foot reacts as that of a practised one.
     *
     * @param base car, corner and driver
     * @param axis what is changed
     * @param sweep on how many threads, and who watches the progress
     */
    public Balance run(CornerStudy base, BalanceAxis axis, Sweep sweep) {
        return run(base, axis, Reaction.practised(), sweep);
    }

    /**
     * Sweeps one axis. A stop, or an interrupt of the thread that called, leaves out what was not begun, be it a value
     * or the comparison of one with its neighbours, of which the progress does not hear; then the answer is not
     * {@link Balance#complete() complete}, and recommends nothing.
     *
     * @param base car, corner and driver
     * @param axis what is changed
     * @param reaction of the foot that strays from the plan; {@link Reaction#NONE} to brake as planned
     * @param sweep on how many threads, and who watches the progress
     */
    public Balance run(CornerStudy base, BalanceAxis axis, Reaction reaction, Sweep sweep) {
        Objects.requireNonNull(base, "base");
        Objects.requireNonNull(axis, "axis");
        Objects.requireNonNull(reaction, "reaction");
        Objects.requireNonNull(sweep, "sweep");
        Car car = base.simulator().car();
        List<Optional<BalanceRow>> alone = sweep
                .run(
                        axis.values(),
                        value -> alone(
                                base.with(
                                        axis.parameter().with(car, value),
                                        base.simulator().driver()),
                                value,
                                reaction,
                                sweep))
                .stream()
                .map(one -> one.flatMap(row -> row))
                .toList();
        List<BalanceRow> rows = alone.stream().flatMap(Optional::stream).toList();
        return rows.size() < axis.values().size()
                ? Balance.of(axis, axis.parameter().of(car), rows, false)
                : compared(base, axis, rows, reaction, sweep.unreported());
    }

    /** The row of a value by itself; empty after a stop that left out a part of its search. */
    private Optional<BalanceRow> alone(CornerStudy study, double value, Reaction reaction, Sweep sweep) {
        Exploration found = ShapeRanking.compared(new ReleaseSweep(study, releases), sweep.within());
        if (!found.complete()) {
            return Optional.empty();
        }
        return Optional.of(found.best()
                .map(best -> row(study, best.entry(), reaction, value))
                .orElseGet(() -> notMade(study, farthest(found), value)));
    }

    /** The plan of the attempt that came farthest. */
    private static BrakePlan farthest(Exploration found) {
        return found.candidates().stream()
                .map(Candidate::entry)
                .max(Comparator.comparingDouble(BalanceStudy::end))
                .orElseThrow()
                .plan();
    }

    /** Station of the last that happened, m. */
    private static double end(EntryResult entry) {
        return entry.events().stream().mapToDouble(EntryEvent::station).max().orElse(Double.NEGATIVE_INFINITY);
    }

    /** How often neighbours are compared, at most: what one has found goes so many values far. */
    private static final int PASSES = 8;

    /** Shares of the neighbour's peak tried where that peak itself does not keep the margin. */
    private static final List<Double> GENTLER = List.of(1.0, 0.95, 0.9);

    /** The quicker one of those that fail no more often than accepted, or else the one that fails less often. */
    private static final Comparator<BalanceRow> BETTER_FIRST = Comparator.<BalanceRow>comparingDouble(
                    row -> Math.max(ACCEPTED, row.failureShare()))
            .thenComparingDouble(BalanceRow::time);

    /**
     * Neighbours have nearly the same best release: so each value goes on from what a better neighbour has found, since
     * its own descents may have ended in another valley.
     */
    private static Balance compared(
            CornerStudy base, BalanceAxis axis, List<BalanceRow> alone, Reaction reaction, Sweep sweep) {
        List<Integer> indices = IntStream.range(0, alone.size()).boxed().toList();
        List<BalanceRow> rows = alone;
        Set<Integer> news = Set.copyOf(indices);
        boolean complete = true;
        for (int pass = 0; pass < PASSES && complete && !news.isEmpty(); pass++) {
            List<BalanceRow> before = rows;
            Set<Integer> changed = news;
            List<Optional<BalanceRow>> after = sweep.run(indices, index -> {
                List<BalanceRow> neighbours = Stream.of(index - 1, index + 1)
                        .filter(changed::contains)
                        .map(before::get)
                        .toList();
                return better(base, before.get(index), neighbours, reaction);
            });
            complete = after.stream().allMatch(Optional::isPresent);
            rows = indices.stream()
                    .map(index -> after.get(index).orElse(before.get(index)))
                    .toList();
            List<BalanceRow> now = rows;
            news = indices.stream()
                    .filter(index -> now.get(index) != before.get(index))
                    .collect(Collectors.toSet());
        }
        return Balance.of(axis, axis.parameter().of(base.simulator().car()), rows, complete);
    }

    /** The row, or what its value finds from the releases of better neighbours where that is better. */
    private static BalanceRow better(CornerStudy base, BalanceRow row, List<BalanceRow> neighbours, Reaction reaction) {
        return neighbours.stream()
                .filter(one -> BETTER_FIRST.compare(one, row) < 0)
                .flatMap(one -> from(base, one, row, reaction).stream())
                .filter(one -> BETTER_FIRST.compare(one, row) < 0)
                .min(BETTER_FIRST)
                .orElse(row);
    }

    /**
     * The row of a value from the release of its neighbour, and what is quicker near it. Where that peak does not keep
     * the margin here it is taken as the same share of what the brakes can do, or a little less.
     */
    private static Optional<BalanceRow> from(
            CornerStudy base, BalanceRow neighbour, BalanceRow row, Reaction reaction) {
        CornerStudy study = base.with(row.car(), base.simulator().driver());
        CornerStudy other = base.with(neighbour.car(), base.simulator().driver());
        BrakePlan plan = neighbour.best().plan();
        double same = plan.peakDeceleration() * study.lockLimit() / other.lockLimit();
        return Stream.concat(Stream.of(plan), GENTLER.stream().map(share -> plan.withPeakDeceleration(share * same)))
                .map(one -> study.latest(one.braking(), one.brakePoint()))
                .filter(Finding::found)
                .findFirst()
                .map(start -> ShapeRanking.refined(study, start.entry()).orElse(start))
                .map(Finding::entry)
                .filter(entry -> !row.steady() || entry.time() < row.time())
                .map(entry -> row(study, entry, reaction, row.value()));
    }

    private static BalanceRow notMade(CornerStudy study, BrakePlan known, double value) {
        return new BalanceRow(
                value,
                study.simulator().car(),
                lock(study),
                study.simulator().run(known),
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private static Optional<LockingRamp> lock(CornerStudy study) {
        return LockingRamp.of(
                study.simulator().car(), study.simulator().corner().approachSpeed());
    }

    /** The row of a value with a release from its latest brake point. */
    private static BalanceRow row(CornerStudy study, EntryResult latest, Reaction reaction, double value) {
        Risk risk = atEqualRisk(new RiskStudy(study, SCATTER, reaction, SAMPLES, SEED), latest.plan());
        BrakePlan plan = risk.plan();
        EntryResult entry = study.simulator().run(plan);
        SpeedPlan expected = EntrySimulator.expected(entry.profile().orElseThrow());
        EntrySimulator driven =
                study.simulator().with(study.simulator().driver().with(reaction));
        EntryResult harder = driven.probe(plan.withPeakDeceleration(HARDER * plan.peakDeceleration()), expected);
        EntryResult later = driven.probe(plan.withBrakePoint(plan.brakePoint() + LATER), expected);
        return new BalanceRow(
                value,
                study.simulator().car(),
                lock(study),
                entry,
                entry.made(),
                Optional.of(risk.failed()),
                Optional.of(harder.outcome()),
                Optional.of(later.outcome()),
                Optional.of(EntryStability.of(study.simulator().car(), entry).least()));
    }

    /** The risk from the latest brake point that keeps it within what is accepted, or else the least found. */
    static Risk atEqualRisk(RiskStudy risks, BrakePlan latest) {
        Risk least = risks.of(latest);
        double start = risks.study().simulator().corner().path().start();
        for (double back = BACK_STEP;
                back <= FARTHEST_BACK && least.failed().value() > ACCEPTED && latest.brakePoint() - back > start;
                back += BACK_STEP) {
            Risk risk = risks.of(latest.withBrakePoint(latest.brakePoint() - back));
            least = risk.failed().value() < least.failed().value() ? risk : least;
        }
        return least;
    }
}
