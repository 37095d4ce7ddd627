package org.foreload.collocation;

/**
 * Radau's points in an interval from 0 to 1, the last of them its end: a polynomial through the start and all points
 * meets the equations at the points. Of order 2s − 1, and stiff parts decay in it. Source: E. Hairer, G. Wanner,
 * Solving Ordinary Differential Equations II, ch. IV.5 (from memory).
 */
final class Collocation {

    private final double[] nodes;
    private final double[] weights;
    private final double[][] slopes;

    private Collocation(double[] nodes, double[] weights) {
        this.nodes = nodes;
        this.weights = weights;
        this.slopes = slopes(nodes);
    }

    /** Three points to an interval. */
    static Collocation three() {
        double root = Math.sqrt(6);
        return new Collocation(
                new double[] {(4 - root) / 10, (4 + root) / 10, 1},
                new double[] {(16 - root) / 36, (16 + root) / 36, 1.0 / 9});
    }

    /** Two points to an interval. */
    static Collocation two() {
        return new Collocation(new double[] {1.0 / 3, 1}, new double[] {0.75, 0.25});
    }

    int points() {
        return nodes.length;
    }

    double node(int i) {
        return nodes[i];
    }

    /** Weight of a point in an integral over the interval. */
    double weight(int i) {
        return weights[i];
    }

    /** Weight of the value at point {@code j}, or at the start for −1, in the slope at point {@code i}. */
    double slope(int i, int j) {
        return slopes[i][j + 1];
    }

    /** Slopes of Lagrange's polynomials through 0 and the nodes. */
    private static double[][] slopes(double[] nodes) {
        int count = nodes.length + 1;
        double[] x = new double[count];
        System.arraycopy(nodes, 0, x, 1, nodes.length);
        double[][] slopes = new double[nodes.length][count];
        for (int i = 1; i < count; i++) {
            for (int j = 0; j < count; j++) {
                double sum = 0;
                for (int k = 0; k < count; k++) {
                    if (k == j) {
                        continue;
                    }
                    double product = 1 / (x[j] - x[k]);
                    for (int l = 0; l < count; l++) {
                        if (l != j && l != k) {
                            product *= (x[i] - x[l]) / (x[j] - x[l]);
                        }
                    }
                    sum += product;
                }
                slopes[i - 1][j] = sum;
            }
        }
        return slopes;
    }
}
