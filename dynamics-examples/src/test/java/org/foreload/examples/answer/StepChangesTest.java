package org.foreload.examples.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.risk.Aspect;
import org.foreload.risk.PracticeSteps.Step;
import org.foreload.risk.Risk;
import org.foreload.risk.Scatter;
import org.foreload.risk.TooLate;
import org.foreload.study.Proportion;
import org.junit.jupiter.api.Test;

/** What practice steps name; the expected phrases are worked out by hand. */
class StepChangesTest {

    private static Step step(BrakePlan plan, Aspect... changed) {
        Risk risk = new Risk(plan, new Proportion(0, 1), Map.of(), 10, 0);
        TooLate never = new TooLate(OptionalInt.empty(), "nothing", "none");
        return new Step(risk, 0, 0, 0, 0, never, never, List.of(changed), List.of());
    }

    private static BrakePlan plan(double brakePoint, double peak, double start, double end) {
        return Braking.of(peak, 0.25, new Release(ReleaseShapes.LINEAR, start, end))
                .from(brakePoint);
    }

    private static List<String> only(Scatter scatter, Step... steps) {
        return new StepChanges(List.of(steps), scatter, Units.SI).between(steps[0], steps[1]);
    }

    /** From 0 m to 1.5 m before turn-in, which a board shows as 2 m, is 2 m; from 0.5 m to 1.5 m as well. */
    @Test
    void aDifferenceIsThatOfTheMetresBesideIt() {
        assertEquals(
                List.of("release point 2 m earlier (2 m before turn-in)"),
                only(Scatter.NONE, step(plan(-80, 7, 0, 40)), step(plan(-80, 7, -1.5, 40), Aspect.RELEASE)));
        assertEquals(
                List.of("release point 2 m later (2 m after turn-in)", "brake off 2 m earlier (38 m after turn-in)"),
                only(Scatter.NONE, step(plan(-80, 7, 0.5, 40.5)), step(plan(-80, 7, 1.5, 38.5), Aspect.RELEASE)));
    }

    /** 8.404 m/s² is printed as 8.40 and 9.156 m/s² as 9.16: 0.76 m/s² apart, not 0.75. */
    @Test
    void aHarderPressIsTheDifferenceOfThePeaksAsPrinted() {
        assertEquals(
                List.of("press 0.76 m/s² harder (peak 9.16 m/s²)"),
                only(Scatter.NONE, step(plan(-80, 8.404, 0, 40)), step(plan(-80, 9.156, 0, 40), Aspect.PEAK)));
    }

    /** A novice strays by 4 m: 3 m of the release point are not named beside 14 m of brake off. */
    @Test
    void whatDrownsInTheScatterIsNotNamed() {
        Step now = step(plan(-80, 7, 0, 20));
        Step last = step(plan(-70, 7.3, -3, 34), Aspect.BRAKE_POINT, Aspect.RELEASE);
        assertEquals(
                List.of("brake 10 m later (70 m before turn-in)", "brake off 14 m later (34 m after turn-in)"),
                only(Scatter.NOVICE, now, last));
        assertTrue(new StepChanges(List.of(now, last), Scatter.NOVICE, Units.SI).leavesOut());
        assertEquals(
                3,
                only(Scatter.EXPERT, now, last).size(),
                "an expert strays by less: the release point is named, a peak that goes along is not");
    }

    /** A brake that comes off all at once has one place, not two. */
    @Test
    void aReleaseAllAtOnceMovesOnePlace() {
        Step straight = step(abrupt(0, 0));
        Step held = step(abrupt(0, 9), Aspect.RELEASE);
        Step eased = step(plan(-80, 7, 0, 9), Aspect.RELEASE);
        assertEquals(List.of("brake off 9 m later (9 m after turn-in)"), only(Scatter.NONE, straight, held));
        assertEquals(List.of("release point 9 m earlier (at turn-in)"), only(Scatter.NONE, held, eased));
        assertEquals(List.of("release all at once"), only(Scatter.NONE, eased, held));
    }

    private static BrakePlan abrupt(double start, double end) {
        return Braking.of(7, 0.25, new Release(ReleaseShapes.ABRUPT, start, end))
                .from(-80);
    }

    /** Three metres and three metres more are six, which a novice who strays by four can tell. */
    @Test
    void whatAddsUpOverTheWholeWayIsNamedInEachStep() {
        Step now = step(plan(-80, 7, 0, 20));
        Step half = step(plan(-80, 7, -3, 26), Aspect.RELEASE);
        Step last = step(plan(-80, 7, -6, 32), Aspect.RELEASE);
        StepChanges changes = new StepChanges(List.of(now, half, last), Scatter.NOVICE, Units.SI);
        List<String> first = changes.between(now, half);
        assertEquals("release point 3 m earlier (3 m before turn-in)", first.get(0));
        assertEquals(
                List.of("release point 3 m earlier (6 m before turn-in)", "brake off 6 m later (32 m after turn-in)"),
                changes.between(half, last));
        assertFalse(changes.leavesOut());
        assertEquals(List.of(now, half, last), changes.drivable());
    }
}
