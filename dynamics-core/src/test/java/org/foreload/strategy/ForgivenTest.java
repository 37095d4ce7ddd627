package org.foreload.strategy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.entry.Outcome;
import org.junit.jupiter.api.Test;

/** What plans have in hand against slips driven one by one. */
class ForgivenTest {

    private static final EntrySimulator SIMULATOR = ShortStudies.BARE.simulator();

    /** The steps in which it is looked for, m, from none at all. */
    private static final double[] STEPS = {0, 0.25, 0.5, 0.75, 1, 1.5, 2, 3, 4, 6, 8, 12, 16};

    private static boolean forgiven(BrakePlan plan) {
        EntryResult entry = SIMULATOR.probe(plan);
        return entry.made() || entry.outcome() == Outcome.STOPPED;
    }

    private static boolean forgives(BrakePlan plan, double metres) {
        Braking braking = plan.braking();
        return forgiven(braking.withReleaseLater(metres).from(plan.brakePoint()))
                && forgiven(braking.from(plan.brakePoint() + metres))
                && forgiven(plan.withPeakDeceleration(plan.peakDeceleration() * (1 + 0.025 * metres)));
    }

    /** From a plan that forgives nothing to one that forgives all that is looked for. */
    private static List<BrakePlan> plans() {
        List<BrakePlan> plans = new ArrayList<>();
        for (double point : new double[] {-44.5, -47, -50.5, -55, -60}) {
            plans.add(ShortStudies.braking(0.7, ReleaseShapes.LINEAR, 0, 20).from(point));
        }
        plans.add(ShortStudies.braking(0.9, ReleaseShapes.HELD, 0, 20).from(-47.9));
        plans.add(ShortStudies.braking(0.3, ReleaseShapes.LINEAR, -30, 30).from(-89.2));
        plans.add(ShortStudies.braking(0.5, ReleaseShapes.HELD, -30, 30).from(-66));
        return plans;
    }

    /** The largest of the steps such that this one and all smaller ones are forgiven. */
    @Test
    void inHandIsTheLargestErrorThatIsForgiven() {
        double least = InHand.MOST;
        double most = 0;
        for (BrakePlan plan : plans()) {
            int forgiven = 0;
            while (forgiven + 1 < STEPS.length && forgives(plan, STEPS[forgiven + 1])) {
                forgiven++;
            }
            double inHand = InHand.of(SIMULATOR, plan);
            assertEquals(STEPS[forgiven], inHand, plan.toString());
            least = Math.min(least, inHand);
            most = Math.max(most, inHand);
        }
        assertEquals(0, least);
        assertEquals(InHand.MOST, most);
    }

    /** A plan beats an amount if it has more in hand, and none beats the most that is looked for. */
    @Test
    void whoHasMoreInHandBeatsIt() {
        for (BrakePlan plan : plans()) {
            double inHand = InHand.of(SIMULATOR, plan);
            for (double other : new double[] {0, 0.25, 0.3, 1, 4, 5.9, 6, 12, 15.9, 16}) {
                assertEquals(inHand > largestUpTo(other), InHand.beats(SIMULATOR, plan, other), plan + " " + other);
            }
        }
    }

    private static double largestUpTo(double metres) {
        double largest = 0;
        for (double step : STEPS) {
            largest = step <= metres ? step : largest;
        }
        return largest;
    }

    /** Each slip by itself must be forgiven: one that is not decides. */
    @Test
    void everySlipMustBeForgiven() {
        int decided = 0;
        for (BrakePlan plan : plans()) {
            for (double metres : new double[] {1, 4, 8}) {
                int forgiven = 0;
                for (Slip slip : Slip.values()) {
                    forgiven += slip.forgiven(SIMULATOR, plan, metres) ? 1 : 0;
                    assertEquals(
                            slip.forgiven(SIMULATOR, plan, metres),
                            forgiven(slip.of(plan, metres)),
                            slip + " of " + metres);
                }
                assertEquals(forgiven == 3, InHand.forgives(SIMULATOR, plan, metres));
                decided += forgiven == 1 || forgiven == 2 ? 1 : 0;
            }
        }
        assertTrue(decided > 0, "all slips alike, and nothing was tried");
    }

    /** A slip that is forgiven leaves the edge and the brake; one that is not is beyond all. */
    @Test
    void aSlipIsHeldAgainstTheEdge() {
        BrakePlan plan = plans().get(2);
        Trial kept = Slip.LATE_BRAKE.trial(SIMULATOR, plan, 2);
        assertEquals(plan.brakePoint(), kept.point());
        assertEquals(
                -SIMULATOR
                        .probe(plan.withBrakePoint(plan.brakePoint() + 2))
                        .margins()
                        .edge(),
                kept.excess().edge());
        assertTrue(kept.met());
        Trial wide = Slip.LATE_BRAKE.trial(SIMULATOR, plan, 15);
        assertFalse(wide.made());
        assertEquals(Excess.NOT_MADE, wide.excess());
    }
}
