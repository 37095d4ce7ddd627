package org.foreload.strategy;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.entry.EntrySimulator;

/**
 * What a plan has in hand: the largest error, in metres, that the car forgives, of each of the three that people make.
 * The foot comes down so much later; or the whole release comes so much later along the line; or the peak is harder by
 * {@value #HARDER_PER_METRE} of itself for each metre, which is what a driver misses it by who misses the brake point
 * by a metre (the invented drivers of {@code risk}). The least of the three counts.
 */
public final class InHand {

    /** Errors that are tried, m: about as finely as a driver could feel them. */
    private static final double[] ERRORS = {0.25, 0.5, 0.75, 1, 1.5, 2, 3, 4, 6, 8, 12, 16};

    /** Most that is looked for, m. */
    public static final double MOST = 16;

    /** Relative error of the peak that goes with an error of a metre. */
    public static final double HARDER_PER_METRE = 0.025;

    private InHand() {}

    /** Metres in hand of a plan, 0 to {@link #MOST}, in the steps in which it is looked for. */
    public static double of(EntrySimulator simulator, BrakePlan plan) {
        int low = -1;
        int high = ERRORS.length;
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (forgives(simulator, plan, ERRORS[middle])) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low < 0 ? 0 : ERRORS[low];
    }

    /** Whether the car makes the corner with each of the three errors. */
    static boolean forgives(EntrySimulator simulator, BrakePlan plan, double error) {
        return simulator.probe(plan.withBrakePoint(plan.brakePoint() + error)).made()
                && simulator.probe(later(plan, error)).made()
                && simulator
                        .probe(plan.withPeakDeceleration(plan.peakDeceleration() * (1 + HARDER_PER_METRE * error)))
                        .made();
    }

    private static BrakePlan later(BrakePlan plan, double error) {
        Release release = plan.release();
        return plan.with(new Release(release.shape(), release.start() + error, release.end() + error));
    }
}
