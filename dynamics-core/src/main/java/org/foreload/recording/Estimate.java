package org.foreload.recording;

import org.foreload.conventions.Checks;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * A measured number with the interval that holds the true one at the stated rate.
 *
 * @param value the number; NaN if there is none
 * @param low lower end of the interval
 * @param high upper end of the interval
 * @param coverage share of all such intervals that hold the true number, above 0 and below 1
 */
public record Estimate(double value, double low, double high, double coverage) {

    /** Coverage of an interval of which nothing else is said: nine times in ten. */
    public static final double USUAL_COVERAGE = 0.9;

    /** There is no such number: no brake, no throttle. */
    public static final Estimate NONE = new Estimate(Double.NaN, Double.NaN, Double.NaN);

    /** Checks the coverage; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public Estimate {
        Checks.positive("coverage", coverage);
        Checks.positive("one_minus_coverage", 1 - coverage);
    }

    /**
     * A number with an interval of the {@linkplain #USUAL_COVERAGE usual coverage}.
     *
     * @param value the number; NaN if there is none
     * @param low lower end of the interval
     * @param high upper end of the interval
     */
    public Estimate(double value, double low, double high) {
        this(value, low, high, USUAL_COVERAGE);
    }

    /**
     * A number with an interval of the same width to both sides, and of the {@linkplain #USUAL_COVERAGE usual
     * coverage}.
     *
     * @param value the number; NaN gives {@link #NONE}
     * @param halfWidth half the width of the interval, zero or more
     */
    public static Estimate around(double value, double halfWidth) {
        return Double.isNaN(value) ? NONE : new Estimate(value, value - halfWidth, value + halfWidth);
    }

    /**
     * A number whose error follows the normal law.
     *
     * @param value the number; NaN gives {@link #NONE}
     * @param deviation standard deviation of its error, zero or more
     * @param coverage of the interval, above 0 and below 1
     */
    public static Estimate normal(double value, double deviation, double coverage) {
        double half = deviations(coverage) * deviation;
        return Double.isNaN(value) ? NONE : new Estimate(value, value - half, value + half, coverage);
    }

    /** Half the width of an interval by the normal law, in standard deviations. */
    static double deviations(double coverage) {
        return new NormalDistribution().inverseCumulativeProbability((1 + coverage) / 2);
    }

    /**
     * Standard deviation of the error by the normal law, from half the width of the interval: the same whatever its
     * coverage; NaN where there is no number.
     */
    public double deviation() {
        return (high - low) / 2 / deviations(coverage);
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
        return known() ? new Estimate(value, Math.min(low, least), Math.max(high, most), coverage) : this;
    }

    /** The same, kept within bounds that the quantity cannot leave. */
    Estimate within(double least, double most) {
        return new Estimate(value, Math.max(least, low), Math.min(most, high), coverage);
    }
}
