package org.foreload.advice;

import org.foreload.conventions.Checks;

/**
 * When advice is given.
 *
 * @param speedError largest root mean square difference between simulated and recorded speed, m/s
 * @param timeError largest difference between their times, s
 * @param failing largest share of entries that may fail after a change
 * @param leastGain least predicted gain worth a word, s
 * @param most single changes for each corner
 * @param samples entries that are driven for a failure probability
 * @param seed of those
 */
public record AdviceSettings(
        double speedError, double timeError, double failing, double leastGain, int most, int samples, long seed) {

    /**
     * A run that is reproduced to 0.8 m/s and 0.25 s; no more than one entry in twenty that fails; three items, each
     * worth two hundredths.
     */
    public static final AdviceSettings STANDARD = new AdviceSettings(0.8, 0.25, 0.05, 0.02, 3, 32, 1);

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public AdviceSettings {
        Checks.positive("speed_error_mps", speedError);
        Checks.positive("time_error_s", timeError);
        Checks.within("failing", failing, 0, 1);
        Checks.notNegative("least_gain_s", leastGain);
        Checks.within("most", most, 1, 100);
        Checks.within("samples", samples, 1, 100_000);
    }
}
