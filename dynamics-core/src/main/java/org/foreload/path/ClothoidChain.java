package org.foreload.path;

import java.util.Arrays;

/**
 * A plane curve made of pieces whose curvature runs linearly with distance: straights, arcs and clothoids are the same
 * thing here. Heading is exact; so is position on pieces of constant curvature; on clothoids it is the Fresnel
 * integral, by Gauss-Legendre quadrature with eight nodes on panels that turn by {@link #PANEL_ANGLE} or less. Its
 * error is far below a nanometre per hundred metres.
 *
 * <p>Immutable; the curve starts at the origin, heading along x.
 */
final class ClothoidChain {

    /** Turn per quadrature panel, rad; eight nodes integrate cos over one radian to below 1e-16. */
    private static final double PANEL_ANGLE = 1;

    /**
     * Curvature (1/m) or gradient (1/m²) that still counts as rounding: 1e-12 turns a car by 1e-9 rad per kilometre.
     */
    private static final double ROUNDING = 1e-12;

    /**
     * Steps to the foot of a point; each shrinks the error by the share that the point's distance has in the radius.
     */
    private static final int FOOT_STEPS = 8;

    private final double[] station;
    private final StationIndex index;
    private final double[] startCurvature;
    private final double[] endCurvature;
    private final double[] gradient;
    private final double[] heading;
    private final double[] x;
    private final double[] y;

    /**
     * A chain of n pieces.
     *
     * @param station n + 1 strictly rising stations that bound the pieces, m
     * @param startCurvature curvature where each piece starts, 1/m
     * @param endCurvature curvature where each piece ends, 1/m
     */
    ClothoidChain(double[] station, double[] startCurvature, double[] endCurvature) {
        int pieces = startCurvature.length;
        this.station = station;
        this.index = new StationIndex(station);
        this.startCurvature = startCurvature;
        this.endCurvature = endCurvature;
        gradient = new double[pieces];
        heading = new double[pieces + 1];
        x = new double[pieces + 1];
        y = new double[pieces + 1];
        for (int i = 0; i < pieces; i++) {
            double length = station[i + 1] - station[i];
            gradient[i] = (endCurvature[i] - startCurvature[i]) / length;
            heading[i + 1] = heading[i] + 0.5 * (startCurvature[i] + endCurvature[i]) * length;
            Path.Point end = along(i, length);
            x[i + 1] = end.x();
            y[i + 1] = end.y();
        }
    }

    double start() {
        return station[0];
    }

    double end() {
        return station[station.length - 1];
    }

    double curvature(double s) {
        double at = inside(s);
        int i = index.piece(at);
        return startCurvature[i] + gradient[i] * (at - station[i]);
    }

    double gradient(double s) {
        return Double.isNaN(s) ? s : gradient[index.piece(inside(s))];
    }

    double heading(double s) {
        double at = inside(s);
        int i = index.piece(at);
        double t = at - station[i];
        return heading[i] + t * (startCurvature[i] + 0.5 * gradient[i] * t);
    }

    /** Takes up curvature and heading at a station, beside a grade and a banking. */
    void at(double s, double grade, double banking, Path.Place place) {
        double at = inside(s);
        int i = index.piece(at);
        double t = at - station[i];
        double slope = gradient[i];
        double start = startCurvature[i];
        place.take(start + slope * t, heading[i] + t * (start + 0.5 * slope * t), grade, banking);
    }

    Path.Point position(double s) {
        double at = inside(s);
        int i = index.piece(at);
        return along(i, at - station[i]);
    }

    /** Distance of a point from the curve, m, found from the station nearest to it by guess. */
    double distance(Path.Point point, double guess) {
        double s = guess;
        for (int step = 0; step < FOOT_STEPS; step++) {
            Path.Point at = position(s);
            double heading = heading(s);
            s = inside(s + Math.cos(heading) * (point.x() - at.x()) + Math.sin(heading) * (point.y() - at.y()));
        }
        Path.Point foot = position(s);
        return Math.hypot(point.x() - foot.x(), point.y() - foot.y());
    }

    /** Where the straight begins that the curve ends with; its end if it turns up to there. */
    double lastStraight() {
        int first = gradient.length;
        while (first > 0 && startCurvature[first - 1] == 0 && endCurvature[first - 1] == 0) {
            first--;
        }
        return station[first];
    }

    /** Inner stations where the curvature or its gradient jumps. */
    double[] kinks() {
        return innerStations(true);
    }

    /** Inner stations where the curvature itself jumps. */
    double[] curvatureJumps() {
        return innerStations(false);
    }

    private double[] innerStations(boolean gradientToo) {
        double[] found = new double[gradient.length];
        int count = 0;
        for (int i = 1; i < gradient.length; i++) {
            boolean jump = Math.abs(startCurvature[i] - endCurvature[i - 1]) > ROUNDING;
            if (jump || gradientToo && Math.abs(gradient[i] - gradient[i - 1]) > ROUNDING) {
                found[count++] = station[i];
            }
        }
        return Arrays.copyOf(found, count);
    }

    private double inside(double s) {
        return s < start() ? start() : s > end() ? end() : s;
    }

    /** The point at distance {@code t} into piece {@code i}. */
    private Path.Point along(int i, double t) {
        double start = startCurvature[i];
        double slope = gradient[i];
        if (slope == 0) {
            double half = 0.5 * start * t;
            double chord = half == 0 ? t : t * Math.sin(half) / half;
            return new Path.Point(
                    x[i] + chord * Math.cos(heading[i] + half), y[i] + chord * Math.sin(heading[i] + half));
        }
        double steepest = Math.max(Math.abs(start), Math.abs(start + slope * t));
        int panels = 1 + (int) (steepest * t / PANEL_ANGLE);
        double halfPanel = 0.5 * t / panels;
        double sumX = 0;
        double sumY = 0;
        for (int panel = 0; panel < panels; panel++) {
            double centre = (2 * panel + 1) * halfPanel;
            for (int node = 0; node < GaussRule.NODES.length; node++) {
                double at = centre + GaussRule.NODES[node] * halfPanel;
                double angle = heading[i] + at * (start + 0.5 * slope * at);
                sumX += GaussRule.WEIGHTS[node] * Math.cos(angle);
                sumY += GaussRule.WEIGHTS[node] * Math.sin(angle);
            }
        }
        return new Path.Point(x[i] + halfPanel * sumX, y[i] + halfPanel * sumY);
    }

    /** Gauss-Legendre rule with eight nodes on −1 to 1 (Abramowitz and Stegun, table 25.4, from memory). */
    static final class GaussRule {

        /** The nodes. */
        static final double[] NODES = {
            -0.96028985649753623,
            -0.79666647741362674,
            -0.52553240991632899,
            -0.18343464249564980,
            0.18343464249564980,
            0.52553240991632899,
            0.79666647741362674,
            0.96028985649753623
        };

        /** Their weights, which sum to 2. */
        static final double[] WEIGHTS = {
            0.10122853629037626, 0.22238103445337447, 0.31370664587788729, 0.36268378337836198,
            0.36268378337836198, 0.31370664587788729, 0.22238103445337447, 0.10122853629037626
        };

        private GaussRule() {}
    }
}
