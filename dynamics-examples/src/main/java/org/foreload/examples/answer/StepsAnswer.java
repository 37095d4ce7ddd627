package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.List;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.risk.PracticeSteps;
import org.foreload.risk.PracticeSteps.Step;
import org.foreload.risk.Scatter;
import org.foreload.strategy.CornerStudy;

/** A practice plan as a report. */
public final class StepsAnswer {

    /** What the core says where nothing goes wrong. */
    private static final String NO_TELL_TALE = "none";

    private StepsAnswer() {}

    /** The report of a plan for this driver, with the failure probability that was accepted. */
    public static Report of(CornerStudy study, Scatter scatter, PracticeSteps plan, double accepted) {
        Report report = new Report(EntryAnswer.title(study))
                .with("reached", plan.reached())
                .with("accepted", accepted)
                .with("driver", scatter.name())
                .with("steps", "Step by step, the first is what the driver does now", rows(plan.steps()));
        for (int i = 1; i < plan.steps().size(); i++) {
            report = report.note(words(i, plan.steps()));
        }
        if (plan.reached() < 1) {
            report = report.headline(shortOf(scatter, plan, accepted));
        }
        return report.note(CAUTION);
    }

    /** What stands below every practice plan. */
    public static final String CAUTION =
            "The drivers are invented. Practise on a closed track with someone qualified beside you.";

    /** Says that a plan ends short of its target, and why. */
    public static String shortOf(Scatter scatter, PracticeSteps plan, double accepted) {
        return "The plan goes " + Words.percent(plan.reached())
                + " of the way to the best release: beyond that, a driver who scatters as much (" + scatter.name()
                + ") fails more often than " + Words.percent(accepted) + ". A steadier foot comes first.";
    }

    private static List<Report> rows(List<Step> steps) {
        List<Report> rows = new ArrayList<>();
        for (Step step : steps) {
            var plan = step.risk().plan();
            rows.add(new Report()
                    .with("brake_point_m", plan.brakePoint())
                    .with("release_end_m", plan.release().end())
                    .with("gain_s", step.gain())
                    .with("failure_probability", step.risk().failed().value())
                    .with("goes_first", step.goesFirst())
                    .with("tell_tale", step.tellTale())
                    .with("later_m", step.later())
                    .with("further_m", step.further())
                    .with("peak_mps2", plan.peakDeceleration())
                    .with("mean_time_s", step.risk().meanTime()));
        }
        return rows;
    }

    /**
     * One step in words. What is felt is left out where it is the same as in the step before.
     *
     * @param number 1 for the first that the driver does not do yet
     * @param steps all of them
     */
    public static String words(int number, List<Step> steps) {
        Step step = steps.get(number);
        boolean told = step.tellTale().equals(NO_TELL_TALE)
                || number > 1 && step.tellTale().equals(steps.get(number - 1).tellTale());
        return "Step " + number + ": brake " + shift(step.later(), "later", "earlier") + ", "
                + carry(step.further()) + "; " + change(step.gain()) + ". Too late: "
                + step.goesFirst() + (told ? "." : "; look for this: " + step.tellTale() + ".");
    }

    private static String carry(double further) {
        return Math.abs(further) < SHOWN
                ? "carry the brake as far as before"
                : "carry the brake " + shift(further, "further", "less far");
    }

    /** Least distance, m, that the one decimal shows. */
    private static final double SHOWN = 0.05;

    private static String shift(double metres, String more, String less) {
        return Numbers.rounded(Math.abs(metres), 1) + " m " + (metres >= 0 ? more : less);
    }

    private static String change(double gain) {
        return Numbers.rounded(Math.abs(gain), 3) + " s " + (gain >= 0 ? "gained" : "lost");
    }
}
