package org.foreload.examples.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.foreload.advice.Change;
import org.foreload.advice.CornerAdvice;
import org.foreload.advice.Step;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntrySimulator;
import org.foreload.examples.recording.AdvisedRun;
import org.foreload.examples.recording.MadeRun;
import org.junit.jupiter.api.Test;

/**
 * One driver with nothing in hand, of those of {@link AdviceStudyTest}, who waits for a car at its limit before the
 * throttle. The true car gains next to nothing by braking later: it runs wide. So no advice sends it in faster.
 */
class AdviceAtTheLimitTest {

    private static final int DRIVER = 210;

    /** What 2 m later would be worth if nothing were lost later on: at 30 m/s and 8 m/s² some 0.1 s. */
    private static final double NEXT_TO_NOTHING = 0.02;

    @Test
    void whoWaitsForTheCarIsNotSentInFaster() {
        List<MadeRun.Stage> stages = AdviceStudyTest.stages(DRIVER, AdviceStudyTest.Nearness.AT_THE_LIMIT);
        for (MadeRun.Stage stage : stages) {
            EntrySimulator simulator = stage.study().simulator();
            BrakePlan plan = stage.plan();
            BrakePlan later = plan.withBrakePoint(plan.brakePoint() + 2);
            double gain = simulator.run(plan).time() - simulator.run(later).time();
            assertTrue(gain < NEXT_TO_NOTHING, "2 m later gains " + gain + " s");
        }
        AdvisedRun run = AdvisedRun.of(stages, 5, 50, 1000L * DRIVER, Optional.empty());
        assertEquals(2, run.advice().corners().size());
        for (CornerAdvice corner : run.advice().corners()) {
            assertTrue(
                    corner.items().stream()
                            .flatMap(item -> item.steps().stream())
                            .allMatch(step -> step.change() == Change.LATER_AND_HARDER),
                    corner.toString());
            assertTrue(corner.withheld().orElseThrow().contains("at its limit already"), corner.toString());
        }
    }

    /**
     * Who brakes early and softly to the same speed waits at the limit too, and gains by braking later and harder: no
     * faster at brake off, and on the straight for longer at full speed. The true car gains what is predicted, within a
     * quarter or 0.03 s, as agreed on for all advice.
     */
    @Test
    void whoBrakesSoftlyIsToBrakeLaterAndHarder() {
        List<MadeRun.Stage> stages = AdviceStudyTest.stages(DRIVER, AdviceStudyTest.Nearness.AT_THE_LIMIT).stream()
                .map(stage -> SoftBraking.of(stage, 0.7))
                .toList();
        AdvisedRun run = AdvisedRun.of(stages, 5, 50, 1000L * DRIVER, Optional.empty());
        List<String> lines = run.items().stream().map(AdvisedRun.Item::line).toList();
        assertFalse(run.items().isEmpty(), lines.toString());
        for (AdvisedRun.Item item : run.items()) {
            Step step = item.told().steps().get(0);
            assertEquals(Change.LATER_AND_HARDER, step.change());
            assertTrue(step.amount() > 0 && step.harder() > 0, item.line());
            assertTrue(item.truth() > NEXT_TO_NOTHING && item.near() && item.held(), item.line());
            MadeRun.Stage stage = stages.get(item.corner());
            EntrySimulator simulator = stage.study().simulator();
            BrakePlan other = item.told().applied(stage.plan()).orElseThrow();
            assertEquals(
                    SoftBraking.atBrakeOff(simulator, stage.plan()),
                    SoftBraking.atBrakeOff(simulator, other),
                    SAME_SPEED);
        }
    }

    /** Arrives as fast, m/s: less than what braking a metre later would make at 25 m/s and 7 m/s². */
    private static final double SAME_SPEED = 0.25;
}
