package org.foreload.path;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The filter's answer is held against the sum of squares that it claims to make least, counted directly. */
class ClothoidSmootherTest {

    private static final int POINTS = 50;
    private static final double STEP = 3;

    private final double[] x = new double[POINTS];
    private final double[] y = new double[POINTS];

    ClothoidSmootherTest() {
        Random random = new Random(3);
        for (int i = 0; i < POINTS; i++) {
            double angle = i * STEP / 45;
            x[i] = 40 * Math.sin(angle) + 0.05 * random.nextGaussian();
            y[i] = 55 * (1 - Math.cos(angle)) + 0.05 * random.nextGaussian();
        }
    }

    /** Distances squared and ∫(dκ/ds)² ds of a chain that starts in the fitted pose with changed curvatures. */
    private double[] sums(ClothoidSmoother fit, int joint, double change) {
        int[] joints = IntStream.range(0, POINTS).filter(fit::isJoint).toArray();
        double[] station = new double[joints.length + 1];
        double[] start = new double[joints.length];
        double[] end = new double[joints.length];
        double[] curvature = new double[joints.length];
        for (int i = 0; i < joints.length; i++) {
            station[i] = fit.station(joints[i]);
            curvature[i] = fit.curvature(joints[i]) + (i == joint ? change : 0);
        }
        station[joints.length] = station[joints.length - 1] + 1; // a metre more, so that the last point keeps its foot
        double rough = 0;
        for (int i = 0; i < start.length; i++) {
            start[i] = curvature[i];
            end[i] = curvature[Math.min(i + 1, joints.length - 1)];
            rough += Math.pow(end[i] - start[i], 2) / (station[i + 1] - station[i]);
        }
        ClothoidChain chain = new ClothoidChain(station, start, end);
        double cos = Math.cos(fit.heading(0));
        double sin = Math.sin(fit.heading(0));
        double squares = 0;
        for (int i = 0; i < POINTS; i++) {
            double dx = x[i] - fit.x(0);
            double dy = y[i] - fit.y(0);
            Path.Point seen = new Path.Point(cos * dx + sin * dy, cos * dy - sin * dx);
            squares += Math.pow(chain.distance(seen, fit.station(i)), 2);
        }
        return new double[] {squares, rough};
    }

    /**
     * At the least value of Σd² + q⁻¹·∫κ'², the slopes of the two sums with respect to each curvature cancel. Slopes by
     * central differences, to what they can resolve.
     */
    @ParameterizedTest
    @ValueSource(doubles = {2, 6, 12})
    void slopesOfClosenessAndSteadinessCancel(double smoothingLength) {
        ClothoidSmoother fit = new ClothoidSmoother(x, y, false, false);
        assertTrue(fit.fit(smoothingLength));
        double q = fit.meanStep() / Math.pow(smoothingLength, 6);
        double change = 1e-7;
        int joints = (int) IntStream.range(0, POINTS).filter(fit::isJoint).count();
        double[] closeness = new double[joints];
        double[] steadiness = new double[joints];
        double steepest = 0;
        for (int joint = 0; joint < joints; joint++) {
            double[] more = sums(fit, joint, change);
            double[] less = sums(fit, joint, -change);
            closeness[joint] = (more[0] - less[0]) / (2 * change);
            steadiness[joint] = (more[1] - less[1]) / (2 * change) / q;
            steepest = Math.max(steepest, Math.abs(steadiness[joint]));
        }
        for (int joint = 0; joint < joints; joint++) {
            assertEquals(-steadiness[joint], closeness[joint], 1e-5 * steepest, "joint " + joint);
        }
    }

    @Test
    void smootherIsFurtherFromThePoints() {
        ClothoidSmoother fit = new ClothoidSmoother(x, y, false, false);
        double last = 0;
        for (double length = 1; length < 20; length *= 1.5) {
            assertTrue(fit.fit(length));
            assertTrue(fit.rmsDeviation() > last, "at " + length);
            last = fit.rmsDeviation();
        }
    }

    /** Where a fit started from must not matter. */
    @Test
    void comesToTheSameFitFromEitherSide() {
        ClothoidSmoother up = new ClothoidSmoother(x, y, false, false);
        ClothoidSmoother down = new ClothoidSmoother(x, y, false, false);
        assertTrue(up.fit(2) && up.fit(6) && down.fit(15) && down.fit(6));
        for (int i = 0; i < POINTS; i++) {
            assertEquals(up.curvature(i), down.curvature(i), 1e-6);
        }
    }

    @Test
    void straightEndsHaveNoCurvature() {
        ClothoidSmoother fit = new ClothoidSmoother(x, y, true, true);
        assertTrue(fit.fit(4));
        assertEquals(0, fit.curvature(0), 1e-12);
        assertEquals(0, fit.curvature(POINTS - 1), 1e-10);
    }

    /** The scatter put in is found again: 5 cm in x and y, so 5 cm across the line; 50 points know it to a tenth. */
    @Test
    void findsTheScatter() {
        ClothoidSmoother fit = new ClothoidSmoother(x, y, false, false);
        double least = Double.POSITIVE_INFINITY;
        double noise = Double.NaN;
        for (double length = 1; length < 20; length *= 1.2) {
            assertTrue(fit.fit(length));
            if (fit.unlikelihood(1e-6) < least) {
                least = fit.unlikelihood(1e-6);
                noise = fit.noise();
            }
        }
        assertEquals(0.05, noise, 0.015);
    }
}
