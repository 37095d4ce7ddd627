package org.foreload.study;

import java.util.Objects;
import org.foreload.conventions.Checks;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;

/**
 * A standard deviation known from a sample of a normal law, with its 90 % interval by the chi-squared law: of few
 * numbers it is wide, and reaches farther up than down. Source: NIST/SEMATECH, e-Handbook of Statistical Methods,
 * 1.3.5.8 (interval) and 6.3.2 (the factor c4), from memory.
 *
 * @param sample square root of the sample's variance, that over one less than the count
 * @param of how many numbers, two or more
 */
public record Deviation(double sample, int of) {

    /** Share of the chi-squared law left out at either end of a 90 % interval. */
    private static final double TAIL = 0.05;

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public Deviation {
        Checks.notNegative("deviation", sample);
        Checks.within("count", of, 2, Integer.MAX_VALUE);
    }

    /** Of some numbers, two or more. */
    public static Deviation of(double... values) {
        Objects.requireNonNull(values, "values");
        double mean = 0;
        for (double value : values) {
            mean += value / values.length;
        }
        double square = 0;
        for (double value : values) {
            square += (value - mean) * (value - mean) / Math.max(1, values.length - 1);
        }
        return new Deviation(Math.sqrt(square), values.length);
    }

    /** Right at the mean: the root of a variance, which is right at the mean, is too small by the factor c4. */
    public double unbiased() {
        return sample / meanShare(of);
    }

    /** Lower end of the interval. */
    public double low() {
        return bound(1 - TAIL);
    }

    /** Upper end of the interval. */
    public double high() {
        return bound(TAIL);
    }

    private double bound(double below) {
        int free = of - 1;
        return sample * Math.sqrt(free / new ChiSquaredDistribution(free).inverseCumulativeProbability(below));
    }

    /** The factor c4: from √(2/π) of two on, c4(k) c4(k − 1) = √((k − 2)/(k − 1)), since Γ(x + 1) = x Γ(x). */
    private static double meanShare(int n) {
        double share = Math.sqrt(2 / Math.PI);
        for (int k = 3; k <= n; k++) {
            share = Math.sqrt((k - 2.0) / (k - 1)) / share;
        }
        return share;
    }
}
