package org.foreload.balance;

import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.entry.EntryResult;
import org.foreload.strategy.CornerStudy;

/**
 * Searches the latest brake point that is more than luck: a driver who is a little early makes the corner from there
 * too. Quicker than a search without a guess: it starts near where a known entry says, of equal braking work.
 */
final class SolidBrakePoint {

    /** Distances, m, by which a driver may be early. */
    private static final double[] EARLIER = {1, 3};

    /** Step of the scan, m. */
    private static final double STEP = 3;

    /** Distance, m, past the guess at which the scan starts. */
    private static final double BEYOND = 9;

    /** Length of the scan, m: what is lost by braking so much too early makes a release no candidate. */
    private static final double LONGEST = 60;

    /** Width, m, to which the brake point is narrowed: some milliseconds. */
    private static final double ACCURACY = 0.06;

    /** Step back, m, from a brake point that does not hold at full accuracy. */
    private static final double CONFIRMING_STEP = 0.3;

    private static final int PARTS = 50;

    private final CornerStudy study;

    SolidBrakePoint(CornerStudy study) {
        this.study = study;
    }

    /**
     * The entry from that brake point, with profile; empty if there is none.
     *
     * @param plan the release; its brake point does not matter
     * @param known a plan that makes this corner with much the same car
     */
    Optional<EntryResult> find(BrakePlan plan, BrakePlan known) {
        double latest = plan.release().end();
        double guess = guess(plan, known);
        double start = Math.min(latest, guess + BEYOND);
        while (start < latest && made(plan, start)) {
            start = Math.min(latest, start + BEYOND);
        }
        double earliest =
                Math.max(guess - LONGEST, study.simulator().corner().path().start());
        for (double point = start; point > earliest; point -= STEP) {
            if (holds(plan, point)) {
                Optional<EntryResult> entry = confirmed(plan, narrowed(plan, point, point + STEP), point);
                if (entry.isPresent()) {
                    return entry;
                }
            }
        }
        return Optional.empty();
    }

    /** A search looks at quick, coarser runs; the answer must hold at full accuracy, if need be a little earlier. */
    private Optional<EntryResult> confirmed(BrakePlan plan, double from, double least) {
        for (double at = from; at >= least - CONFIRMING_STEP; at -= CONFIRMING_STEP) {
            EntryResult entry = study.simulator().run(plan.withBrakePoint(at));
            if (study.allowance().met(entry)) {
                return Optional.of(entry);
            }
        }
        return Optional.empty();
    }

    private double narrowed(BrakePlan plan, double made, double failing) {
        double low = made;
        double high = Math.min(failing, plan.release().end());
        while (high - low > ACCURACY) {
            double middle = (low + high) / 2;
            if (made(plan, middle)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private boolean holds(BrakePlan plan, double point) {
        boolean holds = made(plan, point);
        for (double earlier : EARLIER) {
            holds = holds && made(plan, point - earlier);
        }
        return holds;
    }

    /** Whether the corner is made with the margin asked for; only a run with profile knows more than the drift. */
    private boolean made(BrakePlan plan, double point) {
        return study.allowance().met(study.simulator().probe(plan.withBrakePoint(point)));
    }

    /** Brake point of equal work: peak times distance, less what the build-up and the release leave out. */
    private double guess(BrakePlan plan, BrakePlan known) {
        double speed = study.simulator().corner().approachSpeed();
        double work = known.peakDeceleration()
                * (known.release().start()
                        + released(known.release())
                        - known.brakePoint()
                        - speed * known.buildUpTime() / 2);
        return plan.release().start()
                + released(plan.release())
                - speed * plan.buildUpTime() / 2
                - work / plan.peakDeceleration();
    }

    private static double released(Release release) {
        double length = release.end() - release.start();
        double sum = 0;
        for (int i = 0; i < PARTS; i++) {
            sum += release.remaining(release.start() + (i + 0.5) / PARTS * length);
        }
        return sum * length / PARTS;
    }
}
