package org.foreload.examples.study;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.foreload.entry.EntryResult;
import org.foreload.examples.demo.Demos;
import org.foreload.optimum.BestRelease;
import org.foreload.sensitivity.Knob;
import org.foreload.sensitivity.Knobs;
import org.foreload.sensitivity.Sensitivity;
import org.foreload.sensitivity.Setup;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Sensitivities against whole searches for the best release of the changed car, which know nothing of the known one.
 */
@Tag("long")
class SensitivityStudyTest {

    /** Searches agree within this, s, which a difference of two carries. */
    private static final double SEARCH = 0.005;

    private static final CornerStudy STUDY = CornerStudy.of(
            Demos.car("", "road").value(), Demos.corner("", "hairpin").value());

    private static final EntryResult BEST = best(STUDY, new BestRelease(1, 12, 600, 0.25));

    private static EntryResult best(CornerStudy study, BestRelease search) {
        return search.find(study, Runtime.getRuntime().availableProcessors(), Sweep.Progress.SILENT)
                .entry()
                .orElseThrow();
    }

    /** Within a tenth, and what the whole searches themselves leave open over so many units of change. */
    @ParameterizedTest
    @CsvSource({
        "friction_scale, 3",
        "mass_kg, 10",
        "approach_speed_mps, 2",
        "power_w, 4",
        "front_tyre.peak_friction_y, 4",
        "front_brake_share, 2",
        "cg_height_m, 2"
    })
    void agreesWithAWholeSearch(String name, int units) {
        Setup setup = new Setup(
                STUDY.simulator().car(),
                STUDY.simulator().corner(),
                STUDY.simulator().driver(),
                BEST.plan());
        Knob knob = Knobs.named(Knobs.of(setup), name).orElseThrow();
        Sensitivity.Row row = Sensitivity.of(STUDY, BEST, List.of(knob), Sensitivity.ENTRIES, Sweep.quiet())
                .row(name)
                .orElseThrow();
        double whole = (searched(setup, knob, units) - searched(setup, knob, -units)) / (2 * units);
        StudyLog.line(
                "sensitivity, %s: %.5f s for %s %s, steady %s; whole searches %.5f s",
                name, row.timeChange(), knob.change(), knob.parameter().unit(), row.steady(), whole);
        assertEquals(whole, row.timeChange(), 0.1 * Math.abs(whole) + SEARCH / units);
    }

    private static double searched(Setup setup, Knob knob, int units) {
        Setup turned = knob.parameter().with(setup, knob.parameter().of(setup) + units * knob.change());
        CornerStudy study = CornerStudy.of(
                turned.car(),
                turned.corner(),
                turned.driver(),
                STUDY.simulator().settings(),
                STUDY.allowance());
        return best(study, BestRelease.STANDARD).time();
    }
}
