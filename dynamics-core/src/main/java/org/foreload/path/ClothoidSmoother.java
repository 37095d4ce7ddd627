package org.foreload.path;

import static org.foreload.path.ClothoidStep.CURVATURE;
import static org.foreload.path.ClothoidStep.GRADIENT;
import static org.foreload.path.ClothoidStep.HEADING;
import static org.foreload.path.ClothoidStep.STATES;
import static org.foreload.path.ClothoidStep.Y;
import static org.foreload.path.ClothoidStep.dot;

import java.util.Arrays;

/**
 * Least-squares fit of a chain of clothoids to measured points: Σ(distance from the line)² + q⁻¹·∫(dκ/ds)² ds is made
 * as small as it gets, so of two lines equally close to the points, the one with the steadier curvature is taken; a
 * straight and an arc cost nothing.
 *
 * <p>The pieces meet at points; state at each point is (x, y, heading, curvature, gradient of the piece before). Each
 * sweep linearises around the states at hand and solves exactly with a Kalman filter and the backward pass of Bryson
 * and Frazier, so work grows only with the number of points, and the states need not be consistent before the end.
 * Sweeps are Gauss-Newton steps (B. M. Bell, SIAM J. Optim. 4(3), 1994, from memory). Stations move to the feet of
 * their points until they are near enough. The place along the line is fixed by the first point alone.
 *
 * <p>The weight is expressed by a <i>smoothing length</i> l with q = step/l⁶ (the filter's cut-off is a wavelength of
 * 2π·l). Mutable; one thread.
 */
final class ClothoidSmoother {

    /** Shortest piece, m: integrators step on every joint, and curvature says nothing at shorter distances. */
    static final double SHORTEST_PIECE = 1.5;

    /**
     * How much less than the points the prior of the first state says: slows the sweeps to a factor of 1e-4 at most.
     */
    private static final double VAGUE = 1e4;

    /** Sweeps end when no point of the line moves by more, m; the sweep after would move it by a thousandth of that. */
    private static final double SETTLED = 1e-7;

    private static final int MOST_SWEEPS = 60;

    /** Sweeps after which the stations always move to the feet of the points. */
    private static final int MOVING_SWEEPS = 3;

    /**
     * Largest distance of a foot from its station, m: farther ones are moved to, nearer ones are left, so that the
     * joints come to rest. The line between the two is taken for an arc: off by 2e-10 m where the curvature changes by
     * 1 1/m².
     */
    private static final double FOOT_REACH = 1e-3;

    /** Steps to the foot of a point near its state. */
    private static final int FOOT_STEPS = 3;

    /**
     * Least advance of a station per point, m; keeps the order where errors along the line are as large as the steps.
     */
    private static final double LEAST_STEP = 1e-3;

    private final int points;
    private final double[] pointX;
    private final double[] pointY;
    private final boolean startsStraight;
    private final boolean endsStraight;
    private final boolean[] joint;
    private final double meanStep;

    private final double[] station;
    private final double[][] state;

    private final double[][] predicted;
    private final double[][][] covariance;
    private final double[][] gain;
    private final double[] innovation;
    private final double[] variance;
    private final ClothoidStep[] transition;
    private final double[][] sensitivity;
    private final double[] foot;
    private double endPull;
    private double logVague;

    /**
     * Starts from the polygon of the points.
     *
     * @param startsStraight whether the curvature is held at zero at the first point
     * @param endsStraight whether it is at the last
     */
    ClothoidSmoother(double[] pointX, double[] pointY, boolean startsStraight, boolean endsStraight) {
        this.startsStraight = startsStraight;
        this.endsStraight = endsStraight;
        this.pointX = pointX;
        this.pointY = pointY;
        points = pointX.length;
        station = PolygonStart.stations(pointX, pointY);
        state = PolygonStart.states(pointX, pointY, station);
        predicted = new double[points][STATES];
        covariance = new double[points][STATES][STATES];
        gain = new double[points][STATES];
        sensitivity = new double[points][STATES];
        foot = new double[points];
        innovation = new double[points];
        variance = new double[points];
        transition = new ClothoidStep[points];
        meanStep = station[points - 1] / (points - 1);
        joint = joints();
    }

    private boolean[] joints() {
        boolean[] found = new boolean[points];
        double end = station[points - 1];
        double last = 0;
        found[0] = true;
        for (int i = 1; i < points; i++) {
            if (station[i] - last >= SHORTEST_PIECE && end - station[i] >= SHORTEST_PIECE) {
                found[i] = true;
                last = station[i];
            }
        }
        found[points - 1] = true;
        return found;
    }

    /**
     * Fits with this smoothing length, starting from the last fit.
     *
     * @return false if the sweeps did not settle; the last fit then stands
     */
    boolean fit(double smoothingLength) {
        Fit last = lastFit();
        double q = meanStep / Math.pow(smoothingLength, 6);
        for (int sweep = 0; sweep < MOST_SWEEPS; sweep++) {
            filter(q);
            double moved = smooth();
            if (sweep < MOVING_SWEEPS || farthestFoot() > FOOT_REACH) {
                moveToFeet();
            } else if (moved < SETTLED) {
                return true;
            }
        }
        goBackTo(last);
        return false;
    }

    /** The stations and states of the last fit, to go back to. */
    Fit lastFit() {
        return new Fit(station.clone(), copy(state));
    }

    /** Takes up an earlier fit again. */
    void goBackTo(Fit fit) {
        System.arraycopy(fit.station, 0, station, 0, points);
        System.arraycopy(copy(fit.state), 0, state, 0, points);
    }

    private static double[][] copy(double[][] rows) {
        return Arrays.stream(rows).map(double[]::clone).toArray(double[][]::new);
    }

    /** A fit that is kept. */
    record Fit(double[] station, double[][] state) {}

    private void filter(double q) {
        double[] mean = new double[STATES];
        double[][] spread = vagueStart(q);
        if (startsStraight) {
            mean[CURVATURE] = -state[0][CURVATURE];
        }
        for (int i = 0; i < points; i++) {
            if (i > 0) {
                if (joint[i - 1]) {
                    startPiece(mean, spread, i, q);
                }
                transition[i] = new ClothoidStep(state[i - 1], state[i][GRADIENT], station[i] - station[i - 1]);
                transition[i].advance(mean, spread, state[i]);
            }
            copy(mean, spread, i);
            observe(mean, spread, i);
        }
        double missing = -state[points - 1][CURVATURE] - mean[CURVATURE];
        endPull = endsStraight ? missing / spread[CURVATURE][CURVATURE] : 0;
    }

    /**
     * Next to nothing is known of the first state, but for its place along the line, which is that of the first point.
     * How little counts as nothing goes with the smoothing length l: the points fix place, heading and curvature to
     * about 1, 1/l and 1/l² of their own errors.
     */
    private double[][] vagueStart(double q) {
        double perLength = Math.cbrt(q / meanStep);
        double place = VAGUE * (1 + meanStep * Math.sqrt(perLength));
        double heading = place * perLength;
        double curvature = startsStraight ? 0 : heading * perLength;
        double cos = Math.cos(state[0][HEADING]);
        double sin = Math.sin(state[0][HEADING]);
        double[][] spread = new double[STATES][STATES];
        spread[0][0] = place * sin * sin;
        spread[0][Y] = -place * sin * cos;
        spread[Y][0] = spread[0][Y];
        spread[Y][Y] = place * cos * cos;
        spread[HEADING][HEADING] = heading;
        spread[CURVATURE][CURVATURE] = curvature;
        logVague = Math.log(place) + Math.log(heading) + (startsStraight ? 0 : Math.log(curvature));
        return spread;
    }

    /** A new piece forgets the gradient of the last; its own is zero give or take √(q/length). */
    private void startPiece(double[] mean, double[][] spread, int first, double q) {
        int last = first;
        while (!joint[last]) {
            last++;
        }
        for (int j = 0; j < STATES; j++) {
            spread[j][GRADIENT] = 0;
            spread[GRADIENT][j] = 0;
        }
        spread[GRADIENT][GRADIENT] = q / (station[last] - station[first - 1]);
        mean[GRADIENT] = -state[first][GRADIENT];
    }

    private void copy(double[] mean, double[][] spread, int i) {
        System.arraycopy(mean, 0, predicted[i], 0, STATES);
        for (int j = 0; j < STATES; j++) {
            System.arraycopy(spread[j], 0, covariance[i][j], 0, STATES);
        }
    }

    /** Takes in the distance of point i from the line, with unit variance. */
    private void observe(double[] mean, double[][] spread, int i) {
        double[] h = sensitivity[i];
        double[] g = gain[i];
        double e = findFoot(i);
        double s = 1;
        for (int j = 0; j < STATES; j++) {
            g[j] = dot(spread[j], h);
            s += h[j] * g[j];
        }
        e -= dot(h, mean);
        for (int j = 0; j < STATES; j++) {
            for (int k = 0; k < STATES; k++) {
                spread[j][k] = covariance[i][j][k] - g[j] * g[k] / s;
            }
        }
        for (int j = 0; j < STATES; j++) {
            g[j] /= s;
            mean[j] += g[j] * e;
        }
        innovation[i] = e;
        variance[i] = s;
    }

    /** Finds the foot of point i on the line near its state; returns the distance, m, positive to the left. */
    private double findFoot(int i) {
        double[] at = state[i];
        double ahead = 0;
        double heading = at[HEADING];
        double toX = pointX[i] - at[0];
        double toY = pointY[i] - at[Y];
        for (int step = 0; step < FOOT_STEPS; step++) {
            ahead += Math.cos(heading) * toX + Math.sin(heading) * toY;
            double middle = at[HEADING] + 0.5 * at[CURVATURE] * ahead;
            toX = pointX[i] - at[0] - ahead * Math.cos(middle);
            toY = pointY[i] - at[Y] - ahead * Math.sin(middle);
            heading = at[HEADING] + ahead * at[CURVATURE];
        }
        foot[i] = ahead;
        double[] h = sensitivity[i];
        h[0] = -Math.sin(heading);
        h[Y] = Math.cos(heading);
        h[HEADING] = ahead;
        h[CURVATURE] = 0.5 * ahead * ahead;
        return h[0] * toX + h[Y] * toY;
    }

    /** Backward pass; returns the largest step, m. */
    private double smooth() {
        double[] adjoint = new double[STATES];
        adjoint[CURVATURE] = -endPull;
        double largest = 0;
        for (int i = points - 1; i >= 0; i--) {
            double pull = innovation[i] / variance[i] + dot(gain[i], adjoint);
            for (int j = 0; j < STATES; j++) {
                adjoint[j] -= sensitivity[i][j] * pull;
            }
            for (int j = 0; j < STATES; j++) {
                double step = predicted[i][j] - dot(covariance[i][j], adjoint);
                state[i][j] += step;
                if (j <= Y) {
                    largest = Math.abs(step) <= largest ? largest : Math.abs(step);
                }
            }
            if (i > 0) {
                transition[i].pullBack(adjoint);
                if (joint[i - 1]) {
                    adjoint[GRADIENT] = 0;
                }
            }
        }
        return largest;
    }

    private double farthestFoot() {
        double farthest = 0;
        for (double ahead : foot) {
            farthest = Math.abs(ahead) <= farthest ? farthest : Math.abs(ahead);
        }
        return farthest;
    }

    /** Moves each state along the line to the foot of its point. */
    private void moveToFeet() {
        double previous = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < points; i++) {
            findFoot(i);
            double[] at = state[i];
            double move = Math.max(foot[i], previous + LEAST_STEP - station[i]);
            double middle = at[HEADING] + 0.5 * at[CURVATURE] * move;
            at[0] += move * Math.cos(middle);
            at[Y] += move * Math.sin(middle);
            at[HEADING] += move * at[CURVATURE];
            station[i] += move;
            previous = station[i];
        }
    }

    /** Root mean square distance of the points from the line, m. */
    double rmsDeviation() {
        double sum = 0;
        for (int i = 0; i < points; i++) {
            double distance = findFoot(i);
            sum += distance * distance;
        }
        return Math.sqrt(sum / points);
    }

    /** Likeliest standard deviation of the points across the line under the last smoothing length, m. */
    double noise() {
        double sum = 0;
        for (int i = 0; i < points; i++) {
            sum += innovation[i] * innovation[i] / variance[i];
        }
        return Math.sqrt(sum / freedom());
    }

    private int freedom() {
        return points - (startsStraight ? 2 : 3);
    }

    /**
     * Logarithm of how unlikely the points are under the last smoothing length, up to a constant: smallest for the
     * length that the points themselves speak for (generalised maximum likelihood; G. Wahba, Ann. Statist. 13(4), 1985,
     * from memory).
     *
     * @param floor least noise to believe in, m
     */
    double unlikelihood(double floor) {
        double sum = 2 * freedom() * Math.log(Math.max(noise(), floor)) - logVague;
        for (int i = 0; i < points; i++) {
            sum += Math.log(variance[i]);
        }
        return sum;
    }

    int points() {
        return points;
    }

    boolean isJoint(int i) {
        return joint[i];
    }

    double station(int i) {
        return station[i];
    }

    double meanStep() {
        return meanStep;
    }

    double curvature(int i) {
        return state[i][CURVATURE];
    }

    double heading(int i) {
        return state[i][HEADING];
    }

    double x(int i) {
        return state[i][0];
    }

    double y(int i) {
        return state[i][Y];
    }
}
