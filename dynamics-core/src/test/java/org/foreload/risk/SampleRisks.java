package org.foreload.risk;

import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.Reaction;
import org.foreload.entry.SimulationSettings;
import org.foreload.load.SampleCars;
import org.foreload.optimum.SampleStudies;
import org.foreload.path.Corner;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Sweep;

/**
 * A study that is quick to drive many times: coarse steps, and a slow approach, which leaves more than sixty metres of
 * straight before the latest brake point.
 */
final class SampleRisks {

    private SampleRisks() {}

    /** Tolerance of the simulator: what is tested here is held against the same simulator, not against the truth. */
    private static final double COARSE = 1e-4;

    private static final double APPROACH_SPEED = 26;

    /** Of the track: as far as a car may drift and still make the corner. */
    private static final double HALF_WIDTH = 5;

    /** Car, corner and driver. */
    static final CornerStudy STUDY = CornerStudy.of(
            SampleCars.ROAD_CAR,
            new Corner("slow approach", APPROACH_SPEED, SampleStudies.corner().path()),
            DriverSettings.practised(),
            new SimulationSettings(COARSE, 1),
            new Allowance(HALF_WIDTH, 0, 0, 0, 0));

    /** Firm braking, well below what stops a wheel. */
    static final Braking BRAKING = Braking.of(7, 0.25, new Release(ReleaseShapes.LINEAR, -3, 18));

    /** The latest brake point from which it makes the corner, m: a decimetre later it does not. */
    static final double EDGE = STUDY.search().latest(BRAKING).point();

    /** On the calling program's own terms: one thread, no report. */
    static final Sweep QUIET = new Sweep(1, Sweep.Progress.SILENT);

    /** A driver whose foot mends nothing. */
    static RiskStudy risks(Scatter scatter, int samples, long seed) {
        return new RiskStudy(STUDY, scatter, Reaction.NONE, samples, seed);
    }

    /** A driver who does exactly what was planned: a plan fails always or never. */
    static RiskStudy exact() {
        return risks(Scatter.NONE, 1, 1);
    }

    /** A driver of whom nothing strays but the brake point, with this standard deviation, m. */
    static Scatter brakePointOnly(double metres) {
        return new Scatter("brake point only", metres, 0, 0, 0, 0);
    }
}
