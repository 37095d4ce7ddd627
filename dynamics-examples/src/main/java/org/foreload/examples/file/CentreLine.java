package org.foreload.examples.file;

import java.util.List;

/**
 * A measured line as its file says it, in SI.
 *
 * @param points at least four, in driving order
 * @param widths whether the points know the track's edges
 */
record CentreLine(List<Point> points, boolean widths) {

    /**
     * One measured point.
     *
     * @param x m
     * @param y m
     * @param widthLeft distance to the left edge, m; NaN if not known
     * @param widthRight distance to the right edge, m; NaN if not known
     * @param banking rad, positive where the left edge is the lower one
     * @param grade rad, positive uphill
     */
    record Point(double x, double y, double widthLeft, double widthRight, double banking, double grade) {}
}
