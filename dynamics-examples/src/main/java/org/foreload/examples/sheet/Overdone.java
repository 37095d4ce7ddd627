package org.foreload.examples.sheet;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import org.foreload.braking.BrakePlan;
import org.foreload.driver.SpeedPlan;
import org.foreload.entry.EntryResult;
import org.foreload.risk.RiskStudy;
import org.foreload.risk.TellTale;
import org.foreload.study.Sweep;

/**
 * One way to get a plan wrong, driven further and further until the car does not make the corner.
 *
 * @param way which
 * @param asPlanned with a foot that presses as planned, whatever comes of it, as all releases of the sheet are driven
 * @param reacting with a foot that reacts, as practice is
 */
record Overdone(Way way, Course asPlanned, Course reacting) {

    /**
     * How far it goes.
     *
     * @param last the first that fails, or the farthest that was driven
     * @param made the farthest that makes the corner; empty if not even the plan does
     * @param locking the first in which a wheel stops; empty if none does
     */
    record Course(Driven last, Optional<Driven> made, Optional<Driven> locking) {}

    /**
     * One that was driven.
     *
     * @param amount by how much the plan was overdone, in the unit of the way
     * @param entry what came of it
     */
    record Driven(double amount, EntryResult entry) {}

    private static final String TOO_FAST = "the car comes too fast: it drifts wide of its line, and the throttle waits";

    private static final String TOO_SLOW = "the car is slow before the apex: too much brake for too long";

    /** Ways to get a plan wrong; all else stays as planned. */
    enum Way {
        /** The foot comes down later. */
        LATER("brake later", TOO_FAST, "m", 1, 30),
        /** The foot presses harder. */
        HARDER("brake harder", TOO_SLOW, "%", 1, 50),
        /** The brake comes off sooner. */
        SOONER("off the brake sooner", TOO_FAST, "m", 1, 60),
        /** The brake is carried deeper. */
        DEEPER("carry the brake deeper", TOO_SLOW, "m", 1, 60);

        private final String words;
        private final String felt;
        private final String unit;
        private final double step;
        private final double most;

        Way(String words, String felt, String unit, double step, double most) {
            this.words = words;
            this.felt = felt;
            this.unit = unit;
            this.step = step;
            this.most = most;
        }

        String words() {
            return words;
        }

        /** What the driver notices of it as long as the car makes the corner. */
        String felt() {
            return felt;
        }

        String unit() {
            return unit;
        }

        private DoubleFunction<BrakePlan> of(BrakePlan plan) {
            return switch (this) {
                case LATER -> amount -> plan.withBrakePoint(plan.brakePoint() + amount);
                case HARDER -> amount -> plan.withPeakDeceleration(plan.peakDeceleration() * (1 + amount / 100));
                case SOONER -> amount -> Ladder.ending(plan, plan.release().end() - amount);
                case DEEPER -> amount -> Ladder.ending(plan, plan.release().end() + amount);
            };
        }

        private double last(BrakePlan plan, double pathEnd) {
            return switch (this) {
                case LATER, SOONER -> Math.min(most, plan.release().end() - plan.brakePoint() - step);
                case HARDER -> most;
                case DEEPER -> Math.min(most, pathEnd - plan.release().end());
            };
        }
    }

    /**
     * Overdoes a plan in every way, with either foot.
     *
     * @param plan makes the corner
     * @return empty after a stop
     */
    static Optional<List<Overdone>> all(RiskStudy risks, BrakePlan plan, Sweep sweep) {
        SpeedPlan expected = risks.expected(plan);
        double end = risks.study().simulator().corner().path().end();
        List<Optional<Overdone>> driven = sweep.run(
                List.of(Way.values()),
                way -> new Overdone(
                        way,
                        driven(risks::unmoved, plan, way, end),
                        driven(one -> risks.asPlanned(one, expected), plan, way, end)));
        return driven.stream().allMatch(Optional::isPresent)
                ? Optional.of(driven.stream().map(Optional::get).toList())
                : Optional.empty();
    }

    private static Course driven(Function<BrakePlan, EntryResult> drive, BrakePlan plan, Way way, double end) {
        double farthest = way.last(plan, end);
        Optional<Driven> made = Optional.empty();
        Optional<Driven> locking = Optional.empty();
        double amount = 0;
        while (true) {
            Driven one =
                    new Driven(amount, drive.apply(way.of(plan).apply(amount)).withoutProfile());
            locking = locking.isPresent()
                    ? locking
                    : TellTale.firstLock(one.entry()).map(lock -> one);
            made = one.entry().made() ? Optional.of(one) : made;
            amount += way.step;
            if (!one.entry().made() || amount > farthest) {
                return new Course(one, made, locking);
            }
        }
    }
}
