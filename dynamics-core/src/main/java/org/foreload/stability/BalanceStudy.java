package org.foreload.stability;

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
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.LatestBrakePoint.Finding;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Car;

/**
 * What a number of the car's balance does to its entries: for each value the best release from its own latest brake
 * point (one from which the car also makes the corner when it brakes a little earlier, so that luck does not count), which axle locks first, and what becomes of the entry when the foot is harder or later than planned.
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

    /** Linear releases with three peaks and two ends. */
    public static BalanceStudy standard() {
        return new BalanceStudy(List.of(0.7, 0.8, 0.9), List.of(0.3, 0.6), -0.1, ReleaseShapes.LINEAR, 0.25);
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
        List<Optional<BalanceRow>> rows =
                sweep.run(axis.values(), value -> row(base, axis.parameter().with(car, value), value));
        return Balance.of(
                axis,
                axis.parameter().of(car),
                rows.stream().flatMap(Optional::stream).toList());
    }

    private BalanceRow row(CornerStudy base, Car car, double value) {
        CornerStudy study = base.with(car, base.simulator().driver());
        double speed = base.simulator().corner().approachSpeed();
        Optional<LockingRamp> ramp = LockingRamp.of(car, speed);
        Solid best = best(study);
        EntryResult entry = best.entry();
        if (!best.made()) {
            return new BalanceRow(value, car, ramp, entry, false, Optional.empty(), Optional.empty(), Optional.empty());
        }
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
    private Solid best(CornerStudy study) {
        double limit = study.lockLimit();
        double apex = study.simulator().apex();
        double middle = peaks.get(peaks.size() / 2);
        List<Solid> tried = new ArrayList<>();
        double bestEnd = ends.get(0);
        for (double end : ends) {
            Solid found = Solid.latest(study, plan(middle * limit, end, apex));
            tried.add(found);
            bestEnd = found == quickest(tried) ? end : bestEnd;
        }
        for (double peak : peaks) {
            if (peak != middle) {
                tried.add(Solid.latest(study, plan(peak * limit, bestEnd, apex)));
            }
        }
        return quickest(tried);
    }

    /**
     * The latest brake point that is more than luck: a little earlier the car makes the corner too.
     *
     * @param entry from there; where there is none, the attempt that came closest
     * @param made whether there is one
     */
    private record Solid(EntryResult entry, boolean made) {

        /** Distances, m, from which a driver who is early by a little must make the corner too. */
        private static final double[] EARLIER = {1, 3};

        /** Step back, m, from a brake point that was luck. */
        private static final double STEP_BACK = 2;

        /** Distance, m, after which the release is given up: what is lost by then makes it no candidate. */
        private static final double MOST_BACK = 30;

        static Solid latest(CornerStudy study, BrakePlan plan) {
            Finding finding = study.latest(plan);
            if (!finding.found()) {
                return new Solid(finding.entry(), false);
            }
            double latest = finding.entry().plan().brakePoint();
            for (double back = 0; back <= MOST_BACK; back += STEP_BACK) {
                if (holds(study, plan, latest - back)) {
                    BrakePlan solid = plan.withBrakePoint(latest - back);
                    return new Solid(back == 0 ? finding.entry() : study.simulator().run(solid), true);
                }
            }
            return new Solid(finding.entry(), false);
        }

        private static boolean holds(CornerStudy study, BrakePlan plan, double brakePoint) {
            boolean holds = met(study, plan.withBrakePoint(brakePoint));
            for (double earlier : EARLIER) {
                holds = holds && met(study, plan.withBrakePoint(brakePoint - earlier));
            }
            return holds;
        }

        private static boolean met(CornerStudy study, BrakePlan plan) {
            Allowance allowance = study.allowance();
            boolean driftAlone = allowance.edge() == 0 && allowance.front() == 0 && allowance.rear() == 0;
            return allowance.met(
                    driftAlone ? study.simulator().probe(plan) : study.simulator().run(plan));
        }
    }

    private BrakePlan plan(double peak, double end, double apex) {
        return new BrakePlan(0, peak, buildUpTime, new Release(shape, start * apex, end * apex));
    }

    private static Solid quickest(List<Solid> tried) {
        return tried.stream()
                .filter(Solid::made)
                .min(Comparator.comparingDouble(one -> one.entry().time()))
                .orElse(tried.get(0));
    }
}
