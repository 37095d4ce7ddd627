package org.foreload.balance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.Checks;
import org.foreload.entry.EntryResult;
import org.foreload.stability.EntryStability;
import org.foreload.stability.LockingRamp;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Car;

/**
 * What a number of the car's balance does to its entries: for each value the best release from its own latest brake
 * point (one from which the car also makes the corner when it brakes a little earlier, so that luck does not count),
 * which axle locks first, and what becomes of the entry when the foot is harder or later than planned.
 *
 * @param peaks peak decelerations tried, as shares of what the brakes can do in a straight line before a wheel locks
 * @param ends ends of the release tried, as shares of the distance from turn-in to the apex
 * @param start start of the release, in the same share
 * @param shape shape of the release
 * @param buildUpTime time in which the foot reaches the peak, s
 */
public record BalanceStudy(
        List<Double> peaks, List<Double> ends, double start, ReleaseShape shape, double buildUpTime) {

    /** How much harder a driver brakes by mistake. */
    public static final double HARDER = 1.05;

    /** How much later a driver brakes by mistake, m. */
    public static final double LATER = 10;

    /** Copies and checks; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public BalanceStudy {
        peaks = List.copyOf(peaks);
        ends = List.copyOf(ends);
        Checks.positive("peaks", peaks.size());
        Checks.positive("ends", ends.size());
        peaks.forEach(peak -> Checks.within("peak_share", peak, 0.01, 2));
        ends.forEach(end -> Checks.between("release_end_share", end, start, 10));
    }

    /** Linear releases with three peaks and three ends. */
    public static BalanceStudy standard() {
        return new BalanceStudy(List.of(0.7, 0.8, 0.9), List.of(0.3, 0.6, 0.9), -0.1, ReleaseShapes.LINEAR, 0.25);
    }

    /**
     * Sweeps one axis.
     *
     * @param base car, corner and driver
     * @param axis what is changed
     * @param sweep on how many threads, and who is told of progress
     */
    public Balance run(CornerStudy base, BalanceAxis axis, Sweep sweep) {
        Car car = base.simulator().car();
        double apex = base.simulator().apex();
        BrakePlan known = base.latest(plan(middlePeak() * base.lockLimit(), ends.get(0), apex))
                .entry()
                .plan();
        List<Optional<BalanceRow>> rows = sweep.run(
                axis.values(), value -> row(base, known, axis.parameter().with(car, value), value));
        return Balance.of(
                axis,
                axis.parameter().of(car),
                rows.stream().flatMap(Optional::stream).toList());
    }

    private BalanceRow row(CornerStudy base, BrakePlan known, Car car, double value) {
        CornerStudy study = base.with(car, base.simulator().driver());
        double speed = base.simulator().corner().approachSpeed();
        Optional<LockingRamp> ramp = LockingRamp.of(car, speed);
        Optional<EntryResult> best = best(study, known);
        if (best.isEmpty()) {
            EntryResult closest = study.simulator().run(known);
            return new BalanceRow(
                    value, car, ramp, closest, false, Optional.empty(), Optional.empty(), Optional.empty());
        }
        EntryResult entry = best.get();
        BrakePlan plan = entry.plan();
        EntryResult harder = study.simulator().probe(plan.withPeakDeceleration(HARDER * plan.peakDeceleration()));
        EntryResult later = study.simulator().probe(plan.withBrakePoint(plan.brakePoint() + LATER));
        return new BalanceRow(
                value,
                car,
                ramp,
                entry,
                true,
                Optional.of(harder.outcome()),
                Optional.of(later.outcome()),
                Optional.of(EntryStability.of(car, entry).least()));
    }

    /** The best end with the middle peak, then the best peak with that end. */
    private Optional<EntryResult> best(CornerStudy study, BrakePlan known) {
        double limit = study.lockLimit();
        double apex = study.simulator().apex();
        SolidBrakePoint search = new SolidBrakePoint(study);
        List<EntryResult> tried = new ArrayList<>();
        for (double end : ends) {
            search.find(plan(middlePeak() * limit, end, apex), known).ifPresent(tried::add);
        }
        double bestEnd = quickest(tried)
                .map(entry -> entry.plan().release().end() / apex)
                .orElse(ends.get(0));
        for (double peak : peaks) {
            if (peak != middlePeak()) {
                search.find(plan(peak * limit, bestEnd, apex), known).ifPresent(tried::add);
            }
        }
        return quickest(tried);
    }

    private double middlePeak() {
        return peaks.get(peaks.size() / 2);
    }

    private BrakePlan plan(double peak, double end, double apex) {
        return new BrakePlan(0, peak, buildUpTime, new Release(shape, start * apex, end * apex));
    }

    private static Optional<EntryResult> quickest(List<EntryResult> tried) {
        return tried.stream().min(Comparator.comparingDouble(EntryResult::time));
    }
}
