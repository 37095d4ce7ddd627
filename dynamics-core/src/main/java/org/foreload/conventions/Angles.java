package org.foreload.conventions;

/**
 * Sine, cosine and arc tangent as the library of the language has them, to rounding, but quicker for the small angles
 * of a car: the equations of motion ask for seven of them in every evaluation.
 *
 * <p>Below {@link #SMALL}, sine and cosine are their power series and the arc tangent its series of Chebyshev
 * polynomials, arctan x = 2 Σ (−1)ᵏ p²ᵏ⁺¹/(2k+1) T₂ₖ₊₁(x/a) on [−a, a] with 2p/(1 − p²) = a, written out in powers of x
 * (M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 4.3.65 and 4.3.66; J. C. Mason, D. C. Handscomb,
 * Chebyshev Polynomials, 2003, section 5.2: from memory; a test holds all three to the library). Even and odd terms are
 * summed apart, so that neither sum waits for the other.
 */
public final class Angles {

    /** Size of an argument from which on the library is asked. */
    static final double SMALL = 0.5;

    private static final double SMALL_SQUARE = SMALL * SMALL;

    private static final double[] ARC = arc(13);

    private static final double ARC0 = ARC[0];
    private static final double ARC1 = ARC[1];
    private static final double ARC2 = ARC[2];
    private static final double ARC3 = ARC[3];
    private static final double ARC4 = ARC[4];
    private static final double ARC5 = ARC[5];
    private static final double ARC6 = ARC[6];
    private static final double ARC7 = ARC[7];
    private static final double ARC8 = ARC[8];
    private static final double ARC9 = ARC[9];
    private static final double ARC10 = ARC[10];
    private static final double ARC11 = ARC[11];
    private static final double ARC12 = ARC[12];

    private Angles() {}

    /** Sine of an angle in radians. */
    public static double sin(double x) {
        double z = x * x;
        if (!(z < SMALL_SQUARE)) {
            return Math.sin(x);
        }
        double w = z * z;
        double even = 1 + w * (1 / 120.0 + w * (1 / 362880.0 + w * (1 / 6227020800.0)));
        double odd = 1 / 6.0 + w * (1 / 5040.0 + w * (1 / 39916800.0));
        return x * (even - z * odd);
    }

    /** Cosine of an angle in radians. */
    public static double cos(double x) {
        double z = x * x;
        if (!(z < SMALL_SQUARE)) {
            return Math.cos(x);
        }
        double w = z * z;
        double even = w * (1 / 24.0 + w * (1 / 40320.0 + w * (1 / 479001600.0)));
        double odd = 1 / 2.0 + w * (1 / 720.0 + w * (1 / 3628800.0 + w * (1 / 87178291200.0)));
        return 1 - (z * odd - even);
    }

    /** Angle in radians whose tangent is {@code x}. */
    public static double atan(double x) {
        double z = x * x;
        if (!(z < SMALL_SQUARE)) {
            return Math.atan(x);
        }
        double w = z * z;
        double even = ARC0 + w * (ARC2 + w * (ARC4 + w * (ARC6 + w * (ARC8 + w * (ARC10 + w * ARC12)))));
        double odd = ARC1 + w * (ARC3 + w * (ARC5 + w * (ARC7 + w * (ARC9 + w * ARC11))));
        return x * (even + z * odd);
    }

    /** The first terms of the Chebyshev series of the arc tangent, as coefficients of x, x³, x⁵ and so on. */
    private static double[] arc(int terms) {
        double p = (Math.sqrt(1 + SMALL_SQUARE) - 1) / SMALL;
        double[] coefficients = new double[terms];
        double[] before = new double[2 * terms];
        double[] polynomial = new double[2 * terms];
        before[0] = 1;
        polynomial[1] = 1;
        for (int degree = 1; degree < 2 * terms; degree++) {
            if (degree % 2 == 1) {
                double weight = (degree % 4 == 1 ? 2 : -2) * Math.pow(p, degree) / degree;
                for (int k = 0; 2 * k + 1 <= degree; k++) {
                    coefficients[k] += weight * polynomial[2 * k + 1] / Math.pow(SMALL, 2 * k + 1);
                }
            }
            double[] next = new double[2 * terms];
            for (int i = 0; i < next.length; i++) {
                next[i] = (i > 0 ? 2 * polynomial[i - 1] : 0) - before[i];
            }
            before = polynomial;
            polynomial = next;
        }
        return coefficients;
    }
}
