package org.foreload.collocation;

import java.util.Objects;

/**
 * What {@link StageEquations} finds at one point: values and derivatives with respect to the unknowns, row by row. A
 * buffer that its owner reuses: read it at once, do not keep it.
 */
public final class PointValues {

    private final double[] cost = new double[1];
    private final double[] costSlope;
    private final double[] rate;
    private final double[] rateSlope;
    private final double[] room;
    private final double[] roomSlope;
    private final double[] curvature;

    /** A buffer for a problem. */
    public PointValues(StageEquations equations) {
        Objects.requireNonNull(equations, "equations");
        int unknowns = equations.states() + equations.controls();
        costSlope = new double[unknowns];
        rate = new double[equations.states()];
        rateSlope = new double[equations.states() * unknowns];
        room = new double[equations.bounds()];
        roomSlope = new double[equations.bounds() * unknowns];
        curvature = new double[unknowns * unknowns];
    }

    /** Cost of a metre. */
    public double cost() {
        return cost[0];
    }

    /** Sets the cost of a metre. */
    public void cost(double value) {
        cost[0] = value;
    }

    /** Slopes of the cost. */
    public double[] costSlope() {
        return costSlope;
    }

    /** Change of the states per metre; of a state without memory, what must be zero. */
    public double[] rate() {
        return rate;
    }

    /** Slopes of the rates, one row a state. */
    public double[] rateSlope() {
        return rateSlope;
    }

    /** What must not fall below zero. */
    public double[] room() {
        return room;
    }

    /** Slopes of the bounds, one row a bound. */
    public double[] roomSlope() {
        return roomSlope;
    }

    /** Second derivatives of the weighted sum, the full square. */
    public double[] curvature() {
        return curvature;
    }
}
