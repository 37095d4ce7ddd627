package org.foreload.path;

/**
 * A path seen in a mirror that stands along its first straight: left and right change places.
 *
 * @param original the path before the mirror
 */
record MirroredPath(Path original) implements Path {

    @Override
    public Path mirrored() {
        return original;
    }

    @Override
    public double start() {
        return original.start();
    }

    @Override
    public double end() {
        return original.end();
    }

    @Override
    public double curvature(double s) {
        return -original.curvature(s);
    }

    @Override
    public double curvatureGradient(double s) {
        return -original.curvatureGradient(s);
    }

    @Override
    public double heading(double s) {
        return -original.heading(s);
    }

    @Override
    public Point position(double s) {
        Point point = original.position(s);
        return new Point(point.x(), -point.y());
    }

    @Override
    public double grade(double s) {
        return original.grade(s);
    }

    @Override
    public double banking(double s) {
        return -original.banking(s);
    }

    @Override
    public double widthLeft(double s) {
        return original.widthRight(s);
    }

    @Override
    public double widthRight(double s) {
        return original.widthLeft(s);
    }

    @Override
    public void at(double s, Place place) {
        original.at(s, place);
        place.take(-place.curvature(), -place.heading(), place.grade(), -place.banking());
    }

    @Override
    public double exitStraight() {
        return original.exitStraight();
    }

    @Override
    public double[] kinks() {
        return original.kinks();
    }
}
