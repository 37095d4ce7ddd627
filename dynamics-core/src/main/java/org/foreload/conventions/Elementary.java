package org.foreload.conventions;

/**
 * Elementary functions where a simulator spends its time: those of {@link Math} that Java 17 calls outside the virtual
 * machine, for arguments as they come up at a wheel, within a few units of the last digit of {@link Math} itself. Each
 * is odd to the last bit, so that a left turn is the mirror image of a right one.
 */
public final class Elementary {

    /** Square of 7/16, up to which the polynomial of the arc tangent was made. */
    private static final double ARC_SQUARE = 0.19140625;

    /** Up to here the continued fraction of the hyperbolic tangent, cut off at 13, is right to the last digits. */
    private static final double FRACTION_END = 0.5;

    private Elementary() {}

    /**
     * Arc tangent, rad. Source: the polynomial of FDLIBM's s_atan.c (Sun Microsystems, from memory; a test holds it to
     * {@link Math#atan}).
     */
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
