package org.foreload.pedal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.stability.Scenes;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The pitch response measured on the equations of motion against the closed forms of a second-order system. */
class PitchResponseTest {

    private static PitchResponse response(double frequency, double damping) {
        Car car = Scenes.light();
        return PitchResponse.of(
                car.with(new Suspension(0.6, 0.03, 0.07, new Response(frequency, damping), Response.RIGID)));
    }

    /** Textbook response of a second-order low pass: peak of amplitude at f·√(1 − 2ζ²), ringing at f·√(1 − ζ²). */
    @ParameterizedTest
    @CsvSource({"1.8, 0.4", "1.4, 0.35", "2.5, 0.5", "3.0, 0.2"})
    void aRippleResonatesAndAJabRingsWhereThePitchDataSay(double frequency, double damping) {
        PitchResponse response = response(frequency, damping);
        double resonance = frequency * Math.sqrt(1 - 2 * damping * damping);
        double ring = frequency * Math.sqrt(1 - damping * damping);
        assertEquals(resonance, response.expectedResonance(), 1e-12);
        assertEquals(ring, response.expectedRing(), 1e-12);
        assertEquals(resonance, response.resonance(0.3, 8), 0.03 * resonance);
        assertEquals(ring, response.ring(), 0.03 * ring);
    }

    /** The same closed form up to high damping: at 0.95 the swings shrink by e^-9.6, π·ζ/√(1 − ζ²), each. */
    @ParameterizedTest
    @CsvSource({"1.5, 0.6", "1.5, 0.8", "2.5, 0.9", "1.5, 0.94", "4.0, 0.95"})
    void aWellDampedBodyRingsSlowly(double frequency, double damping) {
        double ring = frequency * Math.sqrt(1 - damping * damping);
        assertEquals(ring, response(frequency, damping).ring(), 0.005 * ring);
    }

    /**
     * Damped almost critically, a body swings by less than rounding, π·ζ/√(1 − ζ²) above 15; critically, not at all.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.98, 0.99, 0.999, 0.999999, 1, 1.5})
    void whatRingsTooLittleToBeMeasuredHasNoFrequency(double damping) {
        assertEquals(Double.NaN, response(1.5, damping).ring());
    }

    /** With its CG in the road a car moves no load: there is nothing to measure. */
    @Test
    void aCgInTheRoadMovesNoLoad() {
        Car car = Scenes.light().with(new Suspension(0.6, 0, 0, new Response(1.5, 0.3), Response.RIGID));
        Chassis chassis = car.chassis();
        PitchResponse flat = PitchResponse.of(car.with(new Chassis(
                chassis.mass(),
                chassis.wheelbase(),
                chassis.cgToFrontAxle(),
                0,
                chassis.yawInertia(),
                chassis.frontTrack(),
                chassis.rearTrack())));
        assertEquals(Double.NaN, flat.ring());
        assertEquals(Double.NaN, flat.expectedRing());
        assertEquals(Double.NaN, flat.gain(1));
        assertEquals(Double.NaN, flat.resonance(0.5, 5));
        assertEquals(Double.NaN, flat.expectedResonance());
    }

    /** |H| = 1/√((1 − w²)² + (2ζw)²), w the frequency over the undamped one. */
    @ParameterizedTest
    @CsvSource({"0.2", "1.0", "1.8", "4.0"})
    void theGainIsThatOfASecondOrderLowPass(double frequency) {
        double w = frequency / 1.8;
        double expected = 1 / Math.hypot(1 - w * w, 2 * 0.4 * w);
        assertEquals(expected, response(1.8, 0.4).gain(frequency), 0.01 * expected);
    }

    @Test
    void aWellDampedOrARigidBodyHasNoResonance() {
        assertTrue(Double.isNaN(response(1.8, 0.8).expectedResonance()));
        assertTrue(Double.isNaN(response(1.8, 0.8).resonance(0.3, 8)));
        Car rigid = Scenes.light().with(new Suspension(0.6, 0.03, 0.07, Response.RIGID, Response.RIGID));
        assertEquals(1, PitchResponse.of(rigid).gain(3), 2e-3);
        assertTrue(Double.isNaN(PitchResponse.of(rigid).resonance(0.3, 8)));
        assertTrue(Double.isNaN(PitchResponse.of(rigid).ring()));
    }
}
