package org.foreload.examples.gallery;

import java.util.Arrays;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.Words;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.Style.Dash;
import org.foreload.examples.picture.Style.Ink;
import org.foreload.examples.picture.Style.Marker;
import org.foreload.examples.picture.XyChart;
import org.foreload.path.Path;

/** The corner from above, and where on it the car brakes. */
final class PlanView {

    /** Distance between points of the edges, m. */
    private static final double STEP = 2;

    /** Width of the ribbon at the peak of the brake, as a share of the track's. */
    private static final double RIBBON = 0.55;

    /** Width of the plot, and what stands above and below it, px: of a whole picture and of a small one. */
    private static final double PLOT_WIDTH = 760;

    private static final double SMALL_WIDTH = 356;
    private static final double AROUND = 86;
    private static final double AROUND_SMALL = 112;

    private static final double LEAST_HEIGHT = 110;
    private static final double MOST_HEIGHT = 420;
    private static final double MOST_SMALL = 300;

    private final Path path;
    private final Stretch stretch;
    private final EntryResult entry;
    private final boolean terse;

    private PlanView(Path path, Stretch stretch, EntryResult entry, boolean terse) {
        this.path = path;
        this.stretch = stretch;
        this.entry = entry;
        this.terse = terse;
    }

    static XyChart of(Path path, EntryResult entry, double apex) {
        return of(path, entry, apex, Stretch.of(entry, apex));
    }

    /** The same of a given part of the line. */
    static XyChart of(Path path, EntryResult entry, double apex, Stretch stretch) {
        return new PlanView(path, stretch, entry, false).chart(apex);
    }

    /** The same with a short legend, for a small picture beside which the stations stand in words. */
    static XyChart small(Path path, EntryResult entry, double apex, Stretch stretch) {
        return new PlanView(path, stretch, entry, true).chart(apex);
    }

    private XyChart chart(double apex) {
        double[] s = stretch.stations();
        double[] offsets = stretch.column("offset_m");
        Points left = edge(1);
        Points right = edge(-1);
        Points line = new Points(s.length);
        for (int i = 0; i < s.length; i++) {
            line.set(i, path, s[i], offsets[i]);
        }
        Style edges = new Style(Ink.BLACK, Dash.THIN, Marker.NONE);
        XyChart chart = XyChart.of(Axis.of("along the approach", "m"), Axis.of("to its left", "m"))
                .heading("The corner from above")
                .line(terse ? "" : "edge of the track", left.x, left.y, edges)
                .line("", right.x, right.y, edges)
                .line(terse ? "" : "line driven", line.x, line.y, Style.FIRST);
        chart = ribbon(chart, s, offsets);
        chart = points(chart, s, offsets, apex);
        return chart.equal().tall(height(left, right));
    }

    private double height(Points left, Points right) {
        double wide = Math.max(left.width(left.x, right.x), 1);
        double high = left.width(left.y, right.y);
        double plot = (terse ? SMALL_WIDTH : PLOT_WIDTH) * 1.07 * high / wide;
        double most = terse ? MOST_SMALL : MOST_HEIGHT;
        return (terse ? AROUND_SMALL : AROUND) + Math.max(LEAST_HEIGHT, Math.min(most, plot));
    }

    private Points edge(int side) {
        double from = Math.max(stretch.from(), path.start());
        double to = Math.min(stretch.to(), path.end());
        int count = (int) Math.ceil((to - from) / STEP) + 1;
        Points points = new Points(count);
        for (int i = 0; i < count; i++) {
            double s = from + (to - from) * i / (count - 1);
            points.set(i, path, s, side > 0 ? path.widthLeft(s) : -path.widthRight(s));
        }
        return points;
    }

    /** Around the line driven, as wide as the brake is hard. */
    private XyChart ribbon(XyChart chart, double[] s, double[] offsets) {
        double[] brake = stretch.column("brake_mps2");
        double peak = Arrays.stream(brake).max().orElse(0);
        if (!(peak > 0)) {
            return chart;
        }
        Points outline = new Points(2 * s.length);
        for (int i = 0; i < s.length; i++) {
            double half = RIBBON / 2 * (path.widthLeft(s[i]) + path.widthRight(s[i])) * Math.max(0, brake[i]) / peak;
            outline.set(i, path, s[i], offsets[i] + half);
            outline.set(2 * s.length - 1 - i, path, s[i], offsets[i] - half);
        }
        return chart.area(
                terse ? "brake" : Say.of("brake (widest: %.1f m/s²)", peak),
                outline.x,
                outline.y,
                new Style(Ink.ORANGE, Dash.NONE, Marker.NONE));
    }

    private XyChart points(XyChart chart, double[] s, double[] offsets, double apex) {
        // Turn-in comes first, so that a release that begins there is not hidden behind it.
        XyChart more = point(chart, "turn-in", 0, s, offsets, Marks.TURN_IN);
        if (entry.braked()) {
            var release = entry.plan().release();
            more = point(more, "brake point", entry.plan().brakePoint(), s, offsets, Marks.BRAKE_POINT);
            if (!Words.atOnce(entry.plan()) && !Words.intoRelease(entry.plan())) {
                more = point(more, "release point", release.start(), s, offsets, Marks.RELEASE_POINT);
            }
            more = point(more, "brake off", release.end(), s, offsets, Marks.BRAKE_OFF);
            more = point(more, "pick-up", entry.pickUp(), s, offsets, Marks.PICK_UP);
        }
        more = point(more, "apex", apex, s, offsets, Marks.APEX);
        return entry.made()
                ? point(more, "slowest point", entry.minimumSpeedAt(), s, offsets, Marks.SLOWEST)
                : point(more, entry.outcome().words(), s[s.length - 1], s, offsets, Marks.failed(entry.outcome()));
    }

    /** A point on the line driven, if the car got there. */
    private XyChart point(XyChart chart, String name, double at, double[] s, double[] offsets, Style style) {
        if (s.length == 0 || !(at >= s[0] && at <= s[s.length - 1])) {
            return chart;
        }
        int found = Arrays.binarySearch(s, at);
        int i = Math.max(0, Math.min(s.length - 2, found >= 0 ? found : -found - 2));
        double share = (at - s[i]) / (s[i + 1] - s[i]);
        Points one = new Points(1);
        one.set(0, path, at, offsets[i] + Math.max(0, Math.min(1, share)) * (offsets[i + 1] - offsets[i]));
        // As boards would show it: a brake point at the metre before, never after.
        double shown = style.equals(Marks.BRAKE_POINT) ? Math.floor(at) : at;
        return chart.line(terse ? name : name + " " + Numbers.rounded(shown, 0) + " m", one.x, one.y, style);
    }

    /** Points of the plane. */
    private static final class Points {
        private final double[] x;
        private final double[] y;

        Points(int count) {
            x = new double[count];
            y = new double[count];
        }

        /** A point beside the line, to the left where the offset is positive. */
        void set(int i, Path path, double s, double offset) {
            Path.Point on = path.position(s);
            double heading = path.heading(s);
            x[i] = on.x() - offset * Math.sin(heading) - path.position(0).x();
            y[i] = on.y() + offset * Math.cos(heading) - path.position(0).y();
        }

        double width(double[] one, double[] other) {
            double low = Math.min(
                    Arrays.stream(one).min().orElse(0),
                    Arrays.stream(other).min().orElse(0));
            double high = Math.max(
                    Arrays.stream(one).max().orElse(0),
                    Arrays.stream(other).max().orElse(0));
            return high - low;
        }
    }
}
