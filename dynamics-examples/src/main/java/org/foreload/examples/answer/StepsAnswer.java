package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntryResult;
import org.foreload.examples.output.Report;
import org.foreload.risk.Aspect;
import org.foreload.risk.PracticeSteps;
import org.foreload.risk.PracticeSteps.Alone;
import org.foreload.risk.PracticeSteps.Step;
import org.foreload.risk.Scatter;
import org.foreload.risk.TooLate;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.InHand;

/** A practice plan as a report. */
public final class StepsAnswer {

    /** What the core says where nothing goes wrong. */
    private static final String NO_TELL_TALE = "none";

    private StepsAnswer() {}

    /**
     * The report of a plan for this driver.
     *
     * @param target where its steps lead
     * @param accepted failure probability that was accepted
     */
    public static Report of(
            CornerStudy study,
            Scatter scatter,
            PracticeSteps plan,
            PracticeTarget target,
            double accepted,
            Units units) {
        List<Driven> driven =
                plan.steps().stream().map(step -> Driven.of(study, step)).toList();
        Report programs = new Report(EntryAnswer.title(study))
                .with("reached", plan.reached())
                .with("accepted", accepted)
                .with("driver", scatter.name())
                .with("margin_cost_s", study.marginCost(target.entry()))
                .with("best_time_s", target.best().time())
                .with("best_failure_probability", target.bestRisk().failed().value())
                .with("steps", "", rows(driven));
        StepChanges changes = new StepChanges(plan.steps(), scatter, units);
        List<Step> steps = changes.drivable();
        Report people = new Report(EntryAnswer.title(study));
        if (plan.reached() < 1) {
            people = people.headline(shortOf(scatter, plan, accepted));
        }
        if (!target.isBest()) {
            people = people.headline(target.instead(accepted));
        }
        people = people.with("driver", scatter.name())
                .with(target.isBest() ? TO_THE_BEST : "of_the_way_percent", PERCENT * plan.reached())
                .with("accepted_failures_percent", PERCENT * accepted)
                .withAll(
                        "steps",
                        "Step by step, with a foot that reacts; step 0 is what the driver does now",
                        shown(driven, steps));
        for (int i = 1; i < steps.size(); i++) {
            people = people.note(words(i, steps, changes));
        }
        if (plan.reached() < 1) {
            people = people.note(OTHER_PLANS);
        }
        if (changes.leavesOut()) {
            people = people.note(StepChanges.LEFT_OUT);
        }
        return programs.shownAs(people.note(Words.IN_HAND).note(CAUTION));
    }

    /** A step, driven as planned. */
    private record Driven(Step step, EntryResult entry, double inHand) {

        static Driven of(CornerStudy study, Step step) {
            BrakePlan plan = step.risk().plan();
            return new Driven(step, study.simulator().run(plan), InHand.of(study.simulator(), plan));
        }
    }

    private static final double PERCENT = 100;

    private static final String TO_THE_BEST = "of_the_way_to_the_best_percent";

    /** Said where the steps end before the best release. */
    private static final String OTHER_PLANS =
            "Among more releases than these the verb sheet looks for a plan that this driver repeats: --driver.";

    /** What stands below every practice plan. */
    public static final String CAUTION =
            "The drivers are invented. Practise on a closed track with someone qualified beside you.";

    /** Says that a plan ends short of its target, and why. */
    public static String shortOf(Scatter scatter, PracticeSteps plan, double accepted) {
        return "The steps go " + Words.percent(plan.reached())
                + " of the way to the best release: beyond that, this driver ("
                + scatter.name() + ") fails more often than " + Words.percent(accepted)
                + ". A steadier foot comes first.";
    }

    private static List<Report> rows(List<Driven> driven) {
        List<Report> rows = new ArrayList<>();
        Step before = driven.get(0).step();
        for (Driven one : driven) {
            Step step = one.step();
            var plan = step.risk().plan();
            rows.add(new Report()
                    .with("brake_point_m", plan.brakePoint())
                    .with("release_start_m", plan.release().start())
                    .with("release_end_m", plan.release().end())
                    .with("pick_up_m", one.entry().pickUp())
                    .with("gain_s", step.gain())
                    .with("failure_probability", step.risk().failed().value())
                    .with("too_late_m", metres(step.tooLate()))
                    .with("goes_first", step.tooLate().goesFirst())
                    .with("tell_tale", step.tooLate().tellTale())
                    .with("too_late_as_planned_m", metres(step.tooLateAsPlanned()))
                    .with("goes_first_as_planned", step.tooLateAsPlanned().goesFirst())
                    .with("tell_tale_as_planned", step.tooLateAsPlanned().tellTale())
                    .with("later_m", step.later())
                    .with("later_beyond_m", step.beyond())
                    .with("further_m", step.further())
                    .with(
                            "changes",
                            step.changed().stream().map(StepsAnswer::name).collect(Collectors.joining("+")))
                    .with("together_because", together(before, step))
                    .with("peak_mps2", plan.peakDeceleration())
                    .with("mean_time_s", step.risk().meanTime())
                    .with("in_hand_m", one.inHand())
                    .with("margins", EntryAnswer.margins(one.entry())));
            before = step;
        }
        return rows;
    }

    private static double metres(TooLate late) {
        return late.by().isPresent() ? late.by().getAsInt() : Double.NaN;
    }

    private static List<Report> shown(List<Driven> driven, List<Step> steps) {
        List<Report> rows = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            Driven one = driven.stream()
                    .filter(other -> other.step() == step)
                    .findFirst()
                    .orElseThrow();
            var plan = step.risk().plan();
            var margins = one.entry().margins();
            rows.add(new Report()
                    .withCount("step", i)
                    .withCount("brake_m", (long) Math.floor(plan.brakePoint()))
                    .with("peak_mps2", plan.peakDeceleration())
                    .withCount("ease_off_m", Words.metre(plan.release().start()))
                    .withCount("off_m", Words.metre(plan.release().end()))
                    .with("mean_time_s", shown(step.risk().meanTime()))
                    .with("quicker_s", i == 0 ? Double.NaN : gain(steps, i))
                    .with("failures_percent", PERCENT * step.risk().failed().value())
                    .withCount("in_hand_m", Math.round(one.inHand()))
                    .with("front_margin_percent", PERCENT * margins.front())
                    .with("rear_margin_percent", PERCENT * margins.rear()));
        }
        return rows;
    }

    /** Between times as they are shown, so that the difference is that of what stands beside it. */
    private static double gain(List<Step> steps, int number) {
        return shown(steps.get(number - 1).risk().meanTime())
                - shown(steps.get(number).risk().meanTime());
    }

    private static double shown(double time) {
        return Math.rint(1000 * time) / 1000;
    }

    /**
     * One step in words, with the changes that this driver could notice. What is felt is left out where it is the same
     * as in the step before.
     *
     * @param number 1 for the first that the driver does not do yet
     * @param steps all of them, each one {@linkplain StepChanges#drivable() drivable}
     * @param changes of the whole way
     */
    public static String words(int number, List<Step> steps, StepChanges changes) {
        Step step = steps.get(number);
        Step before = steps.get(number - 1);
        String feel = step.tooLateAsPlanned().tellTale();
        boolean felt = number > 1 && feel.equals(before.tooLateAsPlanned().tellTale());
        double gain = gain(steps, number);
        String together = together(before, step);
        if (number > 1 && together.equals(together(steps.get(number - 2), before))) {
            together = together.isEmpty() ? "" : "Together, as before";
        }
        return "Step " + number + ": "
                + String.join(", ", changes.between(before, step)) + ": "
                + Words.seconds(Math.abs(gain)) + (gain >= 0 ? " quicker, " : " slower, ")
                + Words.percent(step.risk().failed().value()) + " failures. "
                + (together.isEmpty() ? "" : together + ". ")
                + (step.beyond() >= LEAST_BEYOND ? LARGE : "")
                + tooLate(step, !felt);
    }

    /** Metres that a plan of whole metres does not show. */
    private static final double LEAST_BEYOND = 1;

    /** Said of a step that brakes later than the step before forgives. */
    private static final String LARGE =
            "A large step; none shorter keeps the margin in so few steps: go there with someone beside you. ";

    /**
     * Why a step changes more than one thing, such as {@code Together: later alone runs wide, harder alone stops 13 m
     * before turn-in}; empty where it changes one.
     */
    static String together(Step before, Step step) {
        if (step.alone().isEmpty()) {
            return "";
        }
        Map<String, List<String>> changesByFault = new LinkedHashMap<>();
        for (Alone one : step.alone()) {
            String alone = doing(one.aspect(), before.risk().plan(), step.risk().plan());
            against(one)
                    .ifPresent(fault -> changesByFault
                            .computeIfAbsent(fault, any -> new ArrayList<>())
                            .add(alone));
        }
        List<String> reasons = new ArrayList<>();
        changesByFault.forEach((fault, alone) -> reasons.add(String.join(" or ", alone) + " alone " + fault));
        String lead = step.alone().size() == Aspect.values().length ? SET_UP : "Together";
        return lead + (reasons.isEmpty() ? ", to get there in so few steps" : ": " + String.join(", ", reasons));
    }

    /** What speaks against one change by itself; empty where it would do. */
    private static Optional<String> against(Alone one) {
        EntryResult entry = one.entry();
        if (entry.made() && one.kept()) {
            return one.gain() < 0 ? Optional.of("is " + Words.seconds(-one.gain()) + " slower") : Optional.empty();
        }
        return Optional.of(
                switch (entry.outcome()) {
                    case MADE_IT -> "leaves too little margin";
                    case RAN_WIDE -> "runs wide";
                    case SPUN -> "spins";
                    case LOCKED_UP -> "locks up";
                    case ROLLED_OVER -> "rolls over";
                    case STOPPED ->
                        "stops "
                                + entry.event(EntryEvent.Kind.STOPPED)
                                        .map(stop -> Words.board(stop.station()))
                                        .orElse("before the exit");
                });
    }

    /** Before the reasons of a step that changes everything: it leads to another way of braking. */
    private static final String SET_UP = "All at once, to set up another way of braking";

    private static String doing(Aspect aspect, BrakePlan before, BrakePlan plan) {
        return switch (aspect) {
            case BRAKE_POINT -> plan.brakePoint() > before.brakePoint() ? "later" : "earlier";
            case PEAK -> Words.hardest(plan) > Words.hardest(before) ? "harder" : "less hard";
            case RELEASE -> "the other release";
        };
    }

    private static String name(Aspect aspect) {
        return aspect.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * {@code If you brake 8 m too late and no harder than planned: front wheel locks at 15.5 m, …}, and up to where
     * more brake on the straight saves it: never after a wheel has locked.
     *
     * @param felt whether it says how that feels
     */
    public static String tooLate(Step step, boolean felt) {
        TooLate planned = step.tooLateAsPlanned();
        TooLate reacting = step.tooLate();
        String feel = felt && !planned.tellTale().equals(NO_TELL_TALE)
                ? "; it feels like this: " + planned.tellTale() + "."
                : ".";
        if (planned.by().isEmpty()) {
            return "If you brake too late: " + planned.goesFirst() + ".";
        }
        int by = planned.by().getAsInt();
        String late = "If you brake " + by + " m too late";
        if (planned.by().equals(reacting.by())) {
            return late + ": " + planned.goesFirst() + feel;
        }
        int saved = reacting.by().isPresent() ? reacting.by().getAsInt() - 1 : TooLate.MOST;
        return late + " and no harder than planned: " + planned.goesFirst() + feel
                + (saved >= by
                        ? " Noticed on the straight and answered with more brake there, up to " + saved
                                + " m too late still makes the corner."
                        : " More brake on the straight, once you notice, does not save it.");
    }
}
