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
import org.foreload.trace.Trace;
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

    /**
     * Who brakes early and softly to the same speed waits at the limit too, and would gain by braking later and harder:
     * no faster at brake off, and on the straight for longer at full speed. The reason for no advice does not deny it.
     * Common practice, no source.
     */
    @Test
    void theReasonIsTrueForWhoBrakesEarly() {
        List<MadeRun.Stage> stages = AdviceStudyTest.stages(DRIVER, AdviceStudyTest.Nearness.AT_THE_LIMIT).stream()
                .map(AdviceAtTheLimitTest::early)
                .toList();
        AdvisedRun run = AdvisedRun.of(stages, 5, 50, 1000L * DRIVER, Optional.empty());
        for (CornerAdvice corner : run.advice().corners()) {
            String why = corner.withheld().orElseThrow();
            assertTrue(why.contains("at its limit already"), why);
            assertTrue(why.contains("later and harder to the same speed is not tried"), why);
        }
    }

    /** Seven tenths of the peak, from where that comes to the same speed at brake off; and it takes longer. */
    private static MadeRun.Stage early(MadeRun.Stage stage) {
        EntrySimulator simulator = stage.study().simulator();
        BrakePlan plan = stage.plan();
        BrakePlan soft = plan.withPeakDeceleration(0.7 * plan.peakDeceleration());
        double speed = atBrakeOff(simulator, plan);
        double earlier = 0;
        while (atBrakeOff(simulator, soft.withBrakePoint(plan.brakePoint() - earlier)) > speed) {
            earlier += 1;
        }
        BrakePlan early = soft.withBrakePoint(plan.brakePoint() - earlier);
        double gain = simulator.run(early).time() - simulator.run(plan).time();
        assertTrue(gain > 5 * NEXT_TO_NOTHING, "later and harder gains " + gain + " s");
        return new MadeRun.Stage(stage.study(), early);
    }

    private static double atBrakeOff(EntrySimulator simulator, BrakePlan plan) {
        Trace profile = simulator.run(plan).profile().orElseThrow();
        double[] stations = profile.column("s_m").values();
        int row = 0;
        while (row + 1 < stations.length && stations[row] < plan.release().end()) {
            row++;
        }
        return profile.column("speed_mps").at(row);
    }
}
