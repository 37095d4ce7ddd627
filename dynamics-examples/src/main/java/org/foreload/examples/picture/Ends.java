package org.foreload.examples.picture;

import java.awt.geom.Rectangle2D;
import java.util.List;
import org.foreload.examples.picture.XyChart.Mark;
import org.foreload.examples.picture.XyChart.Series;

/** Where axes begin and end. */
final class Ends {

    /** Free space around a plan, as a share of it. */
    private static final double PLAN_MARGIN = 0.03;

    private Ends() {}

    /** Lowest and highest number of a chart on one axis, or what the axis fixes. */
    static double[] of(Axis axis, List<Series> series, List<Series> areas, List<Mark> marks, boolean across) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (List<Series> list : List.of(series, areas)) {
            for (Series one : list) {
                for (double value : across ? one.xs() : one.ys()) {
                    if (Double.isFinite(value)) {
                        low = Math.min(low, value);
                        high = Math.max(high, value);
                    }
                }
            }
        }
        for (Mark mark : marks) {
            if (mark.upright() == across && Double.isFinite(mark.at())) {
                low = Math.min(low, mark.at());
                high = Math.max(high, mark.at());
            }
        }
        if (!(low <= high)) {
            low = 0;
            high = 1;
        }
        low = Double.isNaN(axis.low()) ? low : axis.low();
        high = Double.isNaN(axis.high()) ? high : axis.high();
        return high > low ? new double[] {low, high} : new double[] {low - spread(low), low + spread(low)};
    }

    /** Half the length of an axis whose data are all the same. */
    private static double spread(double value) {
        return value == 0 ? 1 : 0.1 * Math.abs(value);
    }

    /** With free space at those ends that the axis leaves open. */
    static double[] widened(Axis axis, double[] ends, double below, double above) {
        double length = ends[1] - ends[0];
        return new double[] {
            Double.isNaN(axis.low()) ? ends[0] - below * length : ends[0],
            Double.isNaN(axis.high()) ? ends[1] + above * length : ends[1] + Math.max(0, above - 0.04) * length
        };
    }

    /** Ends of both axes so that a unit is equally long on both in this area, and all is inside. */
    static double[][] equal(double[] x, double[] y, Rectangle2D area) {
        double perPixel =
                (1 + 2 * PLAN_MARGIN) * Math.max((x[1] - x[0]) / area.getWidth(), (y[1] - y[0]) / area.getHeight());
        return new double[][] {centred(x, perPixel * area.getWidth()), centred(y, perPixel * area.getHeight())};
    }

    private static double[] centred(double[] ends, double length) {
        double middle = (ends[0] + ends[1]) / 2;
        return new double[] {middle - length / 2, middle + length / 2};
    }
}
