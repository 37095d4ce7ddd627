package org.foreload.conventions;

/**
 * Ways to keep a number within bounds, and quick: the larger and the smaller of two numbers, as {@link Math#max(double,
 * double)} and {@link Math#min(double, double)} name them, but for the sign of zero: of two zeros the second is taken.
 * What is not a number stays so. The equations of motion ask for them in every evaluation, and the first compiler of
 * the virtual machine puts methods as short as these in their place, where it calls the others.
 */
public final class Bounds {

    private Bounds() {}

    /** The larger of two numbers; NaN if one is. */
    public static double larger(double a, double b) {
        return a > b || a != a ? a : b;
    }

    /** The smaller of two numbers; NaN if one is. */
    public static double smaller(double a, double b) {
        return a < b || a != a ? a : b;
    }

    /**
     * The hyperbolic tangent by one exponential, in less than half the time of {@link Math#tanh}: to the last digit of
     * one, though not to that of a number far below one. Odd to the bit, and zero at zero.
     */
    public static double tanh(double x) {
        return Math.copySign(1 - 2 / (Math.exp(2 * Math.abs(x)) + 1), x);
    }

    /** The number, or the bound that it lies beyond; NaN if it is. */
    public static double clamp(double low, double number, double high) {
        return larger(smaller(number, high), low);
    }
}
