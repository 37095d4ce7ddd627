package org.foreload.risk;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.PedalDisturbance;
import org.foreload.braking.Release;
import org.foreload.braking.SplineRelease;
import org.foreload.conventions.Checks;
import org.foreload.entry.EntryResult;
import org.foreload.strategy.StraightLine;
import org.foreload.strategy.Trial;
import org.foreload.study.Sweep;

/**
 * The way from the release that a driver has now to a better one, in steps each of which that driver can repeat. A step
 * changes one thing, brake point, peak or release, unless that alone would lose time, margin or safety.
 *
 * @param steps the first is what the driver does now
 * @param reached how much of the way to the target the last step goes, 0 to 1: less than all where the driver's own
 *     scatter makes the rest too risky
 */
public record PracticeSteps(List<Step> steps, double reached) {

    /** Places at which shapes are read to mix them. */
    private static final int SHAPE_PLACES = 7;

    /** Halvings by which the farthest step within the accepted risk is found: to a sixty-fourth of the way. */
    private static final int HALVINGS = 6;

    /** Copies the steps. */
    public PracticeSteps {
        steps = List.copyOf(Objects.requireNonNull(steps, "steps"));
    }

    /**
     * One step.
     *
     * @param risk the plan of this step and how it turns out
     * @param later how much later the foot comes down than in the step before, m
     * @param beyond by how much, m, that is more than the step before forgives, overdoing included; 0 where it is not.
     *     More only where no smaller step would do
     * @param further how much further along the line the brake is carried, m
     * @param gain mean time gained on the step before, s
     * @param tooLate what becomes of a brake point that is missed, with the foot with which the risk was counted
     * @param tooLateAsPlanned the same with a foot that presses as planned, whatever comes of it
     * @param changed what is done otherwise than in the step before: one thing, but where that cannot be
     * @param alone where it is more than one, what each of them would have done by itself
     */
    public record Step(
            Risk risk,
            double later,
            double beyond,
            double further,
            double gain,
            TooLate tooLate,
            TooLate tooLateAsPlanned,
            List<Aspect> changed,
            List<Alone> alone) {

        /** Copies the lists. */
        public Step {
            Objects.requireNonNull(risk, "risk");
            Objects.requireNonNull(tooLate, "tooLate");
            Objects.requireNonNull(tooLateAsPlanned, "tooLateAsPlanned");
            changed = List.copyOf(Objects.requireNonNull(changed, "changed"));
            alone = List.copyOf(Objects.requireNonNull(alone, "alone"));
        }
    }

    /**
     * What one of several changes would have done by itself.
     *
     * @param aspect what changes
     * @param entry what comes of it without scatter; without profile
     * @param kept whether that plan keeps margin and accepted risk
     * @param gain on the step before, without scatter, s; NaN if it does not make the corner
     */
    public record Alone(Aspect aspect, EntryResult entry, boolean kept, double gain) {

        /** Refuses null. */
        public Alone {
            Objects.requireNonNull(aspect, "aspect");
            Objects.requireNonNull(entry, "entry");
        }
    }

    /**
     * What a driver who knows a release but not its brake point does now: the latest brake point with which that driver
     * stays within the accepted risk.
     *
     * @param risks driver and number of entries for each plan
     * @param release how the driver brakes
     * @param accepted failure probability, 0 to 1
     * @param sweep on how many threads, and who watches the progress
     * @return empty if there is none down to 60 m before the latest brake point that makes the corner, or after a stop
     */
    public static Optional<BrakePlan> present(RiskStudy risks, Braking release, double accepted, Sweep sweep) {
        Objects.requireNonNull(risks, "risks");
        Objects.requireNonNull(release, "release");
        Objects.requireNonNull(sweep, "sweep");
        Checks.within("accepted_failure_probability", accepted, 0, 1);
        Trial found = risks.study().search().latest(release);
        if (found.met()) {
            double latest = found.point();
            double room = latest - risks.study().simulator().corner().path().start();
            for (double back = 0; back <= FARTHEST_BACK && back < room; back += BACK_STEP) {
                BrakePlan earlier = release.from(latest - back);
                Optional<Risk> risk = risks.of(earlier, sweep);
                if (risk.isEmpty()) {
                    return Optional.empty();
                }
                if (risk.get().failed().value() <= accepted) {
                    return Optional.of(earlier);
                }
            }
        }
        return Optional.empty();
    }

    /**
     * The same for a driver who presses less hard where that is what it takes: with the hardest of four peaks, the
     * given one and down to seven tenths of it, with which that driver stays within the accepted risk at all. A foot
     * that scatters near the peak that locks a wheel fails wherever it comes down.
     *
     * @param risks driver and number of entries for each plan
     * @param hardest how the driver brakes, with the hardest peak that is tried
     * @param accepted failure probability, 0 to 1
     * @param sweep on how many threads, and who watches the progress
     * @return empty if there is none, or after a stop
     */
    public static Optional<BrakePlan> presentAtMost(RiskStudy risks, Braking hardest, double accepted, Sweep sweep) {
        Objects.requireNonNull(hardest, "hardest");
        for (double share : PEAKS) {
            Braking softer = hardest.withPeakDeceleration(share * hardest.peakDeceleration());
            Optional<BrakePlan> now = present(risks, softer, accepted, sweep);
            if (now.isPresent()) {
                return now;
            }
        }
        return Optional.empty();
    }

    /** Shares of the hardest peak that are tried, hardest first. */
    private static final double[] PEAKS = {1, 0.9, 0.8, 0.7};

    /**
     * What a driver does now of whom nothing is known: firm braking in a straight line, off the brake at turn-in.
     *
     * @param risks driver and number of entries for each plan
     * @param buildUpTime time in which the foot reaches the peak, s
     * @param accepted failure probability, 0 to 1
     * @param sweep on how many threads, and who watches the progress
     * @return empty if no brake point keeps this driver within the accepted risk, or after a stop
     */
    public static Optional<BrakePlan> straightLine(RiskStudy risks, double buildUpTime, double accepted, Sweep sweep) {
        Objects.requireNonNull(risks, "risks");
        double firm = FIRM * risks.study().lockLimit();
        return presentAtMost(risks, StraightLine.braking(firm, buildUpTime), accepted, sweep);
    }

    /** Firm braking, as a share of what locks a wheel in a straight line: hard, with something in reserve. */
    private static final double FIRM = 0.75;

    /** How far back, m at a time and at most, a brake point within the accepted risk is looked for. */
    private static final double BACK_STEP = 2;

    private static final double FARTHEST_BACK = 60;

    /**
     * Plans the steps.
     *
     * @param risks driver and number of entries for each plan
     * @param now the plan that the driver follows now, with its brake point
     * @param target the plan to reach, with its brake point
     * @param number of steps at most, 1 or more
     * @param accepted failure probability that each step may have, 0 to 1
     * @param sweep on how many threads, and who watches the progress
     * @return empty if what the driver does now is already riskier than accepted, or after a stop
     */
    public static Optional<PracticeSteps> plan(
            RiskStudy risks, BrakePlan now, BrakePlan target, int number, double accepted, Sweep sweep) {
        Objects.requireNonNull(risks, "risks");
        Objects.requireNonNull(now, "now");
        Objects.requireNonNull(target, "target");
        Objects.requireNonNull(sweep, "sweep");
        Checks.within("steps", number, 1, 100);
        Checks.within("accepted_failure_probability", accepted, 0, 1);
        Optional<Risk> first = risks.of(now, sweep);
        if (first.isEmpty() || first.get().failed().value() > accepted) {
            return Optional.empty();
        }
        OptionalDouble farthest = farthest(risks, now, target, accepted, sweep);
        if (farthest.isEmpty()) {
            return Optional.empty();
        }
        double reached = farthest.getAsDouble();
        List<Step> steps = new ArrayList<>();
        Risk before = first.get();
        TooLate late = TooLate.of(risks, now);
        steps.add(step(risks, new PracticeWay.Leg(before, late, 0, List.of(), List.of()), before));
        if (reached > 0) {
            Optional<List<PracticeWay.Leg>> legs =
                    PracticeWay.find(risks, before, late, between(now, target, reached), number, accepted, sweep);
            if (legs.isEmpty()) {
                return Optional.empty();
            }
            for (PracticeWay.Leg leg : legs.get()) {
                steps.add(step(risks, leg, before));
                before = leg.risk();
            }
        }
        return Optional.of(new PracticeSteps(steps, reached));
    }

    /** How much of the way is within the accepted risk; empty after a stop. */
    private static OptionalDouble farthest(
            RiskStudy risks, BrakePlan now, BrakePlan target, double accepted, Sweep sweep) {
        double low = 0;
        double high = 1;
        double way = 1;
        for (int i = 0; i <= HALVINGS && low < high; i++) {
            Optional<Risk> risk = risks.of(between(now, target, way), sweep);
            if (risk.isEmpty()) {
                return OptionalDouble.empty();
            }
            if (risk.get().failed().value() <= accepted) {
                low = way;
            } else {
                high = way;
            }
            way = (low + high) / 2;
        }
        return OptionalDouble.of(low);
    }

    /** The plan that lies a share of the way from one to another, shapes mixed place by place. */
    static BrakePlan between(BrakePlan now, BrakePlan target, double way) {
        return between(now, target, way, way, way);
    }

    /** The same with a share of its own for brake point, peak and release. */
    static BrakePlan between(BrakePlan now, BrakePlan target, double point, double peak, double release) {
        if (point == peak && peak == release && (point == 0 || point == 1)) {
            return point == 0 ? now : target;
        }
        return new Braking(
                        mixed(now.peakDeceleration(), target.peakDeceleration(), peak),
                        mixed(now.buildUpTime(), target.buildUpTime(), peak),
                        between(now.release(), target.release(), release),
                        pickUp(now.pickUp(), target.pickUp(), release),
                        PedalDisturbance.NONE)
                .from(mixed(now.brakePoint(), target.brakePoint(), point));
    }

    private static Release between(Release now, Release target, double way) {
        if (way == 0 || way == 1) {
            return way == 0 ? now : target;
        }
        double[] shape = new double[SHAPE_PLACES];
        for (int i = 0; i < SHAPE_PLACES; i++) {
            double u = SplineRelease.place(i + 1, SHAPE_PLACES + 1);
            shape[i] = mixed(now.shape().remaining(u), target.shape().remaining(u), way);
        }
        return new Release(
                new SplineRelease("mixed", shape),
                mixed(now.start(), target.start(), way),
                mixed(now.end(), target.end(), way));
    }

    private static OptionalDouble pickUp(OptionalDouble from, OptionalDouble to, double way) {
        if (way == 0 || way == 1) {
            return way == 0 ? from : to;
        }
        return from.isPresent() && to.isPresent()
                ? OptionalDouble.of(mixed(from.getAsDouble(), to.getAsDouble(), way))
                : OptionalDouble.empty();
    }

    private static double mixed(double a, double b, double way) {
        return (1 - way) * a + way * b;
    }

    private static Step step(RiskStudy risks, PracticeWay.Leg leg, Risk before) {
        Risk risk = leg.risk();
        BrakePlan plan = risk.plan();
        return new Step(
                risk,
                plan.brakePoint() - before.plan().brakePoint(),
                leg.beyond(),
                plan.release().end() - before.plan().release().end(),
                before.meanTime() - risk.meanTime(),
                leg.tooLate(),
                TooLate.of(plan, risks::unmoved),
                leg.changed(),
                leg.alone());
    }
}
