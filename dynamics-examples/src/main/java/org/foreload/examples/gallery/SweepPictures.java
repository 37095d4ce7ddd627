package org.foreload.examples.gallery;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.foreload.examples.answer.AgainstLimit;
import org.foreload.examples.answer.Words;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.BarChart;
import org.foreload.examples.picture.BarChart.Bar;
import org.foreload.examples.picture.Panel;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.Style.Dash;
import org.foreload.examples.picture.Style.Ink;
import org.foreload.examples.picture.Style.Marker;
import org.foreload.examples.picture.XyChart;
import org.foreload.gap.TimeSplit;
import org.foreload.optimum.Optimum;
import org.foreload.optimum.Remainder;
import org.foreload.optimum.ShapeRanking;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.Exploration.Candidate;

/** Which release is best, and what the others do. */
public final class SweepPictures {

    /** Marks of the peaks of a sweep, the lighter the softer. */
    private static final List<Style> PEAKS = List.of(
            Style.points(Ink.SKY, Marker.RING),
            Style.points(Ink.SKY, Marker.DISC),
            Style.points(Ink.BLUE, Marker.DISC),
            Style.points(Ink.BLACK, Marker.DISC));

    /** Distance between marks of different peaks at the same place, as a share of the axis. */
    private static final double ASIDE = 0.018;

    /** Where failures stand above the slowest, and how far from each other, as shares of the spread of times. */
    private static final double FAILURES = 0.12;

    private static final double FAILURE_STEP = 0.07;

    private SweepPictures() {}

    /** The best of a sweep, its landscape, and where the best is quicker than straight-line braking. */
    public static Picture explored(CornerStudy study, Exploration sweep) {
        List<List<Panel>> rows = new ArrayList<>();
        Optional<EntryResult> best = sweep.best().map(Candidate::entry);
        best.ifPresent(entry -> rows.add(List.of(EntryPictures.planPanel(study, entry))));
        rows.add(List.of(releaseEnds(sweep), inHand(sweep)));
        String gained = gapRow(study, best, sweep.baseline().map(Candidate::entry), rows);
        return new Picture(
                "Which release is best: " + Say.where(study),
                found(sweep) + " " + landscapeWords(sweep) + gained,
                rows);
    }

    /** The landscape of a sweep alone. */
    public static Picture landscape(CornerStudy study, Exploration sweep) {
        return new Picture(
                "Every release of the sweep: " + Say.where(study),
                found(sweep) + " " + landscapeWords(sweep),
                List.of(List.of(releaseEnds(sweep), inHand(sweep))));
    }

    /** The best release of any shape, beside straight-line braking and the best of the simple shapes. */
    public static Picture best(CornerStudy study, Optimum optimum, Optional<Remainder> remainder, AgainstLimit limit) {
        EntryResult best = optimum.entry().orElseThrow();
        List<List<Panel>> rows = new ArrayList<>();
        rows.add(List.of(EntryPictures.planPanel(study, best)));
        rows.add(List.of(EntryPictures.coursePanel(study, best)));
        String gained = gapRow(study, Optional.of(best), optimum.baseline(), rows);
        limit.loss().ifPresent(loss -> rows.add(List.of(EntryPictures.lossPanel(study, best, loss))));
        List<Panel> bars = new ArrayList<>();
        bars.add(families(optimum, best));
        remainder.ifPresent(one -> bars.add(causes(one)));
        rows.add(bars);
        return new Picture(
                "The best release: " + Say.where(study),
                Say.how(best)
                        + Say.of(
                                " That is %s the ideal bound of %.2f s.",
                                Words.besideBound(optimum.aboveBound()), optimum.boundTime())
                        + gained + " " + limit.sentence(),
                rows);
    }

    private static String found(Exploration sweep) {
        return sweep.best()
                .map(best -> "Best of " + sweep.candidates().size() + " releases: " + Say.how(best.entry()))
                .orElse("None of the " + sweep.candidates().size()
                        + " releases makes this corner with the margin asked for.");
    }

    private static String landscapeWords(Exploration sweep) {
        long failed =
                sweep.candidates().stream().filter(one -> !one.entry().made()).count();
        String fail = failed == 0 ? "" : ", and the " + failed + " that fail, in one row for each way to fail";
        return "Each mark is one release from its own brake point; lower is quicker; "
                + "softer peaks stand to the left of harder ones. Above the line: "
                + "the slowest" + fail + ".";
    }

    /** Adds the gap curve, where there are two entries to compare; answers what it says. */
    private static String gapRow(
            CornerStudy study, Optional<EntryResult> best, Optional<EntryResult> other, List<List<Panel>> rows) {
        if (best.isEmpty()
                || other.isEmpty()
                || !best.get().made()
                || !other.get().made()
                || best.get().equals(other.get())
                || other.get().profile().isEmpty()) {
            return "";
        }
        TimeSplit split =
                TimeSplit.between(study.simulator().car(), study.simulator().apex(), best.get(), other.get());
        rows.add(List.of(
                EntryPictures.gapPanel(study, best.get(), split).heading("Time ahead of straight-line braking")));
        return " Compared with straight-line braking: " + split.sentence();
    }

    private static XyChart releaseEnds(Exploration sweep) {
        return landscape(
                sweep,
                sweep.candidates(),
                Axis.of("brake off, from turn-in", "m"),
                one -> one.entry().plan().release().end());
    }

    private static XyChart inHand(Exploration sweep) {
        List<Candidate> made = sweep.candidates().stream()
                .filter(one -> one.made() && Double.isFinite(one.inHand()))
                .toList();
        XyChart chart = landscape(sweep, made, Axis.of("in hand", "m"), Candidate::inHand)
                .heading("Time against what is in hand");
        double slowest = slowest(sweep);
        List<Candidate> front = made.stream()
                .filter(one -> one.onFront() && one.entry().time() <= slowest)
                .sorted((a, b) -> Double.compare(a.inHand(), b.inHand()))
                .toList();
        return chart.line(
                "best trade-offs",
                values(front, Candidate::inHand),
                values(front, one -> one.entry().time()),
                new Style(Ink.BLACK, Dash.THIN, Marker.NONE));
    }

    /**
     * Time up to which releases are drawn to scale, s: slower ones would press the others together. All of them, unless
     * a few stand far off.
     */
    private static double slowest(Exploration sweep) {
        double[] times = sweep.candidates().stream()
                .map(Candidate::entry)
                .filter(EntryResult::made)
                .mapToDouble(EntryResult::time)
                .sorted()
                .toArray();
        if (times.length == 0) {
            return sweep.boundTime();
        }
        double most = times[(int) (SHOWN * (times.length - 1))];
        double reach = most + (most - times[0]) / 2;
        return times[times.length - 1] <= reach ? times[times.length - 1] : most;
    }

    private static final double SHOWN = 0.9;

    private static XyChart landscape(
            Exploration sweep, List<Candidate> candidates, Axis axis, ToDoubleFunction<Candidate> place) {
        double slowest = slowest(sweep);
        XyChart chart = XyChart.of(axis, Axis.of("time", "s"))
                .heading("Time against brake off and peak")
                .tall(380);
        List<List<Double>> groups = groups(sweep.candidates().stream()
                .map(one -> one.entry().plan().peakDeceleration())
                .toList());
        double[] places = candidates.stream().mapToDouble(place).sorted().toArray();
        double step = places.length == 0 ? 0 : ASIDE * (places[places.length - 1] - places[0]);
        Predicate<Candidate> shown = one -> one.entry().made() && one.entry().time() <= slowest;
        for (int i = 0; i < groups.size(); i++) {
            List<Double> group = groups.get(i);
            double aside = step * (i - (groups.size() - 1) / 2.0);
            chart = marks(
                    chart,
                    words(group),
                    candidates,
                    one -> one.made()
                            && shown.test(one)
                            && group.contains(one.entry().plan().peakDeceleration()),
                    one -> place.applyAsDouble(one) + aside,
                    one -> one.entry().time(),
                    PEAKS.get(i));
        }
        double right = step * (groups.size() + 1) / 2.0;
        chart = marks(
                chart,
                Marks.NARROW,
                candidates,
                one -> !one.made() && shown.test(one),
                one -> place.applyAsDouble(one) + right,
                one -> one.entry().time(),
                Marks.TOO_LITTLE_MARGIN);
        Optional<Candidate> best = sweep.best().filter(one -> Double.isFinite(place.applyAsDouble(one)));
        if (best.isPresent()) {
            chart = marks(
                    chart,
                    "the best",
                    List.of(best.get()),
                    one -> true,
                    place,
                    one -> one.entry().time(),
                    Marks.BEST);
        }
        return failures(chart, sweep, slowest, candidates, place);
    }

    /** Peaks in at most as many groups as there are marks: the closest ones together. */
    private static List<List<Double>> groups(List<Double> peaks) {
        List<List<Double>> groups = new ArrayList<>();
        peaks.stream().distinct().sorted().forEach(peak -> groups.add(new ArrayList<>(List.of(peak))));
        while (groups.size() > PEAKS.size()) {
            int closest = 1;
            for (int i = 2; i < groups.size(); i++) {
                if (groups.get(i).get(0) - groups.get(i - 1).get(0)
                        < groups.get(closest).get(0) - groups.get(closest - 1).get(0)) {
                    closest = i;
                }
            }
            groups.get(closest - 1).addAll(groups.remove(closest));
        }
        return groups;
    }

    private static String words(List<Double> group) {
        String first = Say.of("%.1f", group.get(0));
        String last = Say.of("%.1f", group.get(group.size() - 1));
        return "peak " + (first.equals(last) ? first : first + " to " + last) + " m/s²";
    }

    /** Entries without a time, and far slower ones, above the others: one height and one mark for each way to end. */
    private static XyChart failures(
            XyChart chart,
            Exploration sweep,
            double slowest,
            List<Candidate> candidates,
            ToDoubleFunction<Candidate> place) {
        if (candidates.stream()
                .allMatch(one -> one.entry().made() && one.entry().time() <= slowest)) {
            return chart;
        }
        double quickest = sweep.candidates().stream()
                .map(Candidate::entry)
                .filter(EntryResult::made)
                .mapToDouble(EntryResult::time)
                .min()
                .orElse(slowest);
        double spread = slowest > quickest ? slowest - quickest : 1;
        XyChart more = marks(
                chart.markY(slowest + FAILURES / 2 * spread, ""),
                Say.of("slower than %.1f s", slowest),
                candidates,
                one -> one.entry().made() && one.entry().time() > slowest,
                place,
                one -> slowest + FAILURES * spread,
                Marks.TOO_SLOW);
        int row = 1;
        for (Outcome outcome :
                List.of(Outcome.RAN_WIDE, Outcome.SPUN, Outcome.LOCKED_UP, Outcome.STOPPED, Outcome.ROLLED_OVER)) {
            double height = slowest + (FAILURES + FAILURE_STEP * row) * spread;
            more = marks(
                    more,
                    outcome.words(),
                    candidates,
                    one -> one.entry().outcome() == outcome,
                    place,
                    one -> height,
                    Marks.failed(outcome));
            row++;
        }
        return more;
    }

    private static XyChart marks(
            XyChart chart,
            String name,
            List<Candidate> candidates,
            Predicate<Candidate> which,
            ToDoubleFunction<Candidate> place,
            ToDoubleFunction<Candidate> height,
            Style style) {
        List<Candidate> some = candidates.stream().filter(which).toList();
        return some.isEmpty() ? chart : chart.line(name, values(some, place), values(some, height), style);
    }

    private static double[] values(List<Candidate> candidates, ToDoubleFunction<Candidate> read) {
        return candidates.stream().mapToDouble(read).toArray();
    }

    private static BarChart families(Optimum optimum, EntryResult best) {
        return new BarChart(
                Say.of("Best of each simple shape; the search leaves %.0f ms open", 1000 * ShapeRanking.TIE),
                Axis.of("slower than the best", "ms"),
                optimum.families().stream()
                        .map(family -> {
                            double lost = 1000 * (family.entry().time() - best.time());
                            return Bar.of(family.shape(), lost, Say.of("%.0f ms", lost), Ink.BLUE);
                        })
                        .toList());
    }

    private static BarChart causes(Remainder remainder) {
        return new BarChart(
                "What makes up the time above the ideal bound",
                Axis.of("time", "ms"),
                remainder.parts().stream()
                        .map(part -> Bar.of(
                                part.cause(), 1000 * part.time(), Say.of("%.0f ms", 1000 * part.time()), Ink.VERMILION))
                        .toList());
    }
}
