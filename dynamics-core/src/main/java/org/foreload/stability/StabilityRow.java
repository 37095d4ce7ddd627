package org.foreload.stability;

import java.util.Locale;
import org.foreload.grip.Axle;

/**
 * Stability at one point of an entry.
 *
 * @param station m along the line
 * @param time s from the start of the approach
 * @param growthRate how quickly the least stable lateral motion grows at this point, 1/s; negative when it decays
 * @param frontMargin friction that the front axle has left, as a share of all it has, 0 to 1
 * @param rearMargin the same for the rear axle
 */
public record StabilityRow(double station, double time, double growthRate, double frontMargin, double rearMargin) {

    /** The axle that is nearer to its limit. */
    public Axle nearest() {
        return frontMargin <= rearMargin ? Axle.FRONT : Axle.REAR;
    }

    /** Whether a small disturbance decays. */
    public boolean stable() {
        return growthRate <= 0;
    }

    /** Both margins in words: {@code front has 6 % left, rear 2 %}. */
    public String margins() {
        return String.format(Locale.ROOT, "front has %.0f %% left, rear %.0f %%", 100 * frontMargin, 100 * rearMargin);
    }
}
