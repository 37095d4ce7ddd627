package org.foreload.examples.picture;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.stream.Stream;
import org.foreload.examples.picture.XyChart.Mark;
import org.foreload.examples.picture.XyChart.Series;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.annotations.XYPolygonAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.data.xy.DefaultXYDataset;

/** Draws one chart. */
final class XyDrawing {

    /** Free space at the ends of an axis, as a share of the data. */
    private static final double MARGIN = 0.04;

    /** Up to so many points each gets its mark; of more, about so many do. */
    private static final int MOST_MARKS = 40;

    private static final int FEW_MARKS = 12;

    private final XyChart chart;
    private final boolean bottom;
    private final boolean told;
    private final List<String> names;

    /**
     * @param chart what to draw
     * @param bottom whether the axis along has its numbers and label
     * @param told whether marks have their labels
     */
    XyDrawing(XyChart chart, boolean bottom, boolean told) {
        this(chart, bottom, told, List.of());
    }

    /** @param names words at 0, 1, 2 … of the upright axis, from above; if there are any, it has no numbers */
    XyDrawing(XyChart chart, boolean bottom, boolean told, List<String> names) {
        this.chart = chart;
        this.bottom = bottom;
        this.told = told;
        this.names = names;
    }

    private double left() {
        double widest = names.stream()
                .mapToDouble(FixedFont.of(Look.TICKS)::width)
                .max()
                .orElse(0);
        return Math.max(Look.LEFT, widest + TICK);
    }

    /** Length of a tick and its distance from the words, px. */
    private static final double TICK = 14;

    /** Smallest size of the words beside the upright axis, px. */
    private static final int LEAST_SIZE = 9;

    /** Free space above and below the plot into which the words beside it may reach, px. */
    private static final double REACH = 8;

    /**
     * The words beside the upright axis, so small that they end inside the chart.
     *
     * @param height of the chart, px
     */
    static Font upright(XyChart chart, boolean bottom, double height) {
        double rows = chart.heading().isEmpty() ? 0 : HEADING_ROW;
        boolean legend = Stream.concat(chart.series().stream(), chart.areas().stream())
                .anyMatch(one -> !one.name().isEmpty());
        double room = height - (bottom ? Look.BOTTOM : Look.BOTTOM_BARE) - rows - (legend ? HEADING_ROW : 0) + REACH;
        int size = Look.WORDS.getSize();
        while (size > LEAST_SIZE && FixedFont.plain(size).width(chart.y().text()) > room) {
            size--;
        }
        return FixedFont.plain(size);
    }

    /** Height of a heading, and of a legend of one row, px. */
    private static final double HEADING_ROW = 20;

    private ValueAxis upright(double[] ends, double height) {
        if (names.isEmpty()) {
            ValueAxis axis = Look.axis(chart.y(), ends[0], ends[1]);
            axis.setLabelFont(upright(chart, bottom, height));
            return axis;
        }
        SymbolAxis axis = new SymbolAxis(null, names.toArray(String[]::new));
        axis.setGridBandsVisible(false);
        axis.setInverted(true);
        axis.setRange(-0.6, names.size() - 0.4);
        Look.dress(axis);
        return axis;
    }

    void draw(Graphics2D graphics, Rectangle2D area) {
        double plotWidth = area.getWidth() - left() - Look.RIGHT;
        double[] x = Ends.of(chart.x(), chart.series(), chart.areas(), chart.marks(), true);
        double[] y = Ends.of(chart.y(), chart.series(), chart.areas(), chart.marks(), false);
        if (!chart.equalScale()) {
            boolean points = chart.series().stream().anyMatch(one -> one.style().dash() == Style.Dash.NONE);
            double aside = points ? MARGIN : MARGIN / 4;
            x = Ends.widened(chart.x(), x, aside, aside);
            int words = told ? MarkWords.rows(chart.marks(), x, plotWidth) : 0;
            double rows = MarkWords.ROW * Math.max(words, MarkWords.above(chart.marks(), y) ? 1 : 0);
            double share = rows / Math.max(1, area.getHeight() - Look.BOTTOM - rows - 40);
            y = Ends.widened(chart.y(), y, MARGIN, MARGIN + share);
        }
        JFreeChart drawn = make(x, y, area.getHeight());
        if (chart.equalScale()) {
            ChartRenderingInfo info = new ChartRenderingInfo();
            drawn.draw(SvgText.nowhere(), area, info);
            double[][] ends = Ends.equal(x, y, info.getPlotInfo().getDataArea());
            drawn = make(ends[0], ends[1], area.getHeight());
        }
        drawn.draw(graphics, area);
    }

    private JFreeChart make(double[] x, double[] y, double height) {
        DefaultXYDataset data = new DefaultXYDataset();
        Sparse renderer = new Sparse();
        renderer.setDrawSeriesLineAsPath(true);
        LegendItemCollection legend = new LegendItemCollection();
        for (Series area : chart.areas()) {
            renderer.addAnnotation(polygon(area), Layer.BACKGROUND);
            if (!area.name().isEmpty()) {
                legend.add(Look.legendOfArea(area.name(), area.style()));
            }
        }
        int index = 0;
        for (Series one : chart.series()) {
            data.addSeries(index, new double[][] {one.xs(), one.ys()});
            dress(renderer, index, one.style());
            if (!one.name().isEmpty()) {
                legend.add(Look.legendOfLine(one.name(), one.style()));
            }
            index++;
        }
        NumberAxis across = Look.axis(chart.x(), x[0], x[1]);
        if (!bottom) {
            across.setLabel(null);
            across.setTickLabelsVisible(false);
        }
        XYPlot plot = new XYPlot(data, across, upright(y, height), renderer);
        plot.setDatasetRenderingOrder(DatasetRenderingOrder.FORWARD);
        plot.setSeriesRenderingOrder(org.jfree.chart.plot.SeriesRenderingOrder.FORWARD);
        plot.setDomainGridlinePaint(Look.GRID);
        plot.setRangeGridlinePaint(Look.GRID);
        plot.setDomainGridlineStroke(Look.HAIR);
        plot.setRangeGridlineStroke(Look.HAIR);
        plot.setFixedRangeAxisSpace(Look.leftSpace(left()));
        plot.setFixedDomainAxisSpace(Look.bottomSpace(bottom ? Look.BOTTOM : Look.BOTTOM_BARE));
        for (Mark mark : chart.marks()) {
            ValueMarker line = new ValueMarker(mark.at(), Look.TEXT, MARK_LINE);
            line.setAlpha(1);
            if (mark.upright()) {
                plot.addDomainMarker(line, Layer.BACKGROUND);
            } else {
                plot.addRangeMarker(line, Layer.BACKGROUND);
            }
        }
        plot.addAnnotation(new MarkWords(told ? chart.marks() : List.of(), chart.marks(), chart.labels()));
        return Look.chart(chart.heading(), plot, legend, left());
    }

    private static final BasicStroke MARK_LINE =
            new BasicStroke(0.9f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 1, new float[] {3, 3}, 0);

    private static XYPolygonAnnotation polygon(Series area) {
        double[] xs = area.xs();
        double[] ys = area.ys();
        double[] corners = new double[2 * xs.length];
        for (int i = 0; i < xs.length; i++) {
            corners[2 * i] = xs[i];
            corners[2 * i + 1] = ys[i];
        }
        boolean outlined = area.style().dash() != Style.Dash.NONE;
        return new XYPolygonAnnotation(
                corners,
                outlined ? area.style().dash().stroke() : null,
                outlined ? area.style().ink().color() : null,
                Look.areaPaint(area.style()));
    }

    private static void dress(Sparse renderer, int index, Style style) {
        boolean marked = style.marker() != Style.Marker.NONE;
        renderer.setSeriesPaint(index, style.ink().color());
        renderer.setSeriesStroke(index, style.dash().stroke());
        renderer.setSeriesOutlineStroke(index, new BasicStroke(1.6f));
        renderer.setSeriesLinesVisible(index, style.dash() != Style.Dash.NONE);
        renderer.setSeriesShapesVisible(index, marked);
        renderer.setSeriesShapesFilled(index, style.marker().filled());
        renderer.setSeriesShape(index, style.marker().shape(Look.MARK));
        renderer.setDrawOutlines(true);
    }

    /** Marks only some points of a line that has many. */
    private static final class Sparse extends XYLineAndShapeRenderer {

        private static final long serialVersionUID = 1L;

        Sparse() {
            super(true, true);
        }

        @Override
        public boolean getItemShapeVisible(int series, int item) {
            int count = getPlot().getDataset().getItemCount(series);
            boolean all = count <= MOST_MARKS || !getItemLineVisible(series, item);
            return super.getItemShapeVisible(series, item) && (all || item % Math.max(1, count / FEW_MARKS) == 0);
        }
    }
}
