package org.foreload.collocation;

/** Who follows each step of the search; what it throws ends the search. */
@FunctionalInterface
public interface Progress {

    /**
     * A step begins.
     *
     * @param step number of steps taken before
     * @param residual greatest residual of the optimality conditions, scaled
     */
    void accept(int step, double residual);
}
