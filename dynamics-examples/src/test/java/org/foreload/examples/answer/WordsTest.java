package org.foreload.examples.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.examples.demo.Demos;
import org.foreload.strategy.CornerStudy;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;

/** Plans in words. */
class WordsTest {

    private static BrakePlan plan(double brakePoint, double start, double end) {
        return Braking.of(10, 0.25, new Release(ReleaseShapes.LINEAR, start, end))
                .from(brakePoint);
    }

    @Test
    void aPlanSaysWhereItEasesOff() {
        assertEquals(
                "brake 80 m before turn-in, peak 10.00 m/s² (1.02 g), release point 5 m before turn-in, brake off 20 m "
                        + "after turn-in (linear release)",
                Words.brake(plan(-80, -5, 20), Units.KMH));
        assertEquals(
                "brake 80 m before turn-in, peak 10.00 m/s², release point at turn-in, brake off 20 m after turn-in "
                        + "(linear release)",
                Words.brake(plan(-80, 0, 20), Units.SI));
        assertEquals(
                "brake 80 m before turn-in, peak 10.00 m/s², brake off at turn-in, all at once",
                Words.brake(plan(-80, 0, 0), Units.SI));
    }

    /** A linear release from −20 m to 80 m leaves 60 % of the peak at 20 m, and nothing behind its end. */
    @Test
    void whatAFootPressesAndWhereItEasesHangsOnWhereItComesDown() {
        assertEquals(10, Words.hardest(plan(-80, -20, 80)));
        assertEquals(6, Words.hardest(plan(20, -20, 80)), 1e-12);
        assertEquals(-20, Words.eases(plan(-80, -20, 80)));
        assertEquals(20, Words.eases(plan(20, -20, 80)));
        assertEquals("no braking at all", Words.brake(plan(80, -20, 80), Units.KMH));
    }

    /** Such brakes ease what the pedal asks for, so that a plan's peak may be more than the car ever slows by. */
    @Test
    void antiLockBrakesDoNotGiveWhatIsAskedOfThem() {
        Car car = Demos.car("car", "road").value();
        assertEquals(Optional.empty(), Words.heldBack(car));
        assertTrue(Words.heldBack(car.withAntiLock(true)).isPresent());
    }

    /** A board that is passed before braking is too late: the brake point goes to the metre before. */
    @Test
    void aBrakePointIsRoundedToTheMetreBefore() {
        assertEquals("81 m before turn-in", Words.brakeBoard(-80.1));
        assertEquals("80 m before turn-in", Words.board(-80.1));
        assertEquals("at turn-in", Words.board(0.4));
        for (double station : new double[] {-2.5, -1.5, -0.5, 0.4, 0.5, 1.5, 2.5}) {
            assertTrue(Words.board(station)
                    .startsWith(Words.metre(station) == 0 ? "at" : Math.abs(Words.metre(station)) + " m "));
        }
    }

    /** 1 m/s is 3.6 km/h; an international mile is 1609.344 m; g is 9.80665 m/s² (ISO 80000-3). */
    @Test
    void unitsStandBesideSi() {
        assertEquals("27.8 m/s (100 km/h)", Units.KMH.speed(100 / 3.6));
        assertEquals("100 km/h", Units.KMH.speedAlone(100 / 3.6) + " " + Units.KMH.speedUnit());
        assertEquals("100 mph", Units.MPH.speedAlone(160.9344 / 3.6) + " " + Units.MPH.speedUnit());
        assertEquals("27.8 m/s", Units.SI.speedAlone(100 / 3.6) + " " + Units.SI.speedUnit());
        assertEquals("44.7 m/s (100 mph)", Units.MPH.speed(44.704));
        assertEquals("44.7 m/s", Units.SI.speed(44.704));
        assertEquals("9.81 m/s² (1.00 g)", Units.KMH.deceleration(9.80665));
    }

    /** An abrupt release has no easing to start: the driver is given one place for one act. */
    @Test
    void anAbruptReleaseHasOnePlace() {
        BrakePlan abrupt = plan(-80, 0, 9).with(new Release(ReleaseShapes.ABRUPT, 0, 9));
        assertEquals(
                "brake 80 m before turn-in, peak 10.00 m/s², brake off 9 m after turn-in, all at once",
                Words.brake(abrupt, Units.SI));
        assertEquals(9, Words.eases(abrupt));
        assertTrue(Words.atOnce(abrupt) && Words.atOnce(plan(-80, 0, 0)) && !Words.atOnce(plan(-80, 0, 9)));
    }

    /**
     * A foot is asked to come down along half a cosine in 0.25 s: after half of that half of the peak is asked of it. A
     * brake that is off where the car is then reaches no more, and a foot that lags less; one that is off after a
     * second reaches the peak.
     */
    @Test
    void aFootThatIsOffTheBrakeBeforeItHasReachedThePeakSaysWhatItReached() {
        EntrySimulator simulator = CornerStudy.of(
                        Demos.car("", Demos.DEFAULT_CAR).value(),
                        Demos.corner("", Demos.DEFAULT_CORNER).value())
                .simulator();
        double from = -150;
        double second = Handover.speedAt(simulator.run(plan(from, from + 20, from + 20)), from);
        EntryResult half = simulator.run(plan(from, from + 0.125 * second, from + 0.125 * second));
        double most = Words.shortOfPeak(half).orElseThrow();
        assertTrue(most > 1 && most < 5, "of 10 m/s²: " + most);
        String words = Words.brake(half, Units.SI);
        assertTrue(
                words.matches("brake 150 m before turn-in, peak 10.00 m/s², of which [1-4].\\d\\d m/s² is reached, .*"),
                words);
        EntryResult whole = simulator.run(plan(from, from + second, from + second));
        assertTrue(Words.shortOfPeak(whole).isEmpty());
        assertFalse(Words.brake(whole, Units.SI).contains("reached"));
        assertTrue(Words.shortOfPeak(half.withoutProfile()).isEmpty(), "not known");
    }

    /** A linear release from −20 m to 80 m leaves 60 % of the peak at 20 m. */
    @Test
    void aFootThatComesDownIntoTheReleaseDoesNotReachThePeak() {
        assertEquals(
                "brake 20 m after turn-in, to at most 6.00 m/s², easing at once, brake off 80 m after turn-in (linear "
                        + "release of 10.00 m/s² that starts 20 m before turn-in)",
                Words.brake(plan(20, -20, 80), Units.SI));
    }
}
