package org.foreload.examples.answer;

import java.util.Locale;
import org.foreload.advice.Advice;
import org.foreload.advice.Likeness;
import org.foreload.advice.Step;
import org.foreload.braking.BrakePlan;
import org.foreload.examples.output.Numbers;

/** Advice in words that a driver can use at the next braking point. */
final class AdviceWords {

    private AdviceWords() {}

    /** One sentence for one change; for two, what to do first, and what then. */
    static String sentence(Advice advice, Likeness likeness) {
        BrakePlan before = likeness.plan();
        Step first = advice.steps().get(0);
        String gain = "about " + Numbers.rounded(advice.gain().value(), 2) + " s quicker";
        if (!advice.combined()) {
            return deed(first, before, advice.plan()) + ": " + gain + ".";
        }
        BrakePlan between = first.made(before).orElseThrow();
        return "Two changes, one at a time. First: " + lower(deed(first, before, between))
                + ". Once that is second nature, also: "
                + lower(deed(advice.steps().get(1), between, advice.plan()))
                + ". Both together: " + gain + ".";
    }

    private static String lower(String sentence) {
        return sentence.substring(0, 1).toLowerCase(Locale.ROOT) + sentence.substring(1);
    }

    /** What to do otherwise: one step from a plan to the next. */
    private static String deed(Step step, BrakePlan before, BrakePlan plan) {
        String metres = Numbers.rounded(Math.abs(step.amount()), 0) + " m";
        String way = step.amount() > 0 ? " later" : " earlier";
        return switch (step.change()) {
            case BRAKE_POINT ->
                "Brake " + metres + way + ", " + Words.brakeBoard(plan.brakePoint())
                        + ", just as hard, with release point and brake off as now";
            case BRAKING ->
                "Do all of the braking " + metres + way + " (brake point "
                        + Words.brakeBoard(plan.brakePoint()) + ", release point "
                        + Words.board(plan.release().start()) + ", brake off "
                        + Words.board(plan.release().end()) + "), just as hard";
            case LATER_AND_HARDER ->
                "Brake " + metres + way + ", " + Words.brakeBoard(plan.brakePoint()) + ", and "
                        + percent(before, plan)
                        + " harder, down to the same speed at brake off, with release point and brake off as now";
            case PEAK ->
                "Brake " + percent(before, plan) + " " + (step.amount() > 0 ? "harder" : "less hard")
                        + " from the same place";
            case RELEASE_POINT ->
                "Start to ease " + metres + way + " (release point "
                        + Words.board(plan.release().start()) + "), with brake off as now";
            case BRAKE_OFF ->
                "Be off the brake " + metres + way + " (brake off "
                        + Words.board(plan.release().end()) + "), with the release point as now";
            case SHAPE ->
                "Between the same release point and brake off, ease "
                        + manner(plan.release().shape().name());
            case PICK_UP ->
                "Pick up the throttle " + metres + way + " (pick-up " + Words.board(plan.drivenFrom()) + ")";
        };
    }

    private static String percent(BrakePlan before, BrakePlan plan) {
        return Numbers.rounded(Math.abs(100 * (plan.peakDeceleration() / before.peakDeceleration() - 1)), 0) + " %";
    }

    private static String manner(String shape) {
        return switch (shape) {
            case "linear" -> "evenly";
            case "progressive" -> "quickly at first, then ever more slowly";
            case "held" -> "slowly at first, then ever more quickly";
            case "circle" -> "hardly at first, and quickly at the end";
            case "smooth" -> "softly at both ends";
            case "two-stage" -> "at once to less than half, hold that, then off";
            default -> "in the shape " + shape;
        };
    }
}
