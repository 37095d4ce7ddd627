package org.foreload.risk;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.foreload.study.Proportion;
import org.junit.jupiter.api.Test;

/** Plans made up by hand, of a hundred entries each, and which of them to take. */
class ChoiceTest {

    private static final Risk SAFE = risk(0, 12);
    private static final Risk FAIR = risk(5, 11.5);
    private static final Risk BOLD = risk(40, 11);

    /** As slow as the safe one, and fails. */
    private static final Risk POINTLESS = risk(3, 12);

    /** Fails as often as the bold one, and is slower. */
    private static final Risk DULL = risk(40, 11.2);

    private static final Risk NEVER_MADE = risk(100, Double.NaN);

    private static Risk risk(int failed, double meanTime) {
        return new Risk(SampleRisks.BRAKING.from(failed), new Proportion(failed, 100), Map.of(), meanTime, 0);
    }

    private static Choice of(Risk... tried) {
        return new Choice(List.of(tried), true);
    }

    @Test
    void theRecklessPlanIsTheQuickestOfAll() {
        assertEquals(Optional.of(BOLD), of(SAFE, BOLD, FAIR, NEVER_MADE).reckless());
    }

    /** "At most": a plan that fails exactly as often as accepted is accepted. */
    @Test
    void aRiskExactlyAsLargeAsAcceptedIsAccepted() {
        Choice choice = of(BOLD, FAIR, SAFE);
        assertEquals(Optional.of(FAIR), choice.quickest(0.05));
        assertEquals(Optional.of(SAFE), choice.quickest(0.049));
    }

    @Test
    void aPlanThatNeverMakesTheCornerIsNoChoice() {
        Choice choice = of(NEVER_MADE);
        assertEquals(Optional.empty(), choice.reckless());
        assertEquals(Optional.empty(), choice.cheapest(1));
        assertEquals(List.of(), choice.curve());
    }

    /**
     * By hand: the bold plan saves 0.5 s on the fair one and fails in 35 of 100 more, so that it pays below 0.5/0.35 =
     * 1.43 s a failure; the fair one saves 0.5 s on the safe one and pays below 0.5/0.05 = 10 s.
     */
    @Test
    void theDearerAFailureTheSaferTheCheapestPlan() {
        Choice choice = of(FAIR, SAFE, BOLD, NEVER_MADE);
        assertEquals(Optional.of(BOLD), choice.cheapest(0));
        assertEquals(Optional.of(BOLD), choice.cheapest(1.42));
        assertEquals(Optional.of(FAIR), choice.cheapest(1.43));
        assertEquals(Optional.of(FAIR), choice.cheapest(9.9));
        assertEquals(Optional.of(SAFE), choice.cheapest(10.1));
    }

    @Test
    void theCurveRunsFromTheSafestToTheQuickest() {
        assertEquals(List.of(SAFE, FAIR, BOLD), of(BOLD, SAFE, FAIR).curve());
    }

    /** What is beaten in one and equal in the other is beaten. */
    @Test
    void theCurveLeavesOutWhatAnotherBeats() {
        assertEquals(
                List.of(SAFE, BOLD), of(POINTLESS, SAFE, DULL, BOLD, NEVER_MADE).curve());
    }

    /** Neither of two equal plans beats the other. */
    @Test
    void plansThatAreEqualInBothStayOnTheCurve() {
        Risk twin = new Risk(SampleRisks.BRAKING.from(-1), FAIR.failed(), Map.of(), FAIR.meanTime(), 0);
        assertEquals(List.of(FAIR, twin), of(FAIR, twin).curve());
    }
}
