package org.foreload.examples.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.EntryResult;
import org.foreload.entry.SimulationSettings;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.output.Format;
import org.foreload.examples.output.Report;
import org.foreload.lap.Circuit;
import org.foreload.lap.Lap;
import org.foreload.lap.Lap.CornerGain;
import org.foreload.path.Corner;
import org.foreload.path.MeasuredLine;
import org.foreload.path.MeasuredPath;
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

    private static CornerGain known(String name) {
        return new CornerGain(name, 40, Optional.of(entry(-190)), Optional.of(entry(-200)));
    }

    /** North from (3, 7), where the second corner was measured; the first was drawn. */
    @Test
    void turnInOfACornerThatWasMeasuredIsSaid() {
        double[] x = new double[60];
        double[] y = new double[60];
        for (int i = 0; i < x.length; i++) {
            double turned = Math.max(0, 4 * i - 120) / 60.0;
            x[i] = 3 + 60 * (1 - Math.cos(turned));
            y[i] = 7 + Math.min(4 * i, 120) + 60 * Math.sin(turned);
        }
        Corner drawn = Demos.corner("--demo-corner", "medium").value();
        Corner measured = new Corner("measured", 40, MeasuredPath.fit(MeasuredLine.of(x, y, 5), 0.1));
        Report report = CircuitAnswer.of(
                Demos.car("--demo-car", "light").value(),
                new Circuit("two", List.of(drawn, measured)),
                new Lap(List.of(known("drawn"), known("measured")), true));
        String json = Format.JSON.render(report).replaceAll("\\s+", "");
        assertTrue(json.contains("\"turn_in\":{\"from_first_point_m\":null,\"x_m\":null,\"y_m\":null}"), json);
        String words = Format.TABLE.render(report).replaceAll("\\s+", " ");
        Matcher said = Pattern.compile(
                        "Turn-in of corner 2 lies ([0-9.]+) m from the first point of the centre line, at"
                                + " x = 3.0 m, y = ([0-9.]+) m of its file")
                .matcher(words);
        assertTrue(said.find(), words);
        assertEquals(120, Double.parseDouble(said.group(1)), 6);
        assertEquals(7 + Double.parseDouble(said.group(1)), Double.parseDouble(said.group(2)), 0.11);
    }

    @Test
    void aStopAndTheCautionAreSaid() {
        Corner corner = Demos.corner("--demo-corner", "medium").value();
        String words = Format.TABLE
                .render(CircuitAnswer.of(
                        Demos.car("--demo-car", "light").value(),
                        new Circuit("two", List.of(corner, corner)),
                        new Lap(List.of(known("one")), false)))
                .replaceAll("\\s+", " ");
        assertTrue(
                words.contains("Stopped early: 1 of 2 corners were looked at, and in the last of these a longer search "
                        + "may find more."),
                words);
        assertTrue(words.strip().endsWith(Handover.CAUTION), words);
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
