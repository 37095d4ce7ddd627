package org.foreload.gap;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.limit.Limit;
import org.foreload.limit.LimitOptions;
import org.foreload.limit.LimitResult;
import org.foreload.optimum.SampleStudies;
import org.foreload.strategy.CornerStudy;
import org.foreload.trace.Trace;
import org.junit.jupiter.api.Test;

class LossToLimitTest {

    /** What the parts of a difference may lose to rounding, s. */
    private static final double SUM_ACCURACY = 1e-9;

    /**
     * Time, s, by which two cars differ that both come flat out: the limit's mesh is coarse there, and its feet pass
     * smoothly from throttle to brake.
     */
    private static final double FLAT_OUT = 0.002;

    private static final CornerStudy STUDY = SampleStudies.roadCar();
    private static final EntrySimulator SIMULATOR = STUDY.simulator();
    private static final double BUILD_UP = 0.25;
    private static final EntryResult ENTRY = STUDY.latest(
                    Braking.of(0.8 * STUDY.lockLimit(), BUILD_UP, new Release(ReleaseShapes.LINEAR, -3, 24)))
            .entry();

    private static LimitResult limit(int mostSteps) {
        return Limit.solve(
                SIMULATOR.car(),
                SIMULATOR.corner(),
                LossToLimit.band(),
                LossToLimit.hands(SIMULATOR.car(), SIMULATOR.corner(), SIMULATOR.driver(), BUILD_UP),
                new LimitOptions(100, 1e-5, mostSteps),
                (step, residual) -> {});
    }

    private static final LimitResult LIMIT = limit(300);

    @Test
    void thePartsSumToTheTimeLost() {
        LossToLimit loss = LossToLimit.of(SIMULATOR.apex(), ENTRY, LIMIT);
        assertEquals(ENTRY.time() - LIMIT.time(), loss.total(), SUM_ACCURACY);
        assertEquals(ENTRY.time() / LIMIT.time() - 1, loss.share(), SUM_ACCURACY);
        Trace.Column lost = loss.curve().column("lost_s");
        assertEquals(0, lost.at(0));
        assertEquals(loss.total(), lost.at(lost.size() - 1), SUM_ACCURACY);
    }

    /** The simulated driver brakes softer and earlier than perfect feet, and never gets ahead of them. */
    @Test
    void perfectHandsAreQuicker() {
        LossToLimit loss = LossToLimit.of(SIMULATOR.apex(), ENTRY, LIMIT);
        assertTrue(loss.total() > 0.02, "lost " + loss.total());
        assertTrue(loss.toTurnIn() > 0, "lost before turn-in " + loss.toTurnIn());
    }

    @Test
    void nothingIsLostBeforeEitherBrakes() {
        Trace curve = LossToLimit.of(SIMULATOR.apex(), ENTRY, LIMIT).curve();
        double first = Math.min(ENTRY.plan().brakePoint(), LIMIT.brakePoint().orElseThrow());
        for (int i = 0; i < curve.rows() && curve.column("s_m").at(i) < first; i++) {
            assertEquals(0, curve.column("lost_s").at(i), FLAT_OUT);
        }
    }

    @Test
    void anUnfinishedLimitIsRefused() {
        LimitResult unfinished = limit(3);
        assertThrows(IllegalArgumentException.class, () -> LossToLimit.of(SIMULATOR.apex(), ENTRY, unfinished));
    }

    /** A foot that is down at once still needs a rate. */
    @Test
    void aStepOnTheBrakeIsMadeShort() {
        var hands = LossToLimit.hands(SIMULATOR.car(), SIMULATOR.corner(), SIMULATOR.driver(), 0);
        assertEquals(0.01, hands.brakeBuildUp());
        assertEquals(SIMULATOR.driver().leftFoot().lag(), hands.brakeLag());
        assertEquals(SIMULATOR.driver().rightFoot().lag(), hands.throttleLag());
        assertEquals(SIMULATOR.driver().hands().rate(), hands.steeringRate());
    }
}
