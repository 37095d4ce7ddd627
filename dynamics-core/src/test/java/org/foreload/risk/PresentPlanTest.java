package org.foreload.risk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.strategy.StraightLine;
import org.foreload.study.LowDiscrepancy;
import org.foreload.study.StopAfter;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Test;

/** What a driver does now who knows a release but not its brake point. */
class PresentPlanTest {

    private static Optional<BrakePlan> present(RiskStudy risks, double accepted) {
        return PracticeSteps.present(risks, SampleRisks.BRAKING, accepted, SampleRisks.QUIET);
    }

    @Test
    void whoNeverStraysBrakesAtTheLatestPoint() {
        BrakePlan latest = SampleRisks.BRAKING.from(SampleRisks.EDGE);
        assertEquals(Optional.of(latest), present(SampleRisks.exact(), 0));
    }

    /** Two metres, the step of the search, is as far as the answer may be from the latest point of all. */
    @Test
    void whoStraysBrakesNoEarlierThanTheRiskAsks() {
        RiskStudy risks = SampleRisks.risks(SampleRisks.brakePointOnly(3), 4, 1);
        BrakePlan plan = present(risks, 0.25).orElseThrow();
        assertTrue(plan.brakePoint() < SampleRisks.EDGE, plan.toString());
        assertTrue(risks.of(plan).failed().value() <= 0.25);
        BrakePlan later = plan.withBrakePoint(plan.brakePoint() + 2);
        assertTrue(risks.of(later).failed().value() > 0.25);
    }

    /**
     * A driver whose only draw is half a metre less than sixty late makes the corner from sixty before and no later.
     */
    @Test
    void sixtyMetresBeforeTheLatestPointAreLookedAtAndNoMore() {
        assertEquals(Optional.of(SampleRisks.BRAKING.from(SampleRisks.EDGE - 60)), present(lateBy(59.5), 0));
        assertEquals(Optional.empty(), present(lateBy(60.5), 0));
    }

    /** A driver with one draw, which brings the foot down so much too late. */
    private static RiskStudy lateBy(double metres) {
        long seed = 1;
        while (brakePointDeviate(seed) < 0.5) {
            seed++;
        }
        return SampleRisks.risks(SampleRisks.brakePointOnly(metres / brakePointDeviate(seed)), 1, seed);
    }

    /** The first of six coordinates moves the brake point. */
    private static double brakePointDeviate(long seed) {
        return LowDiscrepancy.normal(LowDiscrepancy.points(6, 1, seed).get(0)[0]);
    }

    @Test
    void aBrakeTooWeakForTheCornerHasNoPlan() {
        assertEquals(
                Optional.empty(),
                PracticeSteps.present(
                        SampleRisks.exact(), SampleRisks.BRAKING.withPeakDeceleration(0.05), 0, SampleRisks.QUIET));
    }

    /** Twice as hard as what locks a wheel fails from everywhere; so does 1.4 times as hard, seven tenths of that. */
    @Test
    void whoBrakesTooHardBrakesLessHard() {
        double lock = SampleRisks.STUDY.lockLimit();
        Braking hard = StraightLine.braking(1.2 * lock, 0.25);
        assertEquals(Optional.empty(), PracticeSteps.present(SampleRisks.exact(), hard, 0, SampleRisks.QUIET));
        BrakePlan softer = PracticeSteps.presentAtMost(SampleRisks.exact(), hard, 0, SampleRisks.QUIET)
                .orElseThrow();
        assertTrue(softer.peakDeceleration() < lock, softer.toString());
        Braking harder = hard.withPeakDeceleration(softer.peakDeceleration() + 0.1 * hard.peakDeceleration());
        assertEquals(Optional.empty(), PracticeSteps.present(SampleRisks.exact(), harder, 0, SampleRisks.QUIET));
        Braking far = StraightLine.braking(2 * lock, 0.25);
        assertEquals(Optional.empty(), PracticeSteps.presentAtMost(SampleRisks.exact(), far, 0, SampleRisks.QUIET));
    }

    /** Three quarters of what locks a wheel, off at turn-in, from the latest point: nothing strays. */
    @Test
    void ofWhomNothingIsKnownBrakesInAStraightLine() {
        Braking firm = StraightLine.braking(0.75 * SampleRisks.STUDY.lockLimit(), 0.25);
        double latest = SampleRisks.STUDY.search().latest(firm).point();
        assertEquals(
                Optional.of(firm.from(latest)),
                PracticeSteps.straightLine(SampleRisks.exact(), 0.25, 0, SampleRisks.QUIET));
    }

    @Test
    void aStopLeavesNoPlan() {
        Sweep stopped = new Sweep(1, new StopAfter(0));
        assertEquals(Optional.empty(), PracticeSteps.present(SampleRisks.exact(), SampleRisks.BRAKING, 0, stopped));
    }

    /** Two entries that make it are no proof that one in twenty fails: a stop among them leaves no plan either. */
    @Test
    void aStopAmongTheEntriesOfAPlanLeavesNoPlan() {
        RiskStudy risks = SampleRisks.risks(Scatter.NOVICE, 16, 1);
        Sweep stopped = new Sweep(1, new StopAfter(2));
        assertEquals(Optional.empty(), PracticeSteps.present(risks, SampleRisks.BRAKING, 1, stopped));
    }
}
