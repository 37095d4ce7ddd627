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
        assertEquals(0, ripple.delivered(0, 0.125));
        assertThrows(InvalidValueException.class, () -> new Ripple(0.1, 0));
    }

    @Test
    void aPlanCarriesItsDisturbanceAlong() {
        BrakePlan plan = new BrakePlan(-50, 8, 0.2, new Release(ReleaseShapes.LINEAR, 0, 20));
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

    @Property(tries = 200, edgeCases = EdgeCasesMode.NONE)
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
}
