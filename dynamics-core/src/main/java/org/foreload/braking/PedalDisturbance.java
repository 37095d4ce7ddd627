package org.foreload.braking;

import org.foreload.conventions.Checks;

/**
 * What the foot or the pedal makes of an intended brake demand, over time since the brake point.
 *
 * <p>Laws: nothing comes of nothing ({@code delivered(0, t) = 0}), nothing is negative, and it is continuous in time,
 * with nothing quicker in it than {@link #shortestPeriod()}: the simulator steps no longer than a part of that.
 */
public interface PedalDisturbance {

    /** A foot and a pedal that do just what is intended. */
    PedalDisturbance NONE = new PedalDisturbance() {
        @Override
        public double delivered(double intended, double time) {
            return intended;
        }

        @Override
        public double shortestPeriod() {
            return Double.POSITIVE_INFINITY;
        }

        @Override
        public String toString() {
            return "none";
        }
    };

    /**
     * Deceleration that reaches the brake, m/s².
     *
     * @param intended what the plan asks for, m/s², zero or above
     * @param time since the brake point, s
     */
    double delivered(double intended, double time);

    /** Period of the quickest change, s; infinite for none. */
    double shortestPeriod();

    /**
     * A hesitation: the foot eases by a part and presses again, as one smooth dip, (1 − cos)/2 over its duration.
     *
     * @param start when it begins, s after the brake point
     * @param duration of the whole dip, s
     * @param depth part of the demand that is missing at its deepest, 0 to 1
     */
    record Hesitation(double start, double duration, double depth) implements PedalDisturbance {

        /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
        public Hesitation {
            Checks.notNegative("hesitation_start_s", start);
            Checks.positive("hesitation_duration_s", duration);
            Checks.within("hesitation_depth", depth, 0, 1);
        }

        @Override
        public double delivered(double intended, double time) {
            double phase = Math.max(0, Math.min(1, (time - start) / duration));
            return intended * (1 - depth * (1 - Math.cos(2 * Math.PI * phase)) / 2);
        }

        @Override
        public double shortestPeriod() {
            return duration;
        }
    }

    /**
     * A ripple: the demand swings about what is intended, from the brake point on.
     *
     * @param size amplitude as a part of the demand, 0 to 1
     * @param frequency Hz
     */
    record Ripple(double size, double frequency) implements PedalDisturbance {

        /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
        public Ripple {
            Checks.within("ripple_size", size, 0, 1);
            Checks.positive("ripple_frequency_hz", frequency);
        }

        @Override
        public double delivered(double intended, double time) {
            return intended * (1 + size * Math.sin(2 * Math.PI * frequency * time));
        }

        @Override
        public double shortestPeriod() {
            return 1 / frequency;
        }
    }
}
