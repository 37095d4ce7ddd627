package org.foreload.path;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.DoubleStream;

/** The laws of a {@link Path}, to be run on any of them. */
final class PathLaws {

    /** Step of the central differences, m. */
    private static final double STEP = 1e-3;

    /**
     * Central differences are off by a sixth of the third derivative times {@link #STEP}²; curvature stays below 2 1/m.
     */
    private static final double DIFFERENCE = 1e-6;

    private PathLaws() {}

    static void check(Path path) {
        assertTrue(path.start() <= 0 && path.end() > path.start());
        startsAtTheOrigin(path);
        kinksRiseInside(path);
        outsideIsTheNearestEnd(path);
        derivativesAgreeBetweenKinks(path);
        endsStraight(path);
        endsStraight(new TiltedPath(path.mirrored(), 0.02, -0.03));
        mirrorChangesSides(path);
        allAtOnceIsOneByOne(path);
        allAtOnceIsOneByOne(path.mirrored());
        allAtOnceIsOneByOne(new TiltedPath(path, 0.02, -0.03));
    }

    private static void allAtOnceIsOneByOne(Path path) {
        Path.Place place = new Path.Place();
        for (double share = -0.1; share < 1.2; share += 0.0271) {
            double s = path.start() + share * (path.end() - path.start());
            path.at(s, place);
            assertEquals(path.curvature(s), place.curvature());
            assertEquals(path.heading(s), place.heading());
            assertEquals(path.grade(s), place.grade());
            assertEquals(path.banking(s), place.banking());
        }
    }

    private static void endsStraight(Path path) {
        double from = path.exitStraight();
        assertTrue(from >= path.start() && from <= path.end());
        for (double share = 0; share < 1.2; share += 0.0271) {
            double s = from + share * (path.end() - from);
            if (s > from) {
                assertEquals(0, path.curvature(s), 0);
                assertEquals(path.heading(path.end()), path.heading(s));
                assertEquals(path.grade(path.end()), path.grade(s));
                assertEquals(path.banking(path.end()), path.banking(s));
            }
        }
    }

    private static void startsAtTheOrigin(Path path) {
        assertEquals(new Path.Point(0, 0), path.position(path.start()));
        assertEquals(0, path.heading(path.start()));
    }

    private static void kinksRiseInside(Path path) {
        double previous = path.start();
        for (double kink : path.kinks()) {
            assertTrue(kink > previous && kink < path.end());
            previous = kink;
        }
    }

    private static void outsideIsTheNearestEnd(Path path) {
        for (double beyond : new double[] {1e-3, 1e6, Double.POSITIVE_INFINITY}) {
            assertEquals(path.position(path.start()), path.position(path.start() - beyond));
            assertEquals(path.position(path.end()), path.position(path.end() + beyond));
            assertEquals(path.curvature(path.end()), path.curvature(path.end() + beyond));
            assertEquals(path.heading(path.end()), path.heading(path.end() + beyond));
            assertEquals(path.widthLeft(path.end()), path.widthLeft(path.end() + beyond));
            assertEquals(path.banking(path.start()), path.banking(path.start() - beyond));
        }
    }

    private static void derivativesAgreeBetweenKinks(Path path) {
        double[] bounds = DoubleStream.concat(
                        DoubleStream.concat(DoubleStream.of(path.start()), DoubleStream.of(path.kinks())),
                        DoubleStream.of(path.end()))
                .toArray();
        for (int i = 1; i < bounds.length; i++) {
            double gap = bounds[i] - bounds[i - 1];
            if (gap < 4 * STEP) {
                continue;
            }
            for (double share : new double[] {0.01, 0.2, 0.5, 0.93}) {
                double s = Math.min(Math.max(bounds[i - 1] + share * gap, bounds[i - 1] + STEP), bounds[i] - STEP);
                derivativesAgree(path, s);
            }
        }
    }

    private static void derivativesAgree(Path path, double s) {
        double before = s - STEP;
        double after = s + STEP;
        String where = "at s = " + s;
        double heading = path.heading(s);
        assertEquals(
                path.curvatureGradient(s), slope(path.curvature(before), path.curvature(after)), DIFFERENCE, where);
        assertEquals(path.curvature(s), slope(path.heading(before), path.heading(after)), DIFFERENCE, where);
        Path.Point one = path.position(before);
        Path.Point other = path.position(after);
        assertEquals(Math.cos(heading), slope(one.x(), other.x()), DIFFERENCE, where);
        assertEquals(Math.sin(heading), slope(one.y(), other.y()), DIFFERENCE, where);
    }

    private static double slope(double before, double after) {
        return (after - before) / (2 * STEP);
    }

    private static void mirrorChangesSides(Path path) {
        Path mirrored = path.mirrored();
        assertEquals(path, mirrored.mirrored());
        assertEquals(path.start(), mirrored.start());
        assertEquals(path.end(), mirrored.end());
        assertArrayEquals(path.kinks(), mirrored.kinks());
        for (double share = 0.03; share < 1; share += 0.1) {
            double s = path.start() + share * (path.end() - path.start());
            assertEquals(-path.curvature(s), mirrored.curvature(s));
            assertEquals(-path.curvatureGradient(s), mirrored.curvatureGradient(s));
            assertEquals(-path.heading(s), mirrored.heading(s));
            assertEquals(path.position(s).x(), mirrored.position(s).x());
            assertEquals(-path.position(s).y(), mirrored.position(s).y());
            assertEquals(path.grade(s), mirrored.grade(s));
            assertEquals(-path.banking(s), mirrored.banking(s));
            assertEquals(path.widthLeft(s), mirrored.widthRight(s));
            assertEquals(path.widthRight(s), mirrored.widthLeft(s));
        }
    }
}
