package org.foreload.recording;

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
        for (int i = 0; i < speed.length; i++) {
            speed[i] = Math.max(0, speed[i]);
        }
        return speed;
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

    double[] curvatures(double[] speed) {
        double[] curvature = new double[time.length];
        if (recording.has(Channel.LATERAL)) {
            double[] lateral = levelled(Channel.LATERAL);
            for (int i = 0; i < curvature.length; i++) {
                curvature[i] = speed[i] > SLOWEST ? lateral[i] / (speed[i] * speed[i]) : 0;
            }
        } else if (recording.has(Channel.YAW_RATE)) {
            double[] yaw = levelled(Channel.YAW_RATE);
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
        return Series.filled(time, recording.columns().get(channel));
    }

    /** A channel less its offset: the median of the rows that look straight, if they are enough. */
    double[] levelled(Channel channel) {
        double straight = channel == Channel.LATERAL ? STRAIGHT_LATERAL : STRAIGHT_YAW_RATE;
        double[] values = filled(channel);
        double[] quiet = java.util.Arrays.stream(values)
                .filter(value -> Math.abs(value) < straight)
                .toArray();
        if (quiet.length > STRAIGHT_SHARE * values.length) {
            double offset = Series.median(quiet);
            for (int i = 0; i < values.length; i++) {
                values[i] -= offset;
            }
        }
        return values;
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
        double[] station = distance.clone();
        for (int i = 0; i < station.length; i++) {
            station[i] = origin + factor * station[i];
        }
        return station;
    }

    /** Rows at one and the same place are a micrometre apart, so that the axis rises. */
    static double[] rising(double[] station) {
        for (int i = 1; i < station.length; i++) {
            station[i] = Math.max(station[i], station[i - 1] + STANDING_STEP);
        }
        return station;
    }

    static double[] product(double[] curvature, double[] speed) {
        double[] lateral = new double[speed.length];
        for (int i = 0; i < lateral.length; i++) {
            lateral[i] = curvature[i] * speed[i] * speed[i];
        }
        return lateral;
    }

    static double[] differences(double[] values) {
        double[] steps = new double[values.length - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = values[i + 1] - values[i];
        }
        return steps;
    }

    /**
     * How much longer the road is by positions than by speed.
     *
     * @param factor length by position over length by speed
     * @param error its standard deviation
     */
    record Scale(double factor, double error) {

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
                return new Scale(1, prior);
            }
            double[] x = recording.columns().get(Channel.X);
            double[] y = recording.columns().get(Channel.Y);
            double measured = 0;
            double predicted = 0;
            double turned = 0;
            int last = -1;
            for (int i = 0; i < x.length; i++) {
                turned += i == 0 ? 0 : curvature[i] * (distance[i] - distance[i - 1]);
                boolean known = Double.isFinite(x[i]) && Double.isFinite(y[i]);
                if (known && last < 0) {
                    last = i;
                    turned = 0;
                } else if (known && distance[i] - distance[last] >= CHORD) {
                    double half = Math.abs(turned) / 2;
                    double bent = half > 1e-6 ? Math.sin(Math.min(half, Math.PI / 2)) / half : 1;
                    measured += Math.hypot(x[i] - x[last], y[i] - y[last]);
                    predicted += (distance[i] - distance[last]) * bent;
                    last = i;
                    turned = 0;
                }
            }
            if (!(predicted > 2 * CHORD)) {
                return new Scale(1, prior);
            }
            double white = Math.hypot(Series.noise(Series.known(x)), Series.noise(Series.known(y)));
            double error = Math.hypot(WANDER, white) / predicted;
            if (!(prior > 0)) {
                return new Scale(1, 0);
            }
            double weight = prior * prior / (prior * prior + error * error);
            double factor = 1 + weight * (measured / predicted - 1);
            return new Scale(factor, Math.sqrt(weight) * error);
        }
    }
}
