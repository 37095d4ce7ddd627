package org.foreload.line;

/**
 * A point of a line on a road.
 *
 * @param roadStation station of the road beside it, m
 * @param x place in the plane of the road, m
 * @param y place in the plane of the road, m
 * @param heading of the line, rad, positive to the left
 * @param curvature of the line, 1/m, positive to the left
 * @param widthLeft from the line to the left edge of the road, at right angles to the line, m
 * @param widthRight from the line to the right edge, m
 * @param grade slope along the road, rad, positive uphill
 * @param banking slope across the road, rad, positive where the left edge is the lower one
 */
public record LinePoint(
        double roadStation,
        double x,
        double y,
        double heading,
        double curvature,
        double widthLeft,
        double widthRight,
        double grade,
        double banking) {}
