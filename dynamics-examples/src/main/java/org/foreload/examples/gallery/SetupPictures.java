package org.foreload.examples.gallery;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.foreload.balance.AdhesionUse;
import org.foreload.balance.Balance;
import org.foreload.balance.BalanceAxis;
import org.foreload.balance.BalanceRow;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.foreload.examples.answer.BalanceWords;
import org.foreload.examples.answer.SensitivityAnswer;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Quantity;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.BarChart;
import org.foreload.examples.picture.BarChart.Bar;
import org.foreload.examples.picture.Panel;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.Style.Ink;
import org.foreload.examples.picture.Style.Marker;
import org.foreload.examples.picture.XyChart;
import org.foreload.sensitivity.Knob;
import org.foreload.sensitivity.Sensitivity;
import org.foreload.sensitivity.Sensitivity.Row;
import org.foreload.sensitivity.Sensitivity.Side;
import org.foreload.strategy.CornerStudy;
import org.foreload.vehicle.Car;

/** Which number of a car matters, and which balance to choose. */
public final class SetupPictures {

    /** Most bars of a tornado. */
    private static final int MOST_BARS = 24;

    private SetupPictures() {}

    /** What one change of each number does to the best time, the largest first, and what missing the plan costs. */
    public static Picture tornado(CornerStudy study, EntryResult best, Sensitivity sensitivity) {
        List<Row> world = sensitivity.rows(Knob.Kind.WORLD);
        List<Row> rows = world.stream()
                .filter(row -> !Double.isNaN(row.timeChange()))
                .limit(MOST_BARS)
                .toList();
        List<Bar> bars = rows.stream()
                .map(row -> bar(row, "+", row.timeChange(), row.steady() ? "" : " *"))
                .toList();
        List<Bar> missed = sensitivity.rows(Knob.Kind.PLAN).stream()
                .flatMap(row -> Stream.of(missed(row, "\u2212", row.less()), missed(row, "+", row.more())))
                .flatMap(Optional::stream)
                .toList();
        List<String> failing = sensitivity.rows(Knob.Kind.PLAN).stream()
                .flatMap(row -> Stream.of(failing(row, "\u2212", row.less()), failing(row, "+", row.more())))
                .flatMap(Optional::stream)
                .toList();
        String first = rows.isEmpty()
                ? ""
                : Say.of(
                        " What matters most is %s, which changes the time by %+.1f ms.",
                        name(rows.get(0), "+"), 1000 * rows.get(0).timeChange());
        List<Panel> panels = new ArrayList<>();
        panels.add(new BarChart("Each with its own best release", Axis.of("change of time", "ms"), bars));
        if (!missed.isEmpty()) {
            panels.add(new BarChart("The plan missed, all else kept", Axis.of("change of time", "ms"), missed));
        }
        return Picture.of(
                "What a little more of each number does: " + Say.where(study),
                Say.of("Bars to the left are quicker, to the right slower than the best time of %.3f s.", best.time())
                        + first
                        + " * not proportional: half the change does not have half the effect."
                        + SensitivityAnswer.quickerSides(sensitivity)
                                .map(note -> " " + note)
                                .orElse("")
                        + (failing.isEmpty() ? "" : " These fail: " + String.join(", ", failing) + ".")
                        + (world.size() > rows.size()
                                ? Say.of(" The %d of %d numbers that matter most are shown.", rows.size(), world.size())
                                : ""),
                panels.toArray(Panel[]::new));
    }

    private static Optional<Bar> missed(Row row, String sign, Side side) {
        return side.made() ? Optional.of(bar(row, sign, side.timeChange(), "")) : Optional.empty();
    }

    private static Optional<String> failing(Row row, String sign, Side side) {
        return side.made()
                ? Optional.empty()
                : Optional.of(name(row, sign) + " ("
                        + side.outcome().map(Outcome::words).orElse("no such plan") + ")");
    }

    private static Bar bar(Row row, String sign, double timeChange, String mark) {
        return Bar.of(
                name(row, sign),
                1000 * timeChange,
                Say.of("%+.1f%s", 1000 * timeChange, mark),
                timeChange > 0 ? Ink.VERMILION : Ink.BLUE);
    }

    /** {@code mass +10 kg}. */
    private static String name(Row row, String sign) {
        return (Quantity.of(row.parameter()).label() + " " + sign + Numbers.shortest(row.change()) + " " + row.unit())
                .strip();
    }

    /** Best time at each value of a balance sweep, and for the brake share what each axle asks of the road. */
    public static Picture balance(CornerStudy study, Balance balance) {
        boolean brake = balance.axis().parameter().name().equals(BalanceAxis.BRAKE_SHARE.name());
        List<Panel> panels = new ArrayList<>();
        panels.add(times(balance));
        String words = balance.reason() + " " + BalanceWords.accuracy(balance);
        if (brake) {
            Car car = balance.recommended()
                    .map(BalanceRow::car)
                    .orElse(study.simulator().car());
            panels.add(adhesion(car));
            words += " Right: adhesion that each axle needs with that share; where the rear needs more, it "
                    + (car.antiLock() ? "is held back first." : "locks first.");
        }
        return new Picture("Which balance: " + Say.where(study), words, List.of(panels));
    }

    /** Points alone: what lies between neighbours is finer than the search, and no curve. */
    private static XyChart times(Balance balance) {
        Quantity quantity = Quantity.of(balance.axis().parameter().name());
        XyChart chart = XyChart.of(
                        Axis.of(quantity.label(), quantity.unit().isEmpty() ? "–" : quantity.unit()),
                        Axis.of("time of the best entry", "s"))
                .heading("Time, and whether a small scatter is safe")
                .tall(360);
        chart = rows(chart, "fails at most 1 in 10", balance, BalanceRow::steady, Style.points(Ink.BLUE, Marker.DISC));
        chart = rows(
                chart,
                "fails more often",
                balance,
                row -> row.made() && !row.steady(),
                Style.points(Ink.VERMILION, Marker.VEE));
        if (balance.own() >= balance.axis().values().get(0)
                && balance.own()
                        <= balance.axis().values().get(balance.axis().values().size() - 1)) {
            chart = chart.markX(balance.own(), "as it is");
        }
        return balance.recommended().isPresent()
                ? chart.markX(balance.recommended().get().value(), "recommended")
                : chart;
    }

    private static XyChart rows(XyChart chart, String name, Balance balance, Predicate<BalanceRow> which, Style style) {
        List<BalanceRow> some = balance.rows().stream().filter(which).toList();
        return some.isEmpty()
                ? chart
                : chart.line(
                        name,
                        some.stream().mapToDouble(BalanceRow::value).toArray(),
                        some.stream().mapToDouble(BalanceRow::time).toArray(),
                        style);
    }

    private static XyChart adhesion(Car car) {
        List<AdhesionUse.Row> rows = AdhesionUse.of(car).rows();
        double[] rate = rows.stream().mapToDouble(AdhesionUse.Row::rate).toArray();
        return XyChart.of(Axis.of("braking rate", "g"), Axis.of("adhesion needed", "share of load"))
                .heading("In a straight line, without aerodynamics")
                .line(
                        "front axle",
                        rate,
                        rows.stream().mapToDouble(AdhesionUse.Row::front).toArray(),
                        Style.FIRST)
                .line(
                        "rear axle",
                        rate,
                        rows.stream().mapToDouble(AdhesionUse.Row::rear).toArray(),
                        Style.SECOND)
                .line(
                        "both alike",
                        rate,
                        rows.stream().mapToDouble(AdhesionUse.Row::ideal).toArray(),
                        Style.AIDE)
                .tall(360);
    }
}
