package org.foreload.strategy;

import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;

/**
 * The latest brake point from which a release still makes the corner with the margin asked for.
 *
 * <p>Making it is not monotone in the brake point, so the stations are scanned from late to early, and the first change
 * from failing to making it is the one that is narrowed down. A brake point earlier than that one is never the answer.
 */
public final class LatestBrakePoint {

    /** Distance between scanned stations, m: shorter than any window of brake points that makes a corner. */
    private static final double SCAN_STEP = 4;

    /** Steps by which the scan starts later than the estimate. */
    private static final int STEPS_BEYOND = 4;

    /** The answer is no further than this, m, from the true change: well under a millisecond. */
    private static final double ACCURACY = 0.02;

    /** Narrowness, m, to which the station where the car no longer makes the corner at all is known. */
    private static final double HAND_ACCURACY = 0.25;

    private final EntrySimulator simulator;
    private final Allowance allowance;

    /** Searches with this simulator for this margin. */
    public LatestBrakePoint(EntrySimulator simulator, Allowance allowance) {
        this.simulator = simulator;
        this.allowance = allowance;
    }

    /**
     * What the search found.
     *
     * @param entry the entry from the latest brake point; if there is none, the attempt that came closest
     * @param found whether a brake point makes the corner with the margin asked for
     * @param inHand how much later, m, the foot could come down before the car does not make the corner at all; NaN if
     *     not found
     */
    public record Finding(EntryResult entry, boolean found, double inHand) {}

    /**
     * Searches for one release; the brake point of {@code plan} does not matter.
     *
     * @param plan peak, build-up time and release
     */
    public Finding find(BrakePlan plan) {
        double earliest = simulator.corner().path().start();
        double latest = plan.release().end();
        double guess = Math.min(latest, estimate(plan) + STEPS_BEYOND * SCAN_STEP);
        EntryResult failed = null;
        double firstOff = Double.NaN;
        double later = Double.NaN;
        for (double point = Math.max(guess, earliest + SCAN_STEP); point > earliest; point -= SCAN_STEP) {
            EntryResult attempt = attempt(plan, point);
            if (allowance.met(attempt)) {
                if (Double.isNaN(later) && point < latest) {
                    // The estimate was too early: go later until it fails or the brake is no longer used.
                    return climb(plan, point, latest);
                }
                return narrowed(plan, point, later, firstOff);
            }
            if (!attempt.made()) {
                firstOff = point;
            }
            later = point;
            if (failed == null || better(attempt, failed)) {
                failed = attempt;
            }
            if (tooSlow(attempt)) {
                break;
            }
        }
        EntryResult closest = failed == null ? attempt(plan, earliest) : failed;
        return new Finding(simulator.run(closest.plan()), false, Double.NaN);
    }

    private Finding climb(BrakePlan plan, double from, double latest) {
        double made = from;
        for (double point = from + SCAN_STEP; ; point += SCAN_STEP) {
            double next = Math.min(point, latest);
            EntryResult attempt = attempt(plan, next);
            if (!allowance.met(attempt)) {
                return narrowed(plan, made, next, attempt.made() ? Double.NaN : next);
            }
            made = next;
            if (next >= latest) {
                return new Finding(simulator.run(plan.withBrakePoint(made)), true, 0);
            }
        }
    }

    private Finding narrowed(BrakePlan plan, double made, double failing, double firstOff) {
        double low = made;
        double high = failing;
        if (!Double.isNaN(high)) {
            while (high - low > ACCURACY) {
                double middle = (low + high) / 2;
                if (allowance.met(attempt(plan, middle))) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
        }
        return new Finding(simulator.run(plan.withBrakePoint(low)), true, offTrack(plan, low, firstOff) - low);
    }

    /** Station from which the car no longer makes the corner at all. */
    private double offTrack(BrakePlan plan, double made, double firstOff) {
        double low = made;
        double high = firstOff;
        while (Double.isNaN(high)) {
            double next = low + SCAN_STEP;
            if (next >= plan.release().end()) {
                return next;
            }
            if (attempt(plan, next).made()) {
                low = next;
            } else {
                high = next;
            }
        }
        while (high - low > HAND_ACCURACY) {
            double middle = (low + high) / 2;
            if (attempt(plan, middle).made()) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private EntryResult attempt(BrakePlan plan, double brakePoint) {
        BrakePlan moved = plan.withBrakePoint(brakePoint);
        return allowance.onlyDrift() ? simulator.probe(moved) : simulator.run(moved);
    }

    /** Of two attempts that fall short, the one that got further; between equals, the one that drifted less. */
    private static boolean better(EntryResult a, EntryResult b) {
        if (a.made() != b.made()) {
            return a.made();
        }
        return a.farthestOffset() < b.farthestOffset();
    }

    /** Braking still earlier only stops the car before the corner. */
    private static boolean tooSlow(EntryResult attempt) {
        return attempt.event(org.foreload.entry.EntryEvent.Kind.STOPPED).isPresent();
    }

    /**
     * Brake point, m, from which a car of constant brake force would come out of the release at the speed that the exit
     * plan opens with: where the scan starts.
     */
    private double estimate(BrakePlan plan) {
        double target = simulator.exit().speed(simulator.exit().opening());
        double before = simulator.corner().approachSpeed();
        double peak = plan.peakDeceleration();
        double released = 0;
        int parts = 50;
        double length = plan.release().end() - plan.release().start();
        for (int i = 0; i < parts; i++) {
            released += plan.release().remaining(plan.release().start() + (i + 0.5) / parts * length) * length / parts;
        }
        double needed = (before * before - target * target) / (2 * peak);
        return plan.release().start() - (needed - released) - before * plan.buildUpTime() / 2;
    }
}
