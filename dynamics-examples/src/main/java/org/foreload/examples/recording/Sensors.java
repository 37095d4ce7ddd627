package org.foreload.examples.recording;

import java.util.SplittableRandom;
import org.foreload.conventions.Checks;
import org.foreload.recording.Channel;
import org.foreload.trace.Trace;

/**
 * What a logger makes of a run: samples in time, noise, offsets, a clock that drifts, positions that wander. All
 * deviations are standard deviations. The sizes are invented for want of a source: those of a logger with an inertial
 * unit and a satellite receiver without correction data.
 *
 * @param rate samples in a second, Hz
 * @param speedNoise of each sample, m/s
 * @param speedScale of the speed sensor's scale, one draw a run, a plain number
 * @param brakeNoise of each sample, share of the run's greatest brake
 * @param accelerationNoise of each sample, m/s²
 * @param yawNoise of each sample, rad/s
 * @param yawOffset one draw a run, rad/s
 * @param positionNoise of each sample and coordinate, m
 * @param positionWander of what changes slowly, each coordinate, m
 * @param wanderTime time in which that forgets itself, s
 * @param clockDrift of the clock's rate, one draw a run, a plain number
 * @param positions whether there are any
 */
public record Sensors(
        double rate,
        double speedNoise,
        double speedScale,
        double brakeNoise,
        double accelerationNoise,
        double yawNoise,
        double yawOffset,
        double positionNoise,
        double positionWander,
        double wanderTime,
        double clockDrift,
        boolean positions) {

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public Sensors {
        Checks.within("rate_hz", rate, 0.1, 10_000);
        Checks.positive("wander_time_s", wanderTime);
    }

    /** A usual logger at a rate in Hz. */
    public static Sensors usual(double rate) {
        return new Sensors(rate, 0.08, 0.002, 0.01, 0.4, 0.01, 0.003, 0.1, 0.8, 200, 5e-5, true);
    }

    /** Sensors without any error, at a rate in Hz. */
    public static Sensors perfect(double rate) {
        return new Sensors(rate, 0, 0, 0, 0, 0, 0, 0, 0, 1, 0, true);
    }

    /** The same without positions. */
    public Sensors withoutPositions() {
        return new Sensors(
                rate,
                speedNoise,
                speedScale,
                brakeNoise,
                accelerationNoise,
                yawNoise,
                yawOffset,
                positionNoise,
                positionWander,
                wanderTime,
                clockDrift,
                false);
    }

    /**
     * What the logger writes of a run: the channels of the truth but distance, which loggers make of speed.
     *
     * @param run the truth
     * @param seed of all draws
     */
    public Trace record(MadeRun run, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double first = random.nextDouble() / rate;
        double tick = 1 + clockDrift * random.nextGaussian();
        double scale = 1 + speedScale * random.nextGaussian();
        double offset = yawOffset * random.nextGaussian();
        double[] clock = run.truth().column(Channel.TIME.field()).values();
        double brakeMost = 0;
        for (double brake : run.truth().column(Channel.BRAKE.field()).values()) {
            brakeMost = Math.max(brakeMost, brake);
        }
        Wander east = new Wander(positionWander, wanderTime, random.split());
        Wander north = new Wander(positionWander, wanderTime, random.split());
        Trace.Builder rows = new Trace.Builder();
        Channel[] written = {
            Channel.TIME,
            Channel.SPEED,
            Channel.BRAKE,
            Channel.THROTTLE,
            Channel.LONGITUDINAL,
            Channel.LATERAL,
            Channel.YAW_RATE,
            Channel.X,
            Channel.Y
        };
        int columns = positions ? written.length : written.length - 2;
        double[][] truth = new double[columns][];
        for (int c = 0; c < columns; c++) {
            rows.column(written[c].field(), written[c].unit());
            truth[c] = run.truth().column(written[c].field()).values();
        }
        double duration = clock[clock.length - 1];
        for (int k = 0; first + k / rate <= duration; k++) {
            double t = first + k / rate;
            double[] row = new double[columns];
            for (int c = 0; c < columns; c++) {
                row[c] = at(clock, truth[c], t);
            }
            row[0] = t * tick;
            row[1] = Math.max(0, row[1] * scale + speedNoise * random.nextGaussian());
            row[2] = row[2] + brakeNoise * brakeMost * random.nextGaussian();
            row[4] += accelerationNoise * random.nextGaussian();
            row[5] += accelerationNoise * random.nextGaussian();
            row[6] += offset + yawNoise * random.nextGaussian();
            if (positions) {
                row[7] += east.at(t) + positionNoise * random.nextGaussian();
                row[8] += north.at(t) + positionNoise * random.nextGaussian();
            }
            rows.row(row);
        }
        return rows.build();
    }

    private static double at(double[] axis, double[] values, double at) {
        int i = java.util.Arrays.binarySearch(axis, at);
        int low = Math.max(0, Math.min(axis.length - 2, i >= 0 ? i : -i - 2));
        double share = (at - axis[low]) / (axis[low + 1] - axis[low]);
        return values[low] * (1 - share) + values[low + 1] * share;
    }

    /** A first-order Gauss-Markov process: what a satellite position does between the minutes. */
    private static final class Wander {

        private final double size;
        private final double memory;
        private final SplittableRandom random;
        private double last;
        private double value;

        Wander(double size, double memory, SplittableRandom random) {
            this.size = size;
            this.memory = memory;
            this.random = random;
            this.value = size * random.nextGaussian();
        }

        double at(double time) {
            double kept = Math.exp(-(time - last) / memory);
            value = kept * value + size * Math.sqrt(1 - kept * kept) * random.nextGaussian();
            last = time;
            return value;
        }
    }
}
