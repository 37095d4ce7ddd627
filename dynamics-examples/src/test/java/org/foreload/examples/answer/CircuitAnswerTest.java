package org.foreload.examples.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.EntryResult;
import org.foreload.entry.SimulationSettings;
import org.foreload.examples.demo.Demos;
import org.foreload.lap.Lap;
import org.foreload.lap.Lap.CornerGain;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.junit.jupiter.api.Test;

/** What a lap gains, in words: no number where nothing is known. */
class CircuitAnswerTest {

    /** Two entries whose times are apart by a little: any will do. */
    private static EntryResult entry(double brakePoint) {
        CornerStudy study = CornerStudy.of(
                Demos.car("--demo-car", "light").value(),
                Demos.corner("--demo-corner", "medium").value(),
                DriverSettings.practised(),
                new SimulationSettings(1e-4, 1),
                Allowance.STANDARD);
        return study.simulator()
                .run(Braking.of(6, 0.25, new Release(ReleaseShapes.LINEAR, 0, 30))
                        .from(brakePoint));
    }

    @Test
    void aSumSaysOfHowManyCornersItIs() {
        EntryResult later = entry(-190);
        EntryResult earlier = entry(-200);
        CornerGain known = new CornerGain("known", 40, Optional.of(later), Optional.of(earlier));
        CornerGain none = new CornerGain("none", 40, Optional.of(later), Optional.empty());
        String gain = String.format("%.2f s", earlier.time() - later.time());
        assertEquals(
                "The best releases are " + gain + " a lap quicker than straight-line braking.",
                CircuitAnswer.gain(new Lap(List.of(known), true)));
        assertEquals(
                "In one corner the best releases are " + gain
                        + " quicker than straight-line braking; for the whole lap no sum is known.",
                CircuitAnswer.gain(new Lap(List.of(known, none), true)));
        assertEquals(
                "No gain is known: in no corner were both a best release and straight-line braking found.",
                CircuitAnswer.gain(new Lap(List.of(none), true)));
    }
}
