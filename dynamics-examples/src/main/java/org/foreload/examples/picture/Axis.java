package org.foreload.examples.picture;

import java.util.Objects;

/**
 * An axis.
 *
 * @param label what it shows
 * @param unit its unit; never empty: {@code %}, {@code share} or {@code –} for plain numbers
 * @param low where it begins; NaN to begin where the data do
 * @param high where it ends; NaN to end where the data do
 * @param counting whether it counts things, so that there is nothing between whole numbers
 * @param leftwards whether it rises to the left, as what is positive to the left is best drawn
 * @param logarithmic whether data and ends are powers of ten, and ticks show the numbers themselves
 */
public record Axis(
        String label, String unit, double low, double high, boolean counting, boolean leftwards, boolean logarithmic) {

    /** In the place of a unit where there is none. */
    private static final String PLAIN = "–";

    /** Checks that there is a label and a unit. */
    public Axis {
        if (label.isBlank() || Objects.requireNonNull(unit).isBlank()) {
            throw new IllegalArgumentException("an axis needs a label and a unit");
        }
        if (high <= low) {
            throw new IllegalArgumentException("an axis must rise: from " + low + " to " + high);
        }
    }

    /** An axis as long as the data. */
    public static Axis of(String label, String unit) {
        return new Axis(label, unit, Double.NaN, Double.NaN, false, false, false);
    }

    /** The same axis between two ends, of which NaN leaves one open. */
    public Axis between(double from, double to) {
        return new Axis(label, unit, from, to, counting, leftwards, logarithmic);
    }

    /** The same axis with whole numbers only. */
    public Axis counted() {
        return new Axis(label, unit, low, high, true, leftwards, logarithmic);
    }

    /** The same axis rising to the left: for what is positive to the left, with the eye on the road. */
    public Axis toTheLeft() {
        return new Axis(label, unit, low, high, counting, true, logarithmic);
    }

    /** The same axis for data that are logarithms to base ten: ticks at whole powers show the numbers themselves. */
    public Axis powersOfTen() {
        return new Axis(label, unit, low, high, counting, leftwards, true);
    }

    /** Label and unit, if it has one. */
    public String text() {
        return unit.equals(PLAIN) ? label : label + ", " + unit;
    }
}
