package org.foreload.strategy;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.strategy.LatestBrakePoint.Finding;

/**
 * The best straight-line braking in a corner: full to turn-in, then off, and coasting from there until the throttle is
 * picked up. It is what every trailed release is compared with: the same car, driver and margin, with its own best peak
 * and its own latest brake point.
 */
public final class StraightLine {

    /** Peaks that are tried, as shares of what locks a wheel on the straight. */
    private static final double[] PEAKS = {0.5, 0.65, 0.75, 0.82, 0.87, 0.91, 0.94, 0.97};

    /** Steps of the peak around the best of them. */
    private static final double[] FINER = {-0.02, -0.01, 0.01, 0.02};

    private StraightLine() {}

    /** The plan with this peak, m/s²; its brake point is open. */
    public static BrakePlan plan(double peak, double buildUpTime) {
        return new BrakePlan(0, peak, buildUpTime, new Release(ReleaseShapes.ABRUPT, 0, 0));
    }

    /** Whether a plan brakes in a straight line only. */
    public static boolean is(BrakePlan plan) {
        return plan.release().shape() == ReleaseShapes.ABRUPT && plan.release().end() <= 0;
    }

    /**
     * The quickest that keeps the study's margin; empty if none does.
     *
     * @param study car, corner, driver and margin
     * @param buildUpTime time in which the foot reaches the peak, s
     */
    public static Optional<Finding> best(CornerStudy study, double buildUpTime) {
        double limit = study.lockLimit();
        List<Finding> coarse = found(study, buildUpTime, DoubleStream.of(PEAKS).map(share -> share * limit));
        Optional<Finding> best = quickest(coarse);
        if (best.isEmpty()) {
            return best;
        }
        double peak = best.get().entry().plan().peakDeceleration();
        List<Finding> fine = found(study, buildUpTime, DoubleStream.of(FINER).map(step -> peak + step * limit));
        return quickest(Stream.concat(best.stream(), fine.stream()).toList());
    }

    private static List<Finding> found(CornerStudy study, double buildUpTime, DoubleStream peaks) {
        return peaks.mapToObj(peak -> study.latest(plan(peak, buildUpTime).rounded()))
                .filter(Finding::found)
                .toList();
    }

    private static Optional<Finding> quickest(List<Finding> found) {
        return found.stream().min(Comparator.comparingDouble(one -> one.entry().time()));
    }
}
