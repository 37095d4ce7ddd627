package org.foreload.examples.command;

import java.util.List;
import java.util.ListResourceBundle;
import java.util.stream.Collectors;
import org.foreload.braking.ReleaseShape;
import org.foreload.entry.SimulationSettings;
import org.foreload.examples.output.Numbers;
import org.foreload.ideal.IdealOptions;
import org.foreload.limit.LimitOptions;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.SweepPlan;

/** The library's own defaults, for options and their help: {@code ${bundle:NAME}}. */
public final class HelpDefaults extends ListResourceBundle {

    /** For the parser. */
    public HelpDefaults() {}

    @Override
    protected Object[][] getContents() {
        Allowance margin = Allowance.STANDARD;
        SweepPlan sweep = SweepPlan.withResolution(1);
        return new Object[][] {
            {"default.drift", Numbers.shortest(margin.drift())},
            {"default.edge-margin", Numbers.shortest(margin.edge())},
            {"default.front-margin", Numbers.shortest(margin.front())},
            {"default.rear-margin", Numbers.shortest(margin.rear())},
            {"default.in-hand", Numbers.shortest(margin.inHand())},
            {
                "default.tolerance",
                Numbers.shortest(SimulationSettings.STANDARD.tolerance()).replace(".0E", "e")
            },
            {"default.build-up-time", Numbers.shortest(sweep.buildUpTime())},
            {"default.intervals", String.valueOf(LimitOptions.STANDARD.intervals())},
            {"default.step", Numbers.shortest(IdealOptions.DEFAULT.step())},
            {"default.grip-used", Numbers.shortest(IdealOptions.DEFAULT.frictionScale())},
            {"default.shapes", sweep.shapes().stream().map(ReleaseShape::name).collect(Collectors.joining(","))},
            {"default.peaks", words(sweep.peaks())},
            {"default.starts", words(sweep.starts())},
            {"default.ends", words(sweep.ends())},
        };
    }

    private static String words(List<Double> values) {
        return values.stream().map(Numbers::shortest).collect(Collectors.joining(","));
    }
}
