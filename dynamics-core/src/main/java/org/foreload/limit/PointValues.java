package org.foreload.limit;

/**
 * What {@link RoadEquations} finds at one point: values and derivatives with respect to the scaled unknowns. A buffer.
 */
final class PointValues {

    /** Change of the scaled states per metre; where a state follows at once, what must be zero instead. */
    final double[] rate = new double[Unknowns.STATES];

    final double[] rateSlope = new double[Unknowns.STATES * Unknowns.ALL];

    /** Price of a metre: the time it takes, and what the hands and feet cost. */
    double cost;

    final double[] costSlope = new double[Unknowns.ALL];

    /** Time of a metre, s/m. */
    double slowness;

    /** What must not fall below zero. */
    final double[] room = new double[RoadEquations.BOUNDS];

    final double[] roomSlope = new double[RoadEquations.BOUNDS * Unknowns.ALL];

    /** Second derivatives of the Lagrangian, full square. */
    final double[] curvature = new double[Unknowns.ALL * Unknowns.ALL];
}
