package org.foreload.examples.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.foreload.entry.Outcome;
import org.foreload.sensitivity.Knob;
import org.foreload.sensitivity.Sensitivity;
import org.foreload.sensitivity.Sensitivity.Row;
import org.foreload.sensitivity.Sensitivity.Side;
import org.junit.jupiter.api.Test;

/** What is said where missing the plan is quicker than keeping it. */
class SensitivityAnswerTest {

    private static Sensitivity missed(Knob.Kind kind, double less, double more) {
        return new Sensitivity(
                List.of(new Row("brake_point_m", "m", 1, kind, side(less), side(more), side(more), 0)), true);
    }

    private static Side side(double timeChange) {
        Outcome outcome = Double.isNaN(timeChange) ? Outcome.RAN_WIDE : Outcome.MADE_IT;
        return new Side(timeChange, 0, 0, 0, Optional.of(outcome));
    }

    @Test
    void theQuickerSideIsMarked() {
        assertEquals("more", SensitivityAnswer.quicker(row(0.04, -0.01)));
        assertEquals("less", SensitivityAnswer.quicker(row(-0.04, 0.01)));
        assertEquals("less, more", SensitivityAnswer.quicker(row(-0.04, -0.01)));
        assertNull(SensitivityAnswer.quicker(row(0.04, 0)));
        // A side that does not make the corner is no quicker.
        assertNull(SensitivityAnswer.quicker(row(0.04, Double.NaN)));
    }

    private static Row row(double less, double more) {
        return missed(Knob.Kind.PLAN, less, more).rows().get(0);
    }

    @Test
    void aStopIsSaid() {
        Sensitivity one = missed(Knob.Kind.WORLD, 0.04, -0.01);
        assertEquals(
                "Stopped early: 1 number was changed, the others are missing.",
                SensitivityAnswer.stopped(new Sensitivity(one.rows(), false)));
        assertEquals(
                "Stopped early: no number was changed yet, and a longer search may find a better plan.",
                SensitivityAnswer.stopped(new Sensitivity(List.of(), false)));
    }

    @Test
    void aQuickerSideIsExplainedAndASlowerOneIsNot() {
        assertTrue(SensitivityAnswer.quickerSides(missed(Knob.Kind.PLAN, 0.04, -0.01))
                .orElseThrow()
                .contains("no longer keeps the margin"));
        assertEquals(Optional.empty(), SensitivityAnswer.quickerSides(missed(Knob.Kind.PLAN, 0.04, 0.01)));
        assertEquals(Optional.empty(), SensitivityAnswer.quickerSides(missed(Knob.Kind.PLAN, 0.04, Double.NaN)));
        // A better car is quicker, and no plan is missed.
        assertEquals(Optional.empty(), SensitivityAnswer.quickerSides(missed(Knob.Kind.WORLD, 0.04, -0.01)));
    }
}
