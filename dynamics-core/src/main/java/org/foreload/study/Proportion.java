package org.foreload.study;

import org.foreload.conventions.Checks;

/**
 * A probability known from counting, with its 95 % interval by Wilson's score: it stays within 0 and 1 and is right at
 * none and all, where the plain one has no width. Source: E. B. Wilson, J. Am. Stat. Assoc. 22, 1927 (from memory).
 *
 * @param count how often it happened
 * @param of in how many trials
 */
public record Proportion(int count, int of) {

    /** Standard normal deviate of a two-sided 95 % interval. */
    private static final double DEVIATE = 1.959963984540054;

    /** Checks the counts. */
    public Proportion {
        Checks.within("trials", of, 1, Integer.MAX_VALUE);
        Checks.within("count", count, 0, of);
    }

    /** The share counted. */
    public double value() {
        return (double) count / of;
    }

    /** Lower end of the interval. */
    public double low() {
        return count == 0 ? 0 : Math.max(0, centre() - halfWidth());
    }

    /** Upper end of the interval. */
    public double high() {
        return count == of ? 1 : Math.min(1, centre() + halfWidth());
    }

    private double centre() {
        return (count + DEVIATE * DEVIATE / 2) / (of + DEVIATE * DEVIATE);
    }

    private double halfWidth() {
        double share = value();
        return DEVIATE / (of + DEVIATE * DEVIATE) * Math.sqrt(of * share * (1 - share) + DEVIATE * DEVIATE / 4);
    }
}
