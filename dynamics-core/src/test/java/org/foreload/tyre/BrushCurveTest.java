package org.foreload.tyre;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Brush model with parabolic pressure. Values: bristles integrated one by one, equal to 1 − (1 − r)³ to 1e-8; formula
 * from H. B. Pacejka, Tyre and Vehicle Dynamics, ch. 3 (from memory).
 */
class BrushCurveTest {

    @ParameterizedTest
    @CsvSource({"0.1, 0.271", "0.25, 0.578125", "0.333333333333, 0.7037037037", "0.5, 0.875", "0.75, 0.984375", "1, 1"})
    void shareOfPeakForceOverShareOfSlidingSlip(double share, double force) {
        // Four kilonewtons, friction 1, 60 kN/rad: sliding starts at tan(alpha) = 3·mu·F/C = 0.2.
        FrictionTyre tyre = new FrictionTyre(new SlipCurve.Brush(), 1, 1, 0, 4000, 0, 15, 15);
        assertEquals(force, tyre.force(0, 0.2 * share, 4000).lateral() / 4000, 1e-9);
    }

    @Test
    void slidingStartsAtTheAngleOfTheClosedForm() {
        FrictionTyre tyre = new FrictionTyre(new SlipCurve.Brush(), 1, 1, 0, 4000, 0, 15, 15);
        assertEquals(11.30993, Math.toDegrees(Math.atan(tyre.lateralSlipFor(1, 4000))), 1e-5);
    }

    @Test
    void equalInAllDirectionsForEqualFrictionAndStiffness() {
        // Combined isotropic slip: the force is the same function of the length of the slip, against its direction.
        FrictionTyre tyre = new FrictionTyre(new SlipCurve.Brush(), 1, 1, 0, 4000, 0, 15, 15);
        double pure = tyre.force(0, 0.1, 4000).lateral();
        TyreForce combined = tyre.force(0.06, 0.08, 4000);
        assertEquals(0.6 * pure, combined.longitudinal(), 1e-9);
        assertEquals(0.8 * pure, combined.lateral(), 1e-9);
    }
}
