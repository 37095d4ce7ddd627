package org.foreload.recording;

import java.util.Arrays;

/**
 * The channels of a recording as a run needs them: gaps bridged, offsets taken off, speed and curvature made of what
 * there is.
 *
 * @param recording the rows
 * @param time of each row, s
 */
record Signals(Recording recording, double[] time) {

    /** Speed, m/s, below which there is no curvature: the division would blow up the noise. */
    private static final double SLOWEST = 3;

    /** Positions are smoothed over at least this long to either side, s: a car's course turns little meanwhile. */
    static final double POSITION_HALF_WIDTH = 0.4;

    /** Yaw rate, rad/s, and lateral acceleration, m/s², within which the car may be on a straight. */
    private static final double STRAIGHT_YAW_RATE = 0.05;

    private static final double STRAIGHT_LATERAL = 1;

    /** Share of all rows that must look straight before an offset is read from them. */
    private static final double STRAIGHT_SHARE = 0.1;

    /**
     * Deceleration, m/s², that drag and engine may give without a brake; what exceeds it is read as braking where no
     * brake was recorded. Common practice, no source.
     */
    private static final double COASTING = 1.5;

    static Signals of(Recording recording) {
        return new Signals(recording, times(recording));
    }

    private static double[] times(Recording recording) {
        if (recording.has(Channel.TIME)) {
            return recording.columns().get(Channel.TIME);
        }
        double[] distance = recording.columns().get(Channel.DISTANCE);
        double[] speed = Series.filled(distance, recording.columns().get(Channel.SPEED));
        double[] time = new double[distance.length];
        for (int i = 1; i < time.length; i++) {
            double mean = Math.max(SLOWEST / 10, (speed[i] + speed[i - 1]) / 2);
            time[i] = time[i - 1] + (distance[i] - distance[i - 1]) / mean;
        }
        return time;
    }

    double[] speeds(double half) {
        double[] speed;
        if (recording.has(Channel.SPEED)) {
            speed = Series.filled(time, recording.columns().get(Channel.SPEED));
        } else if (recording.has(Channel.DISTANCE)) {
            speed = Series.slope(time, recording.columns().get(Channel.DISTANCE), half);
        } else {
            double wide = Math.max(half, POSITION_HALF_WIDTH);
            double[] x =
                    Series.slope(time, Series.filled(time, recording.columns().get(Channel.X)), wide);
            double[] y =
                    Series.slope(time, Series.filled(time, recording.columns().get(Channel.Y)), wide);
            speed = new double[x.length];
            for (int i = 0; i < x.length; i++) {
                speed[i] = Math.hypot(x[i], y[i]);
            }
        }
        return Arrays.stream(speed).map(v -> Math.max(0, v)).toArray();
    }

    /** Speeds as they would be without a delay, s. */
    double[] ahead(double[] speed, double delay) {
        if (delay == 0) {
            return speed;
        }
        double[] moved = new double[speed.length];
        for (int i = 0; i < moved.length; i++) {
            moved[i] = Series.at(time, speed, time[i] + delay);
        }
        return moved;
    }

    /**
     * Curvature at each row, 1/m.
     *
     * @param speed m/s
     * @param offset of the channel that it is made of, see {@link #courseOffset}
     */
    double[] curvatures(double[] speed, double offset) {
        double[] curvature = new double[time.length];
        if (recording.has(Channel.LATERAL)) {
            double[] lateral = levelled(Channel.LATERAL, offset);
            for (int i = 0; i < curvature.length; i++) {
                curvature[i] = speed[i] > SLOWEST ? lateral[i] / (speed[i] * speed[i]) : 0;
            }
        } else if (recording.has(Channel.YAW_RATE)) {
            double[] yaw = levelled(Channel.YAW_RATE, offset);
            for (int i = 0; i < curvature.length; i++) {
                curvature[i] = speed[i] > SLOWEST ? yaw[i] / speed[i] : 0;
            }
        } else if (recording.hasPosition()) {
            double[] course = course();
            double[] turning = Series.slope(time, course, POSITION_HALF_WIDTH);
            for (int i = 0; i < curvature.length; i++) {
                curvature[i] = speed[i] > SLOWEST ? turning[i] / speed[i] : 0;
            }
        }
        return curvature;
    }

    /** Direction of the course between positions, rad, without jumps of a turn. */
    private double[] course() {
        double[] x = Series.slope(time, filled(Channel.X), POSITION_HALF_WIDTH);
        double[] y = Series.slope(time, filled(Channel.Y), POSITION_HALF_WIDTH);
        double[] course = new double[x.length];
        for (int i = 0; i < course.length; i++) {
            boolean moves = Math.hypot(x[i], y[i]) > SLOWEST;
            double direction = moves || i == 0 ? Math.atan2(y[i], x[i]) : course[i - 1];
            double before = i == 0 ? direction : course[i - 1];
            course[i] = direction - 2 * Math.PI * Math.rint((direction - before) / (2 * Math.PI));
        }
        return course;
    }

    double[] filled(Channel channel) {
        double[] values = recording.columns().get(channel);
        if (values == null) {
            throw new IllegalArgumentException("no channel " + channel.field());
        }
        return Series.filled(time, values);
    }

    /**
     * Offset of the channel that the curvature is made of, m/s² or rad/s: the median of the rows that look straight, if
     * they are enough; zero for positions.
     */
    double courseOffset() {
        boolean lateral = recording.has(Channel.LATERAL);
        if (!lateral && !recording.has(Channel.YAW_RATE)) {
            return 0;
        }
        double straight = lateral ? STRAIGHT_LATERAL : STRAIGHT_YAW_RATE;
        double[] values = filled(lateral ? Channel.LATERAL : Channel.YAW_RATE);
        double[] quiet = Series.kept(values, value -> Math.abs(value) < straight);
        return quiet.length > STRAIGHT_SHARE * values.length ? Series.median(quiet) : 0;
    }

    /** A channel less its offset. */
    double[] levelled(Channel channel, double offset) {
        return Series.less(filled(channel), offset);
    }

    static double[] braking(double[] acceleration) {
        double[] braking = new double[acceleration.length];
        for (int i = 0; i < braking.length; i++) {
            braking[i] = Math.max(0, -acceleration[i] - COASTING);
        }
        return braking;
    }

    static double[] integrated(double[] time, double[] speed) {
        double[] distance = new double[time.length];
        for (int i = 1; i < time.length; i++) {
            // A car that stands still moves a micrometre a row, so that the axis rises.
            double step = Math.max(STANDING_STEP, (time[i] - time[i - 1]) * (speed[i] + speed[i - 1]) / 2);
            distance[i] = distance[i - 1] + step;
        }
        return distance;
    }

    static final double STANDING_STEP = 1e-6;

    static double[] scaled(double[] distance, double factor, double origin) {
        double[] station = new double[distance.length];
        Arrays.setAll(station, i -> origin + factor * distance[i]);
        return station;
    }

    /** Rows at one and the same place are a micrometre apart, so that the axis rises. */
    static double[] rising(double[] distance) {
        double[] station = distance.clone();
        for (int i = 1; i < station.length; i++) {
            station[i] = Math.max(station[i], station[i - 1] + STANDING_STEP);
        }
        return station;
    }

    static double[] product(double[] curvature, double[] speed) {
        double[] lateral = new double[speed.length];
        Arrays.setAll(lateral, i -> curvature[i] * speed[i] * speed[i]);
        return lateral;
    }

    static double[] differences(double[] values) {
        double[] steps = new double[values.length - 1];
        Arrays.setAll(steps, i -> values[i + 1] - values[i]);
        return steps;
    }

    /**
     * How much longer the road is by positions than by speed.
     *
     * @param factor length by position over length by speed
     * @param error its standard deviation
     * @param measured length by positions over length by speed, as it was found; NaN where there is none
     */
    record Scale(double factor, double error, double measured) {

        /** Distance made of speed, or recorded, that no position has a say in. */
        static Scale without(double factor, double error) {
            return new Scale(factor, error, Double.NaN);
        }

        /** Chords between positions are about this long, m: long against the noise, short against a corner. */
        private static final double CHORD = 25;

        /**
         * How far a satellite receiver's position wanders between the ends of a run, m, one standard deviation. Common
         * practice for receivers without correction data, no source.
         */
        private static final double WANDER = 1;

        /**
         * Compares chords between positions with what distance and curvature make of them, 2 sin(κL/2)/κ over a length
         * L; weighs that with the speed's own scale by their variances.
         */
        static Scale of(Recording recording, Cleaning cleaning, double[] distance, double[] curvature) {
            double prior = cleaning.speedScaleError();
            if (!recording.hasPosition()) {
                return without(1, prior);
            }
            double[] x = recording.columns().get(Channel.X);
            double[] y = recording.columns().get(Channel.Y);
            double[] east = Series.filled(distance, x);
            double[] north = Series.filled(distance, y);
            boolean[] either = Series.either(x, y);
            double measured = 0;
            double predicted = 0;
            double turned = 0;
            int last = -1;
            for (int i = 0; i < x.length; i++) {
                turned += i == 0 ? 0 : curvature[i] * (distance[i] - distance[i - 1]);
                if (either[i] && last < 0) {
                    last = i;
                    turned = 0;
                } else if (either[i] && distance[i] - distance[last] >= CHORD) {
                    double half = Math.abs(turned) / 2;
                    double bent = half > 1e-6 ? Math.sin(Math.min(half, Math.PI / 2)) / half : 1;
                    measured += Math.hypot(east[i] - east[last], north[i] - north[last]);
                    predicted += (distance[i] - distance[last]) * bent;
                    last = i;
                    turned = 0;
                }
            }
            if (!(predicted > 2 * CHORD)) {
                double apart = Math.hypot(spread(x), spread(y));
                double length = distance[distance.length - 1] - distance[0];
                return new Scale(1, prior, apart > 4 * CHORD ? apart / length : Double.NaN);
            }
            double white = Math.hypot(Series.noise(Series.known(x)), Series.noise(Series.known(y)));
            double error = Math.hypot(WANDER, white) / predicted;
            if (!(prior > 0)) {
                return new Scale(1, 0, measured / predicted);
            }
            double weight = prior * prior / (prior * prior + error * error);
            double factor = 1 + weight * (measured / predicted - 1);
            return new Scale(factor, Math.sqrt(weight) * error, measured / predicted);
        }

        private static double spread(double[] values) {
            double[] known = Series.known(values);
            return known.length == 0
                    ? 0
                    : known[Series.highest(known, 0, known.length - 1)]
                            - known[Series.lowest(known, 0, known.length - 1)];
        }
    }

    /**
     * How far one channel is behind another that shows the same: the shift at which the two correlate best, to a part
     * of a step by the parabola through the best and its neighbours.
     */
    static final class Delays {

        /** Longest delay that is looked for, s. */
        private static final double LONGEST = 0.6;

        /**
         * Shorter delays of the speed than this, s, are those of the filters of one logger, or noise: they are left
         * alone.
         */
        private static final double LEAST = 0.04;

        /** Steps in which a delay is looked for, s, and half the width of what smooths one slope, and both, s. */
        private static final double STEP = 0.02;

        private static final double HALF_WIDTH = 0.15;

        private static final double SLOPE_HALF_WIDTH = 0.25;

        /** Correlation from which two channels show the same. */
        private static final double SAME = 0.9;

        /** Moments at most that are compared: an hour at 50 Hz. */
        private static final int MOST_MOMENTS = 180_000;

        private Delays() {}

        /**
         * How far the speed lags behind the accelerations, s, as the speed of a satellite receiver does: its slope
         * against the acceleration along the car. Zero where either was not recorded, where they are never alike, and
         * for less than {@value #LEAST} s.
         */
        static double ofSpeed(Signals signals) {
            Recording recording = signals.recording();
            if (!recording.has(Channel.SPEED) || !recording.has(Channel.LONGITUDINAL)) {
                return 0;
            }
            double[] time = signals.time();
            Series.Windows windows = Series.Windows.of(time, HALF_WIDTH);
            double[] slope = windows.slope(signals.filled(Channel.SPEED));
            double[] along = windows.smooth(signals.filled(Channel.LONGITUDINAL));
            double delay = behind(time, slope, along);
            return Math.abs(delay) >= LEAST ? delay : 0;
        }

        /**
         * How far the deceleration follows the brake, s; NaN where that cannot be seen. Their slopes are compared: what
         * drag and a shut throttle slow besides changes with the speed, and would pull the deceleration forward.
         *
         * @param time of each row, s
         * @param brake at each row, zero at rest
         * @param along acceleration at each row, m/s²
         */
        static double ofDeceleration(double[] time, double[] brake, double[] along) {
            double[] slowing = new double[along.length];
            Arrays.setAll(slowing, i -> Math.max(0, -along[i]));
            Series.Windows windows = Series.Windows.of(time, SLOPE_HALF_WIDTH);
            return behind(time, windows.slope(slowing), windows.slope(brake));
        }

        /** How far the first is behind the second, s; NaN where that cannot be seen. */
        private static double behind(double[] time, double[] first, double[] second) {
            double span = time[time.length - 1] - time[0];
            int moments = (int) (span / STEP);
            int reach = (int) Math.round(LONGEST / STEP);
            if (moments < 10 * reach || moments > MOST_MOMENTS) {
                return Double.NaN;
            }
            double[] axis = new double[moments];
            for (int i = 0; i < moments; i++) {
                axis[i] = time[0] + i * STEP;
            }
            Series.Places places = Series.places(time, axis);
            double[] a = places.read(first);
            double[] b = places.read(second);
            // What bridges a hole is no measurement.
            for (int[] hole : Series.holes(time, time, 2 * HALF_WIDTH)) {
                int from = Series.index(axis, time[hole[0]]);
                int to = Series.index(axis, time[hole[1]]) + 1;
                Arrays.fill(a, from, to, 0);
                Arrays.fill(b, from, to, 0);
            }
            double[] alike = new double[2 * reach + 1];
            int best = 0;
            for (int k = 0; k < alike.length; k++) {
                alike[k] = alike(a, b, k - reach, reach);
                best = alike[k] > alike[best] ? k : best;
            }
            if (!(alike[best] > SAME) || best == 0 || best == alike.length - 1) {
                return Double.NaN;
            }
            double bend = alike[best - 1] - 2 * alike[best] + alike[best + 1];
            double part = bend < 0 ? (alike[best - 1] - alike[best + 1]) / (2 * bend) : 0;
            return (best - reach + part) * STEP;
        }

        /** Correlation of one channel so many steps later with another. */
        private static double alike(double[] a, double[] b, int later, int margin) {
            double n = a.length - 2 * margin;
            double sa = 0;
            double sb = 0;
            double saa = 0;
            double sbb = 0;
            double sab = 0;
            for (int i = margin; i < a.length - margin; i++) {
                double x = a[i + later];
                double y = b[i];
                sa += x;
                sb += y;
                saa += x * x;
                sbb += y * y;
                sab += x * y;
            }
            double spread = (n * saa - sa * sa) * (n * sbb - sb * sb);
            return spread > 0 ? (n * sab - sa * sb) / Math.sqrt(spread) : 0;
        }
    }
}
