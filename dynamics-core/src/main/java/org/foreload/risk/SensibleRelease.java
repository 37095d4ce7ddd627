package org.foreload.risk;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.strategy.Trial;
import org.foreload.study.Sweep;

/**
 * Looks for plans that a given driver can repeat: the given releases and gentler versions of each (a lower peak, a
 * release that ends earlier), each from its latest brake point and from points before it.
 */
public final class SensibleRelease {

    /** Shares of a release's peak that are tried. */
    private static final double[] PEAKS = {1, 0.9, 0.8};

    /** Shares of the length of a release that are tried, from its start on. */
    private static final double[] LENGTHS = {1, 0.7};

    /** How much before the latest brake point the foot comes down, in standard deviations of all that shifts it. */
    private static final double[] SET_BACKS = {0, 1, 2, 3.5, 5};

    /** Least set-back step, m, for a driver who hardly scatters at all. */
    private static final double LEAST_STEP = 0.25;

    private SensibleRelease() {}

    /** One release and how far before its latest point the foot comes down, m. */
    private record Candidate(BrakePlan release, double step) {}

    /**
     * Drives the plans.
     *
     * @param risks driver and number of entries for each plan
     * @param releases releases to start from, such as the best one and the best of each simple shape
     * @param sweep on how many threads, and who watches the progress
     */
    public static Choice among(RiskStudy risks, List<BrakePlan> releases, Sweep sweep) {
        Objects.requireNonNull(risks, "risks");
        Objects.requireNonNull(releases, "releases");
        Objects.requireNonNull(sweep, "sweep");
        List<Candidate> candidates = new ArrayList<>();
        for (BrakePlan plan : releases) {
            for (double peak : PEAKS) {
                for (double length : LENGTHS) {
                    candidates.add(new Candidate(gentler(plan, peak, length), step(risks, plan)));
                }
            }
        }
        List<Optional<List<Risk>>> driven = sweep.run(candidates, candidate -> driven(risks, candidate));
        return new Choice(
                driven.stream().flatMap(Optional::stream).flatMap(List::stream).toList(),
                driven.stream().allMatch(Optional::isPresent));
    }

    private static BrakePlan gentler(BrakePlan plan, double peak, double length) {
        Release release = plan.release();
        double end = release.start() + length * (release.end() - release.start());
        return plan.withPeakDeceleration(plan.peakDeceleration() * peak)
                .with(new Release(release.shape(), release.start(), end));
    }

    /** One standard deviation of the braking distance, m: brake point, peak and grip together. */
    private static double step(RiskStudy risks, BrakePlan plan) {
        Scatter scatter = risks.scatter();
        double distance = Math.max(0, plan.release().start() - plan.brakePoint());
        double square = scatter.brakePoint() * scatter.brakePoint()
                + Math.pow(scatter.peak() * distance, 2)
                + Math.pow(scatter.grip() * distance, 2);
        return Math.max(LEAST_STEP, Math.sqrt(square));
    }

    private static List<Risk> driven(RiskStudy risks, Candidate candidate) {
        Trial latest = risks.study().search().latest(candidate.release().braking());
        if (!latest.met()) {
            return List.of();
        }
        List<Risk> driven = new ArrayList<>();
        double start = risks.study().simulator().corner().path().start();
        for (double back : SET_BACKS) {
            double point = latest.point() - back * candidate.step();
            if (point <= start) {
                break; // Nobody brakes before the line begins.
            }
            Risk risk = risks.of(candidate.release().withBrakePoint(point));
            driven.add(risk);
            if (risk.failed().count() == 0) {
                break; // Still earlier only costs time.
            }
        }
        return driven;
    }
}
