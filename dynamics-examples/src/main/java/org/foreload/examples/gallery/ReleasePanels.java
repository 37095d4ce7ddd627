package org.foreload.examples.gallery;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.foreload.examples.answer.Units;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.ChartStack;
import org.foreload.examples.picture.Panel;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.Style.Dash;
import org.foreload.examples.picture.Style.Ink;
import org.foreload.examples.picture.Style.Marker;
import org.foreload.examples.picture.XyChart;
import org.foreload.path.Path;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;

/**
 * Entries that are looked at one after another: all their panels have the same axes, so that the eye can compare, and
 * show one of them, the plan, in grey behind the others. Entries need their profile.
 */
public final class ReleasePanels {

    private static final double PERCENT = 100;

    /** Free space above and below the fixed axes, as a share of them. */
    private static final double ROOM = 0.05;

    /** Failures stand above a border, where no loss of time is: their height, the border's, and the axis's. */
    private static final double FAILED = 1.3;

    private static final double BORDER = 1.15;
    private static final double WITH_FAILURES = 1.5;

    /** Metres shown after the last of apex, release and slowest place. */
    private static final double AFTER = 15;

    private final CornerStudy study;
    private final List<Finding> findings;
    private final List<EntryResult> entries;
    private final int planned;
    private final Units units;
    private final double apex;
    private final double from;
    private final double to;

    /**
     * @param study car and corner
     * @param findings with the profiles of their entries
     * @param planned index of the plan, which made the corner
     * @param units of the speeds
     */
    public ReleasePanels(CornerStudy study, List<Finding> findings, int planned, Units units) {
        this.study = study;
        this.findings = List.copyOf(findings);
        this.entries = findings.stream().map(Finding::entry).toList();
        this.planned = planned;
        this.units = units;
        this.apex = study.simulator().apex();
        this.from = Math.max(
                study.simulator().corner().path().start(),
                least(entry -> Stretch.of(entry, apex).from()));
        double last = most(entry -> Math.max(
                entry.made() ? entry.minimumSpeedAt() : 0,
                entry.plan().release().end()));
        this.to = Math.min(study.simulator().corner().path().end(), Math.max(apex, last) + AFTER);
    }

    private double least(ToDoubleFunction<EntryResult> of) {
        return entries.stream().mapToDouble(of).min().orElseThrow();
    }

    private double most(ToDoubleFunction<EntryResult> of) {
        return entries.stream().mapToDouble(of).max().orElseThrow();
    }

    private Stretch stretch(EntryResult entry) {
        return new Stretch(entry.profile().orElseThrow(), from, to);
    }

    private Axis fixed(String label, String unit, double factor, String... columns) {
        double low = least(entry -> values(entry, columns).min().orElse(0));
        double high = most(entry -> values(entry, columns).max().orElse(0));
        double room = ROOM * Math.max(high - low, 1e-9);
        return Axis.of(label, unit).between(factor * (low - room), factor * (high + room));
    }

    private DoubleStream values(EntryResult entry, String... columns) {
        Stretch stretch = stretch(entry);
        return Arrays.stream(columns)
                .flatMapToDouble(column -> DoubleStream.of(stretch.column(column)))
                .filter(Double::isFinite);
    }

    /**
     * The corner from above, the line driven, and the brake along it: the whole bend, and as much of the approach as
     * the bend is long. With more, its places would lie on top of each other.
     */
    public XyChart plan(int index) {
        EntryResult entry = entries.get(index);
        Path path = study.simulator().corner().path();
        double exit = behindTheBend(path);
        Stretch shown = new Stretch(entry.profile().orElseThrow(), Math.max(from, -exit), Math.max(to, exit));
        return PlanView.small(path, entry, apex, shown).heading("");
    }

    /** Metres of the exit that are shown behind the bend. */
    private static final double EXIT = 20;

    /**
     * Curvature, as a share of the greatest, that still counts as bent, and the step in which the end is looked for, m.
     */
    private static final double BENT = 0.02;

    private static final double LOOKED_FOR = 0.5;

    /** A station on the exit, m, with the whole bend before it. */
    private static double behindTheBend(Path path) {
        double most = 0;
        for (double s = path.start(); s <= path.end(); s += LOOKED_FOR) {
            most = Math.max(most, Math.abs(path.curvature(s)));
        }
        double end = path.end();
        while (end > path.start() && Math.abs(path.curvature(end)) < BENT * most) {
            end -= LOOKED_FOR;
        }
        return Math.min(path.end(), end + EXIT);
    }

    /** Brake, speed, and grip use of both axles over distance. */
    public Panel course(int index) {
        EntryResult entry = entries.get(index);
        Stretch own = stretch(entry);
        double[] s = own.stations();
        Axis distance = Axis.of("distance, 0 at turn-in", "m").between(from, to);
        XyChart brake = XyChart.of(distance, fixed("brake", "m/s²", 1, "brake_mps2"));
        brake = behind(brake, index, 1, "brake_mps2", "the plan")
                .line(index == planned ? "the plan" : "this release", s, own.column("brake_mps2"), Style.FIRST)
                .tall(130);
        double factor = units.ofSpeed(1);
        XyChart speed = XyChart.of(distance, fixed("speed", units.speedUnit(), factor, "speed_mps"));
        speed = behind(speed, index, factor, "speed_mps", "")
                .line("", s, Say.times(factor, own.column("speed_mps")), Style.FIRST)
                .tall(95);
        double fullest = most(one ->
                values(one, "front_utilisation", "rear_utilisation").max().orElse(1));
        XyChart use = XyChart.of(
                        distance, Axis.of("grip used", "%").between(0, (1 + ROOM) * PERCENT * Math.max(1, fullest)))
                .line("front axle", s, Say.times(PERCENT, own.column("front_utilisation")), Style.FIRST)
                .line("rear axle", s, Say.times(PERCENT, own.column("rear_utilisation")), Style.SECOND)
                .markY(PERCENT, "")
                .tall(150);
        return ChartStack.of(places(brake), places(speed), places(use));
    }

    private XyChart places(XyChart chart) {
        return chart.markX(0, "turn-in").markX(apex, "apex");
    }

    private XyChart behind(XyChart chart, int index, double factor, String column, String name) {
        if (index == planned) {
            return chart;
        }
        Stretch plan = stretch(entries.get(planned));
        return chart.line(name, plan.stations(), Say.times(factor, plan.column(column)), Style.AIDE);
    }

    /** The way of both axles through the friction ellipse. */
    public XyChart friction(int index) {
        XyChart chart = EntryPictures.ellipsePanel(study, entries.get(index));
        return chart.heading("")
                .axes(chart.x().between(-110, 110), chart.y().between(-110, 110))
                .tall(300);
    }

    /**
     * Time lost on the plan by all releases of the same peak over where their brake is off; those with too little
     * margin have a mark of their own, and so has this one.
     *
     * @param rungs how many entries in a row have the same peak
     */
    public XyChart map(int index, int rungs) {
        double best = entries.get(planned).time();
        int first = index - index % rungs;
        int[] made = IntStream.range(first, first + rungs)
                .filter(i -> entries.get(i).made())
                .toArray();
        int[] kept = IntStream.of(made).filter(i -> findings.get(i).found()).toArray();
        int[] failed = IntStream.range(first, first + rungs)
                .filter(i -> !entries.get(i).made())
                .toArray();
        double worst = Math.max(
                0.1,
                IntStream.of(made)
                        .mapToDouble(i -> entries.get(i).time() - best)
                        .max()
                        .orElse(0));
        ToDoubleFunction<EntryResult> lost = entry -> entry.made() ? entry.time() - best : FAILED * worst;
        Axis off = Axis.of("brake off, metres after turn-in", "m")
                .between(
                        least(entry -> entry.plan().release().end()) - ROOM * to,
                        Math.max(apex, most(entry -> entry.plan().release().end())) + 2 * ROOM * to);
        double top = failed.length > 0 ? WITH_FAILURES : 1 + 2 * ROOM;
        XyChart chart = XyChart.of(
                        off,
                        Axis.of("time lost", "s")
                                .between(
                                        least(entry -> entry.made() ? Math.min(0, entry.time() - best) : 0)
                                                - 0.08 * worst,
                                        top * worst))
                .line("made it", ends(kept), lost(kept, lost), Style.FIRST.with(Marker.DISC));
        if (kept.length < made.length) {
            int[] narrow =
                    IntStream.of(made).filter(i -> !findings.get(i).found()).toArray();
            chart = chart.line(Marks.NARROW, ends(narrow), lost(narrow, lost), Marks.TOO_LITTLE_MARGIN);
        }
        if (failed.length > 0) {
            for (Outcome outcome : Outcome.values()) {
                int[] some = IntStream.of(failed)
                        .filter(i -> entries.get(i).outcome() == outcome)
                        .toArray();
                double[] above = new double[some.length];
                Arrays.fill(above, FAILED * worst);
                chart = some.length == 0
                        ? chart
                        : chart.line(outcome.words(), ends(some), above, Marks.failed(outcome));
            }
            chart = chart.markY(BORDER * worst, "");
        }
        EntryResult chosen = entries.get(index);
        return chart.line(
                        "this release",
                        new double[] {chosen.plan().release().end()},
                        new double[] {lost.applyAsDouble(chosen)},
                        new Style(Ink.BLACK, Dash.NONE, Marker.BOX))
                .markX(0, "turn-in")
                .markX(apex, "apex")
                .tall(200);
    }

    private double[] ends(int[] which) {
        return IntStream.of(which)
                .mapToDouble(i -> entries.get(i).plan().release().end())
                .toArray();
    }

    private double[] lost(int[] which, ToDoubleFunction<EntryResult> lost) {
        return IntStream.of(which)
                .mapToDouble(i -> lost.applyAsDouble(entries.get(i)))
                .toArray();
    }
}
