package org.foreload.examples.study;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntrySimulator;
import org.foreload.examples.recording.MadeRun;
import org.foreload.trace.Trace;

/** Drivers who brake less hard than they could, and earlier, to the same speed. */
final class SoftBraking {

    /** What braking softly costs at least, s. */
    private static final double COST = 0.02;

    private SoftBraking() {}

    /** A share of the peak, from where that comes to the same speed at brake off; and it takes longer. */
    static MadeRun.Stage of(MadeRun.Stage stage, double share) {
        EntrySimulator simulator = stage.study().simulator();
        BrakePlan plan = stage.plan();
        BrakePlan soft = plan.withPeakDeceleration(share * plan.peakDeceleration());
        double speed = atBrakeOff(simulator, plan);
        double earlier = 0;
        while (atBrakeOff(simulator, soft.withBrakePoint(plan.brakePoint() - earlier)) > speed) {
            earlier += 1;
        }
        BrakePlan early = soft.withBrakePoint(plan.brakePoint() - earlier);
        double gain = simulator.run(early).time() - simulator.run(plan).time();
        assertTrue(gain > COST, "later and harder gains " + gain + " s");
        return new MadeRun.Stage(stage.study(), early);
    }

    /** Speed where the brake is off, m/s. */
    static double atBrakeOff(EntrySimulator simulator, BrakePlan plan) {
        Trace profile = simulator.run(plan).profile().orElseThrow();
        double[] stations = profile.column("s_m").values();
        int row = 0;
        while (row + 1 < stations.length && stations[row] < plan.release().end()) {
            row++;
        }
        return profile.column("speed_mps").at(row);
    }
}
