package org.foreload.risk;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;

/** One thing that a driver does on the brake, and can practise by itself. */
public enum Aspect {
    /** Where the foot comes down. */
    BRAKE_POINT {
        @Override
        double apart(BrakePlan a, BrakePlan b) {
            return Math.abs(b.brakePoint() - a.brakePoint());
        }

        @Override
        double least(Scatter scatter, double peak) {
            return Math.max(LEAST_METRES, scatter.brakePoint());
        }
    },
    /** How hard it presses, and how soon. */
    PEAK {
        @Override
        double apart(BrakePlan a, BrakePlan b) {
            return Math.abs(b.peakDeceleration() - a.peakDeceleration());
        }

        @Override
        double least(Scatter scatter, double peak) {
            return Math.max(LEAST_PEAK, scatter.peak() * peak);
        }
    },
    /** Where, and in which shape, the brake comes off, and the pick-up behind it. */
    RELEASE {
        @Override
        double apart(BrakePlan a, BrakePlan b) {
            Release from = a.release();
            Release to = b.release();
            double shape = 0;
            for (double u = 0; u <= 1; u += SHAPE_STEP) {
                shape = Math.max(
                        shape, Math.abs(from.shape().remaining(u) - to.shape().remaining(u)));
            }
            double ends = Math.max(Math.abs(to.start() - from.start()), Math.abs(to.end() - from.end()));
            return Math.max(ends, shape * Math.min(from.end() - from.start(), to.end() - to.start()));
        }

        @Override
        double least(Scatter scatter, double peak) {
            return Math.max(LEAST_METRES, scatter.releaseTiming());
        }
    };

    /** Least that a driver can move a place by on purpose, m. */
    private static final double LEAST_METRES = 1;

    /** Least change of the peak that a foot can do on purpose, m/s²: a hundredth of g. */
    private static final double LEAST_PEAK = 0.1;

    /** Parts of a release at which two shapes are compared. */
    private static final double SHAPE_STEP = 1.0 / 8;

    /** How far two plans differ in this, m or m/s². */
    abstract double apart(BrakePlan a, BrakePlan b);

    /**
     * The least change, m or m/s², that is a step: one that a driver can do on purpose, and no less than the standard
     * deviation by which this driver strays, below which nobody notices having taken it.
     *
     * @param peak of the plan, m/s²
     */
    abstract double least(Scatter scatter, double peak);
}
