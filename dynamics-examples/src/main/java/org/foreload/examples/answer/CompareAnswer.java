package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.foreload.advice.CornerAdvice;
import org.foreload.advice.DriverScatter;
import org.foreload.advice.Likeness;
import org.foreload.advice.Step;
import org.foreload.comparison.Alignment;
import org.foreload.comparison.Comparison;
import org.foreload.comparison.CornerGap;
import org.foreload.envelope.FrictionEnvelope;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.examples.recording.LapAdvice;
import org.foreload.examples.recording.MeasuredLap;
import org.foreload.examples.recording.RecordedFile;
import org.foreload.recording.Estimate;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;
import org.foreload.risk.Scatter;
import org.foreload.trace.Trace;

/** Two runs side by side, as a report. */
public final class CompareAnswer {

    /** Distance between the rows of the gap, m. */
    private static final double STEP = 5;

    private CompareAnswer() {}

    /** The gap, corner by corner. */
    public static Report of(
            RecordedFile first,
            MeasuredLap mine,
            RecordedFile second,
            MeasuredLap theirs,
            Comparison comparison,
            LapAdvice advice) {
        String title =
                first.name() + ", lap " + mine.number() + ", against " + second.name() + ", lap " + theirs.number();
        Estimate gap = comparison.gap();
        List<Report> corners = new ArrayList<>();
        comparison.corners().forEach(corner -> corners.add(corner(corner, advised(mine, corner, advice))));
        Report report = interval(new Report(title), "gap_s", gap)
                .with("gap_elsewhere_s", comparison.elsewhere())
                .with("gap", "Gap over distance", curve(comparison))
                .with("corners", "Corners", corners)
                .with("limits", "Limits shown", limits(advice))
                .with("first_file", read(first, mine))
                .with("second_file", read(second, theirs))
                .with("aligned_by", comparison.alignment().basis().name().toLowerCase(Locale.ROOT))
                .with("alignment_error_m", comparison.alignment().error());
        Report people = people(title, mine, theirs, comparison, advice);
        List<RecordedFile> files = first.name().equals(second.name()) ? List.of(first) : List.of(first, second);
        for (String sentence : ReadWords.sentences(files)) {
            people = people.note(sentence);
        }
        for (String sentence : ReadWords.holes(first, mine)) {
            people = people.note(sentence);
        }
        if (files.size() > 1 || mine.number() != theirs.number()) {
            for (String sentence : ReadWords.holes(second, theirs)) {
                people = people.note(sentence);
            }
        }
        return report.shownAs(people.note(CAUTION));
    }

    private static final String CAUTION = "It says where time went, not what to do: a closed track, local rules and a "
            + "qualified instructor come first.";

    private static Report read(RecordedFile file, MeasuredLap lap) {
        return new Report()
                .with("channels", "", RecordingAnswer.channels(file))
                .with("columns_ignored", "", RecordingAnswer.ignored(file))
                .with("rows_left_out", "", RecordingAnswer.leftOut(file))
                .with("corners_cut", "", RecordingAnswer.cut(List.of(lap)));
    }

    /**
     * The advice for a corner of the comparison; where the reference is quicker, what it did has a say in the order.
     */
    private static CornerAdvice advised(MeasuredLap mine, CornerGap corner, LapAdvice advice) {
        CornerAdvice advised = advice.corners().get(mine.corners().indexOf(corner.first()));
        return corner.gap().value() > 0 ? advised.towards(corner.first(), corner.second()) : advised;
    }

    private static Report people(
            String title, MeasuredLap mine, MeasuredLap theirs, Comparison comparison, LapAdvice advice) {
        List<CornerGap> ranked = comparison.corners().stream()
                .sorted(Comparator.comparingDouble(corner -> -corner.gap().value()))
                .toList();
        boolean same = same(mine, theirs);
        Report report = new Report(title).headline(same ? SAME : sentence(comparison.gap(), ranked));
        report = same
                ? report.withAll("deeds", "What the driver did; places in metres from turn-in", deedsOfFirst(ranked))
                : report.withAll("gaps", "Gap by corner and phase, s, most lost first", gaps(ranked))
                        .withAll("deeds", "What each driver did; places in metres from turn-in", deeds(ranked));
        List<CornerGap> most = comparison.corners().stream()
                .sorted(Comparator.comparingDouble(
                        corner -> -advised(mine, corner, advice).best()))
                .toList();
        report = report.withAll(
                "advice",
                "What the first driver could change, one thing at a time; the corner with the most to gain first",
                most.stream()
                        .flatMap(corner -> shown(corner, advised(mine, corner, advice)))
                        .toList());
        report = report.withAll(
                "scatter",
                "How the first driver scatters from lap to lap: standard deviations, each with the interval that holds the true one "
                        + "nine times in ten",
                comparison.corners().stream()
                        .map(corner ->
                                Map.entry(corner, advised(mine, corner, advice).scatter()))
                        .filter(one -> !one.getValue().equals(DriverScatter.PRACTISED))
                        .map(one -> scattered(one.getKey(), one.getValue()))
                        .toList());
        report = report.withAll(
                "limits",
                "How hard the first driver has worked the car, m/s²",
                advice.limits().stream()
                        .flatMap(limits -> speeds(limits)
                                .mapToObj(speed -> new Report()
                                        .with("speed_mps", speed)
                                        .with("across", RecordingAnswer.spread(limits.lateral(speed), 1))
                                        .with("along", RecordingAnswer.spread(limits.braking(speed), 1))))
                        .toList());
        for (String sentence : NotCompared.sentences(mine, theirs, comparison)) {
            report = report.note(sentence);
        }
        for (String sentence : withheld(mine, comparison, advice)) {
            report = report.note(sentence);
        }
        if (comparison.alignment().basis() == Alignment.Basis.SPEED) {
            report = report.note(
                    "Neither lateral acceleration, yaw rate nor position was recognised in both, so no corner is "
                            + "known; --columns names a column that holds one. The runs are aligned by the shape of speed, to "
                            + Numbers.rounded(comparison.alignment().error(), 1)
                            + " m (standard deviation): the gap is "
                            + RecordingAnswer.spread(comparison.gap(), 2) + " s.");
        }
        return report.note("± is half the interval that holds the true number nine times in ten."
                + (same ? "" : " Positive: slower than the reference."));
    }

    private static final String SAME =
            "Both are the same lap, so there is no gap. Any advice below stands on this lap alone.";

    /** Whether two laps have the same rows. */
    private static boolean same(MeasuredLap mine, MeasuredLap theirs) {
        List<Trace.Column> first = mine.run().recording().trace().columns();
        List<Trace.Column> second = theirs.run().recording().trace().columns();
        return first.size() == second.size()
                && IntStream.range(0, first.size())
                        .allMatch(i -> first.get(i).name().equals(second.get(i).name())
                                && Arrays.equals(
                                        first.get(i).values(), second.get(i).values()));
    }

    /** A gap whose interval reaches over zero is called level. */
    private static String sentence(Estimate gap, List<CornerGap> ranked) {
        String seconds = Numbers.rounded(Math.abs(gap.value()), 2) + " s";
        String whole = seconds + (gap.value() >= 0 ? " slower" : " quicker") + " than the reference";
        if (gap.low() <= 0 && gap.high() >= 0) {
            whole = "Level with the reference, within the accuracy of the recordings: " + RecordingAnswer.spread(gap, 2)
                    + " s";
        }
        if (ranked.isEmpty()) {
            return whole + ".";
        }
        CornerGap most = ranked.get(0);
        return most.gap().low() > 0
                ? whole + "; most is lost in corner " + most.number() + ": "
                        + Numbers.rounded(most.gap().value(), 2) + " s."
                : whole + "; nothing is surely lost in any corner.";
    }

    private static List<Report> curve(Comparison comparison) {
        Trace curve = comparison.curve(STEP);
        List<Report> rows = new ArrayList<>();
        for (int i = 0; i < curve.rows(); i++) {
            Report row = new Report();
            for (Trace.Column column : curve.columns()) {
                row = row.with(column.name(), column.at(i));
            }
            rows.add(row);
        }
        return rows;
    }

    private static Stream<Report> shown(CornerGap corner, CornerAdvice advice) {
        return advice.items().stream()
                .map(item -> new Report()
                        .withCount("corner", corner.number())
                        .with("gain_s", Numbers.rounded(item.gain().value(), 2))
                        .with("low_s", Numbers.rounded(item.gain().low(), 2))
                        .with("high_s", Numbers.rounded(item.gain().high(), 2))
                        .with("fails", Words.percent(item.failed().value()))
                        .with("do", AdviceWords.sentence(item, advice.likeness().orElseThrow())));
    }

    /** Why corners have no advice, or no more of it: a sentence for each reason, with the corners that share it. */
    private static List<String> withheld(MeasuredLap mine, Comparison comparison, LapAdvice advice) {
        Map<String, List<String>> corners = new LinkedHashMap<>();
        for (CornerGap corner : comparison.corners()) {
            CornerAdvice advised = advised(mine, corner, advice);
            String reason = advised.withheld()
                    .map(why -> (advised.items().isEmpty() ? "no advice" : "no more advice") + ", because " + why + ".")
                    .orElse(advised.items().isEmpty() ? NOTHING : "");
            if (!reason.isEmpty() && !advised.withheld().equals(Optional.of(LapAdvice.NOT_ASKED))) {
                corners.computeIfAbsent(reason, none -> new ArrayList<>()).add(Integer.toString(corner.number()));
            }
        }
        return corners.entrySet().stream()
                .map(one -> (one.getValue().size() == 1 ? "Corner " : "Corners ") + String.join(", ", one.getValue())
                        + ": " + one.getKey())
                .toList();
    }

    private static final String NOTHING =
            "no single change was found that is sure to gain time within what this driver has shown.";

    /** Distance between the speeds at which limits are shown, m/s. */
    private static final double SPEED_STEP = 10;

    /** Round speeds at which the car was worked, m/s. */
    private static DoubleStream speeds(FrictionEnvelope limits) {
        double first = SPEED_STEP * Math.ceil(limits.lowestSpeed() / SPEED_STEP);
        return DoubleStream.iterate(first, speed -> speed <= limits.highestSpeed(), speed -> speed + SPEED_STEP);
    }

    private static List<Report> limits(LapAdvice advice) {
        return advice.limits().stream()
                .flatMap(limits -> speeds(limits).mapToObj(speed -> {
                    Report row = interval(new Report().with("speed_mps", speed), "lateral_mps2", limits.lateral(speed));
                    return interval(row, "braking_mps2", limits.braking(speed));
                }))
                .toList();
    }

    private static List<Report> items(CornerAdvice advice) {
        return advice.items().stream()
                .map(item -> new Report()
                        .with(
                                "change",
                                item.steps().stream().map(CompareAnswer::name).collect(Collectors.joining("+")))
                        .with(
                                "amount",
                                item.combined()
                                        ? Double.NaN
                                        : item.steps().get(0).amount())
                        .with(
                                "unit",
                                item.combined()
                                        ? null
                                        : item.steps().get(0).change().unit())
                        .with(
                                "steps",
                                "",
                                item.steps().stream()
                                        .map(step -> new Report()
                                                .with("change", name(step))
                                                .with("amount", step.amount())
                                                .with("harder_mps2", step.harder())
                                                .with("unit", step.change().unit()))
                                        .toList())
                        .with("shape", item.plan().release().shape().name())
                        .with("predicted_gain_s", item.gain().value())
                        .with("low_s", item.gain().low())
                        .with("high_s", item.gain().high())
                        .with("failure_probability", item.failed().value())
                        .with(
                                "sentence",
                                AdviceWords.sentence(item, advice.likeness().orElseThrow())))
                .toList();
    }

    private static String name(Step step) {
        return step.change().name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static Report scatter(DriverScatter found) {
        Scatter scatter = found.scatter();
        Report report = new Report().with("source", scatter.name());
        report = bounded(report, "brake_point_m", scatter.brakePoint(), found.brakePoint());
        report = bounded(report, "peak_share", scatter.peak(), found.peak());
        report = bounded(report, "release_m", scatter.releaseTiming(), found.releaseTiming());
        return report.with("ripple_share", scatter.ripple());
    }

    /** A deviation, with the ends of its interval where it was measured. */
    private static Report bounded(Report report, String name, double value, Estimate measured) {
        return report.with(name, value).with(name + "_low", measured.low()).with(name + "_high", measured.high());
    }

    /** How the driver scatters, where it was measured. */
    private static Report scattered(CornerGap corner, DriverScatter found) {
        return new Report()
                .withCount("corner", corner.number())
                .with("brake_point_m", between(found.brakePoint(), 1))
                .with("peak_share", between(found.peak(), 3))
                .with("brake_off_m", between(found.releaseTiming(), 1))
                .with("source", found.scatter().name());
    }

    /** {@code 1.2 (0.8 to 3.9)}: an interval that reaches farther up than down. */
    private static String between(Estimate estimate, int decimals) {
        return Numbers.rounded(estimate.value(), decimals) + " (" + Numbers.rounded(estimate.low(), decimals) + " to "
                + Numbers.rounded(estimate.high(), decimals) + ")";
    }

    private static Report corner(CornerGap corner, CornerAdvice advice) {
        Report phases = interval(new Report(), "to_turn_in_s", corner.toTurnIn());
        phases = interval(phases, "to_apex_s", corner.toApex());
        phases = interval(phases, "to_exit_s", corner.toExit());
        return interval(new Report().withCount("number", corner.number()), "gap_s", corner.gap())
                .with("phases", phases)
                .with("first", new Report().with("measures", RecordingAnswer.measures(corner.first())))
                .with("second", new Report().with("measures", RecordingAnswer.measures(corner.second())))
                .with("advice", "", items(advice))
                .with("advice_withheld", advice.withheld().orElse(null))
                .with("best_gain_s", advice.best())
                .with(
                        "speed_error_mps",
                        advice.likeness().map(Likeness::speedError).orElse(Double.NaN))
                .with("time_error_s", advice.likeness().map(Likeness::timeError).orElse(Double.NaN))
                .with("scatter", scatter(advice.scatter()));
    }

    private static Report interval(Report report, String name, Estimate estimate) {
        return report.with(name, estimate.value())
                .with(name + "_low", estimate.low())
                .with(name + "_high", estimate.high());
    }

    private static List<Report> gaps(List<CornerGap> corners) {
        return corners.stream()
                .map(corner -> new Report()
                        .withCount("corner", corner.number())
                        .with("gap", RecordingAnswer.spread(corner.gap(), 3))
                        .with("to_turn_in", RecordingAnswer.spread(corner.toTurnIn(), 3))
                        .with("turn_in_to_apex", RecordingAnswer.spread(corner.toApex(), 3))
                        .with("from_apex", RecordingAnswer.spread(corner.toExit(), 3)))
                .toList();
    }

    private static List<Report> deeds(List<CornerGap> corners) {
        List<Report> rows = new ArrayList<>();
        for (CornerGap corner : corners) {
            rows.add(deed(corner, "first", corner.first()));
            rows.add(deed(corner, "reference", corner.second()));
        }
        return rows;
    }

    private static List<Report> deedsOfFirst(List<CornerGap> corners) {
        return corners.stream().map(corner -> deed(corner, "", corner.first())).toList();
    }

    private static Report deed(CornerGap corner, String who, RecordedCorner did) {
        return new Report()
                .with("corner", (corner.number() + " " + who).strip())
                .with("brake_on_m", RecordingAnswer.spread(did.fromTurnIn(Measure.BRAKE_ON), 1))
                .with("first_ease_m", RecordingAnswer.spread(did.fromTurnIn(Measure.FIRST_EASE), 1))
                .with("release_end_m", RecordingAnswer.spread(did.fromTurnIn(Measure.RELEASE_END), 1))
                .with("turn_in_speed_mps", RecordingAnswer.spread(did.get(Measure.TURN_IN_SPEED), 1))
                .with("minimum_speed_mps", RecordingAnswer.spread(did.get(Measure.MINIMUM_SPEED), 1))
                .with("trail_share", RecordingAnswer.spread(did.get(Measure.TRAIL_SHARE), 2))
                .with("shape", did.shape().map(shape -> shape.name()).orElse(null))
                .with("pick_up_m", RecordingAnswer.spread(did.fromTurnIn(Measure.PICK_UP), 1));
    }
}
