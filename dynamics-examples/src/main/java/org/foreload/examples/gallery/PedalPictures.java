package org.foreload.examples.gallery;

import java.util.ArrayList;
import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.BarChart;
import org.foreload.examples.picture.BarChart.Bar;
import org.foreload.examples.picture.ChartStack;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.Style.Ink;
import org.foreload.examples.picture.Style.Marker;
import org.foreload.examples.picture.XyChart;
import org.foreload.pedal.PedalStudy;
import org.foreload.pedal.Smoothness;
import org.foreload.stability.EntryStability;
import org.foreload.stability.StabilityRow;
import org.foreload.stability.UnstableStretch;
import org.foreload.strategy.CornerStudy;

/** What the foot does to the car: stability along an entry, an unsteady pedal, two kinds of pedal. */
public final class PedalPictures {

    private static final double KILO = 1e-3;
    private static final Axis DISTANCE = Axis.of("distance along the line, 0 at turn-in", "m");

    private PedalPictures() {}

    /** Growth rate of a disturbance and what both axles have left, along an entry. */
    public static Picture stability(CornerStudy study, EntryResult entry, EntryStability stability) {
        List<StabilityRow> rows = stability.rows();
        List<StabilityRow> worst = stability.unstable().isEmpty()
                ? List.of(stability.least().row())
                : stability.unstable().stream().map(UnstableStretch::worst).toList();
        double[] s = rows.stream().mapToDouble(StabilityRow::station).toArray();
        XyChart growth = XyChart.of(DISTANCE, Axis.of("growth of a disturbance", "1/s"))
                .line("", s, rows.stream().mapToDouble(StabilityRow::growthRate).toArray(), Style.FIRST)
                .line(
                        stability.unstable().isEmpty() ? "least stable" : "the worst of each unstable stretch",
                        worst.stream().mapToDouble(StabilityRow::station).toArray(),
                        worst.stream().mapToDouble(StabilityRow::growthRate).toArray(),
                        Style.points(Ink.BLACK, Marker.DISC))
                .markY(0, "above: unstable")
                .tall(250);
        XyChart margins = XyChart.of(DISTANCE, Axis.of("grip left", "%").between(0, Double.NaN))
                .line(
                        "front axle",
                        s,
                        rows.stream()
                                .mapToDouble(row -> 100 * row.frontMargin())
                                .toArray(),
                        Style.FIRST)
                .line(
                        "rear axle",
                        s,
                        rows.stream().mapToDouble(row -> 100 * row.rearMargin()).toArray(),
                        Style.SECOND)
                .tall(210);
        return Picture.of(
                "Where it is least stable: " + Say.where(study),
                stability.verdict() + " " + Say.how(entry),
                ChartStack.of(EntryPictures.marked(growth, study, entry), EntryPictures.marked(margins, study, entry)));
    }

    /**
     * The front load under a calm and under an unsteady foot, and what ripples of other frequencies do to it.
     *
     * @param smoothness the two entries
     * @param foot what the foot does, size and frequency
     * @param frequencies Hz
     * @param ripples front load ripple, N, at each frequency
     */
    public static Picture smoothness(
            CornerStudy study, Smoothness smoothness, String foot, double[] frequencies, double[] ripples) {
        EntryResult calm = smoothness.calm();
        Stretch steady = Stretch.of(calm, study.simulator().apex());
        Stretch shaken = steady.of(smoothness.disturbed().profile().orElseThrow());
        XyChart brake =
                both(Axis.of("brake", "m/s²"), steady, shaken, "brake_mps2", 1).tall(190);
        XyChart load = both(Axis.of("front axle load", "kN"), steady, shaken, "front_axle_load_n", KILO)
                .tall(230);
        XyChart over = XyChart.of(
                        Axis.of("frequency of the ripple", "Hz"),
                        Axis.of("ripple of the front load", "N").between(0, Double.NaN))
                .heading("The same ripple at other frequencies")
                .line("", frequencies, ripples, Style.FIRST.with(Marker.DISC))
                .tall(230);
        String lost = Double.isNaN(smoothness.timeLost())
                ? " One of the two does not make the corner: "
                        + smoothness.disturbed().outcome().words() + "."
                : Say.of(
                        smoothness.timeLost() >= 0 ? " It costs %.3f s." : " It saves %.3f s.",
                        Math.abs(smoothness.timeLost()));
        return Picture.of(
                "What an unsteady foot costs: " + Say.where(study),
                foot
                        + Say.of(
                                " moves the front load by %.0f N up and down. At worst, between turn-in and "
                                        + "brake off, it costs %.1f %% of the front axle's cornering force; it takes the car "
                                        + "%.2f m off its line.",
                                smoothness.frontLoadRipple(),
                                100 * smoothness.frontGripLost(),
                                smoothness.distanceOffLine())
                        + lost,
                ChartStack.of(EntryPictures.marked(brake, study, calm), EntryPictures.marked(load, study, calm)),
                over);
    }

    private static XyChart both(Axis axis, Stretch calm, Stretch shaken, String column, double factor) {
        return XyChart.of(DISTANCE, axis)
                .line("unsteady", shaken.stations(), Say.times(factor, shaken.column(column)), Style.SECOND)
                .line("steady", calm.stations(), Say.times(factor, calm.column(column)), Style.FIRST);
    }

    /** Brake scatter and outcomes of each pedal with the same leg. */
    public static Picture pedals(CornerStudy study, BrakePlan plan, List<PedalStudy.Result> results) {
        List<Bar> scatter = new ArrayList<>();
        List<Bar> outcomes = new ArrayList<>();
        StringBuilder words = new StringBuilder();
        for (PedalStudy.Result result : results) {
            String name = result.pedal().name();
            int attempts = result.driven();
            double percent = 100 * result.brakeScatter();
            scatter.add(Bar.of(name, percent, Say.of("%.1f %%", percent), Ink.BLUE));
            for (Outcome outcome : Outcome.values()) {
                int count = result.count(outcome);
                if (count > 0) {
                    outcomes.add(Bar.of(
                            name + ": " + outcome.words(),
                            100.0 * count / attempts,
                            Say.of("%d of %d", count, attempts),
                            outcome == Outcome.MADE_IT ? Ink.BLUE : Ink.VERMILION));
                }
            }
            words.append(Say.of(
                    "The %s pedal scatters by %.1f %% of the peak; %d of %d made it%s. ",
                    name,
                    percent,
                    result.count(Outcome.MADE_IT),
                    attempts,
                    Double.isNaN(result.meanTime()) ? "" : Say.of(", in %.2f s on average", result.meanTime())));
        }
        return Picture.of(
                "Two pedals with the same leg: " + Say.where(study),
                words + "An order of magnitude, no claim about any real leg. " + Say.plan(plan) + ".",
                new BarChart("Scatter of the brake", Axis.of("share of the peak", "%"), scatter),
                new BarChart(
                        "How the attempts end",
                        Axis.of("share of attempts", "%").between(0, 100),
                        outcomes));
    }
}
