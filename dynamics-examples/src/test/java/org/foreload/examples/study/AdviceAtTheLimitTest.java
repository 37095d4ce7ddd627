package org.foreload.examples.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.foreload.advice.CornerAdvice;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntrySimulator;
import org.foreload.examples.recording.AdvisedRun;
import org.foreload.examples.recording.MadeRun;
import org.junit.jupiter.api.Test;

/**
 * One driver with nothing in hand, of those of {@link AdviceStudyTest}, who waits for a car at its limit before the
 * throttle. The true car gains next to nothing by braking later: it runs wide. So there is no advice.
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
            assertEquals(List.of(), corner.items());
            assertTrue(corner.withheld().orElseThrow().contains("at its limit already"), corner.toString());
        }
    }
}
