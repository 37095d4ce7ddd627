package org.foreload.strategy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntrySimulator;
import org.foreload.entry.Outcome;
import org.foreload.entry.SampleEntries;
import org.junit.jupiter.api.Test;

/** What a plan forgives. */
class InHandTest {

    private static final EntrySimulator SIMULATOR =
            CornerStudy.of(SampleEntries.ROAD, SampleEntries.medium(45)).simulator();

    private static final Braking BRAKING = Braking.of(6, 0.25, new Release(ReleaseShapes.LINEAR, -10, 25));

    /** Common practice, no source: who is early has time in hand, not less than who is late. */
    @Test
    void whoIsSoEarlyThatTheCarNearlyStopsHasMoreInHandThanWhoIsLate() {
        double latest = CornerStudy.of(SampleEntries.ROAD, SampleEntries.medium(45))
                .with(Allowance.NO_MARGIN)
                .search()
                .latest(BRAKING)
                .point();
        BrakePlan slowest = slowest(latest);
        assertEquals(
                Outcome.STOPPED,
                SIMULATOR.probe(Slip.HARD_PEAK.of(slowest, InHand.MOST)).outcome());
        assertTrue(InHand.of(SIMULATOR, slowest) > InHand.of(SIMULATOR, BRAKING.from(latest - 2)));
    }

    /** The earliest plan, metre by metre, that still makes the corner: a little harder on the brake, the car stops. */
    private static BrakePlan slowest(double latest) {
        double point = latest;
        while (SIMULATOR.probe(BRAKING.from(point - 1)).made()) {
            point--;
        }
        return BRAKING.from(point);
    }
}
