package org.foreload.risk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.study.StopAfter;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Test;

/** Which plans are tried for a driver who cannot repeat the quickest. */
class SensibleReleaseTest {

    /** Forty metres from the foot on the brake to the start of the release. */
    private static final BrakePlan GIVEN =
            SampleRisks.BRAKING.from(SampleRisks.BRAKING.release().start() - 40);

    /** What is tried for who never strays, who needs no earlier brake point: the releases alone. */
    private static List<Risk> releases() {
        return SensibleRelease.among(SampleRisks.exact(), List.of(GIVEN), SampleRisks.QUIET)
                .tried();
    }

    @Test
    void noReleaseThatIsTriedIsHarsherThanTheGivenOne() {
        for (Risk risk : releases()) {
            Release release = risk.plan().release();
            assertTrue(risk.plan().peakDeceleration() <= GIVEN.peakDeceleration(), risk.toString());
            assertEquals(GIVEN.release().shape(), release.shape());
            assertEquals(GIVEN.release().start(), release.start());
            assertTrue(
                    release.end() > release.start()
                            && release.end() <= GIVEN.release().end(),
                    risk.toString());
        }
    }

    /** The given one, a lower peak, an earlier end, and both together. */
    @Test
    void gentlerReleasesAreTriedBesideTheGivenOne() {
        List<Risk> releases = releases();
        for (boolean softer : new boolean[] {false, true}) {
            for (boolean shorter : new boolean[] {false, true}) {
                assertTrue(
                        releases.stream()
                                .map(Risk::plan)
                                .anyMatch(plan -> plan.peakDeceleration() < GIVEN.peakDeceleration() == softer
                                        && plan.release().end()
                                                        < GIVEN.release().end()
                                                == shorter),
                        softer + ", " + shorter);
            }
        }
    }

    /** A driver who never fails from the latest point gains nothing by an earlier one. */
    @Test
    void whoNeverFailsIsTriedFromTheLatestPointAlone() {
        List<Risk> releases = releases();
        assertEquals(
                releases.size(),
                releases.stream().map(risk -> risk.plan().braking()).distinct().count());
        Risk given = releases.get(0);
        assertEquals(0, given.failed().count());
        assertEquals(SampleRisks.EDGE, given.plan().brakePoint(), 1e-9);
    }

    /**
     * Independent deviations add by their squares. Over forty metres of braking 7.5 % of the peak are 3 m and 15 % of
     * the grip 6 m; with 2 m of the brake point that makes the root of 4 + 9 + 36, which is 7 m. The first step back is
     * one such deviation, the second two.
     */
    @Test
    void theFootComesDownOneDeviationOfTheBrakingDistanceEarlier() {
        Scatter wild = new Scatter("wild", 2, 3.0 / 40, 0, 0, 6.0 / 40);
        List<Double> points =
                SensibleRelease.among(SampleRisks.risks(wild, 4, 1), List.of(GIVEN), SampleRisks.QUIET).tried().stream()
                        .filter(risk -> risk.plan().braking().equals(GIVEN.braking()))
                        .map(risk -> risk.plan().brakePoint())
                        .toList();
        assertTrue(points.size() >= 3, points.toString());
        assertEquals(SampleRisks.EDGE, points.get(0), 1e-9);
        assertEquals(SampleRisks.EDGE - 7, points.get(1), 1e-9);
        assertEquals(SampleRisks.EDGE - 14, points.get(2), 1e-9);
    }

    /** A driver who strays by forty metres: two or three such deviations earlier there is no line to brake on. */
    @Test
    void nobodyBrakesBeforeTheLineBegins() {
        Scatter lost = new Scatter("lost", 40, 0, 0, 0, 0);
        double start = SampleRisks.STUDY.simulator().corner().path().start();
        List<Risk> tried = SensibleRelease.among(SampleRisks.risks(lost, 4, 1), List.of(GIVEN), SampleRisks.QUIET)
                .tried();
        assertTrue(tried.stream().allMatch(risk -> risk.plan().brakePoint() > start), tried.toString());
        double earliest = tried.stream()
                .mapToDouble(risk -> risk.plan().brakePoint())
                .min()
                .orElseThrow();
        assertTrue(earliest - 40 <= start, "one deviation earlier would still have been on the line");
    }

    /** A release with the brake too weak for the corner has no latest point. */
    @Test
    void aReleaseThatNeverMakesTheCornerIsLeftOut() {
        Choice choice = SensibleRelease.among(
                SampleRisks.exact(), List.of(GIVEN.withPeakDeceleration(0.05)), SampleRisks.QUIET);
        assertTrue(choice.complete());
        assertEquals(List.of(), choice.tried());
    }

    @Test
    void aStopLeavesTheChoiceIncomplete() {
        Sweep stopped = new Sweep(1, new StopAfter(1));
        Choice choice = SensibleRelease.among(SampleRisks.exact(), List.of(GIVEN), stopped);
        assertFalse(choice.complete());
        assertEquals(1, choice.tried().size());
    }
}
