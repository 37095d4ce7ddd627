package org.foreload.braking;

import java.util.Objects;
import java.util.SplittableRandom;
import org.foreload.conventions.Checks;

/**
 * One attempt of an unsteady leg at an intended brake demand, felt through a pedal: the force is off by a steady part,
 * and wanders about that slowly. Of the same seed, two pedals get the same leg.
 *
 * <p>Made by {@link #draw}; the numbers of the attempt are drawn there once, so that it is a smooth function of time.
 */
public final class FootError implements PedalDisturbance {

    /** Swings that make up the wander. */
    private static final int SWINGS = 6;

    private final Pedal pedal;
    private final double bias;
    private final double slipBias;
    private final double[] amplitude = new double[SWINGS];
    private final double[] frequency = new double[SWINGS];
    private final double[] phase = new double[SWINGS];
    private final double shortestPeriod;

    /**
     * How well a leg reproduces a push.
     *
     * @param steadyError standard deviation of the steady error of force, as a part of it
     * @param variability standard deviation of the wander of force about that, as a part of it
     * @param bandwidth quickest wander, Hz
     * @param placeError standard deviation of the error of place, m, which a pedal that measures travel sees besides
     */
    public record Leg(double steadyError, double variability, double bandwidth, double placeError) {

        /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
        public Leg {
            Checks.within("steady_error", steadyError, 0, 0.5);
            Checks.within("variability", variability, 0, 0.5);
            Checks.positive("bandwidth_hz", bandwidth);
            Checks.notNegative("place_error_m", placeError);
        }

        /**
         * Size of the force errors of young healthy adults who push a force plate and see their force: P. Kudzia et
         * al., Scientific Reports 12, 4935 (2022): 2.6 %, 2.7 %, 1.8 Hz. A plausible size only: it is a whole leg, not
         * an ankle on a pedal, and releasing is less steady than pressing (J. Masumoto, N. Inui, Human Movement Science
         * 29, 2010, without a ratio for the leg). No source was found for the error of place; the caller says it.
         *
         * @param placeError m
         */
        public static Leg pushing(double placeError) {
            return new Leg(0.026, 0.027, 1.8, placeError);
        }
    }

    private FootError(Pedal pedal, Leg leg, SplittableRandom random) {
        this.pedal = Objects.requireNonNull(pedal, "pedal");
        Objects.requireNonNull(leg, "leg");
        this.bias = leg.steadyError() * random.nextGaussian();
        this.slipBias = leg.placeError() * random.nextGaussian();
        for (int i = 0; i < SWINGS; i++) {
            amplitude[i] = leg.variability() * Math.sqrt(2.0 / SWINGS);
            frequency[i] = leg.bandwidth() * (i + random.nextDouble()) / SWINGS;
            phase[i] = 2 * Math.PI * random.nextDouble();
        }
        this.shortestPeriod = 1 / leg.bandwidth();
    }

    /** Draws an attempt; the same seed gives the same attempt, whatever the pedal. */
    public static FootError draw(Pedal pedal, Leg leg, long seed) {
        return new FootError(pedal, leg, new SplittableRandom(seed));
    }

    @Override
    public double delivered(double intended, double time) {
        double error = bias;
        for (int i = 0; i < SWINGS; i++) {
            error += amplitude[i] * Math.sin(2 * Math.PI * frequency[i] * time + phase[i]);
        }
        double force = pedal.footForce(intended);
        // A foot that has come off the pedal is not out of place: the error fades with the last few newtons.
        double slip = slipBias * force / (force + TOUCH);
        return pedal.deceleration(Math.max(0, force * (1 + error)), slip);
    }

    /** Force, N, of a foot that only just rests on the pedal. */
    private static final double TOUCH = 5;

    @Override
    public double shortestPeriod() {
        return shortestPeriod;
    }
}
