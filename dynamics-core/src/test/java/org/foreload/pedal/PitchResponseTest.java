package org.foreload.pedal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.stability.Scenes;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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
