package org.foreload.strategy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.foreload.braking.Braking;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.Gravity;
import org.foreload.conventions.InvalidValueException;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.SpeedPlan;
import org.foreload.entry.EntryResult;
import org.foreload.entry.SimulationSettings;
import org.foreload.ideal.IdealEntry;
import org.foreload.ideal.IdealProfile;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a study puts together, on a point mass where that has a closed form, and in a short bend. */
class CornerStudyPartsTest {

    private static final CornerStudy BARE = ShortStudies.BARE;

    private static final Braking HELD = ShortStudies.braking(0.5, ReleaseShapes.HELD, 0, 20);

    private static CornerStudy study(Car car) {
        return CornerStudy.of(
                car, ShortStudies.CORNER, DriverSettings.practised(), ShortStudies.COARSE, Allowance.NO_MARGIN);
    }

    /** An argument that is not there is refused at once and by name. Common practice, no source. */
    @Test
    void nothingInThePlaceOfAnArgumentIsRefusedByName() {
        Car car = SampleCars.pointMass(1.1);
        Corner corner = ShortStudies.CORNER;
        DriverSettings driver = DriverSettings.practised();
        SimulationSettings settings = ShortStudies.COARSE;
        Allowance allowance = Allowance.NO_MARGIN;
        refused("car", () -> CornerStudy.of(null, corner));
        refused("corner", () -> CornerStudy.of(car, null));
        refused("driver", () -> CornerStudy.of(car, corner, null, settings, allowance));
        refused("settings", () -> CornerStudy.of(car, corner, driver, null, allowance));
        refused("allowance", () -> CornerStudy.of(car, corner, driver, settings, null));
        CornerStudy study = study(car);
        refused("car", () -> study.with(null, driver));
        refused("driver", () -> study.with(car, null));
        refused("allowance", () -> study.with(null));
    }

    private static void refused(String name, Executable made) {
        assertEquals(name, assertThrows(NullPointerException.class, made).getMessage());
    }

    /** Friction times g, which drag does not change: the brakes alone. */
    @Test
    void theBrakesOfAPointMassLockAtItsFriction() {
        Car car = SampleCars.pointMass(1.1);
        assertEquals(1.1 * Gravity.G, study(car).lockLimit(), 1e-6);
        Car dragged = car.with(new Aerodynamics(1.5, 0, 0, 1.2, 0));
        assertEquals(1.1 * Gravity.G, study(dragged).lockLimit(), 1e-6);
        // A square metre of downforce on 1200 kg, at the 28 m/s of the approach.
        Car winged = car.with(new Aerodynamics(0, 0.5, 0.5, 1.2, 0));
        assertEquals(1.1 * (Gravity.G + 0.6 * 28 * 28 / 1200), study(winged).lockLimit(), 1e-6);
    }

    /** A twentieth of m·a·b, and nothing else changes; a car that has yaw inertia stays as it is. */
    @Test
    void aPointMassGetsAsMuchYawInertiaAsASimulationNeeds() {
        Car car = SampleCars.pointMass(1.1);
        Chassis given = car.chassis();
        CornerStudy study = study(car);
        Chassis driven = study.simulator().car().chassis();
        assertEquals(0, given.yawInertia());
        assertEquals(0.05 * 1200 * 1.25 * 1.25, driven.yawInertia(), 1e-9);
        assertEquals(
                given,
                new Chassis(
                        driven.mass(),
                        driven.wheelbase(),
                        driven.cgToFrontAxle(),
                        driven.cgHeight(),
                        0,
                        driven.frontTrack(),
                        driven.rearTrack()));
        assertEquals(
                IdealEntry.solve(car, ShortStudies.CORNER).time(), study.bound().time());
        assertEquals(SampleCars.ROAD_CAR.chassis(), BARE.simulator().car().chassis());
    }

    /**
     * Speed at the limit of a bend goes with the root of friction: the driver who keeps some of it leaves the bend from
     * so much less than the bound, at the last place where that is the least, and aims on to the end of the line.
     */
    @Test
    void theExitBeginsWhereTheBendEndsWithALittleLessFriction() {
        CornerStudy study = study(SampleCars.pointMass(1.1));
        SpeedPlan exit = study.simulator().exit();
        double friction = study.simulator().driver().rightFoot().exitFriction();
        assertTrue(friction < 1);
        double least = study.bound().minimumSpeed() * Math.sqrt(friction);
        assertEquals(least, exit.speeds()[0], 2.5e-3 * least);
        // The arc goes from 15 to 40 m; the steps of the profile are half a metre.
        assertEquals(40, exit.opening(), 1.1);
        assertEquals(ShortStudies.CORNER.path().end(), exit.end(), 1e-9);
        double before = exit.speeds()[0];
        for (int i = 1; i < exit.stations().length; i++) {
            assertTrue(exit.speeds()[i] > before);
            assertTrue(exit.speeds()[i] < study.bound().speedAt(exit.stations()[i]));
            before = exit.speeds()[i];
        }
    }

    /** Where the line ends in the bend itself the exit is its last step. */
    @Test
    void aLineThatEndsInTheBendHasAnExitOfOneStep() {
        Corner endless = new Corner(
                "endless",
                28,
                SegmentPath.of(90, List.of(Segment.spiralIn(15, 35, Turn.LEFT), Segment.arc(30, 35, Turn.LEFT)), 0, 5));
        CornerStudy study = CornerStudy.of(
                SampleCars.pointMass(1.1),
                endless,
                DriverSettings.practised(),
                ShortStudies.COARSE,
                Allowance.NO_MARGIN);
        assertEquals(2, study.simulator().exit().stations().length);
        assertEquals(45, study.simulator().exit().end(), 1e-9);
    }

    @Test
    void whatIsNotReplacedStays() {
        CornerStudy other = BARE.with(Allowance.STANDARD);
        assertSame(Allowance.STANDARD, other.allowance());
        assertSame(BARE.simulator(), other.simulator());
        IdealProfile bound = BARE.bound();
        assertSame(bound, other.bound());
        CornerStudy driven = other.with(SampleCars.pointMass(1.1), DriverSettings.reacting());
        assertEquals(DriverSettings.reacting(), driven.simulator().driver());
        assertEquals("point mass", driven.simulator().car().name());
        assertSame(ShortStudies.CORNER, driven.simulator().corner());
        assertEquals(ShortStudies.COARSE, driven.simulator().settings());
        assertSame(Allowance.STANDARD, driven.allowance());
    }

    /** The difference of two drives: the plan with its margin, and the same release with none. */
    @Test
    void theMarginCostsWhatTheQuickestWithoutItIsQuicker() {
        CornerStudy careful = BARE.with(new Allowance(0.5, 1, 0.05, 0.1, 4));
        EntryResult bare =
                BARE.simulator().run(BARE.search().quickest(HELD).entry().plan());
        Finding kept = careful.latest(HELD);
        assertTrue(kept.found());
        double cost = careful.marginCost(kept.entry());
        assertEquals(kept.entry().time() - bare.time(), cost, 1e-9);
        assertTrue(cost > 0.02, "cost " + cost);
        assertEquals(0, careful.marginCost(bare), 1e-12);
        EntryResult quicker = MadeTrials.entry(bare.plan(), bare.outcome(), bare.time() - 1, bare.events());
        assertEquals(0, careful.marginCost(quicker));
        Braking locks = ShortStudies.braking(1.4, ReleaseShapes.LINEAR, 0, 20);
        EntryResult none = MadeTrials.entry(locks.from(-60), bare.outcome(), 100, bare.events());
        assertTrue(Double.isNaN(careful.marginCost(none)), "no brake point at all is no cost of zero");
    }

    /** With the last decimetres of drift given away, a held release is quicker from 0.7 m earlier. */
    @Test
    void anEarlierBrakePointIsNamedWhereItIsQuicker() {
        Finding latest = BARE.latest(HELD);
        Finding quicker = BARE.quicker(latest).orElseThrow();
        assertTrue(quicker.found());
        assertTrue(quicker.entry().time() <= latest.entry().time() - 0.002);
        assertTrue(quicker.entry().plan().brakePoint() < latest.entry().plan().brakePoint());
        assertEquals(Optional.empty(), BARE.quicker(quicker));
        assertEquals(Optional.empty(), BARE.quicker(new Finding(latest.entry(), false, Double.NaN)));
    }

    /** From a guess near by, and from the estimate: one answer. Where there is none, both say so. */
    @Test
    void aGuessNearByLeadsToTheSameFinding() {
        Finding latest = BARE.latest(HELD);
        Finding guessed = BARE.latest(HELD, latest.entry().plan().brakePoint() - 2);
        assertEquals(latest.entry().plan(), guessed.entry().plan());
        assertTrue(latest.found() && guessed.found());
        Braking locks = ShortStudies.braking(1.4, ReleaseShapes.LINEAR, 0, 20);
        assertFalse(BARE.latest(locks, -60).found());
    }

    /** A guess from which the steps find nothing does not hide an answer; a number that is none is refused. */
    @ParameterizedTest
    @ValueSource(doubles = {-1e9, 19, 500, 1e18})
    void aWrongGuessDoesNotHideTheAnswer(double guess) {
        assertEquals(
                BARE.latest(HELD).entry().plan(),
                BARE.latest(HELD, guess).entry().plan());
        assertThrows(InvalidValueException.class, () -> BARE.latest(HELD, Double.NaN));
        assertThrows(InvalidValueException.class, () -> BARE.latest(HELD, Double.POSITIVE_INFINITY));
    }

    /**
     * On a straight an entry can be driven and the bound found, but there is no apex to place releases by. It is said
     * in one line, whichever of approach and exit is the longer. Common practice, no source.
     */
    @ParameterizedTest
    @ValueSource(doubles = {60, 140})
    void aLineWithoutABendHasNoApex(double approach) {
        Corner straight = new Corner("runway", 28, SegmentPath.of(approach, List.of(), 200 - approach, 5));
        CornerStudy study = CornerStudy.of(SampleCars.ROAD_CAR, straight);
        assertTrue(study.bound().time() < 200 / 28.0, "the car may accelerate all the way");
        assertTrue(study.simulator().run(HELD.from(-40)).made());
        ReleaseSweep sweep = new ReleaseSweep(study, SweepPlan.standard());
        InvalidValueException refused = assertThrows(InvalidValueException.class, () -> sweep.run(Sweep.quiet()));
        assertEquals(
                "segments: runway is not allowed; it must be a corner whose line bends after turn-in: a straight has no"
                        + " apex",
                refused.getMessage());
    }
}
