package org.foreload.recording;

import org.foreload.conventions.Checks;

/**
 * How a recording is cleaned, and how its uncertainties are found.
 *
 * <p>All filters are straight lines fitted to the samples within half a width before and behind: their delay is zero,
 * since they look as far ahead as back. At the ends of a run they look to one side.
 *
 * @param halfWidth half the width of the filters, s; at least one sample to either side is used
 * @param speedScaleError standard deviation of a speed sensor's scale, a plain number: how much distance made from
 *     speed can be off where no position corrects it
 * @param coverage share of all intervals that shall hold the true value, 0.5 to 0.999
 * @param resamples how often the run is measured again with its own noise added
 * @param seed of that noise
 */
public record Cleaning(double halfWidth, double speedScaleError, double coverage, int resamples, long seed) {

    /**
     * Filters of a tenth of a second to either side (common practice, no source: a foot moves slower); wheel speeds to
     * half a per cent (a tyre's radius grows and wears by about that; common practice, no source), intervals that hold
     * nine times in ten, from 40 resamples.
     */
    public static final Cleaning STANDARD = new Cleaning(0.1, 0.005, 0.9, 40, 1);

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public Cleaning {
        Checks.within("half_width_s", halfWidth, 0, 10);
        Checks.within("speed_scale_error", speedScaleError, 0, 0.5);
        Checks.within("coverage", coverage, 0.5, 0.999);
        Checks.within("resamples", resamples, 0, 10_000);
    }

    /** The same without intervals: for the laps of which only the scatter counts. */
    public Cleaning withoutResamples() {
        return new Cleaning(halfWidth, speedScaleError, coverage, 0, seed);
    }

    /** The same with another seed. */
    public Cleaning withSeed(long other) {
        return new Cleaning(halfWidth, speedScaleError, coverage, resamples, other);
    }
}
