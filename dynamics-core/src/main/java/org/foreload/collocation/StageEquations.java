package org.foreload.collocation;

/**
 * A problem of optimal control, point by point: how the states change per metre, what a metre costs, and what must not
 * fall below zero. Unknowns at a point are the states first, then the controls, each in units of about its own size.
 *
 * <p>Points are numbered along the line; an implementation knows where they lie. It may keep working memory, so one
 * instance serves one thread.
 */
public interface StageEquations {

    /** Number of states. */
    int states();

    /** Number of controls. */
    int controls();

    /** Number of bounds at a point. */
    int bounds();

    /** Whether a state has no memory: what is given as its rate must then be zero. */
    boolean atOnce(int state);

    /**
     * Values alone.
     *
     * @param point number of the point
     * @param unknowns of all points, one after the other
     * @param into receives the values
     */
    void values(int point, double[] unknowns, PointValues into);

    /**
     * Values, slopes, and the curvature of a weighted sum.
     *
     * @param point number of the point
     * @param unknowns of all points, one after the other
     * @param costWeight weight of the cost
     * @param rateWeights weights of the rates
     * @param roomWeights weights of the bounds
     * @param into receives all of it
     */
    void derivatives(
            int point,
            double[] unknowns,
            double costWeight,
            double[] rateWeights,
            double[] roomWeights,
            PointValues into);
}
