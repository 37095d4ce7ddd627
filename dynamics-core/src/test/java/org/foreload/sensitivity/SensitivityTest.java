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

    /** A moderate release: around the very best one, on the edge of sliding, hardly a number acts in proportion. */
    private static final EntryResult ENTRY = STUDY.latest(
                    new BrakePlan(0, 0.7 * STUDY.lockLimit(), 0.25, new Release(ReleaseShapes.LINEAR, -8, 14)))
            .entry();

    private static final Sensitivity SENSITIVITY = Sensitivity.of(STUDY, ENTRY, Sweep.quiet());

    private static double time(String parameter) {
        return SENSITIVITY.row(parameter).orElseThrow().timeChange();
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
        assertTrue(time("drag_area_m2") > -1e-3, "drag does not help on a straight");
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
