package org.foreload.examples.recording;

import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * Which part of a file is wanted.
 *
 * @param from first station of each lap, m
 * @param to last station of each lap, m
 * @param lap number of the lap; all if left out
 */
public record Cut(OptionalDouble from, OptionalDouble to, OptionalLong lap) {

    /** Everything. */
    public static final Cut NONE = new Cut(OptionalDouble.empty(), OptionalDouble.empty(), OptionalLong.empty());

    boolean holds(double station) {
        return station >= from.orElse(Double.NEGATIVE_INFINITY) && station <= to.orElse(Double.POSITIVE_INFINITY);
    }

    boolean holdsLap(long number) {
        return lap.isEmpty() || lap.getAsLong() == number;
    }
}
