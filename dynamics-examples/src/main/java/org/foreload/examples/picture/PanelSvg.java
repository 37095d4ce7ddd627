package org.foreload.examples.picture;

import java.awt.geom.Rectangle2D;
import org.jfree.svg.SVGGraphics2D;

/** One panel as SVG, for a page that has headings and captions of its own and shows several of them. */
public final class PanelSvg {

    private PanelSvg() {}

    /**
     * Draws a panel on no ground of its own.
     *
     * @param panel what to draw
     * @param width of the layout, px: words keep their size in it, so less makes them larger on the page
     * @param name begins all names inside; each panel of a page needs another
     * @param title read to those who do not see it
     */
    public static String of(Panel panel, int width, String name, String title) {
        int height = (int) Math.ceil(panel.height(width));
        SVGGraphics2D svg = new SVGGraphics2D(width, height);
        svg.setDefsKeyPrefix(name);
        svg.setFontFunction(family -> "sans-serif");
        svg.setGeomDoubleConverter(Picture::rounded);
        svg.setTransformDoubleConverter(Picture::rounded);
        panel.draw(new MeasuredGraphics(svg), new Rectangle2D.Double(0, 0, width, height));
        String text = svg.getSVGElement(name, true, null, null, null);
        int end = text.indexOf('>');
        return text.substring(0, end) + " viewBox=\"0 0 " + width + " " + height + "\" role=\"img\" aria-labelledby=\""
                + name + "t\"><title id=\"" + name + "t\">" + Picture.escaped(title) + "</title>"
                + text.substring(end + 1);
    }
}
