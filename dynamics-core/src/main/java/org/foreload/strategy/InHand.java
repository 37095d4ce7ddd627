package org.foreload.strategy;

import java.util.Objects;
import org.foreload.braking.BrakePlan;
import org.foreload.conventions.Checks;
import org.foreload.entry.EntrySimulator;

/**
 * How much a plan forgives: the largest error with which the car still makes the corner, taking the least of three that
 * people make, with no margin left. A foot that comes down so much later; a release that comes so much later; a peak
 * that is harder by {@value #HARDER_PER_METRE} of itself for each metre, since who is late is likely to be hard. What
 * counts as much as a metre is invented for want of a source.
 *
 * <p>An error by which the car would stop before the corner is forgiven: its driver sees it coming, lets go of the
 * brake, and loses time.
 */
public final class InHand {

    /** Errors that are tried, m: about as finely as a driver could feel them. */
    private static final double[] ERRORS = {0.25, 0.5, 0.75, 1, 1.5, 2, 3, 4, 6, 8, 12, 16};

    /** Most that is looked for, m. */
    public static final double MOST = 16;

    /** Relative error of the peak that goes with an error of a metre. */
    public static final double HARDER_PER_METRE = 0.025;

    private InHand() {}

    /** Metres in hand of a plan, 0 to {@link #MOST}, in the steps in which it is looked for. */
    public static double of(EntrySimulator simulator, BrakePlan plan) {
        Objects.requireNonNull(simulator, "simulator");
        Objects.requireNonNull(plan, "plan");
        int forgiven = ERRORS.length;
        for (Slip slip : Slip.values()) {
            forgiven = forgiven(simulator, plan, slip, forgiven);
        }
        return forgiven == 0 ? 0 : ERRORS[forgiven - 1];
    }

    /** Whether a plan has so much in hand that it beats another amount: it forgives the next larger error. */
    static boolean beats(EntrySimulator simulator, BrakePlan plan, double metres) {
        int next = 0;
        while (next < ERRORS.length && ERRORS[next] <= metres) {
            next++;
        }
        return next < ERRORS.length && forgives(simulator, plan, ERRORS[next]);
    }

    /**
     * Whether a plan forgives each of the three errors: three entries at most, where {@link #of} drives a dozen.
     *
     * @param error m; a plan forgives an error of 0, whatever comes of it
     */
    public static boolean forgives(EntrySimulator simulator, BrakePlan plan, double error) {
        Objects.requireNonNull(simulator, "simulator");
        Objects.requireNonNull(plan, "plan");
        Checks.notNegative("error", error);
        if (error == 0) {
            return true;
        }
        for (Slip slip : Slip.values()) {
            if (!slip.forgiven(simulator, plan, error)) {
                return false;
            }
        }
        return true;
    }

    /** How many of the errors, the smallest first, a slip forgives, of so many at most. */
    private static int forgiven(EntrySimulator simulator, BrakePlan plan, Slip slip, int most) {
        int low = 0;
        int high = most + 1;
        while (high - low > 1) {
            // The most is tried first: what the other slips have left is often forgiven.
            int middle = high == most + 1 ? most : (low + high) / 2;
            if (slip.forgiven(simulator, plan, ERRORS[middle - 1])) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
