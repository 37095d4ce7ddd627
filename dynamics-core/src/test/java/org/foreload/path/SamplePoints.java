package org.foreload.path;

import java.util.List;
import java.util.Random;

/** Points taken from a line every so many metres, with normal errors in x and y; coordinates in m. */
record SamplePoints(double[] x, double[] y) {

    /** Spiral of 40 m, arc of 60 m, spiral of 40 m, with 80 m before and after. */
    static final SegmentPath TRUTH = SegmentPath.of(
            80,
            List.of(
                    Segment.spiralIn(40, 60, Turn.LEFT),
                    Segment.arc(60, 60, Turn.LEFT),
                    Segment.spiralOut(40, 60, Turn.LEFT)),
            80,
            5);

    static SamplePoints of(Path path, double step, double noise, long seed) {
        Random random = new Random(seed);
        int count = 1 + (int) Math.floor((path.end() - path.start()) / step + 1e-9);
        SamplePoints points = new SamplePoints(new double[count], new double[count]);
        for (int i = 0; i < count; i++) {
            Path.Point at = path.position(path.start() + i * step);
            points.x[i] = at.x() + noise * random.nextGaussian();
            points.y[i] = at.y() + noise * random.nextGaussian();
        }
        return points;
    }

    SamplePoints mirrored() {
        return new SamplePoints(x, scaled(y, -1, 0));
    }

    MeasuredLine line() {
        return MeasuredLine.of(x, y, 5);
    }

    static double[] scaled(double[] values, double factor, double shift) {
        double[] result = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            result[i] = factor * values[i] + shift;
        }
        return result;
    }
}
