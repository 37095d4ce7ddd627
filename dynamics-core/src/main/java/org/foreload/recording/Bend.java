package org.foreload.recording;

/**
 * A corner as curvature shows it.
 *
 * @param number counted from 1 in driving order
 * @param start where the course is clearly bent, m: after turn-in, which {@link Measure#TURN_IN} looks for
 * @param end where it is no longer clearly bent, m
 * @param left whether it turns left
 * @param angle through which the course turns in between, rad, zero or more
 */
public record Bend(int number, double start, double end, boolean left, double angle) {

    /** Plus one for left, minus one for right. */
    double sign() {
        return left ? 1 : -1;
    }
}
