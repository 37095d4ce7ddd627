package org.foreload.examples.picture;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;

/** One part of a picture. */
public interface Panel {

    /**
     * How tall it wants to be, px.
     *
     * @param width that it has, px
     */
    double height(double width);

    /** Draws itself into an area. */
    void draw(Graphics2D graphics, Rectangle2D area);
}
