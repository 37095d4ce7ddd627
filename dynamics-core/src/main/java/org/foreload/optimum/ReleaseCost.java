package org.foreload.optimum;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.ReleaseShape;
import org.foreload.strategy.CornerStudy;

/**
 * Time of a release from its own latest brake point, as a function of its point in the space of releases. It remembers
 * what it has seen to guess brake points better: that saves trials and moves times by less than a tenth of a
 * millisecond. So it belongs to one search, which is then repeatable to the bit.
 */
final class ReleaseCost implements ToDoubleFunction<double[]> {

    /**
     * Seconds by which a release that makes the corner from no brake point counts as slower than the start of the
     * search: enough to be turned away from, too little to be all that a search sees of a neighbourhood.
     */
    private static final double HOPELESS = 0.2;

    private final ReleaseSpace space;
    private final QuickBrakePoint quick;
    private final double hopeless;
    private final double[] start;
    private final List<double[]> points = new ArrayList<>();
    private final List<Double> shifts = new ArrayList<>();

    /**
     * @param study car, corner, driver
     * @param known a plan with its brake point: guesses for other plans are moved as this one's would have to be
     * @param driftShare share of the drift allowed that this plan uses
     * @param shape the shape, where the search is within one family
     */
    ReleaseCost(CornerStudy study, BrakePlan known, double driftShare, Optional<ReleaseShape> shape) {
        space = new ReleaseSpace(study.lockLimit(), study.simulator().apex(), known.buildUpTime(), shape);
        quick = new QuickBrakePoint(study);
        start = space.point(known, driftShare);
        points.add(start);
        shifts.add(known.brakePoint() - quick.estimate(known));
        double time = quick.find(known, known.brakePoint(), driftShare).time();
        hopeless = HOPELESS + (Double.isNaN(time) ? 2 * study.bound().time() : time);
    }

    /** The point of the known plan. */
    double[] start() {
        return start.clone();
    }

    ReleaseSpace space() {
        return space;
    }

    @Override
    public double applyAsDouble(double[] point) {
        QuickBrakePoint.Answer answer = answer(point);
        return Double.isNaN(answer.time()) ? hopeless + EXCESS_WEIGHT * answer.excess() : answer.time();
    }

    /** Seconds per excess: leads a search that starts among hopeless releases out of them. */
    private static final double EXCESS_WEIGHT = 0.01;

    /** The plan at a point, from its latest brake point as far as the quick search knows it. */
    BrakePlan plan(double[] point) {
        return space.plan(point).withBrakePoint(answer(point).brakePoint());
    }

    private QuickBrakePoint.Answer answer(double[] point) {
        BrakePlan plan = space.plan(point);
        double estimate = quick.estimate(plan);
        QuickBrakePoint.Answer answer = quick.find(plan, estimate + shiftNear(point), ReleaseSpace.driftShare(point));
        if (!Double.isNaN(answer.time())) {
            points.add(point.clone());
            shifts.add(answer.brakePoint() - estimate);
        }
        return answer;
    }

    /** How far the brake point lay from its estimate at the nearest point seen. */
    private double shiftNear(double[] point) {
        double nearest = Double.POSITIVE_INFINITY;
        double shift = 0;
        for (int k = 0; k < points.size(); k++) {
            double[] seen = points.get(k);
            double distance = 0;
            for (int i = 0; i < point.length; i++) {
                distance += (point[i] - seen[i]) * (point[i] - seen[i]);
            }
            if (distance < nearest) {
                nearest = distance;
                shift = shifts.get(k);
            }
        }
        return shift;
    }
}
