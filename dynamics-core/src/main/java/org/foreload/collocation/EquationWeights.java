package org.foreload.collocation;

import java.util.Arrays;

/**
 * How the equations count where a step is judged by how much they are broken. An equation whose right side answers a
 * unit of an unknown with much more than a unit is stiff: its residual is large where the unknowns are nearly right,
 * and it alone would decide which steps are taken. Such equations are divided by their largest slope (A. Wächter, L. T.
 * Biegler, Mathematical Programming 106(1), 2006, section 3.8, from memory), at the start and once for all, so that all
 * steps are held against the same measure.
 */
final class EquationWeights {

    /** Change of an equation for a unit of an unknown above which it is divided: seldom one of an ordinary car. */
    private static final double STEEPEST = 10;

    private final Mesh mesh;
    private final StageEquations equations;
    private final double[] weight;

    /** All equations count alike until they are weighed. */
    EquationWeights(Mesh mesh, StageEquations equations) {
        this.mesh = mesh;
        this.equations = equations;
        this.weight = new double[mesh.points() * equations.states()];
        Arrays.fill(weight, 1);
    }

    /** Sets the weights by the slopes of the equations at a place. */
    void weigh(PointValues[] values) {
        int states = equations.states();
        int all = states + equations.controls();
        for (int p = 0; p < values.length; p++) {
            double length = mesh.lengths()[p / mesh.perInterval()];
            double[] slope = values[p].rateSlope();
            for (int i = 0; i < states; i++) {
                double most = 0;
                for (int c = 0; c < all; c++) {
                    most = Math.max(most, Math.abs(slope[i * all + c]));
                }
                double steepest = equations.atOnce(i) ? most : length * most;
                weight[p * states + i] = steepest > STEEPEST ? STEEPEST / steepest : 1;
            }
        }
    }

    /** By how much the equations of a point are broken. */
    double violation(int point, double[] defect) {
        int states = equations.states();
        double sum = 0;
        for (int i = point * states; i < (point + 1) * states; i++) {
            sum += weight[i] * Math.abs(defect[i]);
        }
        return sum;
    }
}
