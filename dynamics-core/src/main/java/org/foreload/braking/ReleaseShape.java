package org.foreload.braking;

/**
 * How a brake comes off: the share of the peak that is still on, over the share of the release that has passed.
 * {@code remaining(0) = 1}, {@code remaining(1) = 0} for all but a constant, never rising in between.
 */
public interface ReleaseShape {

    /** Name as used on the command line and in reports. */
    String name();

    /** Share of the peak that remains at {@code u}, 0 at the start of the release to 1 at its end. */
    double remaining(double u);

    /** Values of {@code u} strictly between 0 and 1, rising, where the shape has a corner or a step. */
    double[] kinks();
}
