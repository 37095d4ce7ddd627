package org.foreload.braking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.foreload.braking.FootError.Leg;
import org.foreload.braking.PedalDisturbance.Hesitation;
import org.foreload.braking.PedalDisturbance.Ripple;
import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Pedals, feet, and what they make of a plan. */
class PedalTest {

    @Provide
    Arbitrary<Pedal> pedals() {
        Arbitrary<Pedal> force =
                Arbitraries.doubles().between(10, 100).map(gain -> new Pedal.ForceSensing(gain, 0, 0.03));
        Arbitrary<Pedal> travel = Combinators.combine(
                        Arbitraries.doubles().between(2e3, 5e4),
                        Arbitraries.doubles().between(0, 1e8),
                        Arbitraries.doubles().between(50, 400))
                .as((stiffness, hardening, gain) -> new Pedal.TravelSensing(stiffness, hardening, gain, 0, 0.03));
        return Arbitraries.oneOf(force, travel);
    }

    @Property
    void thePushThatAsksForADecelerationBringsIt(
            @ForAll("pedals") Pedal pedal, @ForAll @DoubleRange(min = 0, max = 20) double deceleration) {
        assertEquals(deceleration, pedal.deceleration(pedal.footForce(deceleration), 0), 1e-9 * (1 + deceleration));
    }

    /** A spring that hardly stiffens, or not at all, is the straight one: F = c·x. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-3, 1e-9, 1e-18, 1e-25, 1e-300, Double.MIN_VALUE, 0})
    void aSpringThatHardlyStiffensIsStraight(double hardening) {
        Pedal pedal = new Pedal.TravelSensing(1e5, hardening, 200, 0, 0.05);
        assertEquals(4000, pedal.footForce(8), 1e-6);
        for (double deceleration : new double[] {8, 1e-6}) {
            assertEquals(deceleration, pedal.deceleration(pedal.footForce(deceleration), 0), 1e-13 * deceleration);
        }
    }

    /** One that is hard from the start goes with the cube root: x³ = F/e. */
    @Test
    void aSpringThatIsAllHardeningGoesWithTheCubeRoot() {
        Pedal pedal = new Pedal.TravelSensing(1e-3, 1e9, 200, 0, 0.05);
        assertEquals(200 * Math.cbrt(64e3 / 1e9), pedal.deceleration(64e3, 0), 1e-8);
    }

    /**
     * On a spring that has stiffened, force goes as the cube of travel, so an error of force comes out as a third of
     * it: dx/x = dF/(3F).
     */
    @Test
    void aStiffeningSpringShrinksAnErrorOfForce() {
        Pedal pedal = new Pedal.TravelSensing(1, 1e7, 200, 0, 0.03);
        double force = pedal.footForce(8);
        assertEquals(8 * (1 + 0.03 / 3), pedal.deceleration(1.03 * force, 0), 8 * 4e-4);
        assertEquals(8 * 1.03, new Pedal.ForceSensing(40, 0, 0.03).deceleration(1.03 * 320, 0), 1e-12);
    }

    /** An error of place is seen by the pedal that measures travel, 1 mm × 200 m/s² per m, and by that one only. */
    @Test
    void onlyATravelSensingPedalSeesAnErrorOfPlace() {
        Pedal travel = new Pedal.TravelSensing(1e4, 1e6, 200, 0, 0.03);
        assertEquals(8.2, travel.deceleration(travel.footForce(8), 0.001), 1e-9);
        assertEquals(8, new Pedal.ForceSensing(40, 0, 0.03).deceleration(320, 0.001), 1e-12);
    }

    @Test
    void aCoarsePedalKnowsStepsOnly() {
        Pedal pedal = new Pedal.ForceSensing(40, 20, 0.03);
        double step = 20.0 / 40;
        for (int i = 0; i <= 40; i++) {
            double asked = i * 0.1;
            double got = pedal.deceleration(pedal.footForce(asked), 0);
            assertTrue(Math.abs(got - asked) <= step / 6.28, "off by more than a smooth step allows");
        }
        // Flat on a step: a push 5 % of a step off it changes a hundredth of that.
        assertEquals(2, pedal.deceleration(81, 0), 0.01 * step);
    }

    @Test
    void aHesitationDipsOnceAndComesBack() {
        Hesitation dip = new Hesitation(1, 0.4, 0.5);
        assertEquals(8, dip.delivered(8, 0.9));
        assertEquals(4, dip.delivered(8, 1.2), 1e-12);
        assertEquals(6, dip.delivered(8, 1.1), 1e-12);
        assertEquals(8, dip.delivered(8, 1.5));
        assertThrows(InvalidValueException.class, () -> new Hesitation(1, 0.4, 1.1));
        assertThrows(InvalidValueException.class, () -> new Hesitation(1, Double.NaN, 0.5));
    }

    @Test
    void aRippleSwingsAboutWhatIsIntended() {
        Ripple ripple = new Ripple(0.1, 2);
        assertEquals(8.8, ripple.delivered(8, 0.125), 1e-12);
        assertEquals(7.2, ripple.delivered(8, 0.375), 1e-12);
        assertEquals(8.4, ripple.delivered(8, 0.125 / 3), 1e-12); // 30 degrees into the swing
        assertEquals(0, ripple.delivered(0, 0.125));
        assertThrows(InvalidValueException.class, () -> new Ripple(0.1, 0));
    }

    @Test
    void aPlanCarriesItsDisturbanceAlong() {
        BrakePlan plan =
                Braking.of(8, 0.2, new Release(ReleaseShapes.LINEAR, 0, 20)).from(-50);
        BrakePlan rippled = plan.with(new Ripple(0.1, 2)).withBrakePoint(-60).withPeakDeceleration(9);
        assertEquals(new Ripple(0.1, 2), rippled.disturbance());
        double time = 1.125;
        assertEquals(9 * 1.1 / 2, rippled.demand(10, time), 1e-9);
        assertEquals(8.0 / 2, plan.demand(10, time), 1e-12);
    }

    /** Over many attempts the force is off by the two parts of the leg's error, which add as squares. */
    @Test
    void manyAttemptsScatterAsTheLegDoes() {
        Pedal pedal = new Pedal.ForceSensing(40, 0, 0.03);
        Leg leg = Leg.pushing(0);
        double sum = 0;
        double squares = 0;
        int attempts = 4000;
        for (int seed = 0; seed < attempts; seed++) {
            double off = FootError.draw(pedal, leg, seed).delivered(8, 1.3) / 8 - 1;
            sum += off;
            squares += off * off;
        }
        double expected = Math.hypot(0.026, 0.027);
        assertEquals(0, sum / attempts, 4 * expected / Math.sqrt(attempts));
        assertEquals(expected, Math.sqrt(squares / attempts), 0.05 * expected);
    }

    @Property(edgeCases = EdgeCasesMode.NONE)
    void nothingComesOfNothingAndNothingIsNegative(
            @ForAll("pedals") Pedal pedal,
            @ForAll long seed,
            @ForAll @DoubleRange(min = 0, max = 12) double intended,
            @ForAll @DoubleRange(min = 0, max = 8) double time) {
        FootError error = FootError.draw(pedal, Leg.pushing(0.002), seed);
        assertEquals(0, error.delivered(0, time));
        assertTrue(error.delivered(intended, time) >= 0);
        // Continuous: a thousandth of a second moves it by a little.
        assertEquals(error.delivered(intended, time), error.delivered(intended, time + 1e-3), 0.02 + 0.05 * intended);
    }

    /** A leg that is only out of place, on a pedal that measures travel: off by that place, whatever the force. */
    @Test
    void anErrorOfPlaceComesThroughAsTravelAndFadesWithTheForce() {
        Pedal pedal = new Pedal.TravelSensing(1e4, 0, 200, 0, 0.03);
        Leg leg = new Leg(0, 0, 1.8, 0.002);
        double squares = 0;
        double faint = 0;
        int attempts = 4000;
        for (int seed = 0; seed < attempts; seed++) {
            FootError foot = FootError.draw(pedal, leg, seed);
            squares += Math.pow(foot.delivered(8, 1.3) - 8, 2);
            // A thousandth of that push: 0.4 N.
            faint = Math.max(faint, foot.delivered(0.008, 1.3));
            assertEquals(foot.delivered(8, 0), foot.delivered(8, 7), 1e-12);
        }
        // 8 m/s² are 400 N; 2 mm × 200 m/s² per m = 0.4 m/s².
        assertEquals(0.4, Math.sqrt(squares / attempts), 0.05 * 0.4);
        assertTrue(faint < 0.4, "a foot all but off the pedal is off by " + faint);
        assertEquals(0, FootError.draw(pedal, leg, 1).delivered(1e-9, 1), 1e-7);
        // Under 5 N, the force of a foot that only just rests on the pedal, half of it: here of 0.1 mm.
        squares = 0;
        for (int seed = 0; seed < attempts; seed++) {
            FootError foot = FootError.draw(pedal, new Leg(0, 0, 1.8, 0.0001), seed);
            squares += Math.pow(foot.delivered(0.1, 1.3) - 0.1, 2);
        }
        assertEquals(0.01, Math.sqrt(squares / attempts), 0.05 * 0.01);
    }

    /** Off by the same part all the time: the mean over a long time scatters, from attempt to attempt, as stated. */
    @Test
    void theSteadyErrorIsThereAllTheTime() {
        Pedal pedal = new Pedal.ForceSensing(40, 0, 0.03);
        double sum = 0;
        double squares = 0;
        int attempts = 4000;
        for (int seed = 0; seed < attempts; seed++) {
            FootError foot = FootError.draw(pedal, new Leg(0.2, 0, 1.8, 0), seed);
            double off = foot.delivered(8, 2) / 8 - 1;
            assertEquals(off, foot.delivered(5, 60) / 5 - 1, 1e-12);
            sum += off;
            squares += off * off;
        }
        assertEquals(0, sum / attempts, 4 * 0.2 / Math.sqrt(attempts));
        assertEquals(0.2, Math.sqrt(squares / attempts), 0.05 * 0.2);
    }

    /**
     * A wander whose frequencies fill the band from 0 to B evenly has the mean square rate σ²·(2πB)²/3: the mean of
     * (2πf)² over the band. At every time alike, also at the start; about no error at all.
     */
    @Test
    void theWanderFillsItsBand() {
        Pedal pedal = new Pedal.ForceSensing(40, 0, 0.03);
        Leg leg = new Leg(0, 0.03, 1.8, 0);
        int attempts = 4000;
        double step = 1e-3;
        for (double time : new double[] {step, 1.3}) {
            double sum = 0;
            double squares = 0;
            double rates = 0;
            for (int seed = 0; seed < attempts; seed++) {
                FootError foot = FootError.draw(pedal, leg, seed);
                double off = foot.delivered(8, time) / 8 - 1;
                double rate = (foot.delivered(8, time + step) - foot.delivered(8, time - step)) / 8 / (2 * step);
                sum += off;
                squares += off * off;
                rates += rate * rate;
            }
            assertEquals(0, sum / attempts, 4 * 0.03 / Math.sqrt(attempts));
            assertEquals(0.03, Math.sqrt(squares / attempts), 0.05 * 0.03);
            double expected = 0.03 * 2 * Math.PI * 1.8 / Math.sqrt(3);
            assertEquals(expected, Math.sqrt(rates / attempts), 0.05 * expected);
        }
    }

    /** Two pedals get the same leg, of the same seed; another seed is another leg. */
    @Test
    void theSameSeedIsTheSameLeg() {
        Leg leg = Leg.pushing(0);
        double one = FootError.draw(new Pedal.ForceSensing(40, 0, 0.03), leg, 5).delivered(8, 1);
        assertEquals(
                one, FootError.draw(new Pedal.ForceSensing(80, 0, 0.03), leg, 5).delivered(8, 1), 1e-12);
        assertTrue(one
                != FootError.draw(new Pedal.ForceSensing(40, 0, 0.03), leg, 6).delivered(8, 1));
    }

    /** A leg that shakes by half its push or more would pull: the pedal takes that for no push. */
    @Test
    void aPedalCannotBePulled() {
        for (int seed = 0; seed < 400; seed++) {
            for (Pedal pedal :
                    new Pedal[] {new Pedal.ForceSensing(40, 0, 0.03), new Pedal.TravelSensing(1e4, 1e6, 200, 0, 0.03)
                    }) {
                assertTrue(FootError.draw(pedal, new Leg(0.5, 0.5, 1.8, 0.05), seed)
                                .delivered(1, 1)
                        >= 0);
            }
        }
        assertEquals(0, new Pedal.ForceSensing(40, 0, 0.03).deceleration(-10, 0));
        assertEquals(0, new Pedal.TravelSensing(1e4, 1e6, 200, 0, 0.03).deceleration(10, -0.1));
    }

    /** Flat in the middle of each step, steepest between two: over a quarter of a step it is off by q/2π. */
    @Test
    void theSmoothStaircaseHasItsClosedForm() {
        Pedal pedal = new Pedal.TravelSensing(1e4, 0, 200, 0.004, 0.03);
        double[] quarters = {0, 1 - 2 / Math.PI, 2, 3 + 2 / Math.PI, 4};
        for (int i = 0; i < quarters.length; i++) {
            assertEquals(quarters[i] * 0.001 * 200, pedal.deceleration(0.001 * i * 1e4, 0), 1e-12);
        }
    }

    /** The longest step of the simulator is a part of these. */
    @Test
    void disturbancesTellTheirQuickestPeriod() {
        assertEquals(Double.POSITIVE_INFINITY, PedalDisturbance.NONE.shortestPeriod());
        assertEquals(0.4, new Hesitation(1, 0.4, 0.5).shortestPeriod());
        assertEquals(0.25, new Ripple(0.1, 4).shortestPeriod());
        FootError foot = FootError.draw(new Pedal.ForceSensing(40, 0, 0.03), new Leg(0, 0.1, 2, 0), 1);
        assertEquals(0.5, foot.shortestPeriod());
    }

    @Test
    void pedalsSayWhatTheyMeasure() {
        assertEquals("force-sensing", new Pedal.ForceSensing(40, 0, 0.03).name());
        assertEquals("travel-sensing", new Pedal.TravelSensing(1e4, 0, 200, 0, 0.03).name());
    }

    @Test
    void impossibleNumbersAreRefused() {
        refused("steady_error", () -> new Leg(-0.1, 0, 1, 0));
        refused("variability", () -> new Leg(0, 0.6, 1, 0));
        refused("bandwidth_hz", () -> new Leg(0, 0, 0, 0));
        refused("place_error_m", () -> new Leg(0, 0, 1, Double.NaN));
        refused("force_per_deceleration", () -> new Pedal.ForceSensing(0, 0, 0.03));
        refused("force_resolution_n", () -> new Pedal.ForceSensing(40, -1, 0.03));
        refused("build_up_lag_s", () -> new Pedal.ForceSensing(40, 0, 0));
        refused("pedal_stiffness_n_per_m", () -> new Pedal.TravelSensing(0, 0, 200, 0, 0.03));
        refused("pedal_hardening_n_per_m3", () -> new Pedal.TravelSensing(1, -1, 200, 0, 0.03));
        refused("deceleration_per_travel", () -> new Pedal.TravelSensing(1, 0, 0, 0, 0.03));
        refused("travel_resolution_m", () -> new Pedal.TravelSensing(1, 0, 200, -1, 0.03));
        refused("build_up_lag_s", () -> new Pedal.TravelSensing(1, 0, 200, 0, Double.NaN));
        refused("hesitation_start_s", () -> new Hesitation(-1, 0.4, 0.5));
        refused("hesitation_duration_s", () -> new Hesitation(1, 0, 0.5));
        refused("ripple_size", () -> new Ripple(1.1, 2));
    }

    private static void refused(String field, Runnable making) {
        assertEquals(
                field, assertThrows(InvalidValueException.class, making::run).field());
    }
}
