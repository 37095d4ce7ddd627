package org.foreload.examples.picture;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.foreload.examples.picture.XyChart.Label;
import org.foreload.examples.picture.XyChart.Mark;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XYDataset;

/** The words in a chart: those of marks, in rows at the upper edge where they would overlap, and those at points. */
final class MarkWords extends AbstractXYAnnotation {

    private static final long serialVersionUID = 1L;

    /** Height of a row, px. */
    static final double ROW = 14;

    private static final double GAP = 4;
    private static final double ASCENT = 10;

    private final transient List<Mark> upright;
    private final transient List<Mark> level;
    private final transient List<Label> labels;

    MarkWords(List<Mark> told, List<Mark> all, List<Label> labels) {
        this.upright = told.stream().filter(Mark::upright).toList();
        this.level = all.stream().filter(mark -> !mark.upright()).toList();
        this.labels = labels;
    }

    /** How many rows the words of upright marks take. */
    static int rows(List<Mark> marks, double[] ends, double width) {
        List<double[]> taken = new ArrayList<>();
        int rows = 0;
        for (Mark mark : marks) {
            if (mark.upright() && !mark.label().isEmpty()) {
                double x = (mark.at() - ends[0]) / (ends[1] - ends[0]) * width;
                rows = Math.max(rows, (int) place(mark.label(), x, 0, width, taken)[1] + 1);
            }
        }
        return rows;
    }

    /** Whether a level mark with words lies so high that they need room above it. */
    static boolean above(List<Mark> marks, double[] ends) {
        return marks.stream()
                .anyMatch(mark ->
                        !mark.upright() && !mark.label().isEmpty() && mark.at() > ends[0] + HIGH * (ends[1] - ends[0]));
    }

    private static final double HIGH = 0.85;

    /** Left end and row of the words of a mark at x: beside it, in the first row with room. */
    private static double[] place(String text, double x, double from, double to, List<double[]> taken) {
        double width = width(text);
        double left = x + GAP + width <= to ? x + GAP : x - GAP - width;
        double begin = Math.max(from, left);
        int row = 0;
        while (overlaps(taken, begin, begin + width, row)) {
            row++;
        }
        taken.add(new double[] {begin, begin + width, row});
        return new double[] {begin, row};
    }

    private static boolean overlaps(List<double[]> taken, double left, double right, int row) {
        return taken.stream().anyMatch(one -> one[2] == row && left < one[1] + GAP && right > one[0] - GAP);
    }

    private static double width(String text) {
        return FixedFont.of(Look.TICKS).width(text);
    }

    @Override
    public void draw(
            Graphics2D graphics,
            XYPlot plot,
            Rectangle2D area,
            ValueAxis across,
            ValueAxis up,
            int index,
            PlotRenderingInfo info) {
        graphics.setFont(Look.TICKS);
        List<double[]> taken = new ArrayList<>();
        for (Mark mark : upright) {
            if (!mark.label().isEmpty()) {
                double x = across.valueToJava2D(mark.at(), area, plot.getDomainAxisEdge());
                double[] place = place(mark.label(), x, area.getMinX(), area.getMaxX(), taken);
                write(graphics, mark.label(), place[0], area.getMinY() + ROW * (place[1] + 1) - 3);
            }
        }
        for (Mark mark : level) {
            double y = up.valueToJava2D(mark.at(), area, plot.getRangeAxisEdge());
            boolean above = y - ROW > area.getMinY();
            double base = above ? y - GAP : y + ASCENT + GAP;
            double right = area.getMaxX() - width(mark.label()) - GAP;
            double left = area.getMinX() + GAP;
            Rectangle2D there = new Rectangle2D.Double(right, base - ASCENT, width(mark.label()), ASCENT + GAP);
            write(graphics, mark.label(), crossed(there, plot, area, across, up) ? left : right, base);
        }
        for (Label label : labels) {
            double x = across.valueToJava2D(label.x(), area, plot.getDomainAxisEdge());
            double y = up.valueToJava2D(label.y(), area, plot.getRangeAxisEdge());
            write(graphics, label, x, y, area);
        }
    }

    /** Whether a line of the chart goes through a place. */
    private static boolean crossed(Rectangle2D place, XYPlot plot, Rectangle2D area, ValueAxis across, ValueAxis up) {
        XYDataset data = plot.getDataset();
        for (int series = 0; series < data.getSeriesCount(); series++) {
            double[] last = null;
            for (int item = 0; item < data.getItemCount(series); item++) {
                double[] point = {
                    across.valueToJava2D(data.getXValue(series, item), area, plot.getDomainAxisEdge()),
                    up.valueToJava2D(data.getYValue(series, item), area, plot.getRangeAxisEdge())
                };
                if (last != null && place.intersectsLine(last[0], last[1], point[0], point[1])) {
                    return true;
                }
                last = point;
            }
        }
        return false;
    }

    private static void write(Graphics2D graphics, Label label, double x, double y, Rectangle2D area) {
        double width = width(label.text());
        double away = 2 * GAP;
        double left = switch (label.side()) {
            case ABOVE, BELOW -> x - width / 2;
            case LEFT -> x - away - width;
            case RIGHT -> x + away;
        };
        double base = switch (label.side()) {
            case ABOVE -> y - away;
            case BELOW -> y + away + ASCENT;
            case LEFT, RIGHT -> y + ASCENT / 2 - 1;
        };
        double inside = Math.max(area.getMinX() + GAP, Math.min(area.getMaxX() - GAP - width, left));
        write(graphics, label.text(), inside, base);
    }

    /** Words on a white ground, so that lines behind do not disturb them. */
    private static void write(Graphics2D graphics, String text, double left, double base) {
        if (text.isEmpty()) {
            return;
        }
        graphics.setPaint(new Color(255, 255, 255, 215));
        graphics.fill(new Rectangle2D.Double(left - 1, base - ASCENT, width(text) + 2, ASCENT + 3));
        graphics.setPaint(Look.TEXT);
        graphics.drawString(text, (float) left, (float) base);
    }
}
