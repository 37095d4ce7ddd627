package org.foreload.risk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.Reaction;
import org.foreload.entry.Outcome;
import org.foreload.optimum.SampleStudies;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Test;

/** What a foot that reacts makes of a plan that is driven with scatter. */
class ReactingRiskTest {

    private static final CornerStudy STUDY = SampleStudies.roadCar();

    /** Close to what stops a wheel, from its latest brake point. */
    private static final BrakePlan LATEST = STUDY.latest(
                    Braking.of(0.9 * STUDY.lockLimit(), 0.25, new Release(ReleaseShapes.LINEAR, -3, 24)))
            .entry()
            .plan();

    private static Risk risk(Reaction reaction, BrakePlan plan) {
        return new RiskStudy(STUDY, Scatter.PRACTISED, reaction, 64, 1).of(plan);
    }

    @Test
    void aReactingFootFailsLessOften() {
        Risk told = risk(Reaction.NONE, LATEST);
        Risk reacting = risk(Reaction.practised(), LATEST);
        assertTrue(told.of(Outcome.LOCKED_UP).count() > 3, told.toString());
        assertTrue(2 * reacting.failed().count() < told.failed().count(), told + " and " + reacting);
        assertTrue(reacting.of(Outcome.LOCKED_UP).count()
                < told.of(Outcome.LOCKED_UP).count());
    }

    /** Without scatter there is nothing to react to. */
    @Test
    void withoutScatterThePlanIsDrivenAsTold() {
        BrakePlan plan = LATEST.withBrakePoint(LATEST.brakePoint() - 1);
        Risk risk = new RiskStudy(STUDY, Scatter.NONE, 2, 1).of(plan);
        assertEquals(STUDY.simulator().probe(plan).time(), risk.meanTime(), 1e-3);
        assertEquals(0, risk.timeDeviation(), 1e-12);
    }

    /** Who reacts comes closer to the time intended than who does not. */
    @Test
    void aReactingFootScattersLess() {
        BrakePlan early = LATEST.withBrakePoint(LATEST.brakePoint() - 6);
        Risk told = risk(Reaction.NONE, early);
        Risk reacting = risk(Reaction.practised(), early);
        assertTrue(reacting.timeDeviation() < told.timeDeviation(), told + " and " + reacting);
    }

    @Test
    void theAnswerDoesNotHangOnThreads() {
        RiskStudy risks = new RiskStudy(STUDY, Scatter.NOVICE, 16, 3);
        assertEquals(Reaction.practised(), risks.reaction());
        Risk two = risks.of(LATEST, new Sweep(2, Sweep.Progress.SILENT)).orElseThrow();
        assertEquals(risks.of(LATEST), two);
    }
}
