package org.foreload.braking;

import java.util.Objects;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;

/**
 * Where along the line a brake comes off, and in what shape.
 *
 * @param shape the shape
 * @param start station of the release point, m
 * @param end station where the brake is off, m; not before {@code start}; equal to it for a brake dropped at once
 */
public record Release(ReleaseShape shape, double start, double end) {

    /**
     * Checks the numbers.
     *
     * @throws NullPointerException if the shape is null; its name is the message
     * @throws InvalidValueException with the field's name
     */
    public Release {
        Objects.requireNonNull(shape, "shape");
        Checks.finite("release_start", start);
        Checks.finite("release_end", end);
        if (end < start) {
            throw new InvalidValueException("release_end", end, "at or after release_start (" + start + ")");
        }
    }

    /** Share of the peak that is on at station {@code s}: one up to the start, zero from the end on. */
    public double remaining(double s) {
        return s >= end ? 0 : shape.remaining((s - start) / (end - start));
    }

    /**
     * Stations where the brake has a corner or a step, strictly rising: the start, the shape's own, the end; only one
     * for a brake dropped at once.
     */
    public double[] kinks() {
        if (start == end) {
            return new double[] {start};
        }
        double[] inner = shape.kinks();
        double[] kinks = new double[inner.length + 2];
        kinks[0] = start;
        for (int i = 0; i < inner.length; i++) {
            kinks[i + 1] = start + inner[i] * (end - start);
        }
        kinks[kinks.length - 1] = end;
        return kinks;
    }
}
