package org.foreload.examples.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.EntryResult;
import org.foreload.entry.SimulationSettings;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.output.Format;
import org.foreload.lap.Circuit;
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

    /** A brake point of a corner in which nobody brakes is no number to drive by; the words say which corner it is. */
    @Test
    void aCornerWithoutABrakeIsNamed() {
        EntryResult coasting = entry(500);
        EntryResult braked = entry(-190);
        Lap lap = new Lap(
                List.of(
                        new CornerGain("wide", 40, Optional.of(coasting), Optional.of(coasting)),
                        new CornerGain("tight", 40, Optional.of(braked), Optional.of(braked))),
                true);
        Circuit circuit = new Circuit(
                "two", List.of(Demos.corner("--demo-corner", "medium").value()));
        String words = Format.TABLE.render(
                CircuitAnswer.of(Demos.car("--demo-car", "light").value(), circuit, lap));
        assertTrue(words.contains("No brake is needed in 1 (wide):"), words);
        assertFalse(words.contains("500"), words);
        assertTrue(words.contains("-190.00"), words);
    }
}
