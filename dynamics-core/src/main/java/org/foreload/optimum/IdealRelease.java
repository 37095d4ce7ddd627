package org.foreload.optimum;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.SplineRelease;
import org.foreload.braking.TabulatedRelease;
import org.foreload.conventions.InvalidValueException;
import org.foreload.ideal.IdealEntry;
import org.foreload.ideal.IdealOptions;
import org.foreload.ideal.IdealProfile;
import org.foreload.path.Corner;
import org.foreload.strategy.CornerStudy;

/**
 * The releases that ideal entries use, read off their brake force: good places to begin, since the best release of a
 * car that nearly is what the ideal takes it for is nearly one of these.
 */
final class IdealRelease {

    /** Name of the shape. */
    static final String NAME = "ideal";

    /** Pieces of the table. */
    private static final int PIECES = 24;

    /** Shares of the friction that the ideal entries use. */
    private static final double[] FRICTIONS = {1, 0.985, 0.97};

    /** Most releases that there are. */
    static final int MOST = FRICTIONS.length;

    /** Share of the highest brake force that counts as the peak: the ideal brakes with its wheels on the edge. */
    private static final double FULL = 0.999;

    /** A release shorter than this, m, has no shape to read. */
    private static final double SHORTEST = 2;

    private IdealRelease() {}

    /**
     * The releases of ideal entries that keep a little of the friction, or none of it, in hand: what they leave is what
     * an entry with lags needs. None where the ideal entry needs no brake or drops it at once.
     *
     * @param study car and corner
     * @param buildUpTime time in which the foot reaches the peak, s
     * @param hardest highest peak, m/s²
     */
    static List<Braking> all(CornerStudy study, double buildUpTime, double hardest) {
        return Arrays.stream(FRICTIONS)
                .mapToObj(friction -> of(study, buildUpTime, hardest, friction))
                .flatMap(Optional::stream)
                .toList();
    }

    private static Optional<Braking> of(CornerStudy study, double buildUpTime, double hardest, double friction) {
        IdealProfile bound;
        try {
            bound = profile(study, friction);
        } catch (InvalidValueException tooFast) {
            return Optional.empty();
        }
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
        double peak = Math.min(FULL * highest, hardest);
        double start = Double.NaN;
        for (int i = 0; i < bound.size(); i++) {
            if (bound.station(i) >= first && bound.station(i) <= end && bound.brakeForce(i) / mass >= peak) {
                start = bound.station(i);
            }
        }
        if (!(peak > 0) || !(end - start > SHORTEST)) {
            return Optional.empty();
        }
        return Optional.of(
                Braking.of(peak, buildUpTime, new Release(shape(bound, mass * peak, start, end), start, end)));
    }

    private static IdealProfile profile(CornerStudy study, double friction) {
        Corner corner = study.simulator().corner();
        Corner slower = new Corner(corner.name(), corner.approachSpeed() * Math.sqrt(friction), corner.path());
        return IdealEntry.solve(study.simulator().car(), slower, IdealOptions.DEFAULT.withFrictionScale(friction));
    }

    private static ReleaseShape shape(IdealProfile bound, double peakForce, double start, double end) {
        double[] u = new double[PIECES + 1];
        double[] left = new double[PIECES + 1];
        left[0] = 1;
        int step = 0;
        for (int i = 1; i <= PIECES; i++) {
            u[i] = SplineRelease.place(i, PIECES);
            double station = start + u[i] * (end - start);
            while (step + 2 < bound.size() && bound.station(step + 1) <= station) {
                step++;
            }
            left[i] = i == PIECES ? 0 : Math.max(0, Math.min(left[i - 1], bound.brakeForce(step) / peakForce));
        }
        return new TabulatedRelease(NAME, u, left);
    }
}
