package org.foreload.examples.picture;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/**
 * Charts above each other over one common axis, which only the lowest one labels. Marks are labelled in the first one.
 *
 * @param charts from top to bottom; the axis along is that of the first, as long as the data of all
 */
public record ChartStack(List<XyChart> charts) implements Panel {

    /** Makes all charts as wide as the widest. */
    public ChartStack {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (XyChart chart : charts) {
            double[] ends = Ends.of(chart.x(), chart.series(), chart.areas(), chart.marks(), true);
            low = Math.min(low, ends[0]);
            high = Math.max(high, ends[1]);
        }
        Axis common = charts.get(0).x().between(low, high);
        charts = charts.stream().map(chart -> chart.axes(common, chart.y())).toList();
    }

    /** Charts from top to bottom. */
    public static ChartStack of(XyChart... charts) {
        return new ChartStack(List.of(charts));
    }

    @Override
    public double height(double width) {
        return charts.stream().mapToDouble(chart -> chart.height(width)).sum();
    }

    @Override
    public void draw(Graphics2D graphics, Rectangle2D area) {
        double scale = area.getHeight() / height(area.getWidth());
        double y = area.getMinY();
        for (int i = 0; i < charts.size(); i++) {
            XyChart chart = charts.get(i);
            double height = chart.height(area.getWidth()) * scale;
            new XyDrawing(chart, i == charts.size() - 1, i == 0)
                    .draw(graphics, new Rectangle2D.Double(area.getMinX(), y, area.getWidth(), height));
            y += height;
        }
    }
}
