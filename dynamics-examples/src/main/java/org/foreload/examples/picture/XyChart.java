package org.foreload.examples.picture;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.foreload.trace.Trace;

/**
 * A chart of lines and points over two axes. Immutable; each method returns a copy with one thing more.
 *
 * @param heading what stands above it; may be empty
 * @param x axis along
 * @param y axis upwards
 * @param areas filled areas, drawn first
 * @param series lines and points
 * @param marks lines across the chart, with a label
 * @param labels words at points
 * @param height px
 * @param equalScale whether a unit of both axes shall be equally long
 */
public record XyChart(
        String heading,
        Axis x,
        Axis y,
        List<Series> areas,
        List<Series> series,
        List<Mark> marks,
        List<Label> labels,
        double height,
        boolean equalScale)
        implements Panel {

    /** Usual height, px. */
    private static final double USUAL_HEIGHT = 300;

    /** Copies the lists. */
    public XyChart {
        Objects.requireNonNull(heading);
        Objects.requireNonNull(x);
        Objects.requireNonNull(y);
        areas = List.copyOf(areas);
        series = List.copyOf(series);
        marks = List.copyOf(marks);
        labels = List.copyOf(labels);
    }

    /**
     * Numbers that belong together.
     *
     * @param name for the legend; empty to stay out of it
     * @param xs copied; NaN interrupts the line
     * @param ys copied, as many
     * @param style how it looks
     */
    public record Series(String name, double[] xs, double[] ys, Style style) {

        /** Copies the numbers. */
        public Series {
            Objects.requireNonNull(name);
            Objects.requireNonNull(style);
            if (xs.length != ys.length) {
                throw new IllegalArgumentException(name + " has " + xs.length + " x and " + ys.length + " y");
            }
            xs = xs.clone();
            ys = ys.clone();
        }

        /** A copy of the numbers. */
        @Override
        public double[] xs() {
            return xs.clone();
        }

        /** A copy of the numbers. */
        @Override
        public double[] ys() {
            return ys.clone();
        }
    }

    /**
     * A line across the chart.
     *
     * @param upright whether it stands at an x; otherwise it lies at a y
     * @param at where
     * @param label its words; may be empty
     */
    public record Mark(boolean upright, double at, String label) {}

    /**
     * Words at a point.
     *
     * @param x where
     * @param y where
     * @param text words
     * @param side on which side of the point they stand
     */
    public record Label(double x, double y, String text, Side side) {}

    /** Sides of a point. */
    public enum Side {
        /** Above it. */
        ABOVE,
        /** Below it. */
        BELOW,
        /** To the left of it. */
        LEFT,
        /** To the right of it. */
        RIGHT
    }

    /** A chart with nothing in it. */
    public static XyChart of(Axis x, Axis y) {
        return new XyChart("", x, y, List.of(), List.of(), List.of(), List.of(), USUAL_HEIGHT, false);
    }

    /** The same with a heading. */
    public XyChart heading(String text) {
        return new XyChart(text, x, y, areas, series, marks, labels, height, equalScale);
    }

    /** The same with one more line or set of points. */
    public XyChart line(String name, double[] xs, double[] ys, Style style) {
        List<Series> more = plus(series, new Series(name, xs, ys, style));
        return new XyChart(heading, x, y, areas, more, marks, labels, height, equalScale);
    }

    /** The same with one more line: a column of a trace over another. */
    public XyChart line(String name, Trace trace, String across, String up, Style style) {
        return line(name, trace.column(across).values(), trace.column(up).values(), style);
    }

    /** The same with one more filled area, by its outline. */
    public XyChart area(String name, double[] xs, double[] ys, Style style) {
        List<Series> more = plus(areas, new Series(name, xs, ys, style));
        return new XyChart(heading, x, y, more, series, marks, labels, height, equalScale);
    }

    /** The same with an upright line at an x. */
    public XyChart markX(double at, String label) {
        List<Mark> more = plus(marks, new Mark(true, at, label));
        return new XyChart(heading, x, y, areas, series, more, labels, height, equalScale);
    }

    /** The same with a level line at a y. */
    public XyChart markY(double at, String label) {
        List<Mark> more = plus(marks, new Mark(false, at, label));
        return new XyChart(heading, x, y, areas, series, more, labels, height, equalScale);
    }

    /** The same with words at a point. */
    public XyChart label(double atX, double atY, String text, Side side) {
        List<Label> more = plus(labels, new Label(atX, atY, text, side));
        return new XyChart(heading, x, y, areas, series, marks, more, height, equalScale);
    }

    /** The same with another height in px; the usual one is 300. */
    public XyChart tall(double px) {
        return new XyChart(heading, x, y, areas, series, marks, labels, px, equalScale);
    }

    /** The same with units of equal length on both axes, as a plan needs them. */
    public XyChart equal() {
        return new XyChart(heading, x, y, areas, series, marks, labels, height, true);
    }

    /** The same with other axes. */
    public XyChart axes(Axis across, Axis up) {
        return new XyChart(heading, across, up, areas, series, marks, labels, height, equalScale);
    }

    @Override
    public double height(double width) {
        return height;
    }

    @Override
    public void draw(Graphics2D graphics, Rectangle2D area) {
        new XyDrawing(this, true, true).draw(graphics, area);
    }

    private static <A> List<A> plus(List<A> list, A one) {
        List<A> more = new ArrayList<>(list);
        more.add(one);
        return more;
    }
}
