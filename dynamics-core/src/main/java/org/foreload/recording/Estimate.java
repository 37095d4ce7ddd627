package org.foreload.recording;

/**
 * A measured number with the interval that holds the true one at the stated rate.
 *
 * @param value the number; NaN if there is none
 * @param low lower end of the interval
 * @param high upper end of the interval
 */
public record Estimate(double value, double low, double high) {

    /** There is no such number: no brake, no throttle. */
    public static final Estimate NONE = new Estimate(Double.NaN, Double.NaN, Double.NaN);

    /**
     * A number with an interval of the same width to both sides.
     *
     * @param value the number; NaN gives {@link #NONE}
     * @param halfWidth half the width of the interval, zero or more
     */
    public static Estimate around(double value, double halfWidth) {
        return Double.isNaN(value) ? NONE : new Estimate(value, value - halfWidth, value + halfWidth);
    }

    /** Whether there is a number. */
    public boolean known() {
        return !Double.isNaN(value);
    }

    /** Whether the interval holds a number. */
    public boolean holds(double number) {
        return number >= low && number <= high;
    }

    /** The same with an interval that reaches so far at least; {@link #NONE} stays what it is. */
    Estimate reaching(double least, double most) {
        return known() ? new Estimate(value, Math.min(low, least), Math.max(high, most)) : this;
    }

    /** The same, kept within bounds that the quantity cannot leave. */
    Estimate within(double least, double most) {
        return new Estimate(value, Math.max(least, low), Math.min(most, high));
    }
}
