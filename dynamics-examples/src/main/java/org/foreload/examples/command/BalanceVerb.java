package org.foreload.examples.command;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.foreload.balance.AdhesionUse;
import org.foreload.balance.Balance;
import org.foreload.balance.BalanceAxis;
import org.foreload.balance.BalanceRow;
import org.foreload.balance.BalanceStudy;
import org.foreload.conventions.Gravity;
import org.foreload.conventions.InvalidValueException;
import org.foreload.entry.Outcome;
import org.foreload.examples.answer.BalanceWords;
import org.foreload.examples.answer.EntryAnswer;
import org.foreload.examples.answer.Handover;
import org.foreload.examples.gallery.SetupPictures;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.file.InputException;
import org.foreload.load.LoadTransfer;
import org.foreload.parameter.Parameter;
import org.foreload.strategy.CornerStudy;
import org.foreload.vehicle.Car;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Which brake balance, or other balance of the car, makes the corner quickest without making it nervous. */
@Command(
        name = "balance",
        sortOptions = false,
        description = {
            "Which front share of the brake force makes the entry quickest, and how an entry ends that is a little too "
                    + "hard or too late.",
            "",
            "With too little brake in front the unloaded rear wheels lock first and the car spins; with too much the front "
                    + "wheels, which must also steer, do all the work. For each share the best release is found, as explore finds it, from the latest "
                    + "brake point with which at most one entry in ten fails when driver and grip scatter a little. Roll stiffness, CG height and downforce "
                    + "can be swept the same way."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: failure share is the part of 32 entries that fail when driver and grip scatter a little; outcome if "
                    + "harder is that of the same entry braked 5 %% harder, outcome if later that of one braked 10 m later. "
                    + "Adhesion is the friction that each axle would need in a straight line; where the rear needs more than the "
                    + "front, the rear locks first. The sweep takes some ten seconds.",
            "",
            "Example:  foreload balance --demo-car road --from 0.7 --to 0.9 --values 5",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class BalanceVerb extends ReportVerb implements Driving {

    /** What can be swept. */
    enum Axis {
        /** Front share of the brake force. */
        BRAKE_SHARE(BalanceAxis.BRAKE_SHARE, 0),
        /** Front share of the roll stiffness. */
        ROLL_STIFFNESS(BalanceAxis.ROLL_STIFFNESS_SHARE, 0.15),
        /** Height of the CG. */
        CG_HEIGHT(BalanceAxis.CG_HEIGHT, 0.08),
        /** Front share of the downforce. */
        DOWNFORCE(BalanceAxis.DOWNFORCE_SHARE, 0.1);

        private final Parameter<Car> parameter;
        private final double reach;

        Axis(Parameter<Car> parameter, double reach) {
            this.parameter = parameter;
            this.reach = reach;
        }
    }

    /** Most values that a sweep may have. */
    private static final int MOST_VALUES = 200;

    @Option(
            names = "--axis",
            paramLabel = "<name>",
            defaultValue = "brake-share",
            completionCandidates = Candidates.Axes.class,
            description = "What is swept: brake-share, roll-stiffness, cg-height or downforce (its front share). "
                    + "Default: ${DEFAULT-VALUE}.")
    private String axisName;

    @Option(
            names = "--from",
            paramLabel = "<value>",
            description = "First value, a share or m. Default: a little below what the car has, or needs.")
    private Double from;

    @Option(names = "--to", paramLabel = "<value>", description = "Last value. Default: a little above.")
    private Double to;

    @Option(
            names = "--values",
            paramLabel = "<count>",
            defaultValue = "7",
            description = "How many values, 2 or more; the car's own one besides. " + "Default: ${DEFAULT-VALUE}.")
    private int values;

    @Mixin
    private FootOptions footOptions;

    @Mixin
    private SweepOptions sweepOptions;

    @Mixin
    private StudyOptions studyOptions;

    @Mixin
    private PlaceOptions placeOptions;

    @Override
    public boolean brief() {
        return true;
    }

    @Override
    Report report(Console console) {
        Options.within("--values", values, 2, MOST_VALUES, "");
        sweepOptions.check();
        studyOptions.check();
        Axis wanted = wantedAxis();
        return placeOptions.ask(
                console, (car, corner) -> report(console, wanted, axis(wanted, car), studyOptions.study(car, corner)));
    }

    private Report report(Console console, Axis wanted, BalanceAxis axis, CornerStudy study) {
        Car car = study.simulator().car();
        Balance balance = sweepOptions.run(
                console, "settings", sweep -> BalanceStudy.standard().run(study, axis, footOptions.reaction(), sweep));
        common().picture().draw(() -> SetupPictures.balance(study, balance));
        String name = axis.parameter().name();
        double recommended = balance.recommended().map(BalanceRow::value).orElse(Double.NaN);
        Report report = new Report(EntryAnswer.title(study))
                .with(wanted == Axis.BRAKE_SHARE ? "recommended_share" : "recommended_" + name, recommended)
                .with("own_" + name, balance.own())
                .with("complete", balance.complete())
                .with("rows", "Each value with its own best release", rows(balance, name))
                .with(
                        "recommendation",
                        "The value to drive with",
                        List.of(new Report()
                                .with(name, recommended)
                                .with("interior_optimum", balance.interior())
                                .with("reason", balance.reason())));
        if (wanted == Axis.BRAKE_SHARE) {
            report = withAdhesion(report, balance.recommended(), car);
        }
        String approach = common().units().speed(study.simulator().corner().approachSpeed());
        return report.note(BalanceWords.accuracy(balance))
                .note(BalanceWords.ONE_FOR_ALL)
                .note(BalanceWords.decelerations(car, approach))
                .note(Handover.CAUTION);
    }

    private Axis wantedAxis() {
        for (Axis one : Axis.values()) {
            if (Choices.word(one).equals(axisName)) {
                return one;
            }
        }
        throw new InputException(
                null, "--axis", axisName, "must be one of brake-share, roll-stiffness, cg-height, downforce");
    }

    private BalanceAxis axis(Axis wanted, Car car) {
        double own = wanted.parameter.of(car);
        if (!Double.isFinite(own)) {
            throw new InputException(null, "--axis", axisName, "cannot be swept: the car has no downforce");
        }
        double low = own - wanted.reach;
        double high = own + wanted.reach;
        if (wanted == Axis.BRAKE_SHARE) {
            double wheelLoad = LoadTransfer.of(car).staticFront(Gravity.G) / 2;
            List<Double> shares = BalanceAxis.brakeShares(car, car.frontTyre().peakFrictionX(wheelLoad), 2)
                    .values();
            low = shares.get(0);
            high = shares.get(1);
        }
        low = from == null ? Math.max(0, low) : from;
        high = to == null ? high : to;
        if (!(high > low)) {
            throw new InputException(null, "--to", Numbers.shortest(high), "must be above --from");
        }
        possible("--from", wanted.parameter, car, low);
        possible("--to", wanted.parameter, car, high);
        return BalanceAxis.evenly(wanted.parameter, low, high, values).withOwn(car);
    }

    /** What the car cannot have is the request's mistake, not that of the car's file. */
    private static void possible(String option, Parameter<Car> parameter, Car car, double value) {
        try {
            parameter.with(car, value);
        } catch (InvalidValueException e) {
            throw InputException.of(null, option, e);
        }
    }

    private static List<Report> rows(Balance balance, String name) {
        List<Report> rows = new ArrayList<>();
        for (BalanceRow row : balance.rows()) {
            var plan = row.best().plan();
            Report line = new Report()
                    .with(name, row.value())
                    .with("time_s", row.time())
                    .with(
                            "first_to_lock",
                            row.firstToLock()
                                    .map(lock -> Choices.word(lock.axle()))
                                    .orElse(null))
                    .with(
                            "locks_at_mps2",
                            row.firstToLock().map(lock -> lock.deceleration()).orElse(Double.NaN))
                    .with("outcome", row.best().outcome().words())
                    .with("failure_share", row.failed().map(one -> one.value()).orElse(Double.NaN))
                    .with("outcome_if_harder", row.harder().map(Outcome::words).orElse(null))
                    .with("outcome_if_later", row.later().map(Outcome::words).orElse(null))
                    .with("brake_point_m", plan.brakePoint())
                    .with("peak_deceleration_mps2", plan.peakDeceleration());
            if (row.car().antiLock()) {
                line = line.with("most_on_road_mps2", mostOnRoad(row));
            }
            rows.add(line.with("release_end_m", plan.release().end())
                    .with(
                            "least_stable_growth_per_s",
                            row.leastStable()
                                    .map(event -> event.row().growthRate())
                                    .orElse(Double.NaN)));
        }
        return rows;
    }

    /** The most that the brakes put on the road, m/s². */
    private static double mostOnRoad(BalanceRow row) {
        double[] brake =
                row.best().profile().orElseThrow().column("brake_on_road_mps2").values();
        return Arrays.stream(brake).max().orElse(Double.NaN);
    }

    private static Report withAdhesion(Report report, Optional<BalanceRow> recommended, Car own) {
        Car car = recommended.map(BalanceRow::car).orElse(own);
        String share = recommended.isPresent() ? "the recommended share" : "the car's own share";
        AdhesionUse use = AdhesionUse.of(car);
        List<Report> rows = use.rows().stream()
                .map(row -> new Report()
                        .with("braking_rate", row.rate())
                        .with("front_adhesion", row.front())
                        .with("rear_adhesion", row.rear())
                        .with("ideal_adhesion", row.ideal())
                        .with("most_allowed", row.most()))
                .toList();
        return report.with("critical_braking_rate", use.criticalRate())
                .with("front_locks_first_by_rule", use.frontFirst())
                .with("inside_the_band", use.efficient())
                .with("adhesion", "Adhesion needed with " + share + ", against braking rate in g", rows)
                .note(BalanceWords.order(car));
    }
}
