package org.foreload.examples.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.foreload.entry.EntryResult;
import org.foreload.examples.demo.Demos;
import org.foreload.lap.Circuit;
import org.foreload.lap.Lap;
import org.foreload.lap.Lap.CornerGain;
import org.foreload.optimum.BestRelease;
import org.foreload.path.Path;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Car;
import org.hipparchus.stat.correlation.SpearmansCorrelation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The best releases of a whole lap. */
@Tag("long")
class LapStudyTest {

    private static final double GRAVITY = 9.81;

    /**
     * Rule of the trade (common practice, no source): little of the slowing is left for after turn-in in a slow tight
     * corner, much of it in a fast long one. Over the lap: the share goes with the speed in the corner, and the slowest
     * corner has a smaller one than the fastest.
     *
     * <p>Professionals brake at 0.2 to 0.4 g in a turn (Japanese Journal of Ergonomics 46(1), p. 68, 2010; there a turn
     * of constant radius). So does the best release from turn-in to its end, on the average of time and corners: it
     * comes in with more and fades to nothing.
     */
    @Test
    void theShareOfSlowingInTheTurnGoesWithTheSpeedOfTheCorner() {
        Car car = Demos.car("", "road").value();
        Circuit circuit = Demos.circuit().value();
        Lap lap = Lap.of(
                circuit,
                (i, corner) -> CornerStudy.of(car, corner),
                BestRelease.STANDARD,
                Runtime.getRuntime().availableProcessors(),
                Sweep.Progress.SILENT);
        assertEquals(List.of(), lap.uncounted());
        StudyLog.line("lap of %d corners: %.3f s gained", lap.corners().size(), lap.gain());
        double[] shares = new double[lap.corners().size()];
        double[] speeds = new double[shares.length];
        double[] turning = new double[shares.length];
        for (int i = 0; i < shares.length; i++) {
            CornerGain corner = lap.corners().get(i);
            EntryResult best = corner.best().orElseThrow();
            shares[i] = best.trailShare();
            speeds[i] = best.minimumSpeed();
            turning[i] = braking(best, 0);
            StudyLog.line(
                    "lap, %s: %.3f s, %.3f s gained, slowest %.1f m/s, trail share %.2f, braking on average %.2f g from"
                            + " turn-in on, %.2f g from where the line bends half as much as it will",
                    corner.name(),
                    best.time(),
                    corner.gain(),
                    speeds[i],
                    shares[i],
                    turning[i],
                    braking(best, halfBent(circuit.corners().get(i).path())));
        }
        double correlation = new SpearmansCorrelation().correlation(speeds, shares);
        StudyLog.line("lap: rank correlation of trail share and slowest speed %.2f", correlation);
        assertTrue(correlation > 0.5, "rank correlation " + correlation);
        assertTrue(shares[place(speeds, false)] < shares[place(speeds, true)], Arrays.toString(shares));
        double mean = Arrays.stream(turning).average().orElseThrow();
        StudyLog.line("lap: braking from turn-in on, mean of the corners %.2f g", mean);
        assertTrue(mean > 0.2 && mean < 0.4, "braking in the turn " + mean);
    }

    private static int place(double[] values, boolean ofMost) {
        return IntStream.range(0, values.length)
                .reduce((a, b) -> values[b] > values[a] == ofMost ? b : a)
                .orElseThrow();
    }

    /** Station from which a line bends at least half as much as it ever does, m. */
    private static double halfBent(Path path) {
        int steps = (int) (path.end() / STEP);
        double most = IntStream.range(0, steps)
                .mapToDouble(i -> Math.abs(path.curvature(i * STEP)))
                .max()
                .orElseThrow();
        return STEP
                * IntStream.range(0, steps)
                        .filter(i -> Math.abs(path.curvature(i * STEP)) >= most / 2)
                        .findFirst()
                        .orElseThrow();
    }

    private static final double STEP = 0.1;

    /**
     * Brake deceleration between a station and the end of the release, as a share of gravity, averaged over time; NaN
     * where the brake is off by then.
     */
    private static double braking(EntryResult entry, double from) {
        var stations = entry.profile().orElseThrow().column("s_m");
        var times = entry.profile().orElseThrow().column("time_s");
        var brakes = entry.profile().orElseThrow().column("brake_mps2");
        double speedLost = 0;
        double time = 0;
        for (int i = 1; i < stations.size(); i++) {
            if (stations.at(i - 1) >= from
                    && stations.at(i) <= entry.plan().release().end()) {
                double step = times.at(i) - times.at(i - 1);
                speedLost += brakes.at(i) * step;
                time += step;
            }
        }
        return speedLost / time / GRAVITY;
    }
}
