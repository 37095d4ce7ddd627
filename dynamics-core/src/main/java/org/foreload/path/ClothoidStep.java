package org.foreload.path;

/** Motion along one clothoid from a point to the next, and its derivatives with respect to the state. */
final class ClothoidStep {

    /** Length of a state: x, y, heading, curvature, and its gradient on the piece before. */
    static final int STATES = 5;

    static final int Y = 1;
    static final int HEADING = 2;
    static final int CURVATURE = 3;
    static final int GRADIENT = 4;

    private final double length;
    private final double[] x = new double[STATES];
    private final double[] y = new double[STATES];
    private final double[] arrival = new double[STATES];

    /**
     * The step that leaves a state.
     *
     * @param from state at its start
     * @param gradient gradient of curvature along it, 1/m²
     * @param length m
     */
    ClothoidStep(double[] from, double gradient, double length) {
        this.length = length;
        double[] node = ClothoidChain.GaussRule.NODES;
        double startX = from[0];
        double startY = from[Y];
        for (int n = 0; n < node.length; n++) {
            double t = 0.5 * length * (1 + node[n]);
            double weight = 0.5 * length * ClothoidChain.GaussRule.WEIGHTS[n];
            double angle = from[HEADING] + t * (from[CURVATURE] + 0.5 * gradient * t);
            double cos = weight * Math.cos(angle);
            double sin = weight * Math.sin(angle);
            startX += cos;
            startY += sin;
            x[HEADING] -= sin;
            y[HEADING] += cos;
            x[CURVATURE] -= t * sin;
            y[CURVATURE] += t * cos;
            x[GRADIENT] -= 0.5 * t * t * sin;
            y[GRADIENT] += 0.5 * t * t * cos;
        }
        arrival[0] = startX;
        arrival[Y] = startY;
        arrival[HEADING] = from[HEADING] + length * (from[CURVATURE] + 0.5 * gradient * length);
        arrival[CURVATURE] = from[CURVATURE] + gradient * length;
        arrival[GRADIENT] = gradient;
    }

    /** Carries mean and covariance of the small deviation along; {@code next} is the state it will be counted from. */
    void advance(double[] mean, double[][] spread, double[] next) {
        carry(mean);
        for (int j = 0; j < STATES; j++) {
            mean[j] += arrival[j] - next[j];
            carry(spread[j]);
        }
        double[] column = new double[STATES];
        for (int j = 0; j < STATES; j++) {
            for (int k = 0; k < STATES; k++) {
                column[k] = spread[k][j];
            }
            carry(column);
            for (int k = 0; k < STATES; k++) {
                spread[k][j] = column[k];
            }
        }
    }

    private void carry(double[] v) {
        v[0] += x[HEADING] * v[HEADING] + x[CURVATURE] * v[CURVATURE] + x[GRADIENT] * v[GRADIENT];
        v[Y] += y[HEADING] * v[HEADING] + y[CURVATURE] * v[CURVATURE] + y[GRADIENT] * v[GRADIENT];
        v[HEADING] += length * (v[CURVATURE] + 0.5 * length * v[GRADIENT]);
        v[CURVATURE] += length * v[GRADIENT];
    }

    /** The transpose of the derivative, for the backward pass. */
    void pullBack(double[] v) {
        v[GRADIENT] += x[GRADIENT] * v[0] + y[GRADIENT] * v[Y] + length * (0.5 * length * v[HEADING] + v[CURVATURE]);
        v[CURVATURE] += x[CURVATURE] * v[0] + y[CURVATURE] * v[Y] + length * v[HEADING];
        v[HEADING] += x[HEADING] * v[0] + y[HEADING] * v[Y];
    }

    /** Scalar product of two states. */
    static double dot(double[] one, double[] other) {
        double sum = 0;
        for (int j = 0; j < STATES; j++) {
            sum += one[j] * other[j];
        }
        return sum;
    }
}
