package org.foreload.examples.answer;

import java.util.List;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.Outcome;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.risk.Choice;
import org.foreload.risk.Risk;
import org.foreload.risk.Scatter;
import org.foreload.strategy.CornerStudy;

/** The risk of a release as a report. */
public final class RiskAnswer {

    private RiskAnswer() {}

    /**
     * The report.
     *
     * @param study car, corner and driver
     * @param scatter of the driver
     * @param risk of the release that was judged
     * @param choice other releases weighed, if that was asked for
     * @param cost of a failure, s
     * @param accepted failure probability that the driver accepts
     * @param handover of the plan
     * @param marginCost time that the margin costs, s; NaN if the plan was made without one
     * @param units of the sentences
     */
    public static Report of(
            CornerStudy study,
            Scatter scatter,
            Risk risk,
            Optional<Choice> choice,
            double cost,
            double accepted,
            Handover handover,
            double marginCost,
            Units units) {
        Report report = new Report(EntryAnswer.title(study))
                .headline(Words.sentence(scatter.name()) + " driver, with this plan: " + Words.brake(risk.plan(), units)
                        + ".")
                .headline(verdict(risk))
                .with("failure_probability", risk.failed().value())
                .with("low", risk.failed().low())
                .with("high", risk.failed().high())
                .with("ran_wide", risk.of(Outcome.RAN_WIDE).value())
                .with("spun", risk.of(Outcome.SPUN).value())
                .with("locked_up", risk.of(Outcome.LOCKED_UP).value())
                .with("stopped", risk.of(Outcome.STOPPED).value())
                .with("rolled_over", risk.of(Outcome.ROLLED_OVER).value())
                .with("mean_time_s", risk.meanTime())
                .with("time_deviation_s", risk.timeDeviation())
                .with("expected_time_s", risk.expectedTime(cost))
                .withCount("samples", risk.failed().of())
                .with("brake_point_m", risk.plan().brakePoint())
                .with("release", EntryAnswer.release(risk.plan()))
                .with("pick_up_m", handover.entry().pickUp())
                .with("in_hand_m", handover.inHand())
                .with("margins", EntryAnswer.margins(handover.entry()))
                .with("margin_cost_s", marginCost)
                .with("driver", scatter(scatter))
                .with("outcomes", "How it ends", outcomes(risk));
        report = handover.on(report, units);
        if (choice.isPresent()) {
            report = weighed(report, choice.get(), cost, accepted, units);
        }
        if (Double.isFinite(marginCost)) {
            report = report.note(Words.MARGIN_COST);
        }
        return report.note("The drivers are invented; the answer is only as good as the numbers for the scatter.");
    }

    private static String verdict(Risk risk) {
        int failed = risk.failed().count();
        return failed + " of " + risk.failed().of() + " entries fail: "
                + Words.percent(risk.failed().value()) + ", between "
                + Words.percent(risk.failed().low()) + " and "
                + Words.percent(risk.failed().high()) + " with 95 % confidence.";
    }

    private static Report scatter(Scatter scatter) {
        return new Report()
                .with("name", scatter.name())
                .with("brake_point_scatter_m", scatter.brakePoint())
                .with("peak_scatter", scatter.peak())
                .with("release_scatter_m", scatter.releaseTiming())
                .with("pedal_ripple", scatter.ripple())
                .with("grip_scatter", scatter.grip());
    }

    private static List<Report> outcomes(Risk risk) {
        return List.of(Outcome.values()).stream()
                .map(outcome -> new Report()
                        .with("outcome", outcome.words())
                        .with("probability", risk.of(outcome).value())
                        .with("low", risk.of(outcome).low())
                        .with("high", risk.of(outcome).high()))
                .toList();
    }

    private static Report weighed(Report report, Choice choice, double cost, double accepted, Units units) {
        Optional<Risk> sensible = choice.quickest(accepted);
        String words = sensible.map(risk -> "The quickest for this driver with at most " + Words.percent(accepted)
                        + " failures: " + Words.brake(risk.plan(), units) + "; " + Numbers.rounded(risk.meanTime(), 3)
                        + " s on average, " + Words.percent(risk.failed().value()) + " failures.")
                .orElse("No plan that was tried keeps failures within " + Words.percent(accepted) + ".");
        Report more = report.headline(words).with("complete", choice.complete());
        if (sensible.isPresent()) {
            more = more.with("sensible", plan(sensible.get(), cost));
        }
        if (choice.reckless().isPresent()) {
            more = more.with("reckless", plan(choice.reckless().get(), cost));
        }
        if (choice.cheapest(cost).isPresent()) {
            more = more.with("least_expected", plan(choice.cheapest(cost).get(), cost));
        }
        return more.with(
                "curve",
                "The quickest plan at each risk",
                choice.curve().stream().map(risk -> plan(risk, cost)).toList());
    }

    private static Report plan(Risk risk, double cost) {
        BrakePlan plan = risk.plan();
        return new Report()
                .with("failure_probability", risk.failed().value())
                .with("low", risk.failed().low())
                .with("high", risk.failed().high())
                .with("mean_time_s", risk.meanTime())
                .with("expected_time_s", risk.expectedTime(cost))
                .with("brake_m", plan.brakePoint())
                .with("peak_mps2", plan.peakDeceleration())
                .with("ease_off_m", plan.release().start())
                .with("off_m", plan.release().end())
                .with("shape", plan.release().shape().name());
    }
}
