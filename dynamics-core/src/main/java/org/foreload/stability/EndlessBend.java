package org.foreload.stability;

import org.foreload.path.Path;

/**
 * A bend without beginning or end, on the flat: where a steady motion stays steady.
 *
 * @param bend curvature, 1/m, positive to the left
 */
record EndlessBend(double bend) implements Path {

    private static final double FAR = 1e6;

    @Override
    public double start() {
        return -FAR;
    }

    @Override
    public double end() {
        return FAR;
    }

    @Override
    public double curvature(double s) {
        return bend;
    }

    @Override
    public double curvatureGradient(double s) {
        return 0;
    }

    @Override
    public double heading(double s) {
        return bend * s;
    }

    @Override
    public Point position(double s) {
        return bend == 0 ? new Point(s, 0) : new Point(Math.sin(bend * s) / bend, (1 - Math.cos(bend * s)) / bend);
    }

    @Override
    public double grade(double s) {
        return 0;
    }

    @Override
    public double banking(double s) {
        return 0;
    }

    @Override
    public double widthLeft(double s) {
        return FAR;
    }

    @Override
    public double widthRight(double s) {
        return FAR;
    }

    @Override
    public double[] kinks() {
        return new double[0];
    }
}
