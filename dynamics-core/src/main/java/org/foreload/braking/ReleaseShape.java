package org.foreload.braking;

/**
 * How a brake comes off: the share of the peak that is still on, over the share of the release that has passed.
 *
 * <p>Laws that every shape keeps: {@code remaining(0) = 1}, {@code remaining(1) = 0}, never rising in between, and
 * smooth between its {@link #kinks()}. Before 0 the brake is fully on, after 1 it is off.
 */
public interface ReleaseShape {

    /** Name as used on the command line and in reports. */
    String name();

    /**
     * Share of the peak that remains, 0 to 1, a plain number.
     *
     * @param u share of the release that has passed: 0 at its start, 1 at its end; outside, the nearest end is read
     */
    double remaining(double u);

    /** Values of {@code u} strictly between 0 and 1, rising, where the shape has a corner or a step. */
    double[] kinks();
}
