package org.foreload.conventions;

/**
 * Elementary functions where a simulator spends its time: those of {@link Math} that Java 17 calls outside the code it
 * compiles, for arguments as they come up at a wheel, within a few units of the last digit of {@link Math} itself. Sine
 * and tangents are odd to the last bit, so that a left turn is the mirror image of a right one.
 */
public final class Elementary {

    /** Square of 7/16, up to which the polynomial of the arc tangent was made. */
    private static final double ARC_SQUARE = 0.19140625;

    /** Up to here the continued fraction of the hyperbolic tangent, cut off at 13, is right to the last digits. */
    private static final double FRACTION_END = 0.5;

    /** Square of 3/4: inside an eighth of a turn, for which the polynomials of sine and cosine were made. */
    private static final double EIGHTH_SQUARE = 0.5625;

    private Elementary() {}

    /**
     * Sine of an angle in rad. Source: the polynomial of FDLIBM's k_sin.c (Sun Microsystems, from memory; a test holds
     * all of these to {@link Math}).
     */
    public static double sin(double x) {
        double z = x * x;
        if (!(z < EIGHTH_SQUARE) || x == 0) {
            return Math.sin(x);
        }
        double rest = -2.50507602534068634195e-08 + z * 1.58969099521155010221e-10;
        rest = 2.75573137070700676789e-06 + z * rest;
        rest = -1.98412698298579493134e-04 + z * rest;
        rest = 8.33333333332248946124e-03 + z * rest;
        rest = -1.66666666666666324348e-01 + z * rest;
        return x + x * z * rest;
    }

    /** Cosine of an angle in rad. Source: the polynomial of FDLIBM's k_cos.c (as above). */
    public static double cos(double x) {
        double z = x * x;
        if (!(z < EIGHTH_SQUARE)) {
            return Math.cos(x);
        }
        double rest = 2.08757232129817482790e-09 + z * -1.13596475577881948265e-11;
        rest = -2.75573143513906633035e-07 + z * rest;
        rest = 2.48015872894767294178e-05 + z * rest;
        rest = -1.38888888888741095749e-03 + z * rest;
        rest = 4.16666666666666019037e-02 + z * rest;
        return 1 - (0.5 * z - z * z * rest);
    }

    /** Arc tangent, rad. Source: the polynomial of FDLIBM's s_atan.c (as above). */
    public static double atan(double x) {
        double z = x * x;
        if (!(z < ARC_SQUARE) || x == 0) {
            return Math.atan(x);
        }
        double w = z * z;
        double odd = 4.97687799461593236017e-02 + w * 1.62858201153657823623e-02;
        odd = 6.66107313738753120669e-02 + w * odd;
        odd = 9.09088713343650656196e-02 + w * odd;
        odd = 1.42857142725034663711e-01 + w * odd;
        odd = 3.33333333333329318027e-01 + w * odd;
        double even = -5.83357013379057348645e-02 + w * -3.65315727442169155270e-02;
        even = -7.69187620504482999495e-02 + w * even;
        even = -1.11111104054623557880e-01 + w * even;
        even = -1.99999999998764832476e-01 + w * even;
        return x - x * (z * odd + w * even);
    }

    /**
     * Hyperbolic tangent: by its continued fraction x/(1 + x²/(3 + x²/(5 + …))) near zero, by the exponential beyond.
     */
    public static double tanh(double x) {
        double size = Math.abs(x);
        if (size < FRACTION_END) {
            double z = x * x;
            return x * (135135 + z * (17325 + z * (378 + z))) / (135135 + z * (62370 + z * (3150 + 28 * z)));
        }
        double falling = Math.exp(-2 * size);
        return Math.copySign((1 - falling) / (1 + falling), x);
    }
}
