package org.foreload.recording;

/**
 * How much longer the road is by positions than by speed.
 *
 * @param factor length by position over length by speed
 * @param error its standard deviation
 */
record PathScale(double factor, double error) {

    /** Chords between positions are about this long, m: long against the noise, short against a corner. */
    private static final double CHORD = 25;

    /**
     * How far a satellite receiver's position wanders between the ends of a run, m, one standard deviation. Common
     * practice for receivers without correction data, no source.
     */
    private static final double WANDER = 1;

    /**
     * Compares chords between positions with what distance and curvature make of them, 2 sin(κL/2)/κ over a length L;
     * weighs that with the speed's own scale by their variances.
     */
    static PathScale of(Recording recording, Cleaning cleaning, double[] distance, double[] curvature) {
        double prior = cleaning.speedScaleError();
        if (!recording.hasPosition()) {
            return new PathScale(1, prior);
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
            return new PathScale(1, prior);
        }
        double white = Math.hypot(Series.noise(Series.known(x)), Series.noise(Series.known(y)));
        double error = Math.hypot(WANDER, white) / predicted;
        if (!(prior > 0)) {
            return new PathScale(1, 0);
        }
        double weight = prior * prior / (prior * prior + error * error);
        double factor = 1 + weight * (measured / predicted - 1);
        return new PathScale(factor, Math.sqrt(weight) * error);
    }
}
