package org.foreload.advice;

import java.util.ArrayList;
import java.util.List;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.recording.Bend;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;
import org.foreload.recording.Run;

/**
 * The line that was driven through one corner, as a corner that can be simulated: the recorded curvature in straight
 * lines from knot to knot, from turn-in on, between two straights.
 *
 * @param corner the line and the speed at its start; station zero is turn-in
 * @param turnIn station of turn-in on the run, m
 * @param bendEnd where the course is no longer clearly bent, m from turn-in
 * @param seconds that the run took from the start of the line to its end
 */
record DrivenLine(Corner corner, double turnIn, double bendEnd, double seconds) {

    /** Straight before the brake point, m: enough to brake earlier and to see the speed at which the car comes. */
    private static final double RUN_UP = 60;

    /** Straight after the bend, m, over which the exit speed is credited. */
    private static final double RUN_OUT = 150;

    /** Least of either, m. */
    private static final double LEAST = 20;

    /** Least distance between two knots, m, and most knots in a bend. */
    private static final double KNOT = 5;

    private static final int MOST_KNOTS = 24;

    /** Longest way, m, in which the curvature dies out behind a bend. */
    private static final double TAIL = 80;

    /** Share of the greatest curvature at which a bend is over. */
    private static final double OVER = 0.08;

    /** Least curvature inside a bend, 1/m. */
    private static final double FLAT = 1e-4;

    /**
     * Room to either side of the line, m. Recordings do not show the edges of a road; this is invented, and counts only
     * for a car that is as good as lost.
     */
    private static final double HALF_WIDTH = 4;

    /**
     * The line of a corner.
     *
     * @param run the run
     * @param did the corner
     * @param from first station that may be used, m
     * @param to last one, m
     */
    static DrivenLine of(Run run, RecordedCorner did, double from, double to) {
        double turnIn = did.get(Measure.TURN_IN).value();
        double brakeOn = Math.min(turnIn, did.get(Measure.BRAKE_ON).value());
        double start = Math.max(Math.max(from, run.first()), brakeOn - RUN_UP);
        double[][] knots = knots(run, did.bend(), turnIn, Math.min(to, run.last()) - LEAST);
        List<Segment> segments = new ArrayList<>();
        for (int i = 0; i + 1 < knots[0].length; i++) {
            segments.add(new Segment.Spiral(
                    knots[0][i + 1] - knots[0][i],
                    1 / knots[1][i],
                    1 / knots[1][i + 1],
                    did.bend().left() ? Turn.LEFT : Turn.RIGHT));
        }
        double bent = knots[0][knots[0].length - 1];
        double end = Math.min(Math.min(to, run.last()), bent + RUN_OUT);
        Path path = SegmentPath.of(turnIn - start, segments, end - bent, HALF_WIDTH);
        Corner corner = new Corner("corner " + did.bend().number(), run.speedAt(start), path);
        return new DrivenLine(corner, turnIn, did.bend().end() - turnIn, run.timeAt(end) - run.timeAt(start));
    }

    /** First station of the line on the run, m. */
    double first() {
        return turnIn + corner.path().start();
    }

    /** Last one, m. */
    double last() {
        return turnIn + corner.path().end();
    }

    /** Whether a corner leaves room for a line. */
    static boolean possible(Run run, RecordedCorner did, double from, double to) {
        double turnIn = did.get(Measure.TURN_IN).value();
        double brakeOn = Math.min(turnIn, did.get(Measure.BRAKE_ON).value());
        boolean before = brakeOn - Math.max(from, run.first()) > LEAST;
        boolean after = Math.min(to, run.last()) - did.bend().end() > 2 * LEAST;
        return before && after && did.bend().end() - turnIn > 2 * KNOT;
    }

    private static double[][] knots(Run run, Bend bend, double turnIn, double limit) {
        double sign = bend.left() ? 1 : -1;
        double step = Math.max(KNOT, (bend.end() - turnIn) / MOST_KNOTS);
        List<double[]> knots = new ArrayList<>();
        knots.add(new double[] {turnIn, 0});
        double most = 0;
        double at = turnIn + step;
        while (at < limit) {
            double curvature = mean(run, at, step) * sign;
            most = Math.max(most, curvature);
            boolean over = at > bend.end() && (curvature < OVER * most || at > bend.end() + TAIL);
            if (over) {
                break;
            }
            knots.add(new double[] {at, Math.max(FLAT, curvature)});
            at += step;
        }
        knots.add(new double[] {Math.min(at, limit), 0});
        double[][] columns = new double[2][knots.size()];
        for (int i = 0; i < knots.size(); i++) {
            columns[0][i] = knots.get(i)[0];
        }
        columns[1] = fitted(run, columns[0], sign);
        return columns;
    }

    /** Points in a step at which the recorded curvature is read. */
    private static final int POINTS = 9;

    private static double mean(Run run, double at, double step) {
        double sum = 0;
        for (int k = 0; k < POINTS; k++) {
            sum += run.curvatureAt(at + step * ((k + 0.5) / POINTS - 0.5)) / POINTS;
        }
        return sum;
    }

    /**
     * Curvature at the knots so that the straight lines between them lie on the recorded one in least squares, zero at
     * both ends: a mean around each knot would round off where a line bends most, and the simulated driver would turn
     * in on an easier line than the recorded one. The normal equations have three diagonals.
     */
    private static double[] fitted(Run run, double[] knots, double sign) {
        int n = knots.length;
        double[] own = new double[n];
        double[] next = new double[n];
        double[] right = new double[n];
        for (int i = 0; i + 1 < n; i++) {
            double step = knots[i + 1] - knots[i];
            for (int k = 0; k < POINTS; k++) {
                double share = (k + 0.5) / POINTS;
                double curvature = sign * run.curvatureAt(knots[i] + share * step);
                own[i] += step * (1 - share) * (1 - share);
                own[i + 1] += step * share * share;
                next[i] += step * share * (1 - share);
                right[i] += step * (1 - share) * curvature;
                right[i + 1] += step * share * curvature;
            }
        }
        // Both ends are known to be zero: only the knots between them are solved for, forwards and back.
        for (int i = 2; i < n - 1; i++) {
            double factor = next[i - 1] / own[i - 1];
            own[i] -= factor * next[i - 1];
            right[i] -= factor * right[i - 1];
        }
        double[] fitted = new double[n];
        for (int i = n - 2; i > 0; i--) {
            fitted[i] = (right[i] - next[i] * fitted[i + 1]) / own[i];
        }
        for (int i = 1; i < n - 1; i++) {
            fitted[i] = Math.max(FLAT, fitted[i]);
        }
        return fitted;
    }
}
