package org.foreload.braking;

import java.util.Arrays;
import java.util.Objects;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;

/**
 * A release shape through values, smooth and never rising: a monotone cubic spline, so that a search over its values is
 * held back by no family of shapes.
 *
 * <p>The spline runs over w = 1 − √(1 − u), in which its values are equally spaced; over the release itself they stand
 * closer together towards the end. There the brake of a car at the limit falls like a square root, because what it
 * leaves of the friction circle does, and a square root in u is a straight line in w.
 *
 * <p>Slopes at the values by the harmonic mean of the slopes of the neighbouring pieces, which keeps each cubic
 * monotone: F. N. Fritsch and J. Butland, A method for constructing local monotone piecewise cubic interpolants, SIAM
 * J. Sci. Stat. Comput. 5(2), 1984, for equal spacing (from memory). At both ends the three-point slope, cut to the
 * region in which the cubic stays monotone.
 */
public final class SplineRelease implements ReleaseShape {

    private static final String FIELD = "release_shape";

    private final String name;
    private final double[] values;
    private final double[] slopes;

    /**
     * A spline through the start (all of the peak), the inner values, and the end (none of it).
     *
     * @param name for reports
     * @param inner share of the peak that is on at each inner {@link #place}, from 1 to 0, never rising; at least one
     * @throws InvalidValueException if a value is not of that kind; it names its place, counted from 1
     */
    public SplineRelease(String name, double... inner) {
        Objects.requireNonNull(inner, "inner");
        this.name = Objects.requireNonNull(name, "name");
        if (inner.length == 0) {
            throw new InvalidValueException(FIELD, "no values", "at least one");
        }
        values = new double[inner.length + 2];
        values[0] = 1;
        for (int i = 0; i < inner.length; i++) {
            values[i + 1] = Checks.within(FIELD + ", value " + (i + 1), inner[i], 0, values[i]);
        }
        slopes = slopes(values);
    }

    /** The inner values. */
    public double[] inner() {
        return Arrays.copyOfRange(values, 1, values.length - 1);
    }

    /**
     * Where a value stands, as a share of the release.
     *
     * @param i which one, from 0 at the start to pieces at the end
     * @param pieces one more than there are inner values
     */
    public static double place(int i, int pieces) {
        double left = 1 - (double) i / pieces;
        return 1 - left * left;
    }

    /** Slopes per piece at the values. */
    private static double[] slopes(double[] values) {
        int last = values.length - 1;
        double[] slopes = new double[last + 1];
        for (int i = 1; i < last; i++) {
            double before = values[i] - values[i - 1];
            double after = values[i + 1] - values[i];
            slopes[i] = before * after > 0 ? 2 * before * after / (before + after) : 0;
        }
        slopes[0] = endSlope(values[1] - values[0], values[2] - values[1]);
        slopes[last] = endSlope(values[last] - values[last - 1], values[last - 1] - values[last - 2]);
        return slopes;
    }

    private static double endSlope(double own, double next) {
        double slope = 1.5 * own - 0.5 * next;
        return Math.max(MONOTONE * own, Math.min(0, slope));
    }

    /** A cubic whose end slopes are at most this many times its mean slope is monotone. */
    private static final double MONOTONE = 3;

    @Override
    public String name() {
        return name;
    }

    @Override
    public double remaining(double u) {
        double along = (1 - Math.sqrt(1 - Math.max(0, Math.min(1, u)))) * (values.length - 1);
        int i = Math.min((int) along, values.length - 2);
        double x = along - i;
        double y = 1 - x;
        double value = values[i] * y * y * (1 + 2 * x)
                + values[i + 1] * x * x * (3 - 2 * x)
                + slopes[i] * x * y * y
                - slopes[i + 1] * x * x * y;
        return Math.max(values[i + 1], Math.min(values[i], value));
    }

    /** {@inheritDoc} Here the inner places: slopes are steady there, curvature is not. */
    @Override
    public double[] kinks() {
        double[] kinks = new double[values.length - 2];
        for (int i = 0; i < kinks.length; i++) {
            kinks[i] = place(i + 1, values.length - 1);
        }
        return kinks;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SplineRelease spline
                && name.equals(spline.name)
                && Arrays.equals(values, spline.values);
    }

    @Override
    public int hashCode() {
        return 31 * name.hashCode() + Arrays.hashCode(values);
    }

    @Override
    public String toString() {
        return name;
    }
}
