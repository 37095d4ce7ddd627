package org.foreload.examples.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.Objects;

/**
 * How a series looks. Two series of a chart should differ in more than their ink.
 *
 * @param ink colour
 * @param dash line
 * @param marker mark at points; at a few of them where there are many
 */
public record Style(Ink ink, Dash dash, Marker marker) {

    /** A blue solid line. */
    public static final Style FIRST = new Style(Ink.BLUE, Dash.SOLID, Marker.NONE);

    /** A vermilion dashed line. */
    public static final Style SECOND = new Style(Ink.VERMILION, Dash.DASHED, Marker.NONE);

    /** A green dotted line. */
    public static final Style THIRD = new Style(Ink.GREEN, Dash.DOTTED, Marker.NONE);

    /** A purple line of dashes and dots. */
    public static final Style FOURTH = new Style(Ink.PURPLE, Dash.DASH_DOT, Marker.NONE);

    /** A thin grey line, for what other lines are compared with. */
    public static final Style AIDE = new Style(Ink.GREY, Dash.THIN, Marker.NONE);

    /** Checks that all is there. */
    public Style {
        Objects.requireNonNull(ink);
        Objects.requireNonNull(dash);
        Objects.requireNonNull(marker);
    }

    /** Points without a line. */
    public static Style points(Ink ink, Marker marker) {
        return new Style(ink, Dash.NONE, marker);
    }

    /** The same with marks. */
    public Style with(Marker other) {
        return new Style(ink, dash, other);
    }

    /**
     * Colours that colour-blind people can distinguish. Source: M. Okabe and K. Ito, Color Universal Design, 2008 (from
     * memory).
     */
    public enum Ink {
        /** Black. */
        BLACK(0x000000),
        /** Blue. */
        BLUE(0x0072B2),
        /** Vermilion. */
        VERMILION(0xD55E00),
        /** Green. */
        GREEN(0x009E73),
        /** Purple. */
        PURPLE(0xCC79A7),
        /** Sky blue, for areas. */
        SKY(0x56B4E9),
        /** Orange, for areas. */
        ORANGE(0xE69F00),
        /** Grey, not of the palette. */
        GREY(0x707070);

        private final int rgb;

        Ink(int rgb) {
            this.rgb = rgb;
        }

        Color color() {
            return new Color(rgb);
        }

        Color pale(int alpha) {
            return new Color(rgb >> 16 & 255, rgb >> 8 & 255, rgb & 255, alpha);
        }
    }

    /** Lines. */
    public enum Dash {
        /** No line. */
        NONE(0),
        /** A thin line. */
        THIN(1),
        /** A line. */
        SOLID(2),
        /** Dashes. */
        DASHED(2, 8, 4),
        /** Dots. */
        DOTTED(2.4f, 2, 4),
        /** Dashes and dots. */
        DASH_DOT(2, 9, 4, 2, 4);

        private final float width;
        private final float[] pattern;

        Dash(float width, float... pattern) {
            this.width = width;
            this.pattern = pattern;
        }

        BasicStroke stroke() {
            return pattern.length == 0
                    ? new BasicStroke(Math.max(1, width), BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND)
                    : new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, pattern, 0);
        }
    }

    /** Marks. */
    public enum Marker {
        /** None. */
        NONE,
        /** A filled circle. */
        DISC,
        /** A circle. */
        RING,
        /** A square. */
        SQUARE,
        /** A triangle. */
        TRIANGLE,
        /** Two triangles, tip to tip. */
        HOURGLASS,
        /** A diamond. */
        DIAMOND,
        /** A square outline. */
        BOX,
        /** A cross. */
        CROSS,
        /** An upright cross. */
        PLUS,
        /** A short upright bar. */
        BAR,
        /** Two lines that meet below. */
        VEE,
        /** A star of five points. */
        STAR;

        boolean filled() {
            return this == DISC
                    || this == SQUARE
                    || this == TRIANGLE
                    || this == HOURGLASS
                    || this == DIAMOND
                    || this == STAR;
        }

        /** Half as wide as px. */
        Shape shape(double r) {
            return switch (this) {
                case NONE, DISC, RING -> new Ellipse2D.Double(-r, -r, 2 * r, 2 * r);
                case SQUARE, BOX -> new Rectangle2D.Double(-r, -r, 2 * r, 2 * r);
                case TRIANGLE -> lines(true, 0, -1.2 * r, 1.1 * r, r, -1.1 * r, r);
                case HOURGLASS -> lines(true, -r, -1.2 * r, r, -1.2 * r, -r, 1.2 * r, r, 1.2 * r);
                case DIAMOND -> lines(true, 0, -1.3 * r, 1.3 * r, 0, 0, 1.3 * r, -1.3 * r, 0);
                case CROSS -> {
                    Path2D cross = lines(false, -r, -r, r, r);
                    cross.append(lines(false, -r, r, r, -r), false);
                    yield cross;
                }
                case PLUS -> {
                    Path2D plus = lines(false, -1.2 * r, 0, 1.2 * r, 0);
                    plus.append(lines(false, 0, -1.2 * r, 0, 1.2 * r), false);
                    yield plus;
                }
                case BAR -> lines(false, 0, -1.4 * r, 0, 1.4 * r);
                case VEE -> lines(false, -1.2 * r, -r, 0, r, 1.2 * r, -r);
                case STAR -> star(1.9 * r);
            };
        }

        private static Path2D star(double r) {
            double[] xy = new double[20];
            for (int i = 0; i < 10; i++) {
                double reach = i % 2 == 0 ? r : 0.42 * r;
                xy[2 * i] = reach * Math.sin(Math.PI * i / 5);
                xy[2 * i + 1] = -reach * Math.cos(Math.PI * i / 5);
            }
            return lines(true, xy);
        }

        private static Path2D lines(boolean closed, double... xy) {
            Path2D path = new Path2D.Double();
            path.moveTo(xy[0], xy[1]);
            for (int i = 2; i < xy.length; i += 2) {
                path.lineTo(xy[i], xy[i + 1]);
            }
            if (closed) {
                path.closePath();
            }
            return path;
        }
    }
}
