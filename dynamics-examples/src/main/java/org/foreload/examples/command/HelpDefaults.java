package org.foreload.examples.command;

import java.util.Collections;
import java.util.Enumeration;
import java.util.List;
import java.util.ResourceBundle;
import java.util.stream.Collectors;
import org.foreload.braking.ReleaseShape;
import org.foreload.entry.SimulationSettings;
import org.foreload.examples.output.Numbers;
import org.foreload.ideal.IdealOptions;
import org.foreload.limit.LimitOptions;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.SweepPlan;

/**
 * The library's own defaults, for options and their help: {@code ${bundle:NAME}}. Each is written out when it is asked
 * for; most runs ask for few.
 */
public final class HelpDefaults extends ResourceBundle {

    private static final List<String> NAMES = List.of(
            "default.drift",
            "default.edge-margin",
            "default.front-margin",
            "default.rear-margin",
            "default.in-hand",
            "default.tolerance",
            "default.build-up-time",
            "default.intervals",
            "default.step",
            "default.grip-used",
            "default.shapes",
            "default.peaks",
            "default.starts",
            "default.ends");

    /** For the parser. */
    public HelpDefaults() {}

    @Override
    public Enumeration<String> getKeys() {
        return Collections.enumeration(NAMES);
    }

    @Override
    protected Object handleGetObject(String name) {
        return switch (name) {
            case "default.drift" -> Numbers.shortest(Allowance.STANDARD.drift());
            case "default.edge-margin" -> Numbers.shortest(Allowance.STANDARD.edge());
            case "default.front-margin" -> Numbers.shortest(Allowance.STANDARD.front());
            case "default.rear-margin" -> Numbers.shortest(Allowance.STANDARD.rear());
            case "default.in-hand" -> Numbers.shortest(Allowance.STANDARD.inHand());
            case "default.tolerance" ->
                Numbers.shortest(SimulationSettings.STANDARD.tolerance()).replace(".0E", "e");
            case "default.build-up-time" -> Numbers.shortest(sweep().buildUpTime());
            case "default.intervals" -> String.valueOf(LimitOptions.STANDARD.intervals());
            case "default.step" -> Numbers.shortest(IdealOptions.DEFAULT.step());
            case "default.grip-used" -> Numbers.shortest(IdealOptions.DEFAULT.frictionScale());
            case "default.shapes" ->
                sweep().shapes().stream().map(ReleaseShape::name).collect(Collectors.joining(","));
            case "default.peaks" -> words(sweep().peaks());
            case "default.starts" -> words(sweep().starts());
            case "default.ends" -> words(sweep().ends());
            default -> null;
        };
    }

    private static SweepPlan sweep() {
        return SweepPlan.withResolution(1);
    }

    private static String words(List<Double> values) {
        return values.stream().map(Numbers::shortest).collect(Collectors.joining(","));
    }
}
