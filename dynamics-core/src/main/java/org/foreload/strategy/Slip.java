package org.foreload.strategy;

import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;

/** What people get wrong with a plan. */
enum Slip {
    /** The foot comes down late. */
    LATE_BRAKE {
        @Override
        BrakePlan of(BrakePlan plan, double metres) {
            return plan.withBrakePoint(plan.brakePoint() + metres);
        }
    },
    /** The whole release comes late. */
    LATE_RELEASE {
        @Override
        BrakePlan of(BrakePlan plan, double metres) {
            return plan.braking().withReleaseLater(metres).from(plan.brakePoint());
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

    /** Whether the car makes the corner with this slip: no more is asked. */
    Trial trial(EntrySimulator simulator, BrakePlan plan, double metres) {
        EntryResult entry = simulator.probe(of(plan, metres));
        Excess excess = entry.made() ? Excess.ofEdge(entry.margins().edge()) : Excess.NOT_MADE;
        return new Trial(plan.brakePoint(), entry, excess);
    }
}
