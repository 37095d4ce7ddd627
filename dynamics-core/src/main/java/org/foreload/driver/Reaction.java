package org.foreload.driver;

import org.foreload.conventions.Checks;

/**
 * How a left foot answers what happens on the way. It eases a wheel that has stopped until it turns again, and comes
 * back on only as far as no wheel is about to stop; it keeps more brake on when the car is faster than the plan led to
 * expect, and comes off a little when it is slower.
 *
 * @param delay from what happens to the answer of the foot, s; zero for a foot that carries out its plan unchanged
 * @param takeBack time after the delay, s, within which a stopped wheel must turn again: one that stands longer than
 *     both together counts as locked up
 * @param easing time constant with which the brake comes off a stopped wheel, s
 * @param regaining time constant with which it comes back on afterwards, s
 * @param unnoticed difference of speed, m/s, about which a driver begins to notice it
 * @param gain brake per difference of speed, 1/s: m/s² per m/s
 * @param most greatest brake that is added to the plan, m/s²
 * @param least greatest share of the planned brake that is left out
 */
public record Reaction(
        double delay,
        double takeBack,
        double easing,
        double regaining,
        double unnoticed,
        double gain,
        double most,
        double least) {

    /** A foot that carries out its plan unchanged, whatever comes of it. */
    public static final Reaction NONE = new Reaction(0, 0, 0, 0, 0, 0, 0, 0);

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public Reaction {
        Checks.notNegative("reaction_delay_s", delay);
        Checks.notNegative("lock_take_back_s", takeBack);
        Checks.notNegative("speed_gain_per_s", gain);
        Checks.within("brake_left_out", least, 0, 1);
        if (delay > 0) {
            Checks.positive("easing_s", easing);
            Checks.positive("regaining_s", regaining);
            Checks.positive("unnoticed_speed_mps", unnoticed);
            Checks.positive("most_added_brake_mps2", most);
        }
    }

    /**
     * A practised driver. All numbers are invented for want of a source: a delay of the size of simple human reaction
     * times, a foot that comes off in about a tenth of a second and back on in about a second.
     */
    public static Reaction practised() {
        return new Reaction(0.25, 0.35, 0.10, 0.8, 0.4, 2, 3, 0.3);
    }

    /** Whether the foot reacts at all. */
    public boolean reacts() {
        return delay > 0;
    }

    /**
     * How much the brake is to differ from the plan for a difference of speed, as the driver perceives it, m/s²; not
     * yet limited. Differences well below {@link #unnoticed} do next to nothing.
     */
    double asked(double excess) {
        return gain * (excess - unnoticed * Math.tanh(excess / unnoticed));
    }
}
