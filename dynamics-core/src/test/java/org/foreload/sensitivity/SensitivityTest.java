package org.foreload.sensitivity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.optimum.SampleStudies;
import org.foreload.parameter.Parameter;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Test;

class SensitivityTest {

    private static final CornerStudy STUDY = SampleStudies.roadCar();

    private static final EntryResult ENTRY = STUDY.latest(
                    new BrakePlan(0, 0.85 * STUDY.lockLimit(), 0.25, new Release(ReleaseShapes.LINEAR, -8, 18)))
            .entry();

    private static final List<String> TURNED = List.of(
            "friction_scale",
            "approach_speed_mps",
            "drag_area_m2",
            "power_w",
            "brake_lag_s",
            "brake_point_m",
            "cg_height_m");

    private static final Sensitivity SENSITIVITY = Sensitivity.of(STUDY, ENTRY, turned(), 40, Sweep.quiet());

    private static List<Knob> turned() {
        List<Knob> knobs = Knobs.of(new Setup(
                STUDY.simulator().car(),
                STUDY.simulator().corner(),
                STUDY.simulator().driver(),
                ENTRY.plan()));
        return TURNED.stream()
                .map(name -> Knobs.named(knobs, name).orElseThrow())
                .toList();
    }

    private static double time(String parameter) {
        return SENSITIVITY.row(parameter).orElseThrow().timeChange();
    }

    private static boolean steady(String parameter) {
        return SENSITIVITY.row(parameter).orElseThrow().steady();
    }

    @Test
    void aNumberIsReadAndReplacedAndNothingElseChanges() {
        Setup setup = new Setup(
                STUDY.simulator().car(),
                STUDY.simulator().corner(),
                STUDY.simulator().driver(),
                ENTRY.plan());
        List<Knob> knobs = Knobs.of(setup);
        for (Knob knob : knobs) {
            Parameter<Setup> parameter = knob.parameter();
            double value = parameter.of(setup);
            Setup turned = parameter.with(setup, value + knob.change() / 2);
            if (parameter.name().equals("friction_scale")) {
                continue; // A factor: once applied it is one again.
            }
            assertEquals(value + knob.change() / 2, parameter.of(turned), 1e-12, parameter.name());
            assertEquals(setup, parameter.with(turned, value), parameter.name());
            for (Knob other : knobs) {
                if (!other.equals(knob)) {
                    assertEquals(
                            other.parameter().of(setup),
                            other.parameter().of(turned),
                            parameter.name() + " changes " + other.parameter().name());
                }
            }
        }
        assertTrue(Knobs.named(knobs, "cg_height_m").isPresent());
    }

    @Test
    void signsAreThoseOfCommonSense() {
        assertTrue(time("friction_scale") < 0, "more grip is quicker");
        assertTrue(time("approach_speed_mps") < 0, "arriving faster takes less time for the same way");
        assertTrue(time("drag_area_m2") > -1e-3 || !steady("drag_area_m2"), "drag does not help on a straight");
        assertTrue(time("power_w") <= 0, "power does not hurt");
    }

    @Test
    void rowsAreSortedByTheirEffect() {
        double last = Double.POSITIVE_INFINITY;
        for (Sensitivity.Row row : SENSITIVITY.rows()) {
            if (!Double.isNaN(row.timeChange())) {
                assertTrue(Math.abs(row.timeChange()) <= last);
                last = Math.abs(row.timeChange());
            }
        }
        assertTrue(SENSITIVITY.complete());
    }

    /** Approach: v t = s, so one more m/s over the flat-out part saves about s/v² until the brakes go on. */
    @Test
    void approachSpeedSavesWhatTheApproachIsLong() {
        double flat =
                ENTRY.plan().brakePoint() - STUDY.simulator().corner().path().start();
        double speed = STUDY.simulator().corner().approachSpeed();
        double saved = flat / (speed * speed);
        assertTrue(-time("approach_speed_mps") > 0.3 * saved && -time("approach_speed_mps") < 2 * saved);
    }
}
