package org.foreload.risk;

import org.foreload.braking.ReleaseShape;

/**
 * A release by an unsteady foot: its rate swings about the planned one, twice during the release. The brake never comes
 * back on, so it is a release shape like any other.
 */
final class UnsteadyRelease implements ReleaseShape {

    private static final int SWINGS = 2;

    /** Largest swing: the foot stops for a moment, but does not press again. */
    private static final double LARGEST = 0.95;

    private final ReleaseShape planned;
    private final double swing;
    private final double phase;

    /**
     * @param planned the shape that was meant
     * @param swing amplitude of the rate about its mean, as a share of it
     * @param phase where in a swing the release starts, rad
     */
    UnsteadyRelease(ReleaseShape planned, double swing, double phase) {
        this.planned = planned;
        this.swing = Math.max(-LARGEST, Math.min(LARGEST, swing));
        this.phase = phase;
    }

    @Override
    public String name() {
        return planned.name();
    }

    @Override
    public double remaining(double u) {
        return planned.remaining(warped(u));
    }

    /** Share of the planned release that the foot has passed: a swing of the rate, integrated. */
    private double warped(double u) {
        if (u <= 0 || u >= 1) {
            return u;
        }
        double turn = 2 * Math.PI * SWINGS;
        return u + swing / turn * (Math.sin(turn * u + phase) - Math.sin(phase));
    }

    @Override
    public double[] kinks() {
        double[] kinks = planned.kinks();
        for (int i = 0; i < kinks.length; i++) {
            kinks[i] = unwarped(kinks[i]);
        }
        return kinks;
    }

    /** Where the foot is at a place of the planned release; the warp rises throughout, so halving finds it. */
    private double unwarped(double place) {
        double low = 0;
        double high = 1;
        for (int i = 0; i < 52; i++) {
            double middle = (low + high) / 2;
            if (warped(middle) < place) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
