package org.foreload.risk;

import java.util.Objects;
import java.util.OptionalInt;
import java.util.function.Function;
import org.foreload.braking.BrakePlan;
import org.foreload.driver.SpeedPlan;
import org.foreload.entry.EntryResult;

/**
 * What becomes of a plan whose brake point is missed by more and more.
 *
 * @param by how many whole metres later than planned the foot must come down for the car to miss the corner; empty if
 *     {@value #MOST} do not suffice
 * @param goesFirst what goes first then
 * @param tellTale what the driver feels when it does
 */
public record TooLate(OptionalInt by, String goesFirst, String tellTale) {

    /** Farthest that is looked at, m later. */
    public static final int MOST = 30;

    /** Checks that all is there. */
    public TooLate {
        Objects.requireNonNull(by, "by");
        Objects.requireNonNull(goesFirst, "goesFirst");
        Objects.requireNonNull(tellTale, "tellTale");
    }

    /** How many whole metres later than planned the foot may come down, and the car still makes the corner. */
    int forgiven() {
        return by.isPresent() ? by.getAsInt() - 1 : MOST;
    }

    /** Of a plan, with the foot with which a study counts failures; it expects the plan as it was meant. */
    static TooLate of(RiskStudy risks, BrakePlan plan) {
        SpeedPlan expected = risks.expected(plan);
        return of(plan, late -> risks.asPlanned(late, expected));
    }

    /** Brakes later by a metre at a time, until the car misses the corner. */
    static TooLate of(BrakePlan plan, Function<BrakePlan, EntryResult> drive) {
        EntryResult entry = drive.apply(plan);
        int later = 0;
        while (entry.made() && later < MOST) {
            later++;
            entry = drive.apply(plan.withBrakePoint(plan.brakePoint() + later));
        }
        return new TooLate(
                entry.made() ? OptionalInt.empty() : OptionalInt.of(later),
                entry.made() ? "nothing goes wrong within " + MOST + " m" : entry.cause(),
                TellTale.of(entry));
    }
}
