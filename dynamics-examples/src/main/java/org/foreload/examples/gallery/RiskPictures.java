package org.foreload.examples.gallery;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.Outcome;
import org.foreload.examples.answer.StepsAnswer;
import org.foreload.examples.answer.Units;
import org.foreload.examples.answer.Words;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.BarChart;
import org.foreload.examples.picture.BarChart.Bar;
import org.foreload.examples.picture.ChartStack;
import org.foreload.examples.picture.Panel;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.Style.Dash;
import org.foreload.examples.picture.Style.Ink;
import org.foreload.examples.picture.Style.Marker;
import org.foreload.examples.picture.XyChart;
import org.foreload.risk.Choice;
import org.foreload.risk.PracticeSteps;
import org.foreload.risk.PracticeSteps.Step;
import org.foreload.risk.Risk;
import org.foreload.strategy.CornerStudy;

/** How often it goes wrong for a driver who scatters, and how to get there step by step. */
public final class RiskPictures {

    private static final double PERCENT = 100;

    private RiskPictures() {}

    /**
     * How entries end, with intervals, and the quickest plan at each risk.
     *
     * @param choice plans weighed, if there are any
     * @param accepted failure probability that the driver accepts
     * @param handed what goes with the plan, in sentences
     */
    public static Picture of(CornerStudy study, Risk risk, Optional<Choice> choice, double accepted, String handed) {
        List<Panel> panels = new ArrayList<>(List.of(endings(risk)));
        String words = Say.of(
                "%d of %d entries fail: %.1f %%, between %.1f and %.1f %% with 95 %% confidence (thin lines). Those that made "
                        + "it took %.2f s on average.",
                risk.failed().count(),
                risk.failed().of(),
                PERCENT * risk.failed().value(),
                PERCENT * risk.failed().low(),
                PERCENT * risk.failed().high(),
                risk.meanTime());
        words += " " + handed;
        if (choice.isPresent() && !choice.get().curve().isEmpty()) {
            panels.add(curve(choice.get(), accepted));
            words += choice.get()
                    .quickest(accepted)
                    .map(one -> Say.of(
                            " The quickest plan with at most %.1f %% failures takes %.3f s on average and fails in %.1f %%: "
                                    + "%s.",
                            PERCENT * accepted,
                            one.meanTime(),
                            PERCENT * one.failed().value(),
                            Say.plan(one.plan())))
                    .orElse(Say.of(" No plan keeps failures within %.1f %%.", PERCENT * accepted));
        }
        return Picture.of("How often a release fails: " + Say.where(study), words, panels.toArray(Panel[]::new));
    }

    private static BarChart endings(Risk risk) {
        List<Bar> bars = new ArrayList<>();
        for (Outcome outcome : Outcome.values()) {
            var share = risk.of(outcome);
            bars.add(new Bar(
                    outcome.words(),
                    PERCENT * share.value(),
                    PERCENT * share.low(),
                    PERCENT * share.high(),
                    Say.of("%.1f %%", PERCENT * share.value()),
                    outcome == Outcome.MADE_IT ? Ink.BLUE : Ink.VERMILION));
        }
        return new BarChart("How entries end", Axis.of("share of entries", "%").between(0, 100), bars);
    }

    /** Room for the marks at no failure, as a share of the axis. */
    private static final double LEFT_OF_NOUGHT = 0.02;

    private static XyChart curve(Choice choice, double accepted) {
        List<Risk> curve = choice.curve();
        List<Risk> beaten = choice.tried().stream()
                .filter(risk -> !curve.contains(risk) && !Double.isNaN(risk.meanTime()))
                .toList();
        double most =
                curve.stream().mapToDouble(risk -> risk.failed().high()).max().orElse(0);
        double far = PERCENT * Math.max(most, accepted) * 1.05;
        XyChart chart = XyChart.of(
                        Axis.of("failure probability", "%").between(-LEFT_OF_NOUGHT * far, far),
                        Axis.of("mean time of entries that made it", "s"))
                .heading("The quickest plan at each risk");
        List<Risk> shown = beaten.stream()
                .filter(risk -> risk.failed().value() <= Math.max(most, accepted) * 1.05)
                .toList();
        chart = chart.line(
                "slower at the same risk", chances(shown), times(shown), Style.points(Ink.GREY, Marker.RING));
        for (Risk risk : curve) {
            chart = chart.line(
                    "",
                    new double[] {
                        PERCENT * risk.failed().low(), PERCENT * risk.failed().high()
                    },
                    new double[] {risk.meanTime(), risk.meanTime()},
                    new Style(Ink.BLACK, Dash.THIN, Marker.BAR));
        }
        return chart.line(
                        "quickest at this risk, with 95 % interval",
                        chances(curve), times(curve), Style.FIRST.with(Marker.DISC))
                .markX(PERCENT * accepted, "accepted");
    }

    private static double[] chances(List<Risk> risks) {
        return risks.stream()
                .mapToDouble(risk -> PERCENT * risk.failed().value())
                .toArray();
    }

    private static double[] times(List<Risk> risks) {
        return risks.stream().mapToDouble(Risk::meanTime).toArray();
    }

    /** A practice plan: where the brake goes on and off in each step, what it gains, what it risks. */
    public static Picture steps(CornerStudy study, PracticeSteps plan, double accepted) {
        List<Step> steps = plan.steps();
        Axis step = Axis.of("step, 0 is what the driver does now", "–")
                .between(-0.5, Math.max(1.5, steps.size() - 0.5))
                .counted();
        BrakePlan now = steps.get(0).risk().plan();
        XyChart places = XyChart.of(step, Axis.of("moved along the line, later is up", "m"))
                .line(
                        "brake point",
                        numbers(steps),
                        of(steps, s -> s.risk().plan().brakePoint() - now.brakePoint()),
                        Marks.joined(Marks.BRAKE_POINT, Dash.SOLID))
                .line(
                        "release point",
                        numbers(steps),
                        of(steps, s -> Words.eases(s.risk().plan()) - Words.eases(now)),
                        Marks.joined(Marks.RELEASE_POINT, Dash.DOTTED))
                .line(
                        "brake off",
                        numbers(steps),
                        of(
                                steps,
                                s -> s.risk().plan().release().end()
                                        - now.release().end()),
                        Marks.joined(Marks.BRAKE_OFF, Dash.DASHED))
                .markY(0, "")
                .tall(230);
        XyChart peaks = XyChart.of(step, Axis.of("peak", "m/s²"))
                .line(
                        "",
                        numbers(steps),
                        of(steps, s -> s.risk().plan().peakDeceleration()),
                        Style.FIRST.with(Marker.DISC))
                .tall(130);
        XyChart times = XyChart.of(step, Axis.of("mean time", "s"))
                .line("", numbers(steps), of(steps, s -> s.risk().meanTime()), Style.FIRST.with(Marker.DISC))
                .tall(150);
        XyChart failures = XyChart.of(step, Axis.of("failures", "%"))
                .line(
                        "counted, with 95 % interval",
                        numbers(steps),
                        of(steps, s -> PERCENT * s.risk().failed().value()),
                        Style.FIRST.with(Marker.DISC))
                .markY(PERCENT * accepted, "accepted")
                .tall(200);
        for (int i = 0; i < steps.size(); i++) {
            var failed = steps.get(i).risk().failed();
            failures = failures.line(
                    "",
                    new double[] {i, i},
                    new double[] {PERCENT * failed.low(), PERCENT * failed.high()},
                    new Style(Ink.BLACK, Dash.THIN, Marker.NONE));
        }
        Step last = steps.get(steps.size() - 1);
        String words = steps.size() == 1
                ? Say.of(
                        "Every step from what the driver does now fails more often than the %.1f %% accepted. Now: %s.",
                        PERCENT * accepted, Say.plan(last.risk().plan()))
                : Say.of(
                        "%d %s %.0f %% of the way and %s %.2f s. Now: %s. " + "After the last: %s. %s",
                        steps.size() - 1,
                        steps.size() == 2 ? "step goes" : "steps go",
                        PERCENT * plan.reached(),
                        steps.size() == 2 ? "gains" : "gain",
                        steps.get(0).risk().meanTime() - last.risk().meanTime(),
                        Words.brake(now, Units.KMH),
                        Words.brake(last.risk().plan(), Units.KMH),
                        StepsAnswer.tooLate(last, false));
        return Picture.of(
                "Practice in steps: " + Say.where(study), words, ChartStack.of(places, peaks, times, failures));
    }

    private static double[] numbers(List<Step> steps) {
        double[] numbers = new double[steps.size()];
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = i;
        }
        return numbers;
    }

    private static double[] of(List<Step> steps, ToDoubleFunction<Step> read) {
        return steps.stream().mapToDouble(read).toArray();
    }
}
