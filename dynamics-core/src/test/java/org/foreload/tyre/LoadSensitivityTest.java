package org.foreload.tyre;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Grip that an axle loses when load moves across it: 2·|a1|·dW² exactly for a peak a1·F² + a2·F. */
class LoadSensitivityTest {

    @ParameterizedTest
    @CsvSource({"3000, 1000, 44.2, 0.780", "4000, 2000, 176.8, 2.395"})
    void lossFromLateralTransferIsQuadratic(double load, double transfer, double loss, double percent) {
        // Peak a1·F² + a2·F in kN with a1 = -22.1, a2 = 1011 per thousand: the set of Bakker, Nyborg and Pacejka, SAE
        // 870421
        // (from memory); the loss itself is exact mathematics.
        double a1 = 22.1e-6;
        double a2 = 1.011;
        double reference = 4000;
        double friction = a2 - a1 * reference;
        double sensitivity = a1 * reference / friction;
        FrictionTyre tyre =
                new FrictionTyre(new SlipCurve.Brush(), friction, friction, sensitivity, reference, 0, 15, 15);
        double even = 2 * tyre.peakForceY(load);
        double uneven = tyre.peakForceY(load + transfer) + tyre.peakForceY(load - transfer);
        assertEquals(loss, even - uneven, 1e-6);
        assertEquals(percent, 100 * (even - uneven) / even, 5e-4);
    }
}
