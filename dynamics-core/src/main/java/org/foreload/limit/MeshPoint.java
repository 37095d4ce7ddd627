package org.foreload.limit;

/**
 * A point at which the equations hold, and what bounds the unknowns there.
 *
 * @param station m
 * @param curvature of the line, 1/m
 * @param grade rad
 * @param banking rad
 * @param lowestOffset m, to the left
 * @param highestOffset m, to the left
 * @param headingBound bound of the heading error to both sides, rad
 * @param lowestSpeed m/s
 * @param steeringPrice price of turning the steering wheel at full rate, as a share of the time it takes
 */
record MeshPoint(
        double station,
        double curvature,
        double grade,
        double banking,
        double lowestOffset,
        double highestOffset,
        double headingBound,
        double lowestSpeed,
        double steeringPrice) {}
