package org.foreload.path;

/** A line of one's own: another line, of which a test spoils one answer. */
public class OwnPath implements Path {

    private final Path path;

    public OwnPath(Path path) {
        this.path = path;
    }

    @Override
    public double start() {
        return path.start();
    }

    @Override
    public double end() {
        return path.end();
    }

    @Override
    public double curvature(double s) {
        return path.curvature(s);
    }

    @Override
    public double curvatureGradient(double s) {
        return path.curvatureGradient(s);
    }

    @Override
    public double heading(double s) {
        return path.heading(s);
    }

    @Override
    public Point position(double s) {
        return path.position(s);
    }

    @Override
    public double grade(double s) {
        return path.grade(s);
    }

    @Override
    public double banking(double s) {
        return path.banking(s);
    }

    @Override
    public double widthLeft(double s) {
        return path.widthLeft(s);
    }

    @Override
    public double widthRight(double s) {
        return path.widthRight(s);
    }

    @Override
    public double[] kinks() {
        return path.kinks();
    }
}
