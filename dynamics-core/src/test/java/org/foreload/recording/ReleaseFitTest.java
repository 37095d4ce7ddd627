package org.foreload.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.SplittableRandom;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.junit.jupiter.api.Test;

/** Releases fitted to courses of a brake that are known, with the noise of a sensor on them. */
class ReleaseFitTest {

    private static final double START = -5;
    private static final double END = 95;

    /** As of a fast corner at 50 Hz: from a held peak, 1 m between rows, noise of 1 % of the peak. */
    private static ReleaseFit fit(ReleaseShape shape, int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Release release = new Release(shape, START, END);
        double first = random.nextDouble(-70, -40);
        double[] station = new double[200];
        double[] brake = new double[station.length];
        for (int i = 0; i < station.length; i++) {
            station[i] = first + i;
            brake[i] = 60 * (release.remaining(station[i]) + 0.01 * random.nextGaussian());
        }
        double guess = random.nextDouble(-8, 8);
        List<ReleaseFit> fits = ReleaseFit.shapes().stream()
                .map(one -> ReleaseFit.of(one, station, brake, START + guess, END - guess))
                .toList();
        return ReleaseFit.nearest(fits).orElseThrow();
    }

    /** A straight release is not taken for the steep end of another one that began long before the course does. */
    @Test
    void aStraightReleaseIsFoundWhereItIs() {
        for (int seed = 0; seed < 200; seed++) {
            ReleaseFit fit = fit(ReleaseShapes.LINEAR, seed);
            assertEquals(START, fit.start(), 5, "start, seed " + seed + ", " + fit.shape());
            assertEquals(END, fit.end(), 3, "end, seed " + seed + ", " + fit.shape());
            assertEquals(60, fit.level(), 1.5, "level, seed " + seed);
        }
    }

    /** Shapes that end steeply are still told from a straight one. */
    @Test
    void aShapeThatEndsSteeplyIsNamed() {
        for (int seed = 0; seed < 50; seed++) {
            ReleaseFit fit = fit(ReleaseShapes.CIRCLE, seed);
            assertEquals(ReleaseShapes.CIRCLE, fit.shape(), "seed " + seed);
            assertEquals(END, fit.end(), 3, "seed " + seed);
        }
    }
}
