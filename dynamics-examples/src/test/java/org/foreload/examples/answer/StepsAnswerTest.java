package org.foreload.examples.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.foreload.examples.demo.Demos;
import org.foreload.risk.Aspect;
import org.foreload.risk.PracticeSteps.Alone;
import org.foreload.risk.PracticeSteps.Step;
import org.foreload.risk.Risk;
import org.foreload.risk.TooLate;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.StraightLine;
import org.foreload.study.Proportion;
import org.junit.jupiter.api.Test;

/** Why a step changes two things: what each of them does by itself, driven. */
class StepsAnswerTest {

    private static final CornerStudy STUDY = CornerStudy.of(
            Demos.car("", Demos.DEFAULT_CAR).value(),
            Demos.corner("", Demos.DEFAULT_CORNER).value());

    /** Gentle braking in a straight line from its latest brake point, and hard braking from there on. */
    private static final BrakePlan NOW = STUDY.search()
            .latest(StraightLine.braking(0.4 * STUDY.lockLimit(), 0.25))
            .entry()
            .plan();

    private static final BrakePlan HARD = NOW.withPeakDeceleration(0.9 * STUDY.lockLimit());

    private static final BrakePlan LATER = NOW.withBrakePoint(NOW.brakePoint() + 25);

    private static String together(Alone... alone) {
        Step before = step(NOW);
        return StepsAnswer.together(before, step(HARD.withBrakePoint(LATER.brakePoint()), alone));
    }

    private static Step step(BrakePlan plan, Alone... alone) {
        Risk risk = new Risk(plan, new Proportion(0, 1), Map.of(), 10, 0);
        TooLate never = new TooLate(OptionalInt.empty(), "nothing", "none");
        return new Step(risk, 0, 0, 0, 0, never, never, List.of(), List.of(alone));
    }

    private static Alone alone(Aspect aspect, BrakePlan plan, boolean kept, double gain) {
        return new Alone(aspect, STUDY.simulator().probe(plan), kept, gain);
    }

    /** Who brakes hard from a gentle foot's place stands before the corner: the words must not say the opposite. */
    @Test
    void aChangeThatStopsTheCarIsNotSaidToLeaveTooLittleMargin() {
        Alone harder = alone(Aspect.PEAK, HARD, false, Double.NaN);
        Alone later = alone(Aspect.BRAKE_POINT, LATER, false, Double.NaN);
        assertEquals(Outcome.STOPPED, harder.entry().outcome());
        assertEquals(Outcome.RAN_WIDE, later.entry().outcome());
        EntryResult run = STUDY.simulator().run(HARD);
        double stopped = run.event(EntryEvent.Kind.STOPPED).orElseThrow().station();
        assertTrue(stopped < -5, "well before turn-in: " + stopped);
        assertEquals(
                "Together: later alone runs wide, harder alone stops " + Math.round(-stopped) + " m before turn-in",
                together(later, harder));
    }

    /** What makes the corner leaves too little margin, or only takes longer. */
    @Test
    void whatMakesTheCornerLeavesTooLittleMarginOrIsSlower() {
        Alone later = alone(Aspect.BRAKE_POINT, NOW, false, 0.1);
        Alone release = alone(Aspect.RELEASE, NOW, false, 0.1);
        Alone harder = alone(Aspect.PEAK, NOW, true, -0.084);
        assertEquals(
                "All at once, to set up another way of braking: later or the other release alone leaves too little "
                        + "margin, harder alone is 0.08 s slower",
                together(later, harder, release));
        assertEquals(
                "Together, to get there in so few steps",
                together(alone(Aspect.PEAK, NOW, true, 0), alone(Aspect.RELEASE, NOW, true, 0)));
    }
}
