package org.foreload.integrate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The functions against their definition: φₖ(z) = ∫₀¹ exp((1 − θ)z)·θᵏ⁻¹/(k − 1)! dθ (Hochbruck and Ostermann 2010).
 */
class PhiTest {

    /** Panels of Simpson's rule: its error is below 1e-13 for the quickest decay here. */
    private static final int PANELS = 40_000;

    private static double integral(double z, int k) {
        double factorial = k == 3 ? 2 : 1;
        double sum = 0;
        for (int i = 0; i <= PANELS; i++) {
            double theta = (double) i / PANELS;
            double weight = i == 0 || i == PANELS ? 1 : i % 2 == 1 ? 4 : 2;
            sum += weight * Math.exp((1 - theta) * z) * Math.pow(theta, k - 1) / factorial;
        }
        return sum / (3 * PANELS);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1e-12, -1e-3, -0.1, -0.4999, -0.5, -0.7, -3, -20, -90})
    void theyAreTheirIntegrals(double z) {
        Phi phi = new Phi();
        phi.set(z);
        assertEquals(Math.exp(z), phi.zero, 1e-15);
        assertEquals(integral(z, 1), phi.one, 1e-12);
        assertEquals(integral(z, 2), phi.two, 1e-12);
        assertEquals(integral(z, 3), phi.three, 1e-12);
    }
}
