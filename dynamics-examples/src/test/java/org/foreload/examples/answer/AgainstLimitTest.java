package org.foreload.examples.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import org.foreload.examples.output.Format;
import org.foreload.examples.output.Report;
import org.foreload.gap.LossToLimit;
import org.foreload.trace.Trace;
import org.junit.jupiter.api.Test;

/** An entry beside perfect hands and feet, in words and numbers. */
class AgainstLimitTest {

    private static AgainstLimit lost(double toTurnIn, double toApex, double toExit) {
        Trace curve =
                new Trace.Builder().column("s_m", "m").column("lost_s", "s").build();
        return AgainstLimit.of(new LossToLimit(16, toTurnIn, toApex, toExit, curve));
    }

    @Test
    void itSaysWhereTheTimeIsLostAndWhereGained() {
        assertEquals(
                "Perfect hands and feet would take 16.00 s, 0.30 s less; they are quicker by 0.10 s before turn-in, "
                        + "0.22 s on the exit; slower by 0.02 s between turn-in and apex.",
                lost(0.1, -0.02, 0.22).sentence());
        assertEquals(
                "Perfect hands and feet would take 16.00 s, 0.10 s less; they are quicker by 0.10 s before turn-in.",
                lost(0.1, -0.001, 0.001).sentence());
    }

    /** No limit, no number. */
    @Test
    void withoutALimitThereIsNoNumber() {
        AgainstLimit none = AgainstLimit.none("the search for it found no optimum");
        assertEquals(
                "What perfect hands and feet would take is not known: the search for it found no optimum.",
                none.sentence());
        String json = Format.JSON.render(none.on(new Report()));
        assertFalse(json.contains("limit_time_s"), json);
        assertEquals("{\"limit_converged\":false}", json.replaceAll("\\s", ""));
    }
}
