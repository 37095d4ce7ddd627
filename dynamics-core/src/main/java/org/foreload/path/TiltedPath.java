package org.foreload.path;

import java.util.Objects;
import org.foreload.conventions.Checks;

/**
 * A path whose plane is tilted: slopes along and across the line are added everywhere to those that it has.
 *
 * @param original the path before
 * @param addedGrade slope along the line in rad, positive uphill
 * @param addedBanking slope across the line in rad, positive where the left edge is the lower one
 */
public record TiltedPath(Path original, double addedGrade, double addedBanking) implements Path {

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public TiltedPath {
        Objects.requireNonNull(original, "original");
        Checks.between("grade", addedGrade, -Math.PI / 2, Math.PI / 2);
        Checks.between("banking", addedBanking, -Math.PI / 2, Math.PI / 2);
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
        return original.position(s);
    }

    @Override
    public double grade(double s) {
        return original.grade(s) + addedGrade;
    }

    @Override
    public double banking(double s) {
        return original.banking(s) + addedBanking;
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
    public void at(double s, Place place) {
        original.at(s, place);
        place.take(place.curvature(), place.heading(), place.grade() + addedGrade, place.banking() + addedBanking);
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
