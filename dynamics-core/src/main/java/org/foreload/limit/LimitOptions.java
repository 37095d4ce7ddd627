package org.foreload.limit;

/**
 * Settings of the solution; none of them is physical.
 *
 * @param intervals of the mesh, each with two points
 * @param tolerance greatest residual of the optimality conditions, scaled, that counts as converged
 * @param mostSteps Newton steps after which the search gives up; a careful one that follows then may take as many
 */
public record LimitOptions(int intervals, double tolerance, int mostSteps) {

    /** 150 intervals: a second mesh with half as many again agrees within a millisecond, or little more. */
    public static final LimitOptions STANDARD = new LimitOptions(150, 1e-5, 300);

    /** Checks the numbers. */
    public LimitOptions {
        if (!(intervals >= 20 && intervals <= 5000)) {
            throw new org.foreload.conventions.InvalidValueException("intervals", intervals, "from 20 to 5000");
        }
        org.foreload.conventions.Checks.between("tolerance", tolerance, 0, 1);
        if (!(mostSteps >= 1)) {
            throw new org.foreload.conventions.InvalidValueException("most_steps", mostSteps, "1 or more");
        }
    }
}
