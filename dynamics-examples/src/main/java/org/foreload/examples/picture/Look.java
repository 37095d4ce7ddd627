package org.foreload.examples.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Line2D;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItem;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.TickUnits;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.text.TextUtils;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;

/** The one style of all charts. */
final class Look {

    static {
        // The chart library would else draw upright words as outlines, for which it needs a font of the machine.
        TextUtils.setUseDrawRotatedStringWorkaround(false);
    }

    static final Font TICKS = FixedFont.plain(11);
    static final Font WORDS = FixedFont.plain(12);
    static final Font HEADING = FixedFont.bold(13);

    static final Color TEXT = new Color(0x202020);
    static final Color FRAME = new Color(0x909090);
    static final Color GRID = new Color(0xE4E4E4);
    static final BasicStroke HAIR = new BasicStroke(1f);

    /** Room for the upright axis, px: the same in every chart, so that charts above each other stand in line. */
    static final double LEFT = 66;

    /** Room at the right, px: half a tick label. */
    static final double RIGHT = 18;

    /** Room for the axis along, with and without its label, px. */
    static final double BOTTOM = 42;

    static final double BOTTOM_BARE = 10;

    private static final double LEGEND_LINE = 16;

    private Look() {}

    static NumberAxis axis(Axis axis, double low, double high) {
        NumberAxis shown = new NumberAxis(axis.text());
        shown.setStandardTickUnits(axis.logarithmic() ? decades() : tickUnits(axis.counting() ? 0 : SMALLEST));
        shown.setAutoRangeIncludesZero(false);
        shown.setRange(low, high);
        shown.setInverted(axis.leftwards());
        dress(shown);
        return shown;
    }

    /**
     * 1, 2 and 5 of each power of ten, with as many decimals as that power has: all numbers of an axis are then about
     * as long, and none runs into the next.
     */
    private static TickUnits tickUnits(int smallest) {
        TickUnits units = new TickUnits();
        for (int power = smallest; power <= LARGEST; power++) {
            String pattern = power < 0 ? "0." + "0".repeat(-power) : "0";
            DecimalFormat format = new DecimalFormat(pattern, DecimalFormatSymbols.getInstance(Locale.ROOT));
            for (int digit : new int[] {1, 2, 5}) {
                units.add(new NumberTickUnit(digit * Math.pow(10, power), format));
            }
        }
        return units;
    }

    /** A tick at each power of ten, with the number that it stands for. */
    private static TickUnits decades() {
        TickUnits units = new TickUnits();
        units.add(new NumberTickUnit(1) {

            private static final long serialVersionUID = 1L;

            @Override
            public String valueToString(double power) {
                return new BigDecimal(BigInteger.ONE, (int) -Math.round(power)).toPlainString();
            }
        });
        return units;
    }

    private static final int SMALLEST = -9;
    private static final int LARGEST = 12;

    static void dress(ValueAxis axis) {
        axis.setLabelFont(WORDS);
        axis.setTickLabelFont(TICKS);
        axis.setLabelPaint(TEXT);
        axis.setTickLabelPaint(TEXT);
        axis.setAxisLinePaint(FRAME);
        axis.setTickMarkPaint(FRAME);
        axis.setAxisLineStroke(HAIR);
        axis.setTickMarkStroke(HAIR);
    }

    static AxisSpace leftSpace(double left) {
        AxisSpace space = new AxisSpace();
        space.setLeft(left);
        space.setRight(RIGHT);
        return space;
    }

    static AxisSpace bottomSpace(double bottom) {
        AxisSpace space = new AxisSpace();
        space.setBottom(bottom);
        return space;
    }

    /** The chart of a plot, with a heading and a legend where there is anything to name. */
    static JFreeChart chart(String heading, Plot plot, LegendItemCollection legend, double left) {
        plot.setBackgroundPaint(Color.WHITE);
        plot.setOutlinePaint(FRAME);
        plot.setOutlineStroke(HAIR);
        plot.setInsets(new RectangleInsets(4, 0, 0, 0));
        JFreeChart chart = new JFreeChart(null, WORDS, plot, false);
        chart.setBackgroundPaint(Color.WHITE);
        chart.setPadding(new RectangleInsets(0, 0, 0, 0));
        if (legend.getItemCount() > 0) {
            LegendTitle title = new LegendTitle(() -> legend);
            title.setItemFont(WORDS);
            title.setItemPaint(TEXT);
            title.setBackgroundPaint(Color.WHITE);
            title.setPosition(RectangleEdge.TOP);
            title.setHorizontalAlignment(HorizontalAlignment.LEFT);
            title.setMargin(0, left - 6, 0, 0);
            title.setItemLabelPadding(new RectangleInsets(1, 3, 1, 12));
            chart.addSubtitle(title);
        }
        if (!heading.isEmpty()) {
            TextTitle title = new TextTitle(heading, HEADING);
            title.setPaint(TEXT);
            title.setHorizontalAlignment(HorizontalAlignment.LEFT);
            title.setMargin(2, left - 6, 1, 0);
            chart.addSubtitle(0, title);
        }
        return chart;
    }

    /** How a line or a set of points shows in the legend. */
    static LegendItem legendOfLine(String name, Style style) {
        boolean marked = style.marker() != Style.Marker.NONE;
        return new LegendItem(
                name,
                null,
                null,
                null,
                marked,
                style.marker().shape(MARK),
                style.marker().filled(),
                style.ink().color(),
                marked && !style.marker().filled(),
                style.ink().color(),
                new BasicStroke(1.6f),
                style.dash() != Style.Dash.NONE,
                new Line2D.Double(-LEGEND_LINE, 0, LEGEND_LINE, 0),
                style.dash().stroke(),
                style.ink().color());
    }

    /** How an area shows in the legend. */
    static LegendItem legendOfArea(String name, Style style) {
        return new LegendItem(
                name,
                null,
                null,
                null,
                Style.Marker.SQUARE.shape(5),
                areaPaint(style),
                style.dash().stroke(),
                style.ink().color());
    }

    static Color areaPaint(Style style) {
        return style.ink().pale(AREA_ALPHA);
    }

    private static final int AREA_ALPHA = 90;

    /** Half the width of a mark, px. */
    static final double MARK = 3.6;
}
