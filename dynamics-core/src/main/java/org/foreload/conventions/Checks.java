package org.foreload.conventions;

/**
 * Guards for the numbers that enter immutable models. Each guard is written so that a NaN fails it, and names the
 * field, the value and what is allowed in one line.
 */
public final class Checks {

    private Checks() {}

    /**
     * Requires a number, be it infinite.
     *
     * @throws InvalidValueException if {@code value} is NaN
     */
    public static double number(String field, double value) {
        return check(field, value, !Double.isNaN(value), "a number");
    }

    /**
     * Requires a finite number.
     *
     * @throws InvalidValueException if {@code value} is NaN or infinite
     */
    public static double finite(String field, double value) {
        return check(field, value, Double.isFinite(value), "a finite number");
    }

    /**
     * Requires a finite number above zero.
     *
     * @throws InvalidValueException otherwise
     */
    public static double positive(String field, double value) {
        return check(field, value, value > 0 && value < Double.POSITIVE_INFINITY, "a number above 0");
    }

    /**
     * Requires a finite number, zero or above.
     *
     * @throws InvalidValueException otherwise
     */
    public static double notNegative(String field, double value) {
        return check(field, value, value >= 0 && value < Double.POSITIVE_INFINITY, "a number of 0 or more");
    }

    /**
     * Requires a number in the closed range from {@code low} to {@code high}.
     *
     * @throws InvalidValueException otherwise
     */
    public static double within(String field, double value, double low, double high) {
        return check(field, value, value >= low && value <= high, "a number from " + low + " to " + high);
    }

    /**
     * Requires a number above {@code low} and below {@code high}.
     *
     * @throws InvalidValueException otherwise
     */
    public static double between(String field, double value, double low, double high) {
        return check(field, value, value > low && value < high, "a number above " + low + " and below " + high);
    }

    private static double check(String field, double value, boolean allowed, String what) {
        if (!allowed) {
            throw new InvalidValueException(field, value, what);
        }
        return value;
    }
}
