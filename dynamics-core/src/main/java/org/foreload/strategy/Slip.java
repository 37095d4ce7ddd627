package org.foreload.strategy;

import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.entry.Outcome;

/** What people get wrong with a plan; first what plans forgive least. */
enum Slip {
    /** The whole release comes late. */
    LATE_RELEASE {
        @Override
        BrakePlan of(BrakePlan plan, double metres) {
            return plan.braking().withReleaseLater(metres).from(plan.brakePoint());
        }
    },
    /** The foot comes down late. */
    LATE_BRAKE {
        @Override
        BrakePlan of(BrakePlan plan, double metres) {
            return plan.withBrakePoint(plan.brakePoint() + metres);
        }
    },
    /** The foot is too hard: by {@link InHand#HARDER_PER_METRE} for what is a metre in the other two. */
    HARD_PEAK {
        @Override
        BrakePlan of(BrakePlan plan, double metres) {
            return plan.withPeakDeceleration(plan.peakDeceleration() * (1 + InHand.HARDER_PER_METRE * metres));
        }
    };

    /** The plan as it is driven with this slip. */
    abstract BrakePlan of(BrakePlan plan, double metres);

    /** How the plan ends with this slip: what it leaves to the edge of the track, if it is forgiven. */
    Trial trial(EntrySimulator simulator, BrakePlan plan, double metres) {
        EntryResult entry = simulator.probe(of(plan, metres));
        Excess excess = forgiven(entry) ? Excess.ofEdge(entry) : Excess.NOT_MADE;
        return new Trial(plan.brakePoint(), entry, excess);
    }

    /** Whether the plan forgives the slip by so many metres. */
    boolean forgiven(EntrySimulator simulator, BrakePlan plan, double metres) {
        return forgiven(simulator.probe(of(plan, metres)));
    }

    /**
     * No more is asked than that the car makes the corner. One that would stop before it does so too, and loses time:
     * its driver sees it coming and lets go of the brake.
     */
    private static boolean forgiven(EntryResult entry) {
        return entry.made() || entry.outcome() == Outcome.STOPPED;
    }
}
