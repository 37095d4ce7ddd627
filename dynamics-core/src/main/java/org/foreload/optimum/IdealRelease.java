package org.foreload.optimum;

import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.TabulatedRelease;
import org.foreload.ideal.IdealProfile;
import org.foreload.strategy.CornerStudy;

/**
 * The release that the ideal entry itself uses, read off its brake force: a good place to begin, since the best release
 * of a car that nearly is what the ideal takes it for is nearly this one.
 */
final class IdealRelease {

    /** Name of the shape. */
    static final String NAME = "ideal";

    /** Pieces of the table. */
    private static final int PIECES = 24;

    /** Share of the highest brake force that counts as the peak: the ideal brakes with its wheels on the edge. */
    private static final double FULL = 0.95;

    /** A release shorter than this, m, has no shape to read. */
    private static final double SHORTEST = 2;

    private IdealRelease() {}

    /** The release with an open brake point; empty where the ideal entry needs no brake or drops it at once. */
    static Optional<BrakePlan> of(CornerStudy study, double buildUpTime) {
        IdealProfile bound = study.bound();
        if (bound.brakePoint().isEmpty() || bound.releaseEnd().isEmpty()) {
            return Optional.empty();
        }
        double mass = study.simulator().car().chassis().mass();
        double first = bound.brakePoint().getAsDouble();
        double end = bound.releaseEnd().getAsDouble();
        double highest = 0;
        for (int i = 0; i < bound.size(); i++) {
            if (bound.station(i) >= first && bound.station(i) <= end) {
                highest = Math.max(highest, bound.brakeForce(i) / mass);
            }
        }
        double peak = Math.min(FULL * highest, FULL * study.lockLimit());
        double start = Double.NaN;
        for (int i = 0; i < bound.size(); i++) {
            if (bound.station(i) >= first && bound.station(i) <= end && bound.brakeForce(i) / mass >= peak) {
                start = bound.station(i);
            }
        }
        if (!(peak > 0) || !(end - start > SHORTEST)) {
            return Optional.empty();
        }
        return Optional.of(new BrakePlan(0, peak, buildUpTime, new Release(shape(bound, mass * peak, start, end), start, end)));
    }

    private static ReleaseShape shape(IdealProfile bound, double peakForce, double start, double end) {
        double[] u = new double[PIECES + 1];
        double[] left = new double[PIECES + 1];
        left[0] = 1;
        int step = 0;
        for (int i = 1; i <= PIECES; i++) {
            u[i] = (double) i / PIECES;
            double station = start + u[i] * (end - start);
            while (step + 2 < bound.size() && bound.station(step + 1) <= station) {
                step++;
            }
            left[i] = i == PIECES ? 0 : Math.max(0, Math.min(left[i - 1], bound.brakeForce(step) / peakForce));
        }
        return new TabulatedRelease(NAME, u, left);
    }
}
