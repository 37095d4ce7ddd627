package org.foreload.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Surfaces through known values: what the theory of cubic radial basis functions says of them. */
class ResponseSurfaceTest {

    private static final List<double[]> POINTS = LowDiscrepancy.points(3, 60, 1);

    private static double plane(double[] x) {
        return 2 - 3 * x[0] + 0.5 * x[1] + 7 * x[2];
    }

    private static double wave(double[] x) {
        return Math.sin(2 * x[0]) * Math.exp(x[1]) + x[2] * x[2];
    }

    private static ResponseSurface surface(double smoothing) {
        return ResponseSurface.at(POINTS, smoothing)
                .orElseThrow()
                .through(POINTS.stream()
                        .map(x -> new double[] {plane(x), wave(x)})
                        .toList());
    }

    /** Without smoothing it passes through every value. */
    @Test
    void passesThroughWhatIsKnown() {
        ResponseSurface surface = surface(0);
        assertEquals(2, surface.functions());
        for (double[] x : POINTS) {
            assertEquals(plane(x), surface.at(x)[0], 1e-8);
            assertEquals(wave(x), surface.at(x)[1], 1e-8);
        }
    }

    /** A plane is reproduced everywhere, smoothed or not, inside and outside the points. */
    @Test
    void reproducesAPlane() {
        for (double smoothing : new double[] {0, 0.1}) {
            double[] outside = {1.7, -0.8, 2.5};
            assertEquals(plane(outside), surface(smoothing).at(outside)[0], 1e-6);
            assertEquals(7, surface(smoothing).slopesAt(outside)[2][0], 1e-6);
        }
    }

    @Test
    void comesNearASmoothFunctionBetweenThePoints() {
        double[] x = {0.45, 0.52, 0.61};
        assertEquals(wave(x), surface(0).at(x)[1], 0.02);
    }

    @Test
    void smoothingLetsValuesBeMissed() {
        double most = POINTS.stream()
                .mapToDouble(x -> Math.abs(wave(x) - surface(1).at(x)[1]))
                .max()
                .orElseThrow();
        assertTrue(most > 1e-3 && most < 0.5, "misses by " + most);
    }

    /** Slopes are those of central differences of the surface itself. */
    @Test
    void slopesAreThoseOfDifferences() {
        ResponseSurface surface = surface(1e-3);
        double[] x = {0.3, 0.7, 0.4};
        double[][] slopes = surface.slopesAt(x);
        for (int k = 0; k < x.length; k++) {
            double[] less = x.clone();
            double[] more = x.clone();
            less[k] -= 1e-5;
            more[k] += 1e-5;
            for (int j = 0; j < surface.functions(); j++) {
                assertEquals((surface.at(more)[j] - surface.at(less)[j]) / 2e-5, slopes[k][j], 1e-6);
            }
        }
    }

    /** Points in one plane say nothing across it. */
    @Test
    void refusesPointsInAPlane() {
        List<double[]> flat =
                List.of(new double[] {0, 0}, new double[] {1, 1}, new double[] {2, 2}, new double[] {3, 3});
        assertEquals(Optional.empty(), ResponseSurface.at(flat, 0));
    }
}
