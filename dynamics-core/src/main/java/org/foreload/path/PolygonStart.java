package org.foreload.path;

/** Where a fit starts from: the polygon of the points, with states in the order of {@link ClothoidStep}. */
final class PolygonStart {

    private PolygonStart() {}

    /** Stations of the points along the polygon, from zero, m. */
    static double[] stations(double[] x, double[] y) {
        double[] station = new double[x.length];
        for (int i = 1; i < station.length; i++) {
            station[i] = station[i - 1] + Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
        }
        return station;
    }

    /** The points themselves, with headings from the neighbour before to the one after, and curvatures from those. */
    static double[][] states(double[] x, double[] y, double[] station) {
        int points = x.length;
        double[][] state = new double[points][ClothoidStep.STATES];
        double last = Double.NaN;
        for (int i = 0; i < points; i++) {
            int before = Math.max(i - 1, 0);
            int after = Math.min(i + 1, points - 1);
            double heading = Math.atan2(y[after] - y[before], x[after] - x[before]);
            state[i][0] = x[i];
            state[i][ClothoidStep.Y] = y[i];
            last = i == 0 ? heading : last + Math.IEEEremainder(heading - last, 2 * Math.PI);
            state[i][ClothoidStep.HEADING] = last;
        }
        for (int i = 0; i < points; i++) {
            int before = Math.max(i - 1, 0);
            int after = Math.min(i + 1, points - 1);
            double turn = state[after][ClothoidStep.HEADING] - state[before][ClothoidStep.HEADING];
            state[i][ClothoidStep.CURVATURE] = turn / (station[after] - station[before]);
        }
        return state;
    }
}
