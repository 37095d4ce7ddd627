package org.foreload.conventions;

/**
 * The larger and the smaller of two numbers, as {@link Math#max(double, double)} and {@link Math#min(double, double)}
 * name them, but for the sign of zero: of two zeros the second is taken. What is not a number stays so. The equations
 * of motion ask for them in every evaluation, and the first compiler of the virtual machine puts methods as short as
 * these in their place, where it calls the others.
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

    /** The number, or the bound that it lies beyond; NaN if it is. */
    public static double clamp(double low, double number, double high) {
        return larger(smaller(number, high), low);
    }
}
