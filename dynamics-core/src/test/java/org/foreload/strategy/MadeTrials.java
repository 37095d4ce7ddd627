package org.foreload.strategy;

import java.util.List;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntryResult.Margins;
import org.foreload.entry.Outcome;

/** Entries that nobody drove, for searches that are asked of a law which is known. */
final class MadeTrials {

    private MadeTrials() {}

    /** An entry that makes the corner in a time, s, and goes so far beyond its drift. */
    static Trial made(BrakePlan plan, double excess, double time) {
        return new Trial(plan.brakePoint(), entry(plan, Outcome.MADE_IT, time, List.of()), drift(excess));
    }

    /** An entry that runs wide. */
    static Trial wide(BrakePlan plan) {
        return new Trial(plan.brakePoint(), entry(plan, Outcome.RAN_WIDE, Double.NaN, List.of()), Excess.NOT_MADE);
    }

    /** An entry that ends otherwise, with what happened on the way. */
    static Trial ended(BrakePlan plan, Outcome outcome, EntryEvent... events) {
        return new Trial(plan.brakePoint(), entry(plan, outcome, Double.NaN, List.of(events)), Excess.NOT_MADE);
    }

    static Excess drift(double excess) {
        double none = Double.NEGATIVE_INFINITY;
        return new Excess(excess, none, none, none, none);
    }

    static EntryResult entry(BrakePlan plan, Outcome outcome, double time, List<EntryEvent> events) {
        return new EntryResult(
                plan,
                outcome,
                0,
                events,
                30,
                50,
                20,
                10,
                time,
                0.2,
                0.1,
                0.1,
                new Margins(0.1, 0.1, 0.1, 3),
                EntryResult.Limit.FRONT_AXLE,
                Optional.empty(),
                0);
    }
}
