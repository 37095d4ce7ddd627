package org.foreload.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.foreload.path.Turn;
import org.junit.jupiter.api.Test;

/** What is read off a run, against the run that was put in. */
class LimitResultTest {

    /** A point with a speed and a brake; nothing else counts here. */
    private static LimitPoint point(double station, double speed, double brake) {
        return new LimitPoint(
                station, 0, speed, 0, 0, 0, 0, 0, 0, brake, brake, 0, 0, 0, 0, 0, 1000, 1000, 0, station, 0);
    }

    private static LimitResult run(double[][] stationSpeedBrake) {
        List<LimitPoint> points = new ArrayList<>();
        for (double[] row : stationSpeedBrake) {
            points.add(point(row[0], row[1], row[2]));
        }
        return new LimitResult(
                points, 1, true, 0, 1, LimitCases.bend(30, 5, Turn.LEFT).path());
    }

    /** A car that sets out slower than it corners is slowest in the corner all the same: what it brakes down to. */
    @Test
    void whatIsSlowerBeforeTheBrakeDoesNotCount() {
        LimitResult run = run(new double[][] {
            {-300, 15, 0},
            {-200, 38, 0},
            {-110, 49, 0},
            {-100, 48, 8},
            {0, 32, 6},
            {40, 24, 1},
            {60, 23, 0},
            {120, 28, 0}
        });
        assertEquals(23, run.minimumSpeed());
        assertEquals(60, run.minimumSpeedAt());
        assertEquals(49, run.topSpeed());
        // Of 26 m/s shed, 32 - 23 after turn-in.
        assertEquals(9.0 / 26, run.trailShare(), 1e-12);
    }

    @Test
    void withoutABrakeTheWholeRunCounts() {
        LimitResult run = run(new double[][] {{-300, 15, 0}, {0, 20, 0}, {50, 19, 0}});
        assertEquals(15, run.minimumSpeed());
        assertEquals(-300, run.minimumSpeedAt());
        assertEquals(15, run.topSpeed());
        assertEquals(Double.NaN, run.trailShare());
    }
}
