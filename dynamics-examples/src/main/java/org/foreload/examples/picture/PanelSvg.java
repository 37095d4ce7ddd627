package org.foreload.examples.picture;

import java.awt.geom.Rectangle2D;

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
        return new SvgText(width, height, name)
                .draw(graphics -> panel.draw(graphics, new Rectangle2D.Double(0, 0, width, height)))
                .element(title, "");
    }
}
