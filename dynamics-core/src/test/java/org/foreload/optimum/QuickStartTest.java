package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.junit.jupiter.api.Test;

/** Where searches set out from. */
class QuickStartTest {

    private static final CornerStudy STUDY = SampleStudies.roadCar();
    private static final double LIMIT = STUDY.lockLimit();
    private static final double APEX = STUDY.simulator().apex();

    private static final QuickStart BARE = new QuickStart(STUDY);

    private static Braking braking(double share) {
        return Braking.of(share * LIMIT, 0.25, new Release(ReleaseShapes.LINEAR, -0.1 * APEX, 0.7 * APEX));
    }

    /** Seven tenths of the drift allowed leave the search room; a brake far from locking costs nothing extra. */
    @Test
    void theLatestBrakePointLeavesSomeOfTheDrift() {
        Neighbourhood.Best latest = BARE.latest(braking(0.6));
        EntryResult entry = STUDY.simulator().probe(latest.plan());
        assertEquals(entry.time(), latest.time());
        assertTrue(entry.farthestOffset() <= 0.7 * STUDY.allowance().drift());
        EntryResult later = STUDY.simulator()
                .probe(latest.plan().withBrakePoint(latest.plan().brakePoint() + 0.2));
        assertTrue(
                !later.made()
                        || later.farthestOffset() > 0.7 * STUDY.allowance().drift(),
                "no later one does");
    }

    @Test
    void aGuessLeadsToTheSameBrakePoint() {
        Neighbourhood.Best latest = BARE.latest(braking(0.6));
        assertEquals(latest, BARE.latest(braking(0.6), latest.plan().brakePoint() - 2));
        assertEquals(STUDY.search().estimate(braking(0.6)), BARE.estimate(braking(0.6)));
    }

    /** What must be in hand is not asked of a start, but a brake too near to a lock for it has its price. */
    @Test
    void aStartThatBrakesTooHardForWhatMustBeInHandCountsAsSlower() {
        QuickStart careful = new QuickStart(STUDY.with(new Allowance(0.5, 0, 0, 0, 8)));
        Neighbourhood.Best bare = BARE.latest(braking(0.9));
        Neighbourhood.Best priced = careful.latest(braking(0.9));
        assertEquals(bare.plan(), priced.plan());
        EntryResult entry = STUDY.simulator().probe(bare.plan());
        LockReserve reserve = new LockReserve(STUDY.with(new Allowance(0.5, 0, 0, 0, 8)));
        assertTrue(reserve.price(entry) > 0.1);
        assertEquals(bare.time() + reserve.price(entry), priced.time(), 1e-12);
    }

    /** Twice what locks a wheel makes no entry from any brake point. */
    @Test
    void aReleaseThatAlwaysLocksHasNoTime() {
        assertEquals(Double.NaN, BARE.latest(braking(2)).time());
    }
}
