package org.foreload.examples.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.foreload.braking.BrakePlan;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.foreload.study.Sweep;

/**
 * One release carried less and less deep, and deeper and deeper, and the same with softer and harder peaks, each from
 * its own latest brake point. Shape and release point stay as they are, so that one thing differs from rung to rung and
 * one from ladder to ladder.
 *
 * @param rungs the softest peak first, and of each peak the shallowest first; the release that all is built around is
 *     in the middle
 */
record Ladder(List<Finding> rungs) {

    /** Rungs of each peak below the release that the ladder is built around, and as many above. */
    private static final int EACH_SIDE = 3;

    /** Rungs of each peak. */
    static final int RUNGS = 2 * EACH_SIDE + 1;

    /** Peaks, as shares of that of the release in the middle. */
    private static final List<Double> PEAKS = List.of(0.8, 0.9, 1.0, 1.06, 1.12);

    /** Index of the middle among the peaks. */
    static final int MIDDLE = PEAKS.indexOf(1.0);

    /** A rung loses a lot from here on, s: more than a driver would call a detail. */
    private static final double A_LOT = 0.3;

    /** How often the upper half is made longer while its last rung neither fails nor loses a lot. */
    private static final int STRETCHES = 3;

    /** Share of the way from turn-in to the apex that the lower half spans where brake off lies before turn-in. */
    private static final double LEAST_SPAN = 0.5;

    Ladder {
        rungs = List.copyOf(rungs);
    }

    /**
     * The ladder around a release.
     *
     * @param made a finding that makes the corner
     * @return empty after a stop
     */
    static Optional<Ladder> around(CornerStudy study, Finding made, Sweep sweep) {
        BrakePlan plan = made.entry().plan();
        double apex = study.apex(plan.release());
        double middle = plan.release().end();
        double low = Math.min(0, middle - LEAST_SPAN * apex);
        double step = (middle - low) / EACH_SIDE;
        double most = study.simulator().corner().path().end() - middle;
        Optional<List<Finding>> below =
                driven(study, IntStream.range(0, EACH_SIDE).mapToObj(i -> Mistake.ending(plan, low + i * step)), sweep);
        Optional<List<Finding>> above = Optional.empty();
        for (int stretch = 1; stretch <= STRETCHES; stretch++) {
            double longer = Math.min(step * stretch, most / (EACH_SIDE + 1));
            above = driven(
                    study,
                    IntStream.rangeClosed(1, EACH_SIDE).mapToObj(i -> Mistake.ending(plan, middle + i * longer)),
                    sweep);
            if (above.isEmpty() || overdone(above.get().get(EACH_SIDE - 1), made)) {
                break;
            }
        }
        if (below.isEmpty() || above.isEmpty()) {
            return Optional.empty();
        }
        List<Finding> middles = new ArrayList<>(below.get());
        middles.add(made);
        middles.addAll(above.get());
        List<Finding> rungs = new ArrayList<>();
        for (double share : PEAKS) {
            Optional<List<Finding>> some = share == 1
                    ? Optional.of(middles)
                    : driven(
                            study,
                            middles.stream()
                                    .map(one -> one.entry().plan())
                                    .map(one -> one.withPeakDeceleration(share * one.peakDeceleration())),
                            sweep);
            if (some.isEmpty()) {
                return Optional.empty();
            }
            rungs.addAll(some.get());
        }
        return Optional.of(new Ladder(rungs));
    }

    private static boolean overdone(Finding last, Finding made) {
        return !last.found() || last.entry().time() - made.entry().time() >= A_LOT;
    }

    private static Optional<List<Finding>> driven(CornerStudy study, Stream<BrakePlan> plans, Sweep sweep) {
        List<Optional<Finding>> found =
                sweep.run(plans.toList(), plan -> study.latest(plan.braking(), plan.brakePoint()));
        return found.stream().allMatch(Optional::isPresent)
                ? Optional.of(found.stream().map(Optional::get).toList())
                : Optional.empty();
    }

    /** Index of the release that all is built around. */
    int middle() {
        return MIDDLE * RUNGS + EACH_SIDE;
    }
}
