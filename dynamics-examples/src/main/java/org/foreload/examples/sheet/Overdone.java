package org.foreload.examples.sheet;

import java.util.List;
import java.util.Optional;
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
 * @param mistake which
 * @param asPlanned with a foot that presses as planned, whatever comes of it, as all releases of the sheet are driven
 * @param reacting with a foot that reacts, as practice is
 */
record Overdone(Mistake mistake, Course asPlanned, Course reacting) {

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
     * @param amount by how much the plan was overdone, in the unit of the mistake
     * @param entry what came of it
     */
    record Driven(double amount, EntryResult entry) {}

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
                List.of(Mistake.values()),
                mistake -> new Overdone(
                        mistake,
                        driven(risks::unmoved, plan, mistake, end),
                        driven(one -> risks.asPlanned(one, expected), plan, mistake, end)));
        return driven.stream().allMatch(Optional::isPresent)
                ? Optional.of(driven.stream().map(Optional::get).toList())
                : Optional.empty();
    }

    private static Course driven(Function<BrakePlan, EntryResult> drive, BrakePlan plan, Mistake mistake, double end) {
        double farthest = mistake.farthest(plan, end);
        Optional<Driven> made = Optional.empty();
        Optional<Driven> locking = Optional.empty();
        double amount = 0;
        while (true) {
            Driven one =
                    new Driven(amount, drive.apply(mistake.made(plan, amount)).withoutProfile());
            locking = locking.isPresent()
                    ? locking
                    : TellTale.firstLock(one.entry()).map(lock -> one);
            made = one.entry().made() ? Optional.of(one) : made;
            amount += Mistake.STEP;
            if (!one.entry().made() || amount > farthest) {
                return new Course(one, made, locking);
            }
        }
    }
}
