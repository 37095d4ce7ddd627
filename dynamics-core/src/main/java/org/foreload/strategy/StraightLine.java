package org.foreload.strategy;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.ideal.IdealProfile;
import org.foreload.path.Path;
import org.foreload.study.Sweep;

/**
 * The best straight-line braking in a corner: full to turn-in, then off, and coasting from there until the throttle is
 * picked up. It is what every trailed release is compared with: the same car, driver and margin, with its own best peak
 * and its own latest brake point.
 */
public final class StraightLine {

    /** Peaks that are tried, as shares of what locks a wheel on the straight. */
    private static final double[] PEAKS = {0.5, 0.65, 0.75, 0.82, 0.87, 0.91, 0.94, 0.97};

    /**
     * Steps of the peak around the best of them, and around the best of these: a hard foot that locks cuts peaks off.
     */
    private static final double[][] FINER = {{-0.02, -0.01, 0.01, 0.02, 0.03}, {-0.005, 0.005}, {-0.0025, 0.0025}};

    private StraightLine() {}

    /** Straight-line braking with this peak, m/s². */
    public static Braking braking(double peak, double buildUpTime) {
        return Braking.of(peak, buildUpTime, new Release(ReleaseShapes.ABRUPT, 0, 0));
    }

    /** Whether a plan is straight-line braking. */
    public static boolean is(BrakePlan plan) {
        Objects.requireNonNull(plan, "plan");
        return plan.release().shape() == ReleaseShapes.ABRUPT && plan.release().end() <= 0;
    }

    /** Lateral acceleration, m/s², up to which a line counts as straight for the brake: a tenth of g. */
    public static final double STRAIGHT = 1;

    /**
     * Whether an entry slows before turn-in for a bend that comes after another: where the fastest entry first gets as
     * slow as this one turns in, or as slow as it ever gets, the line has bent and straightened again. Then it is slow
     * on all the way there, and what is gained on it says little of a release.
     */
    public static boolean slowsForALaterBend(CornerStudy study, EntryResult entry) {
        Objects.requireNonNull(study, "study");
        Objects.requireNonNull(entry, "entry");
        IdealProfile bound = study.bound();
        Path path = study.simulator().corner().path();
        double slowest = SLOWEST * bound.minimumSpeed();
        double slow = entry.turnInSpeed() > slowest ? entry.turnInSpeed() : slowest;
        double bent = 0;
        for (int i = 0; i < bound.size() && !(bound.speed(i) <= slow); i++) {
            double lateral =
                    bound.station(i) < 0 ? 0 : path.curvature(bound.station(i)) * bound.speed(i) * bound.speed(i);
            if (Math.abs(lateral) > STRAIGHT && lateral * bent >= 0) {
                bent = lateral;
            } else if (bent != 0) {
                return true;
            }
        }
        return false;
    }

    /** A speed this close above the lowest still counts as that: a round arc is driven at one speed. */
    private static final double SLOWEST = 1.002;

    /**
     * The quickest that keeps the study's margin; empty if none does, or if the thread that calls is interrupted before
     * all have been tried: then it still is when this returns.
     *
     * @param study car, corner, driver and margin
     * @param buildUpTime time in which the foot reaches the peak, s
     * @param sweep on how many threads; its progress is not used
     */
    public static Optional<Finding> best(CornerStudy study, double buildUpTime, Sweep sweep) {
        Objects.requireNonNull(study, "study");
        Objects.requireNonNull(sweep, "sweep");
        Sweep quiet = new Sweep(sweep.threads(), Sweep.Progress.SILENT);
        double limit = study.lockLimit();
        Function<Braking, Trial> near = study.search()::quickest;
        Function<Braking, Trial> far = study.search()::latest;
        List<Trial> coarse = found(peaks(PEAKS, 0, limit, buildUpTime), near, quiet);
        if (coarse.isEmpty()) {
            coarse = found(peaks(PEAKS, 0, limit, buildUpTime), far, quiet);
        }
        if (coarse.isEmpty()) {
            return Optional.empty();
        }
        List<Trial> tried = new ArrayList<>(coarse);
        for (double[] steps : FINER) {
            double peak = tried.get(0).entry().plan().peakDeceleration();
            tried.addAll(found(peaks(steps, peak, limit, buildUpTime), near, quiet));
            tried.sort(QUICKEST_FIRST);
        }
        if (Thread.currentThread().isInterrupted()) {
            return Optional.empty(); // The best of some peaks would pass for the best of all.
        }
        Optional<Finding> best = Optional.empty();
        for (Trial trial : tried) {
            if (best.isPresent() && best.get().entry().time() <= trial.entry().time()) {
                break;
            }
            Finding finding = study.search().confirmed(trial); // It may be set back, and be slower.
            if (finding.found()
                    && (best.isEmpty()
                            || finding.entry().time() < best.get().entry().time())) {
                best = Optional.of(finding);
            }
        }
        return best;
    }

    private static final Comparator<Trial> QUICKEST_FIRST =
            Comparator.comparingDouble(one -> one.entry().time());

    private static List<Braking> peaks(double[] shares, double from, double limit, double buildUpTime) {
        return DoubleStream.of(shares)
                .mapToObj(share -> braking(from + share * limit, buildUpTime).rounded())
                .toList();
    }

    private static List<Trial> found(List<Braking> all, Function<Braking, Trial> search, Sweep sweep) {
        return sweep.run(all, search).stream()
                .flatMap(Optional::stream)
                .filter(Trial::met)
                .sorted(QUICKEST_FIRST)
                .toList();
    }
}
