package org.foreload.risk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.Outcome;
import org.foreload.study.Proportion;
import org.junit.jupiter.api.Test;

/** What is counted of a few entries, by hand. */
class RiskTest {

    private static final BrakePlan PLAN = SampleRisks.BRAKING.from(-30);

    private static Risk made(double... times) {
        List<Outcome> ended = java.util.Collections.nCopies(times.length, Outcome.MADE_IT);
        return Risk.of(PLAN, ended, times);
    }

    @Test
    void everyOutcomeIsCountedAmongAllEntries() {
        List<Outcome> ended =
                List.of(Outcome.MADE_IT, Outcome.RAN_WIDE, Outcome.LOCKED_UP, Outcome.RAN_WIDE, Outcome.MADE_IT);
        Risk risk = Risk.of(PLAN, ended, new double[] {11, 12});
        assertEquals(PLAN, risk.plan());
        assertEquals(new Proportion(3, 5), risk.failed());
        assertEquals(new Proportion(2, 5), risk.of(Outcome.MADE_IT));
        assertEquals(new Proportion(2, 5), risk.of(Outcome.RAN_WIDE));
        assertEquals(new Proportion(1, 5), risk.of(Outcome.LOCKED_UP));
        assertEquals(new Proportion(0, 5), risk.of(Outcome.SPUN));
    }

    /** Whatever the machine makes of a hash: the map is printed as the outcomes are declared. */
    @Test
    void outcomesComeInTheirOwnOrder() {
        Map<Outcome, Proportion> backwards = new LinkedHashMap<>();
        List<Outcome> declared = List.of(Outcome.values());
        for (int i = declared.size() - 1; i >= 0; i--) {
            backwards.put(declared.get(i), new Proportion(i, declared.size()));
        }
        Risk risk = new Risk(PLAN, new Proportion(0, 1), backwards, 1, 1);
        assertEquals(declared, List.copyOf(risk.outcomes().keySet()));
        assertThrows(UnsupportedOperationException.class, () -> risk.outcomes().clear());
    }

    /**
     * The deviation of a sample, with n − 1: of 10, 12 and 14 the squares sum to 8, and the root of 8/2 is 2. Common
     * practice, no source.
     */
    @Test
    void timesHaveTheMeanAndDeviationOfASample() {
        Risk risk = made(14, 10, 12);
        assertEquals(12, risk.meanTime(), 1e-12);
        assertEquals(2, risk.timeDeviation(), 1e-12);
    }

    @Test
    void aSingleTimeHasNoDeviation() {
        Risk risk = made(11.25);
        assertEquals(11.25, risk.meanTime());
        assertEquals(Double.NaN, risk.timeDeviation());
    }

    @Test
    void withoutATimeThereIsNoMean() {
        Risk risk = Risk.of(PLAN, List.of(Outcome.SPUN), new double[0]);
        assertEquals(Double.NaN, risk.meanTime());
        assertEquals(Double.NaN, risk.timeDeviation());
        assertEquals(Double.NaN, risk.expectedTime(1));
    }

    /** One of four fails and costs 6 s: 1.5 s on average. */
    @Test
    void aFailureCostsByHowOftenItHappens() {
        List<Outcome> ended = List.of(Outcome.MADE_IT, Outcome.SPUN, Outcome.MADE_IT, Outcome.MADE_IT);
        assertEquals(11 + 1.5, Risk.of(PLAN, ended, new double[] {11, 11, 11}).expectedTime(6), 1e-12);
    }
}
