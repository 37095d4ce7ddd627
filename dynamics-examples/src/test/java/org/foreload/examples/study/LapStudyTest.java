package org.foreload.examples.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.entry.EntryResult;
import org.foreload.examples.demo.Demos;
import org.foreload.lap.Circuit;
import org.foreload.lap.Lap;
import org.foreload.lap.Lap.CornerGain;
import org.foreload.optimum.BestRelease;
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
     * corner, much of it in a fast long one. Over the lap: the share goes with the speed in the corner, and no hairpin
     * has as large a share as the fastest corner.
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
        for (int i = 0; i < shares.length; i++) {
            CornerGain corner = lap.corners().get(i);
            EntryResult best = corner.best().orElseThrow();
            shares[i] = best.trailShare();
            speeds[i] = best.minimumSpeed();
            StudyLog.line(
                    "lap, %s: %.3f s, %.3f s gained, slowest %.1f m/s, trail share %.2f, braking in the turn %.2f g on average",
                    corner.name(), best.time(), corner.gain(), speeds[i], shares[i], inTurn(best));
        }
        double correlation = new SpearmansCorrelation().correlation(speeds, shares);
        StudyLog.line("lap: rank correlation of trail share and slowest speed %.2f", correlation);
        assertTrue(correlation > 0.5, "rank correlation " + correlation);
    }

    /** Brake deceleration between turn-in and the end of the release, as a share of gravity, averaged over time. */
    private static double inTurn(EntryResult entry) {
        var stations = entry.profile().orElseThrow().column("s_m");
        var times = entry.profile().orElseThrow().column("time_s");
        var brakes = entry.profile().orElseThrow().column("brake_mps2");
        double speedLost = 0;
        double time = 0;
        for (int i = 1; i < stations.size(); i++) {
            if (stations.at(i - 1) >= 0
                    && stations.at(i) <= entry.plan().release().end()) {
                double step = times.at(i) - times.at(i - 1);
                speedLost += brakes.at(i) * step;
                time += step;
            }
        }
        return speedLost / time / GRAVITY;
    }
}
