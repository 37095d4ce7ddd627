package org.foreload.examples.answer;

import org.foreload.advice.Advice;
import org.foreload.advice.Likeness;
import org.foreload.braking.BrakePlan;
import org.foreload.examples.output.Numbers;

/** Advice in words that a driver can use at the next braking point. */
final class AdviceWords {

    private AdviceWords() {}

    /** One sentence. */
    static String sentence(Advice advice, Likeness likeness) {
        return deed(advice, likeness.plan()) + ": about "
                + Numbers.rounded(advice.gain().value(), 2) + " s quicker.";
    }

    private static String deed(Advice advice, BrakePlan before) {
        BrakePlan plan = advice.plan();
        String metres = Numbers.rounded(Math.abs(advice.amount()), 0) + " m";
        String way = advice.amount() > 0 ? " later" : " earlier";
        return switch (advice.change()) {
            case BRAKE_POINT ->
                "Brake " + metres + way + ", " + Words.brakeBoard(plan.brakePoint())
                        + ", just as hard, with release point and brake off as now";
            case PEAK ->
                "Brake " + Numbers.rounded(Math.abs(100 * (plan.peakDeceleration() / before.peakDeceleration() - 1)), 0)
                        + " % " + (advice.amount() > 0 ? "harder" : "less hard") + " from the same place";
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
