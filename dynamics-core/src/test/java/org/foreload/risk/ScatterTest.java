package org.foreload.risk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class ScatterTest {

    private static final Scatter MADE_UP = new Scatter("made up", 3, 0.1, 5, 0.2, 0.05);

    @Test
    void everyPresetIsFoundByItsName() {
        for (Scatter preset : Scatter.PRESETS) {
            assertSame(preset, Scatter.named(preset.name()));
        }
    }

    @Test
    void anUnknownNameIsRefusedWithTheNamesThereAre() {
        InvalidValueException refused = assertThrows(InvalidValueException.class, () -> Scatter.named("nobody"));
        assertEquals("driver", refused.field());
        assertEquals("nobody", refused.value());
        for (Scatter preset : Scatter.PRESETS) {
            assertTrue(refused.allowed().contains(preset.name()), refused.allowed());
        }
    }

    @Test
    void everyDeviationIsSoManyTimesAsLarge() {
        Scatter twice = MADE_UP.times(2);
        assertEquals(new Scatter("made up", 6, 0.2, 10, 0.4, 0.1), twice);
        assertEquals(0, MADE_UP.times(0).times(5).brakePoint());
    }

    /** Shares end at one; metres do not. */
    @Test
    void noShareGrowsBeyondOne() {
        assertEquals(new Scatter("made up", 300, 1, 500, 1, 1), MADE_UP.times(100));
    }

    @Test
    void whatIsNoDeviationIsRefusedByName() {
        refused("brake_point_scatter_m", () -> new Scatter("", -1, 0, 0, 0, 0));
        refused("peak_scatter", () -> new Scatter("", 0, 1.01, 0, 0, 0));
        refused("release_scatter_m", () -> new Scatter("", 0, 0, Double.NaN, 0, 0));
        refused("pedal_ripple", () -> new Scatter("", 0, 0, 0, -0.01, 0));
        refused("grip_scatter", () -> new Scatter("", 0, 0, 0, 0, Double.NaN));
    }

    private static void refused(String field, Executable making) {
        assertEquals(field, assertThrows(InvalidValueException.class, making).field());
    }
}
