package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.foreload.braking.BrakePlan;
import org.foreload.examples.output.Numbers;
import org.foreload.risk.Aspect;
import org.foreload.risk.PracticeSteps.Step;
import org.foreload.risk.Scatter;

/**
 * What practice steps ask of a driver, in words. What over the whole way differs by less than the driver strays by is
 * not named: nobody would notice having done it. Differences are those of the places beside them, as both are printed.
 */
public final class StepChanges {

    /** Said below steps that change more than their words name. */
    static final String LEFT_OUT =
            "Not named: what changes from the first step to the last by less than this driver strays by.";

    /** Least change of the peak, m/s², that a foot can do on purpose: a hundredth of g. */
    private static final double LEAST_PEAK = 0.1;

    /** A peak as it is printed has two decimals. */
    private static final double PEAK_DIGITS = 100;

    private final List<Step> steps;
    private final BrakePlan now;
    private final BrakePlan last;
    private final Scatter scatter;
    private final Units units;
    private final boolean peak;
    private final boolean point;

    /**
     * Looks at a whole way.
     *
     * @param steps all of them; the first is what the driver does now
     */
    public StepChanges(List<Step> steps, Scatter scatter, Units units) {
        this.steps = List.copyOf(steps);
        this.now = steps.get(0).risk().plan();
        this.last = steps.get(steps.size() - 1).risk().plan();
        this.scatter = scatter;
        this.units = units;
        this.point = changes(steps, Aspect.BRAKE_POINT);
        // A foot that comes down inside the release presses less hard the later it does.
        this.peak = changes(steps, Aspect.PEAK)
                || steps.stream().anyMatch(step -> Words.intoRelease(step.risk().plan()));
    }

    private static boolean changes(List<Step> steps, Aspect aspect) {
        return steps.stream().anyMatch(step -> step.changed().contains(aspect));
    }

    /** The steps without those in which nothing changes that a driver could do on purpose. */
    public List<Step> drivable() {
        List<Step> drivable = new ArrayList<>();
        for (Step step : steps) {
            if (drivable.isEmpty()
                    || !between(drivable.get(drivable.size() - 1), step).isEmpty()) {
                drivable.add(step);
            }
        }
        return drivable;
    }

    /** What is done otherwise, a phrase each; empty where that is nothing a driver could do on purpose. */
    List<String> between(Step from, Step to) {
        return named(from.risk().plan(), to.risk().plan());
    }

    /** Whether a step does something otherwise that its words do not name. */
    boolean leavesOut() {
        return braked(now) && all(now, last).size() > named(now, last).size();
    }

    private List<String> named(BrakePlan before, BrakePlan plan) {
        if (!braked(before)) {
            // Nobody braked: there is nothing to move or to press harder.
            return List.of(Words.brake(plan, units));
        }
        boolean shape = !far(Words::eases) && !far(StepChanges::off);
        return phrases(before, plan, point, peak, shape || far(Words::eases), shape || far(StepChanges::off));
    }

    private List<String> all(BrakePlan before, BrakePlan plan) {
        return phrases(before, plan, true, true, true, true);
    }

    private static boolean braked(BrakePlan plan) {
        return plan.brakePoint() < plan.release().end();
    }

    /** Whether a place of the release moves farther over the whole way than the driver strays. */
    private boolean far(ToDoubleFunction<BrakePlan> place) {
        return Math.abs(place.applyAsDouble(last) - place.applyAsDouble(now)) >= scatter.releaseTiming();
    }

    private static double off(BrakePlan plan) {
        return plan.release().end();
    }

    private List<String> phrases(
            BrakePlan before, BrakePlan plan, boolean point, boolean peak, boolean eases, boolean off) {
        List<String> phrases = new ArrayList<>();
        if (point) {
            double brake = Math.floor(plan.brakePoint());
            moved(phrases, "brake", brake - Math.floor(before.brakePoint()), Words.board(brake));
        }
        double harder = (Math.rint(PEAK_DIGITS * Words.hardest(plan)) - Math.rint(PEAK_DIGITS * Words.hardest(before)))
                / PEAK_DIGITS;
        if (peak && Math.abs(harder) >= LEAST_PEAK) {
            phrases.add("press " + Numbers.rounded(Math.abs(harder), 2) + " m/s² "
                    + (harder > 0 ? "harder" : "less hard") + " ("
                    + Words.press(plan, units).replace(" (", ", ").replace(")", "") + ")");
        }
        if (eases && !Words.atOnce(plan)) {
            place(phrases, "release point", Words.eases(before), Words.eases(plan));
        } else if (eases && !Words.atOnce(before)) {
            phrases.add("release all at once");
        }
        if (off) {
            place(phrases, "brake off", off(before), off(plan));
        }
        return phrases;
    }

    private static void place(List<String> phrases, String what, double before, double now) {
        moved(phrases, what, Words.metre(now) - Words.metre(before), Words.board(now));
    }

    private static void moved(List<String> phrases, String what, double by, String to) {
        if (by != 0) {
            phrases.add(what + " " + Numbers.rounded(Math.abs(by), 0) + " m " + (by > 0 ? "later" : "earlier") + " ("
                    + to + ")");
        }
    }
}
