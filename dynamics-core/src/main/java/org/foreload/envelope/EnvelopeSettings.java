package org.foreload.envelope;

import org.foreload.conventions.Checks;
import org.foreload.recording.Estimate;

/**
 * How friction limits are read from accelerations.
 *
 * @param quantile share of all worked moments that lies within the limits, 0.5 to 0.999
 * @param coverage share of all bands that shall hold the true limit, 0.5 to 0.999
 * @param resamples how often the fit is made again with laps drawn at random
 * @param seed of those draws
 */
public record EnvelopeSettings(double quantile, double coverage, int resamples, long seed) {

    /**
     * 19 of 20 moments within the limits (chosen on simulated laps: less than that reads the limit too low, more reads
     * noise), bands that hold nine times in ten, from 40 resamples.
     */
    public static final EnvelopeSettings STANDARD = new EnvelopeSettings(0.95, Estimate.USUAL_COVERAGE, 40, 1);

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public EnvelopeSettings {
        Checks.within("quantile", quantile, 0.5, 0.999);
        Checks.within("coverage", coverage, 0.5, 0.999);
        Checks.within("resamples", resamples, 0, 10_000);
    }

    /** The same with another seed. */
    public EnvelopeSettings withSeed(long other) {
        return new EnvelopeSettings(quantile, coverage, resamples, other);
    }
}
