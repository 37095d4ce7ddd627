package org.foreload.examples.answer;

import java.util.Objects;
import org.foreload.path.Path;

/**
 * A line that begins earlier: its approach is prolonged straight back, on the slopes and with the widths where it
 * began. Stations stay as they are.
 *
 * @param original the line before
 * @param by how much longer, m
 */
record LongerApproach(Path original, double by) implements Path {

    LongerApproach {
        Objects.requireNonNull(original, "original");
    }

    @Override
    public double start() {
        return original.start() - by;
    }

    @Override
    public double end() {
        return original.end();
    }

    /** Stations before a line are read as its start, which is straight: all but the place is that of there. */
    @Override
    public double curvature(double s) {
        return original.curvature(s);
    }

    @Override
    public double curvatureGradient(double s) {
        return original.curvatureGradient(s);
    }

    @Override
    public double heading(double s) {
        return original.heading(s);
    }

    @Override
    public Point position(double s) {
        Point there = original.position(s);
        double before = Math.max(0, Math.min(by, original.start() - s));
        return new Point(there.x() + by - before, there.y());
    }

    @Override
    public double grade(double s) {
        return original.grade(s);
    }

    @Override
    public double banking(double s) {
        return original.banking(s);
    }

    @Override
    public double widthLeft(double s) {
        return original.widthLeft(s);
    }

    @Override
    public double widthRight(double s) {
        return original.widthRight(s);
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
