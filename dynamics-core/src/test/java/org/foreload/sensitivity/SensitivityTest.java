package org.foreload.sensitivity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.InvalidValueException;
import org.foreload.driver.LeftFoot;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.foreload.optimum.SampleStudies;
import org.foreload.parameter.Parameter;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Sweep;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Suspension;
import org.junit.jupiter.api.Test;

class SensitivityTest {

    private static final CornerStudy STUDY = SampleStudies.roadCar();

    /** In each search near the known release: as few as the command line lets be asked for. */
    private static final int ENTRIES = 20;

    private static final EntryResult ENTRY = STUDY.latest(
                    Braking.of(0.85 * STUDY.lockLimit(), 0.25, new Release(ReleaseShapes.LINEAR, -8, 18)))
            .entry();

    private static final List<String> TURNED = List.of(
            "friction_scale",
            "approach_speed_mps",
            "drag_area_m2",
            "power_w",
            "brake_lag_s",
            "brake_point_m",
            "cg_height_m",
            "banking_deg");

    private static final Sensitivity SENSITIVITY = Sensitivity.of(STUDY, ENTRY, turned(), ENTRIES, Sweep.quiet());

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
        Setup setup = everything();
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
        for (String parameter : List.of("power_w", "banking_deg")) {
            assertTrue(steady(parameter), parameter + " acts in proportion");
        }
        assertTrue(time("friction_scale") < 0, "more grip is quicker");
        assertTrue(time("approach_speed_mps") < 0, "arriving faster takes less time for the same way");
        assertTrue(time("drag_area_m2") > -1e-3, "drag does not help on a straight");
        assertTrue(time("power_w") < 0, "more power is quicker");
        double turn =
                STUDY.simulator().corner().path().curvature(STUDY.simulator().apex());
        assertTrue(time("banking_deg") * turn < 0, "a corner banked to the inside is quicker");
    }

    /** An entry that does not make the corner has no time to take changes from. Common practice, no source. */
    @Test
    void anEntryThatFailsIsRefused() {
        EntryResult failed =
                STUDY.simulator().run(ENTRY.plan().withBrakePoint(ENTRY.plan().brakePoint() + 15));
        assertNotEquals(Outcome.MADE_IT, failed.outcome());
        InvalidValueException refused =
                assertThrows(InvalidValueException.class, () -> Sensitivity.of(STUDY, failed, Sweep.quiet()));
        assertEquals("entry", refused.field());
        assertEquals(failed.outcome().words(), refused.value());
    }

    /** A number of the plan does to each side what an entry with that plan does; where one fails, it has no time. */
    @Test
    void bothSidesOfThePlanAreThoseOfItsEntries() {
        Knob metre = Knobs.named(turned(), "brake_point_m").orElseThrow();
        Knob far = new Knob(metre.parameter(), 15, metre.kind());
        Sensitivity.Row row = Sensitivity.of(STUDY, ENTRY, List.of(far), ENTRIES, Sweep.quiet())
                .rows()
                .get(0);
        BrakePlan plan = ENTRY.plan();
        EntryResult earlier = STUDY.simulator().run(plan.withBrakePoint(plan.brakePoint() - 15));
        assertEquals(earlier.time() - ENTRY.time(), row.less().timeChange(), 0);
        assertTrue(row.less().timeChange() > 0, "braking earlier than the latest point costs time");
        EntryResult later = STUDY.simulator().run(plan.withBrakePoint(plan.brakePoint() + 15));
        assertNotEquals(Outcome.MADE_IT, later.outcome(), "15 m beyond the latest point");
        assertEquals(Optional.of(later.outcome()), row.more().outcome());
        assertTrue(Double.isNaN(row.timeChange()), "what fails is not told from the side that does not");
        assertFalse(row.steady());
    }

    /** What each number of the world is worth lies halfway between its sides. */
    @Test
    void aNumberOfTheWorldIsWorthTheMeanOfItsSides() {
        for (Sensitivity.Row row : SENSITIVITY.rows(Knob.Kind.WORLD)) {
            assertTrue(row.less().made() && row.more().made(), row.parameter());
            assertEquals(
                    (row.more().timeChange() - row.less().timeChange()) / 2, row.timeChange(), 1e-15, row.parameter());
        }
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

    /** Every number of the parts of a setup has a knob of its own name. */
    @Test
    void everyNumberOfTheSetupHasAKnob() {
        Setup setup = everything();
        int numbers = 0;
        for (Record part : List.of(
                setup.car(),
                setup.car().chassis(),
                setup.car().suspension(),
                setup.car().suspension().pitch(),
                setup.car().suspension().roll(),
                setup.car().aerodynamics(),
                setup.car().driveline(),
                (Record) setup.car().frontTyre(),
                (Record) setup.car().rearTyre(),
                setup.corner(),
                setup.driver().hands(),
                setup.driver().rightFoot(),
                setup.driver().leftFoot(),
                setup.plan(),
                setup.plan().braking(),
                setup.plan().release())) {
            numbers += (int) Stream.of(part.getClass().getRecordComponents())
                    .filter(component -> component.getType() == double.class)
                    .count();
        }
        List<String> names =
                Knobs.of(setup).stream().map(knob -> knob.parameter().name()).toList();
        assertEquals(List.copyOf(new LinkedHashSet<>(names)), names, "each name once");
        int curves = 4; // shape and curvature factor of two tyres
        int around = 3; // friction everywhere, grade and banking
        assertEquals(numbers + curves + around, names.size(), names.toString());
    }

    /** A setup in which no number is without effect. */
    private static Setup everything() {
        Car car = STUDY.simulator().car();
        FrictionTyre tyre = new FrictionTyre(new SlipCurve.MagicFormula(1.4, -0.5), 1, 1, 0.1, 4000, 0.4, 15, 18);
        return new Setup(
                car.with(new Driveline(car.driveline().power(), car.driveline().drivenAxle(), 300))
                        .with(car.suspension()
                                .withPitch(new Suspension.Response(2, 0.4))
                                .withRoll(new Suspension.Response(1.8, 0.3)))
                        .withTyres(tyre, tyre),
                STUDY.simulator().corner(),
                STUDY.simulator().driver().with(LeftFoot.practised().withSlowestBraking(0.4)),
                ENTRY.plan());
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
