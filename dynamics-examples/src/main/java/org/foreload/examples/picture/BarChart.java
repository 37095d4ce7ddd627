package org.foreload.examples.picture;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Objects;
import org.foreload.examples.picture.Style.Dash;
import org.foreload.examples.picture.Style.Ink;
import org.foreload.examples.picture.Style.Marker;

/**
 * Bars lying on each other, each with its name at the left and its number at its end.
 *
 * @param heading what stands above it; may be empty
 * @param axis what the bars measure
 * @param bars from top to bottom
 */
public record BarChart(String heading, Axis axis, List<Bar> bars) implements Panel {

    private static final double ROW = 22;
    private static final double HEAD = 70;
    private static final double HALF = 0.34;

    /** Room for the numbers beside the bars, as a share of the axis. */
    private static final double ROOM = 0.16;

    /** Copies the bars. */
    public BarChart {
        Objects.requireNonNull(heading);
        Objects.requireNonNull(axis);
        bars = List.copyOf(bars);
    }

    /**
     * One bar, from zero.
     *
     * @param name at its left
     * @param value its end; NaN for no bar
     * @param low lower end of the interval that is known to hold the value; NaN for none
     * @param high upper end; NaN for none
     * @param words at its end
     * @param ink its colour
     */
    public record Bar(String name, double value, double low, double high, String words, Ink ink) {

        /** A bar without interval. */
        public static Bar of(String name, double value, String words, Ink ink) {
            return new Bar(name, value, Double.NaN, Double.NaN, words, ink);
        }
    }

    @Override
    public double height(double width) {
        return HEAD + ROW * Math.max(1, bars.size());
    }

    @Override
    public void draw(Graphics2D graphics, Rectangle2D area) {
        List<String> names = bars.stream().map(Bar::name).toList();
        new XyDrawing(chart(), true, true, names).draw(graphics, area);
    }

    /** The bars as a chart. */
    private XyChart chart() {
        double low = 0;
        double high = 0;
        for (Bar bar : bars) {
            for (double end : new double[] {bar.value(), bar.low(), bar.high()}) {
                low = Double.isFinite(end) ? Math.min(low, end) : low;
                high = Double.isFinite(end) ? Math.max(high, end) : high;
            }
        }
        double room = high > low ? ROOM * (high - low) : 1;
        Axis wide = axis.between(
                Double.isNaN(axis.low()) && low < 0 ? low - room : axis.low(),
                Double.isNaN(axis.high()) && (high > 0 || low == 0) ? high + room : axis.high());
        XyChart chart = XyChart.of(wide, Axis.of("bar", "–").between(-1, bars.size()))
                .heading(heading)
                .markX(0, "");
        for (int i = 0; i < bars.size(); i++) {
            Bar bar = bars.get(i);
            double end = Double.isNaN(bar.value()) ? 0 : bar.value();
            chart = chart.area(
                    "",
                    new double[] {0, end, end, 0},
                    new double[] {i - HALF, i - HALF, i + HALF, i + HALF},
                    new Style(bar.ink(), Dash.THIN, Marker.NONE));
            double most = end;
            if (Double.isFinite(bar.low()) && Double.isFinite(bar.high())) {
                chart = chart.line(
                        "",
                        new double[] {bar.low(), bar.high()},
                        new double[] {i, i},
                        new Style(Ink.BLACK, Dash.THIN, Marker.BAR));
                most = bar.high();
            }
            // An interval up to the end of an axis that is fixed leaves its number no room at the right.
            boolean full = most > end && most > axis.high() - ROOM * (axis.high() - low);
            XyChart.Side side = end < 0 || full ? XyChart.Side.LEFT : XyChart.Side.RIGHT;
            chart = chart.label(full ? bar.low() : most, i, bar.words(), side);
        }
        return chart;
    }
}
