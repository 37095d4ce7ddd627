package org.foreload.integrate;

/**
 * The functions of exponential integrators for one component: φ₀ = eᶻ, φ₁ = (φ₀ − 1)/z, φ₂ = (φ₁ − 1)/z, φ₃ = (φ₂ −
 * ½)/z. Source: M. Hochbruck, A. Ostermann, Exponential integrators, Acta Numerica 19 (2010), section 2.1 (from
 * memory).
 */
final class Phi {

    /** Below this size of z the quotients would lose digits, and the series of φ₃ is summed. */
    private static final double SMALL = 0.5;

    /** Terms of the series: the last is below 1e-17 of the sum at {@link #SMALL}. */
    private static final int TERMS = 13;

    double zero;
    double one;
    double two;
    double three;

    /** Sets all to those of another. */
    void set(Phi other) {
        zero = other.zero;
        one = other.one;
        two = other.two;
        three = other.three;
    }

    /** Sets all to those of z, zero or below. */
    void set(double z) {
        if (Math.abs(z) < SMALL) {
            double sum = 0;
            for (int k = TERMS; k >= 0; k--) {
                sum = 1 + sum * z / (k + 4);
            }
            three = sum / 6;
            two = 0.5 + z * three;
            one = 1 + z * two;
            zero = 1 + z * one;
        } else {
            double perZ = 1 / z;
            zero = Math.exp(z);
            one = (zero - 1) * perZ;
            two = (one - 1) * perZ;
            three = (two - 0.5) * perZ;
        }
    }
}
